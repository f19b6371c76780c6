"""How much a drawing draws in all, each part counted as often as it is used: along every chain of references.

A kilobyte of markers on markers, or masks on masks, draws billions of pieces; what is drawn is counted as a browser
would draw it, and the counting stops at the limit.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from ...model.drawing_list import DrawingList
from .part import Part, Reference, Refused
from .styles import Chosen, StyleRule

_UNSHOWN = frozenset(
    "defs symbol clipPath mask pattern marker filter linearGradient radialGradient style title desc".split()
)
_SHAPES = frozenset("path rect circle ellipse line polyline polygon text tspan textPath".split())
_MARKED = frozenset("path line polyline polygon".split())
_CORNER = re.compile(r"[A-Za-z]|\d+")
_CHARACTERS_OF_A_PIECE = 100


class Chains:
    """Counts what one drawing draws."""

    def __init__(self, parts: Sequence[Part], rules: Sequence[StyleRule], allowed: DrawingList) -> None:
        """``parts`` are all of the drawing, the root first."""
        self._root, self._allowed, self._limits = parts[0], allowed, allowed.limits
        self._rules: dict[str, list[tuple[Chosen, StyleRule]]] = defaultdict(list)
        """Those that refer to something, by what an element must be, at the least, to be chosen."""
        for rule in rules:
            for chosen in rule.chosen if rule.refers else ():
                self._rules[chosen.key].append((chosen, rule))
        self._tries = 0
        self._found: dict[int, list[Reference]] = {}
        self._by_id = {part.attributes["id"]: part for part in reversed(parts) if "id" in part.attributes}
        self._referring: Part = parts[0]
        """The outermost part that is being counted and refers to others: the one to tell an author of."""
        self._pieces = self._layers = self._steps = 0
        self._around: dict[str, Mapping[str, str]] = {}
        """What each part with an id inherits where it stands."""
        self._inherit(parts[0], {})

    def count(self) -> None:
        """Raises ``Refused`` where the drawing draws more than its limits."""
        self._draw(self._root, {}, ())

    def _draw(self, part: Part, around: Mapping[str, str], chain: tuple[str, ...]) -> None:
        """Counts an element where it is shown; ``around`` is what it inherits, ``chain`` the ids on the way to it."""
        long = sum(len(part.attributes.get(name, "")) for name in ("d", "points")) + len(part.words)
        self._add(1 + long // _CHARACTERS_OF_A_PIECE)
        inherited = self._inherited(part, around)
        for one in (*part.refers, *self._by_rules(part)):
            if not chain:
                self._referring = part
            if one.by not in self._allowed.inherited:
                self._follow(part, one, inherited, chain)
        if part.name in _SHAPES:
            for name, to in inherited.items():
                self._follow(part, Reference(name, to), {}, chain)
        for inner in part.parts:
            if inner.name not in _UNSHOWN:
                self._draw(inner, inherited, chain)

    def _inherit(self, part: Part, around: Mapping[str, str]) -> None:
        self._around.setdefault(part.attributes.get("id", ""), around)
        inherited = self._inherited(part, around)
        for inner in part.parts:
            self._inherit(inner, inherited)

    def _inherited(self, part: Part, around: Mapping[str, str]) -> Mapping[str, str]:
        """What is in a part inherits, of what it refers to and what is around it."""
        own = [one for one in (*part.refers, *self._by_rules(part)) if one.by in self._allowed.inherited]
        if not own and part.sets.isdisjoint(around):
            return around
        return {name: to for name, to in around.items() if name not in part.sets} | {one.by: one.to for one in own}

    def _by_rules(self, part: Part) -> list[Reference]:
        if self._rules and id(part) not in self._found:
            classes = (f".{name}" for name in part.attributes.get("class", "").split())
            keys = {*classes, f"#{part.attributes.get('id', '')}", part.name, ""}
            near = [pair for key in keys for pair in self._rules.get(key, ())]
            self._tries += len(near)
            if self._tries > self._limits.tries:
                raise Refused("its style has too many rules for so many parts; save as plain SVG", part.at)
            self._found[id(part)] = [one for chosen, rule in near if chosen.chooses(part) for one in rule.refers]
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
        around = inherited if part.name == "use" else self._around[one.to]
        self._draw(target, around, (*chain, one.to))
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
