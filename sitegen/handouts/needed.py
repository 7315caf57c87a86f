"""What makes a PDF impossible, in words."""

from __future__ import annotations


class NoPdf(Exception):  # noqa: N818  (an outcome that a person reads, not a fault of the program)
    """Why there is no PDF, in words."""

    @classmethod
    def without(cls, package: str) -> NoPdf:
        """For a package that is not installed."""
        return cls(f"A PDF needs the package {package}. Install it with: pip install 'sitegen[pdf]'")
