"""A shape made of smaller shapes: every different way to lay the pieces so that they cover it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Literal

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..met import demands_met
from ..saying import capital, counted, listed
from .covering import TooMany, Way, every_way
from .pieces import Piece, pieces_of
from .quarters import SQUARE, Shape, picture_of, places_of, shape_of, squares_across, squares_down, symmetries_of

Drawn = Literal["pieces", "squares", "outline"]
Use = Literal["all", "some"]
HELPS: Mapping[Drawn, str] = {
    "pieces": "One way is drawn in, to lay the pieces on.",
    "squares": "The squares inside it are drawn.",
    "outline": "Only its outline is drawn.",
}
"""What is drawn inside the shape to be made, from the most help to the least."""
_MOST_DRAWN = 12
_VOCABULARY = ("square", "triangle", "rectangle")
_COSTS = 5
"""A piece tried costs as much as so many of the plainest cases that are counted elsewhere."""
_HALF = SQUARE // 2
"""Quarters in half a square, which is what every piece is made of."""


def drawn_for(drawn: Drawn, years_on: int) -> Drawn:
    """What is drawn in for younger pupils, who get one help more, and for older, who get one less."""
    order = list(HELPS)
    step = (years_on > 0) - (years_on < 0)
    return order[min(max(order.index(drawn) + step, 0), len(order) - 1)]


def composed_solution(
    make: Sequence[str], told: Mapping[str, int], use: Use, drawn: Drawn, context: Context, ask: str | None
) -> Solution:
    """Every different way. Raises ``Unsolvable``, also where there are too many ways to look for."""
    shape = shape_of(make, context.caps.cells, ("make",))
    pieces = pieces_of(told, context.caps.pieces)
    fits = sum(len(piece.shape) * piece.many for piece in pieces) - len(shape)
    ways = _every_way(shape, pieces, use, context) if fits == 0 or (fits > 0 and use == "some") else []
    forms = [min(same, key=lambda way: sum(not laid.as_given for laid in way)) for same in ways]
    answers = tuple(_answer(way, pieces, shape, context) for way in forms)
    guide = forms[0] if forms and drawn == "pieces" else ()
    task = Task(
        ask or _asked(shape, pieces, use, bool(guide)),
        context.characters[:1],
        figures=(_target(shape, guide, drawn), _handed_out(shape, pieces)),
    )
    done = (_ways_drawn(shape, forms),) if forms else ()
    steps = max(map(len, forms), default=len(pieces))
    demands = demands_met(task, answers, _VOCABULARY)
    return Solution(task, answers, demands, steps, _note(shape, pieces, fits, use, forms), _slip(ways), done)


def _every_way(shape: Shape, pieces: Sequence[Piece], use: Use, context: Context) -> list[list[Way]]:
    try:
        return every_way(shape, pieces, use == "all", context.caps.answers, context.caps.tries // _COSTS)
    except TooMany:
        message = "There are more ways, or more to try, than anybody could list."
        fix = "use a smaller shape, or fewer and larger pieces."
        raise Unsolvable(("make",), message, fix, "activity-too-many-answers") from None


def _asked(shape: Shape, pieces: Sequence[Piece], use: Use, guided: bool) -> str:
    these = listed([piece.said for piece in pieces])
    asked = f"Make this shape of {these}. " + ("Use every piece." if use == "all" else "You need not use them all.")
    asked += " The lines show one way: lay the pieces on it. Is there another way?" if guided else " Find every way."
    if len(symmetries_of(shape)) > 1:
        asked += " A way that is only turned or flipped over is the same way."
    return asked


def _answer(way: Way, pieces: Sequence[Piece], shape: Shape, context: Context) -> Answer:
    laid = [(pieces[piece.sort].name, places_of(piece.on, squares_down(shape))) for piece in way]
    says = capital("; ".join(f"{name} on {listed(places)}" for name, places in laid))
    data = {"pieces": [{"piece": name, "on": places} for name, places in laid]}
    return Answer(says, _worked([len(piece.on) for piece in way], len(shape), context), data)


def _worked(sizes: Sequence[int], whole: int, context: Context) -> str:
    """The sizes of the pieces come to the size of the shape, where the year adds so far."""
    half = _HALF if any(size % SQUARE for size in sizes) else SQUARE
    if not context.year.year or whole // half > context.year.largest_calculated or len(sizes) < 2:
        return "Nothing is left bare, and no piece lies on another."
    total = f"{' + '.join(str(size // half) for size in sizes)} = {whole // half}"
    return f"Nothing is left bare: in {'half squares' if half < SQUARE else 'squares'}, {total}."


def _note(shape: Shape, pieces: Sequence[Piece], fits: int, use: Use, forms: Sequence[Way]) -> str:
    """How one knows that these are all, or that there is none."""
    if fits < 0 or (fits and use == "all"):
        size, given = len(shape) // _HALF, (len(shape) + fits) // _HALF
        return f"The shape is as big as {counted(size, 'half squares')}, and the pieces as {counted(given, 'half squares')}."
    how = "Cover the first bare corner with each piece in each way it can lie, then the next bare corner, and so on"
    if not forms:
        return f"{how}: it never comes out."
    return f"{how}. Squares have a letter, from the left, and a number, from the bottom."


def _slip(ways: Sequence[Sequence[Way]]) -> LikelyError | None:
    """Pieces left lying as they were handed out."""
    unturned = sum(any(all(laid.as_given for laid in way) for way in same) for same in ways)
    if unturned == len(ways):
        return None
    gives = f"{unturned} of the {len(ways)} ways." if unturned else "no way at all."
    return LikelyError("Never turns or flips a piece.", gives)


def _target(shape: Shape, guide: Way, drawn: Drawn) -> Figure:
    """What is to be made; with lines inside, as far as they are wished for."""
    across, down = squares_across(shape), squares_down(shape)
    parts = [laid.on for laid in guide] or [shape]
    alt = f"The shape to make, on {counted(across, 'squares')} across and {counted(down, 'squares')} down: "
    alt += f"it covers {listed(places_of(shape, down))}."
    lines = "none" if guide or drawn == "outline" else "squares"
    return _pictures([("", picture_of(parts, across, down))], across, alt, lines=lines)


def _handed_out(shape: Shape, pieces: Sequence[Piece]) -> Figure:
    pictures = [
        (piece.said, picture_of([piece.shape], squares_across(piece.shape), squares_down(piece.shape)))
        for piece in pieces
    ]
    return _pictures(pictures, squares_across(shape), f"The pieces: {listed([piece.said for piece in pieces])}.")


def _ways_drawn(shape: Shape, forms: Sequence[Way]) -> Figure:
    across, down = squares_across(shape), squares_down(shape)
    pictures = [
        (str(number), picture_of([laid.on for laid in way], across, down))
        for number, way in enumerate(forms[:_MOST_DRAWN], 1)
    ]
    alt = f"Drawings: {counted(len(pictures), 'ways')} of those in the list, in its order."
    return _pictures(pictures, across, alt, small=len(pictures) > 1)


def _pictures(
    pictures: Sequence[tuple[str, list[list[str]]]],
    across: int,
    alt: str,
    *,
    lines: str = "none",
    small: bool = False,
) -> Figure:
    data: dict[str, Any] = {
        "pictures": [{"says": says, "rows": rows} for says, rows in pictures],
        "across": across,
        "lines": lines,
        "small": small,
    }
    return Figure("laid-pieces", data, alt)
