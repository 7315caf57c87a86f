"""Sums told in one plain statement, whatever other words stand between: ``38 cm for the side, 6 cm for half the
base, 1 cm for the seam and 4 cm for the hem: 49 cm altogether``.

The terms are sought backwards from the result: each length that plain words join to the one behind it is one more.
The words right beside a length say how often it is taken, those that lead to it whether it is added or taken off.
Where anything else is told between two lengths, the statement begins behind it.
"""

from sitegen.prose.arithmetic.statements.found import stated_results
from sitegen.prose.arithmetic.statements.judge import Stated
from sitegen.prose.arithmetic.statements.terms import how_often

__all__ = ["Stated", "how_often", "stated_results"]
