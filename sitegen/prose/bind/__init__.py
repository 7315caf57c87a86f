"""Binds a length that an author typed in a text to the number of the tutorial that its words name.

``3/8 in seam allowance`` is the seam allowance, ``hem allowance of 1 in`` the allowance of the hem that the step turns,
``cut the neckband 16 in long`` the cut length of the neckband. Where the words could name nothing or several parts, a
length is bound to nothing.
"""

from sitegen.prose.bind.bound import Bound, bind
from sitegen.prose.bind.sentences import sizes_around

__all__ = ["Bound", "bind", "sizes_around"]
