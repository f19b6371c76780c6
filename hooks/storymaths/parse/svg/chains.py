"""How much a drawing draws in all, each part counted as often as it is used: along every chain of references.

A kilobyte of markers on markers, or masks on masks, draws billions of pieces; what is drawn is counted as a browser
would draw it, and the counting stops at the limit.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence

from ...model.drawing_list import DrawingList
from .part import Part, Reference, Refused
from .styles import StyleRule

_UNSHOWN = frozenset(
    "defs symbol clipPath mask pattern marker filter linearGradient radialGradient style title desc".split()
)
_SHAPES = frozenset("path rect circle ellipse line polyline polygon text tspan textPath".split())
_MARKED = frozenset("path line polyline polygon".split())
_CORNER = re.compile(r"[A-Za-z]|\d+")
_CHARACTERS_OF_A_PIECE, _TRIES_OF_A_PIECE = 100, 10


class Chains:
    """Counts what one drawing draws."""

    def __init__(self, parts: Sequence[Part], rules: Sequence[StyleRule], allowed: DrawingList) -> None:
        """``parts`` are all of the drawing, the root first."""
        self._root, self._allowed, self._limits = parts[0], allowed, allowed.limits
        self._rules = [rule for rule in rules if rule.refers]
        self._tries = sum(len(rule.chosen) for rule in self._rules)
        """What a browser does for each part, as this does: many rules for many parts take long."""
        self._found: dict[int, list[Reference]] = {}
        self._by_id = {part.attributes["id"]: part for part in reversed(parts) if "id" in part.attributes}
        self._referring: Part = parts[0]
        """The outermost part that is being counted and refers to others: the one to tell an author of."""
        self._pieces = self._layers = self._steps = 0

    def count(self) -> None:
        """Raises ``Refused`` where the drawing draws more than its limits."""
        self._draw(self._root, {}, ())

    def _draw(self, part: Part, around: Mapping[str, str], chain: tuple[str, ...]) -> None:
        """Counts an element where it is shown; ``around`` is what it inherits, ``chain`` the ids on the way to it."""
        long = sum(len(part.attributes.get(name, "")) for name in ("d", "points")) + len(part.words)
        self._add(1 + long // _CHARACTERS_OF_A_PIECE + self._tries // _TRIES_OF_A_PIECE)
        own = [*part.refers, *self._by_rules(part)]
        inherited = {name: to for name, to in around.items() if name not in part.sets}
        for one in own:
            if not chain:
                self._referring = part
            if one.by in self._allowed.inherited:
                inherited[one.by] = one.to
            else:
                self._follow(part, one, inherited, chain)
        if part.name in _SHAPES:
            for name, to in inherited.items():
                self._follow(part, Reference(name, to), {}, chain)
        for inner in part.parts:
            if inner.name not in _UNSHOWN:
                self._draw(inner, inherited, chain)

    def _by_rules(self, part: Part) -> list[Reference]:
        if self._rules and id(part) not in self._found:
            self._found[id(part)] = [one for rule in self._rules if rule.chooses(part) for one in rule.refers]
        return self._found.get(id(part), [])

    def _follow(self, part: Part, one: Reference, inherited: Mapping[str, str], chain: tuple[str, ...]) -> None:
        target = self._by_id.get(one.to)
        kinds = self._allowed.properties.get(one.by)
        if target is None or (kinds is not None and target.name not in kinds):
            return  # no browser finds it either
        if one.to in chain:
            raise Refused("a part of it refers to itself", self._referring.at)
        if len(chain) >= self._limits.chained:
            raise Refused(
                f"a part that is used again holds another that is used again, more than {self._limits.chained} times over",
                self._referring.at,
            )
        times = _corners(part) if one.by.startswith("marker") and part.name in _MARKED else 1
        if one.by.startswith("marker") and part.name not in _MARKED:
            return
        if target.name == "filter":
            self._add_steps(sum(1 for _ in target.walk()) - 1)
            return
        before = self._pieces, self._layers, self._steps
        self._add_layers(target.name in ("mask", "clipPath", "pattern"))
        self._draw(target, inherited, (*chain, one.to))
        pieces, layers, steps = self._pieces - before[0], self._layers - before[1], self._steps - before[2]
        self._add((times - 1) * pieces)
        self._add_layers((times - 1) * layers)
        self._add_steps((times - 1) * steps)

    def _add(self, pieces: int) -> None:
        self._pieces += pieces
        if self._pieces > self._limits.pieces:
            raise Refused(
                f"it draws more than {self._limits.pieces:,} pieces, parts used again counted each time; "
                "use fewer, or draw them once",
                self._referring.at,
            )

    def _add_layers(self, layers: int) -> None:
        self._layers += layers
        if self._layers > self._limits.layers:
            raise Refused(
                f"it has more than {self._limits.layers} layers of masks, clips and patterns; use fewer",
                self._referring.at,
            )

    def _add_steps(self, steps: int) -> None:
        self._steps += steps
        if self._steps > self._limits.filter_steps:
            raise Refused(
                f"it has more than {self._limits.filter_steps} blurs, shadows and other steps of filters; use fewer",
                self._referring.at,
            )


def _corners(part: Part) -> int:
    """The most places at which a line may have a marker."""
    courses: Iterator[str] = (part.attributes.get(name, "") for name in ("d", "points"))
    return max(2, sum(len(_CORNER.findall(course)) for course in courses))
