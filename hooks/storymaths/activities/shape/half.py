"""Half a figure on squares, completed over a mirror line."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ..met import demands_met
from .mirror import Edge, checked, joined, mirrored, shaded

_WHERE = {"right": "on its right", "left": "on its left", "top": "above it", "bottom": "below it"}


def completed_solution(half: Sequence[str], edge: Edge, context: Context, ask: str | None) -> Solution:
    """The one figure that is symmetrical."""
    rows = checked(half, context.caps.cells)
    whole = joined(rows, mirrored(rows, edge), edge)
    count = shaded(rows)
    why = f"Every square has its partner as far behind the line: {count} + {count} = {2 * count}."
    if not context.year.year:
        why = "Every square has its partner as far behind the line."
    answer = Answer(
        f"The whole figure has {2 * count} shaded squares.", why, {"rows": list(whole), "squares": 2 * count}
    )
    blank = tuple("." * len(row) for row in rows)
    figures = (_figure(joined(rows, blank, edge), edge, "Half of it is shaded, the rest is empty"),)
    asked = f"The mirror line is {_WHERE[edge]}. Shade the squares that make the whole figure symmetrical."
    task = Task(ask or asked, context.characters[:1], figures=figures)
    demands = demands_met(task, (answer,), ("symmetrical",))
    note = "There is just one: each shaded square fixes one on the other side."
    done = (_figure(whole, edge, "It is symmetrical"),)
    return Solution(task, (answer,), demands, count, note, _slip(rows, edge, whole), done)


def _slip(rows: tuple[str, ...], edge: Edge, whole: tuple[str, ...]) -> LikelyError | None:
    """The half slid over in place of flipped."""
    slid = joined(rows, rows, edge)
    wrong = sum(one != two for row, other in zip(slid, whole, strict=True) for one, two in zip(row, other, strict=True))
    if not wrong:
        return None
    return LikelyError(
        "Slides the half over in place of flipping it.", f"{wrong} squares that are not right, first row {slid[0]}."
    )


def _figure(rows: Sequence[str], edge: Edge, what: str) -> Figure:
    across = edge in ("right", "left")
    line = "upright in the middle" if across else "level in the middle"
    told = "; ".join(
        f"row {index}: {row.replace('x', 'shaded ').replace('.', 'empty ').strip()}"
        for index, row in enumerate(rows, 1)
    )
    return Figure(
        "mirror-squares", {"rows": list(rows), "upright": across}, f"Squares with a mirror line {line}. {what}: {told}."
    )
