"""A shape made of smaller shapes, in words and drawings."""

from __future__ import annotations

from collections.abc import Sequence

from ...expression.noun import plural, with_article
from ...model.activity import Figure, LikelyError
from ...model.figures.shapes import LaidPieces, PieceRows
from ..saying import capital, counted, listed
from .covering import Way
from .pieces import Piece
from .quarters import SQUARE, Shape, picture_of, places_of, squares_across, squares_down, symmetries_of
from .tasks import Covering, Drawn

_MOST_DRAWN = 12


def ask_to_make(shape: Shape, pieces: Sequence[Piece], all_used: bool, guided: bool) -> str:
    """The task."""
    asked = f"Make this shape of {listed([piece.label for piece in pieces])}. "
    asked += "Use every piece." if all_used else "You need not use them all."
    asked += " The lines show one way: lay the pieces on it. Is there another way?" if guided else " Find every way."
    if len(symmetries_of(shape)) > 1:
        asked += " A way that is only turned or flipped over is the same way."
    return asked


def write_covering(covering: Covering) -> str:
    """Which piece lies on which squares: those on one square each together, larger ones one by one."""
    places: dict[str, list[str]] = {}
    larger = []
    for laid in covering.pieces:
        on = [place if place[0].isupper() else f"the {place}" for place in laid.on]
        if len(on) == 1:
            places.setdefault(laid.piece, []).extend(on)
        else:
            larger.append(f"{with_article(laid.piece)} on {listed(on)}")
    alone = (f"{with_article(name) if len(on) == 1 else plural(name)} on {listed(on)}" for name, on in places.items())
    return capital("; ".join((*larger, *alone)))


def explain_covering(sizes: Sequence[int], half: bool) -> str:
    """The sizes of the pieces come to the last size, that of the shape."""
    if not sizes:
        return "Nothing is left bare, and no piece lies on another."
    total = f"{' + '.join(map(str, sizes[:-1]))} = {sizes[-1]}"
    return f"Nothing is left bare: in {'half squares' if half else 'squares'}, {total}."


def explain_sizes(shape: int, more: int) -> str:
    """Why there is none: the pieces have so many quarters of a square more than the shape, or fewer."""
    size, given = (counted(quarters // (SQUARE // 2), "half squares") for quarters in (shape, shape + more))
    return f"The shape is as big as {size}, and the pieces as {given}."


def explain_all(ways: int) -> str:
    """How one knows that these are all, or that there is none."""
    how = "Cover the first bare corner with each piece in each way it can lie, then the next bare corner, and so on"
    if not ways:
        return f"{how}: it never comes out."
    return f"{how}. Squares have a letter, from the left, and a number, from the bottom."


def err_in_turning(ways: Sequence[Sequence[Way]]) -> LikelyError | None:
    """Pieces left lying as they were handed out."""
    unturned = sum(any(all(laid.as_given for laid in way) for way in same) for same in ways)
    if unturned == len(ways):
        return None
    gives = f"{unturned} of the {len(ways)} ways." if unturned else "no way at all."
    return LikelyError("Never turns or flips a piece.", gives)


def draw_target(shape: Shape, guide: Way, drawn: Drawn) -> Figure:
    """What is to be made; with lines inside, as far as they are wished for."""
    alt = f"The shape to make, on {counted(squares_across(shape), 'squares')} across and "
    alt += f"{counted(squares_down(shape), 'squares')} down: it covers {listed(places_of(shape, squares_down(shape)))}."
    picture = _picture("", [laid.on for laid in guide] or [shape], shape)
    return Figure(LaidPieces((picture,), squares_across(shape), not guide and drawn != "outline", small=False), alt)


def draw_pieces(shape: Shape, pieces: Sequence[Piece]) -> Figure:
    """What is handed out, as large as on the shape."""
    pictures = tuple(_picture(piece.label, [piece.shape], piece.shape) for piece in pieces)
    alt = f"The pieces: {listed([piece.label for piece in pieces])}."
    return Figure(LaidPieces(pictures, squares_across(shape), squared=False, small=False), alt)


def draw_ways(shape: Shape, forms: Sequence[Way]) -> Figure:
    """The first few ways."""
    shown = forms[:_MOST_DRAWN]
    pictures = tuple(_picture(str(n), [laid.on for laid in way], shape) for n, way in enumerate(shown, 1))
    alt = f"Drawings: {counted(len(pictures), 'ways')} of those in the list, in its order."
    return Figure(LaidPieces(pictures, squares_across(shape), squared=False, small=len(pictures) > 1), alt)


def _picture(says: str, parts: Sequence[Shape], whole: Shape) -> PieceRows:
    rows = picture_of(parts, squares_across(whole), squares_down(whole))
    return PieceRows(says, tuple(map(tuple, rows)))
