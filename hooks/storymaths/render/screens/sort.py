"""Hoops or a table to sort into. The board says whether all stand right, when it is asked, and not before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from ...activities.worked import AnyWorked
from ...model.figures import FigureData
from ...model.figures.sorting import SortCarroll, SortHoop, SortVenn
from .board import Board, Layout, Piece, Place, keyed
from .pieces import card, card_id, cast, characters_of


def boards(worked: AnyWorked) -> Iterable[Board]:
    """One board for a sorting; for a rule to be guessed, the rules that fit among others that do not."""
    assert worked.solution is not None
    answers = worked.solution.answers
    if not answers:
        return
    if "regions" in answers[0].data:
        layout, names = _diagram(worked.solution.task.figures[0].data)
        yield _regions(layout, _pieces(worked), names, [answer.data["regions"] for answer in answers])
    elif "boxes" in answers[0].data:
        yield _boxes(worked)


def _pieces(worked: AnyWorked) -> tuple[Piece, ...]:
    assert worked.solution is not None
    numbers = getattr(worked.fields, "numbers", None)
    if numbers:
        return tuple(card(number) for number in numbers)
    return cast(characters_of(worked), worked.solution.task.shows)


def _diagram(figure: FigureData) -> tuple[Layout, dict[str, str]]:
    """How a sorting looks, and what each of its regions is called."""
    if isinstance(figure, SortHoop):
        return "rings", {"in": figure.label, "out": figure.otherwise}
    assert isinstance(figure, SortVenn | SortCarroll)
    (one, other), (not_one, not_other) = figure.labels, figure.otherwise
    return "venn" if isinstance(figure, SortVenn) else "carroll", {
        "first": f"{one}, {not_other}",
        "both": f"{one} and {other}",
        "second": f"{other}, {not_one}",
        "neither": f"{not_one} and {not_other}",
    }


def _regions(
    layout: Layout, pieces: Sequence[Piece], names: Mapping[str, str], found: Sequence[Mapping[str, Sequence[str]]]
) -> Board:
    by_id = {piece.id for piece in pieces}
    places = tuple(Place(region, name) for region, name in names.items())
    ways = [[{region: list(_as_pieces(ids, by_id)) for region, ids in regions.items()}] for regions in found]
    return Board(layout, "", tuple(pieces), places, keyed(places, ways))


def _boxes(worked: AnyWorked) -> Board:
    assert worked.solution is not None
    pieces = _pieces(worked)
    by_id = {piece.id for piece in pieces}
    labels: Sequence[str] = [str(row) for row in worked.solution.task.lines] or []
    boxes = [list(_as_pieces(answer.data["boxes"], by_id)) for answer in worked.solution.answers]
    names = [labels[n] if n < len(labels) else f"box {n + 1}" for n in range(len(boxes[0]))]
    places = tuple(Place(f"box-{n}", name, 1) for n, name in enumerate(names, 1))
    ways = [[{place.id: [one] for place, one in zip(places, row, strict=True)}] for row in boxes]
    return Board("rows", "", pieces, places, keyed(places, ways))


def _as_pieces(ids: Sequence[str], known: set[str]) -> Iterator[str]:
    return (one if one in known else card_id(one) for one in ids)
