"""What a closed band must pass over when the author gives no body measurement.

Source: US Army ANSUR II public data (method: NATICK/TR-15/007, 2014), 95th percentiles computed from the
public files: head 597 mm (women), 601 mm (men); hand round the knuckles without the thumb 202 mm, 230 mm.
These are adults in service; for children there is no such default, the author must say.
"""

from __future__ import annotations

from sitegen.quantities import Worked, given, mm

ADULT_REACH: dict[str, Worked] = {
    "head": given("head of a large adult", mm(601), "95th percentile of men, ANSUR II, 2014"),
    "hand": given("hand of a large adult", mm(230), "95th percentile of men, without the thumb, ANSUR II, 2014"),
}
