"""What would follow if a number that the author gave were another."""

from __future__ import annotations

from collections.abc import Sequence

from sitegen.quantities import Value, given
from sitegen.tutorial.compute.define import numbers_of
from sitegen.tutorial.compute.naming import words_of
from sitegen.tutorial.compute.result import Computed


def supposing(plain: Computed, name: str, values: Sequence[Value]) -> Computed:
    """The tutorial with these values, one a size, for the number of this name, and every number that follows.

    What its changes and swaps make of it is left out.
    """
    words = words_of(name)
    other = numbers_of(plain.tutorial, lambda new: new.define(name, lambda size: given(words, values[size])))
    return Computed(plain.tutorial, other)
