"""What numbers are called: their names in plain words, as a person says them."""

from __future__ import annotations

_THEN = ".then."
_NEW = "new_"
_BODY = "body."
_OF_FABRIC = {
    "need": "needed",
    "buy": "to buy",
    "least": "at the least",
    "for_repeat": "for the repeat",
}
"""Numbers that say how much of a fabric, behind its name: ``main.need`` → main fabric needed."""
_CLOTH = ("fabric", "cloth")
_COMPARATIVES = (
    *("longer", "shorter", "wider", "narrower", "taller", "fuller", "looser", "tighter", "deeper", "higher", "lower"),
    *("larger", "bigger", "smaller", "slimmer", "broader", "closer", "flatter", "thicker", "thinner"),
)
"""Names of changes that say what a garment becomes. Most others name what it gets: longer legs, a border."""


def words_of(name: str) -> str:
    """A number's name in plain words: ``neckband.cut_length`` → neckband cut length, ``main.buy`` → main fabric to buy,
    ``body.waist`` → waist measurement, ``longer_legs.back.new_cut_length`` → back new cut length with longer legs."""
    change, then, number = name.partition(_THEN)
    if then:
        return f"{words_of(number)} {_changed(change)}"
    if name.startswith(_BODY):
        return f"{body_words(name)} measurement"
    owner, _, field = name.rpartition(".")
    if owner and field.startswith(_NEW):
        change, _, piece = owner.partition(".")
        return f"{_plain(f'{piece}.{field}' if piece else field)} {_changed(change)}"
    if owner and field in _OF_FABRIC:
        fabric = _plain(owner)
        return f"{fabric if fabric.endswith(_CLOTH) else f'{fabric} fabric'} {_OF_FABRIC[field]}"
    return _plain(name)


def body_words(name: str) -> str:
    """The name of a measurement where all around it is one of the body: ``body.upper_arm`` → upper arm."""
    return _plain(name.removeprefix(_BODY))


def _plain(name: str) -> str:
    return name.replace(".", " ").replace("_", " ")


def _changed(change: str) -> str:
    """After which change: ``with longer legs``, and ``once longer`` where its name says what the garment becomes."""
    becomes = change in _COMPARATIVES or (change.endswith("ed") and not change.endswith("eed"))
    return f"{'once' if becomes and '_' not in change else 'with'} {_plain(change)}"
