"""From a checked content folder to a site on disk, written whole or not at all.

Knows nothing of how numbers are worked out or what is wrong with them: it asks the rooms below.
"""

from sitegen.publishing.marked_page import MarkedText, write_marked_page
from sitegen.publishing.new_folder import NotBegun, write_new_folder
from sitegen.publishing.not_replaced import NotReplaced
from sitegen.publishing.photo_findings import photo_findings
from sitegen.publishing.releases import PageChanges, Record, compare_records, read_record
from sitegen.publishing.site import Outcome, look_findings, publish

__all__ = [
    "MarkedText",
    "NotBegun",
    "NotReplaced",
    "Outcome",
    "PageChanges",
    "Record",
    "compare_records",
    "look_findings",
    "photo_findings",
    "publish",
    "read_record",
    "write_marked_page",
    "write_new_folder",
]
