"""What is wrong, where, and what to put instead. This room knows nothing of sewing or of any file format."""

from sitegen.findings.collect import Collector
from sitegen.findings.finding import Finding, Place, Severity
from sitegen.findings.nearest import either, meant, nearest
from sitegen.findings.report import as_data, as_text, count_line

__all__ = [
    "Collector",
    "Finding",
    "Place",
    "Severity",
    "as_data",
    "as_text",
    "count_line",
    "either",
    "meant",
    "nearest",
]
