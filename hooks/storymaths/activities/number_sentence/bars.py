"""Two bars of the same length that show what an equals sign says of a sum with one gap."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...expression.number import Rational
from ...expression.tree import Gap, Node, Number, Operation
from ...model.activity import Figure
from ...model.figures.amounts import BarPart, SumBars
from ..saying import listed, written
from .filled import Filled

_MOST_PARTS, _MOST_LETTERS = 5, 24
_Part = tuple[bool, Rational, bool]
"""Whether it is added, how much it is, and whether it is the gap."""


def draw_bars(filled: Sequence[Filled]) -> Figure | None:
    """The bars for the one answer of a sentence of + and −; what is taken away stands in the other bar."""
    if len(filled) != 1 or filled[0].single_plan() is None or filled[0].has_units():
        return None
    one = filled[0]
    parts = [list(_parts(side, one, True)) for side in one.sentence.sides]
    if any(not isinstance(size, int) or size <= 0 for side in parts for _, size, _ in side):
        return None
    top = [part for part in parts[0] if part[0]] + [part for part in parts[1] if not part[0]]
    bottom = [part for part in parts[1] if part[0]] + [part for part in parts[0] if not part[0]]
    if not top or not bottom or max(len(top), len(bottom)) > _MOST_PARTS:
        return None
    bars = SumBars(*(tuple(BarPart(_label(part), int(part[1])) for part in bar) for bar in (top, bottom)))
    if any(sum(len(label) for label, _ in bar) > _MOST_LETTERS for bar in (bars.top, bars.bottom)):
        return None
    said = [listed([label.replace("?", "a gap") for label, _ in bar]) for bar in (bars.top, bars.bottom)]
    return Figure(bars, f"Two bars of the same length. One shows {said[0]}, the other {said[1]}.")


def _label(part: _Part) -> str:
    return "?" if part[2] else written(part[1])


def _parts(node: Node, one: Filled, added: bool) -> Iterator[_Part]:
    """The parts of a sum; one that is not a plain sum comes as nought, which no bar can show."""
    if isinstance(node, Operation) and node.sign in "+−":
        yield from _parts(node.left, one, added)
        yield from _parts(node.right, one, added if node.sign == "+" else not added)
    elif isinstance(node, Number):
        yield added, node.value, False
    elif isinstance(node, Gap):
        yield added, one.numbers[node.at], True
    else:
        yield added, 0, False
