"""What was published, release by release: which numbers stood on which page, and which of them have moved since."""

from sitegen.publishing.releases.compare import compare_records
from sitegen.publishing.releases.published import published_page
from sitegen.publishing.releases.record import (
    NumberChange,
    PageChanges,
    PublishedNumber,
    PublishedPage,
    Record,
    Release,
    SizeChange,
    Status,
)
from sitegen.publishing.releases.release import next_record
from sitegen.publishing.releases.stored import RECORD_FILE, StoredRecord, read_record, record_in, record_text

__all__ = [
    "RECORD_FILE",
    "NumberChange",
    "PageChanges",
    "PublishedNumber",
    "PublishedPage",
    "Record",
    "Release",
    "SizeChange",
    "Status",
    "StoredRecord",
    "compare_records",
    "next_record",
    "published_page",
    "read_record",
    "record_in",
    "record_text",
]
