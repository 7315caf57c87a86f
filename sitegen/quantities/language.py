"""How a language says the numbers and sums that the program works out.

The program makes its words in English, and its amounts with a decimal point. ``English`` leaves them as they are;
another language is an object with the same methods, which is passed to whoever shows a number.
"""

from __future__ import annotations


class English:
    """Everything as it is made."""

    @property
    def as_made(self) -> bool:
        """Whether nothing is said otherwise than it is made."""
        return True

    def amount(self, text: str) -> str:
        """An amount in the figures and units of the language: ``1.5 cm``, ``17 3/4 in``, ``85%``."""
        return text

    def say(self, text: str) -> str:
        """Words that the program made: the name of a number, a remark, a label."""
        return text

    def own(self, text: str) -> str:
        """Words that may hold names which an author gave."""
        return text

    def unmarked(self, text: str) -> str:
        """The words that it said without the marks of another language, for a picture, which measures them."""
        return text

    def sentences(self, text: str) -> str:
        """Sentences that the program made, such as what a drawing shows."""
        return text

    def several(self, count: int, name: str, amount: str) -> str:
        """A number that is taken several times: ``2 seam allowances of 3/8 in``. The amount is in its words already."""
        return f"{count} {plural(name)} of {amount}"

    def span(self, low: str, high: str) -> str:
        """From one amount to another: ``16 to 21``."""
        return f"{low} to {high}"


ENGLISH = English()


def plural(name: str) -> str:
    """The plural of a name in words, for ``2 seam allowances of 3/8 in``."""
    head, of, rest = name.partition(" of ")
    if head == "foot" or head.endswith(" foot"):
        head = head.removesuffix("oot") + "eet"
    elif head.endswith(("s", "x", "ch", "sh")):
        head += "es"
    elif head.endswith("y") and head[-2:-1] not in tuple("aeiou"):
        head = head[:-1] + "ies"
    else:
        head += "s"
    return head + of + rest
