"""Hoops or a table to sort into. The board says whether all stand right, when it is asked, and not before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from ...activities.work_out import WorkedOut
from .board import Board, Look, Piece, Place, keyed
from .pieces import card, card_id, cast, characters_of


def boards(worked: WorkedOut) -> Iterable[Board]:
    """One board for a sorting; for a rule to be guessed, the rules that fit among others that do not."""
    assert worked.solution is not None
    answers = worked.solution.answers
    if not answers:
        return
    if "regions" in answers[0].data:
        labels = worked.solution.task.figures[0].data
        crossed = getattr(worked.fields, "diagram", None) == "carroll"
        look: Look = "rings" if "in" in answers[0].data["regions"] else "carroll" if crossed else "venn"
        yield _regions(look, _pieces(worked), _names(labels), [answer.data["regions"] for answer in answers])
    elif "boxes" in answers[0].data:
        yield _boxes(worked)


def _pieces(worked: WorkedOut) -> tuple[Piece, ...]:
    assert worked.solution is not None
    numbers = getattr(worked.fields, "numbers", None)
    if numbers:
        return tuple(card(number) for number in numbers)
    return cast(characters_of(worked), worked.solution.task.shows)


def _names(figure: Mapping[str, Sequence[str]]) -> dict[str, str]:
    labels, otherwise = figure["labels"], figure["otherwise"]
    if len(labels) == 1:
        return {"in": labels[0], "out": otherwise[0]}
    return {
        "first": f"{labels[0]}, {otherwise[1]}",
        "both": f"{labels[0]} and {labels[1]}",
        "second": f"{labels[1]}, {otherwise[0]}",
        "neither": f"{otherwise[0]} and {otherwise[1]}",
    }


def _regions(
    look: Look, pieces: Sequence[Piece], names: Mapping[str, str], found: Sequence[Mapping[str, Sequence[str]]]
) -> Board:
    by_id = {piece.id for piece in pieces}
    places = tuple(Place(region, name) for region, name in names.items())
    ways = [[{region: list(_as_pieces(ids, by_id)) for region, ids in regions.items()}] for regions in found]
    return Board(look, "", tuple(pieces), places, keyed(places, ways))


def _boxes(worked: WorkedOut) -> Board:
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
