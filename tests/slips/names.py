"""The names and allowances of a tutorial, for slips that take a wrong one of them."""

from __future__ import annotations

from fractions import Fraction

from sitegen.quantities import UNIT_NAMES, Length
from sitegen.tutorial import Computed


class Known:
    """What a tutorial has, by the kind of thing that a name may stand for."""

    def __init__(self, computed: Computed) -> None:
        """The names of a tutorial in its first view."""
        tutorial = computed.tutorial
        self._computed = computed
        self.edges = [edge.name for piece in tutorial.pieces.values() for edge in piece.edges.values()]
        self.bands = list(tutorial.bands)
        self.rings = [*tutorial.bands, *tutorial.elastics]
        self.pieces = list(tutorial.pieces)
        self.fabrics = list(tutorial.fabrics)
        self.hems = list(tutorial.hems)
        self.darts = [dart.name for piece in tutorial.pieces.values() for dart in piece.darts.values()]
        self.boxed = list(tutorial.boxed)
        self.body = list(tutorial.body)
        self.numbers = [name for name in computed.names() if ".then." not in name]
        self.any_knit = any(fabric.knit for fabric in tutorial.fabrics.values())

    def others(self, name: str, kind: str, path: str) -> list[str]:
        """Names that could be written instead of this one, the likeliest first."""
        if kind in ("edge", "row"):
            return self._other_edges(name)
        if kind == "side":
            piece = path.split(".")[1]
            own = [edge.partition(".")[2] for edge in self.edges if edge.startswith(f"{piece}.")]
            return [other for other in [*own, "seam", "raw"] if other != name]
        if kind == "body":
            prefix = "body." if name.startswith("body.") else ""
            return [f"{prefix}{other}" for other in self.body if f"{prefix}{other}" != name]
        known = {
            "piece": self.pieces,
            "fabric": self.fabrics,
            "hem": self.hems,
            "band": self.bands,
            "ring": self.rings,
            "dart": self.darts,
            "box": self.boxed,
            "cut": [*self.pieces, *self.rings],
        }[kind]
        return [other for other in known if other != name]

    def _other_edges(self, name: str) -> list[str]:
        """The same edge of other pieces, then the other edges of the same piece; plain names stay plain."""
        if name.startswith("body."):
            return [f"body.{other}" for other in self.body if f"body.{other}" != name]
        if "." not in name:
            plain = sorted({edge.partition(".")[2] for edge in self.edges})
            known = self.rings if name in self.rings else plain
            return [other for other in known if other != name]
        piece, _, edge = name.partition(".")
        same = [other for other in self.edges if other.endswith(f".{edge}") and other != name]
        own = [other for other in self.edges if other.startswith(f"{piece}.") and other != name]
        return same + own

    def other_numbers(self, name: str) -> tuple[list[str], list[str]]:
        """Other numbers of the same part, and the same number of other parts."""
        part, _, field = name.rpartition(".")
        value = self._value(name)
        alike = [other for other in self.numbers if other != name and type(self._value(other)) is type(value)]
        same_part = [other for other in alike if part and other.rpartition(".")[0] == part]
        same_field = [other for other in alike if other.rpartition(".")[2] == field]
        return same_part, same_field

    def allowance(self, part: str, unit: str) -> Fraction | None:
        """The seam allowance of a part in this unit."""
        for name in (f"{part}.seam_allowance", "seam_allowance"):
            value = self._value(name)
            if isinstance(value, Length):
                return value.in_unit(UNIT_NAMES[unit])
        return None

    def hem_of(self, piece: str, unit: str) -> Fraction | None:
        """What the hem of a piece takes in this unit, None when it has none."""
        for hem in self._computed.tutorial.hems.values():
            if any(edge.name.startswith(f"{piece}.") for edge in hem.edges):
                value = self._value(f"{hem.key}.allowance")
                return value.in_unit(UNIT_NAMES[unit]) if isinstance(value, Length) else None
        return None

    def _value(self, name: str) -> object:
        worked = self._computed.number(name, 0)
        return worked.value if worked is not None else None
