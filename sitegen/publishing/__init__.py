"""From a checked content folder to a site on disk, written whole or not at all.

Knows nothing of how numbers are worked out or what is wrong with them: it asks the rooms below.
"""

from sitegen.publishing.not_replaced import NotReplaced
from sitegen.publishing.site import Outcome, publish

__all__ = ["NotReplaced", "Outcome", "publish"]
