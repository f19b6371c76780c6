"""A shape made of smaller shapes: every different way to lay the pieces so that they cover it, and what that demands."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Answer, Context, Solution, Task
from ...model.demands import Demands, amounts, number_sentences, operation
from ..kind import Unsolvable
from . import say_making as say
from .covering import TooMany, Way, every_way
from .named_shapes import words_in
from .pieces import Piece, pieces_of
from .quarters import SQUARE, Shape, places_of, shape_of, squares_down
from .tasks import Covering, LaidPiece, MakeTask

_COSTS = 5
"""A piece tried costs as much as so many of the plainest cases that are counted elsewhere."""


def find_coverings(task: MakeTask, context: Context) -> Solution[Covering]:
    """Every different way. Raises ``Unsolvable``, also where there are too many ways to look for."""
    shape = shape_of(task.make, context.caps.cells, ("make",))
    pieces = pieces_of(task.pieces, context.caps.pieces)
    fits = sum(len(piece.shape) * piece.many for piece in pieces) - len(shape)
    possible = fits == 0 or (fits > 0 and task.use == "some")
    ways = _every_way(shape, pieces, task, context) if possible else []
    forms = [min(same, key=lambda way: sum(not laid.as_given for laid in way)) for same in ways]
    guide = forms[0] if forms and task.drawn == "pieces" else ()
    demands = Demands(amounts(piece.many for piece in pieces), words=tuple(words_in(piece.name for piece in pieces)))
    answers = []
    for way in forms:
        sizes, half = _sizes_of(way, shape, context)
        if sizes:
            demands |= number_sentences(operation("+", *sizes))
        laid = (LaidPiece(pieces[one.sort].name, tuple(places_of(one.on, squares_down(shape)))) for one in way)
        value = Covering(tuple(laid))
        answers.append(Answer(say.write_covering(value), say.explain_covering(sizes, half), value))
    return Solution(
        task=Task(
            say.ask_to_make(shape, pieces, task.use == "all", bool(guide)),
            context.characters[:1],
            figures=(say.draw_target(shape, guide, task.drawn), say.draw_pieces(shape, pieces)),
        ),
        answers=tuple(answers),
        demands=demands,
        steps=max(map(len, forms), default=len(pieces)),
        note=say.explain_all(len(forms)) if possible else say.explain_sizes(len(shape), fits),
        likely_error=say.err_in_turning(ways),
        answer_figures=(say.draw_ways(shape, forms),) if forms else (),
    )


def _every_way(shape: Shape, pieces: Sequence[Piece], task: MakeTask, context: Context) -> list[list[Way]]:
    try:
        return every_way(shape, pieces, task.use == "all", context.caps.answers, context.caps.tries // _COSTS)
    except TooMany:
        message = "There are more ways, or more to try, than anybody could list."
        fix = "use a smaller shape, or fewer and larger pieces."
        raise Unsolvable(("make",), message, fix, "activity-too-many-answers") from None


def _sizes_of(way: Way, shape: Shape, context: Context) -> tuple[list[int], bool]:
    """The sizes of the pieces and of the shape, and whether in half squares; none where the year does not add so far."""
    quarters = [len(piece.on) for piece in way]
    half = any(size % SQUARE for size in quarters)
    sizes = [size // (SQUARE // 2 if half else SQUARE) for size in (*quarters, len(shape))]
    adds = context.year.knows("+") and sizes[-1] <= context.year.largest_calculated and len(way) > 1
    return (sizes if adds else []), half
