"""Hoops or a table to sort into. The board says whether all stand right, when it is asked, and not before."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from ...activities.saying import capital
from ...activities.sort.solve import labels_that_miss
from ...activities.sort.tasks import Filling, GuessedRule, GuessTask, Placing, SortAnswer, SortTask
from ...activities.worked import Worked
from ...model.activity import Task
from ...model.figures.sorting import SortCarroll, SortHoop, SortThreeRings, SortVenn
from .board import Board, Layout, Piece, Place, keyed
from .pieces import card, card_id, cast

_FEWEST_RULES, _FEWEST_OTHERS = 6, 3
SortWorked = Worked[SortTask, SortAnswer]


def boards(worked: SortWorked) -> Iterable[Board]:
    """One board for a sorting or for boxes, or with rules to choose from."""
    values = [answer.value for answer in worked.solution.answers]
    match values:
        case [Placing() as placing]:
            yield lay_out(worked.solution.task, _pieces(worked), placing)
        case [Filling(), *_]:
            yield _boxes(_pieces(worked), [value.boxes for value in values if isinstance(value, Filling)])
        case [GuessedRule(), *_]:
            yield _rules(worked)


def lay_out(task: Task, pieces: Sequence[Piece], placing: Placing) -> Board:
    """The board of the diagram that a task shows."""
    diagrams = (figure.data for figure in task.figures)
    layout, names = _diagram(
        next(one for one in diagrams if isinstance(one, SortHoop | SortVenn | SortThreeRings | SortCarroll))
    )
    return _regions(layout, pieces, names, placing)


def _rules(worked: SortWorked) -> Board:
    """The rules that fit, each an answer, among others about the same facts that do not."""
    assert isinstance(worked.fields, GuessTask)
    fitting = [answer.says.rstrip(".") for answer in worked.solution.answers]
    others = [capital(label) for label in labels_that_miss(worked.fields, worked.context)]
    cards = sorted({*fitting, *others[: max(_FEWEST_RULES - len(fitting), _FEWEST_OTHERS)]})
    place = Place("rule", "the rule", 1)
    ways = [[{place.id: [card_id(rule)]}] for rule in fitting]
    return Board("slots", "", tuple(map(card, cards)), (place,), keyed((place,), ways))


def _pieces(worked: SortWorked) -> tuple[Piece, ...]:
    numbers = None if isinstance(worked.fields, GuessTask) else worked.fields.numbers
    if numbers:
        return tuple(card(number) for number in numbers)
    return cast(worked.context.characters, worked.solution.task.shows)


def _diagram(figure: SortHoop | SortVenn | SortThreeRings | SortCarroll) -> tuple[Layout, dict[str, str]]:
    """How a sorting looks, and what each of its regions is called."""
    if isinstance(figure, SortHoop):
        return "rings", {"in": figure.label, "out": figure.otherwise}
    if isinstance(figure, SortThreeRings):  # a ring for each place, of which there are too many to cross on a screen
        first, second, third = figure.labels
        return "rings", {
            "all": "all three",
            "first and second": f"only {first} and {second}",
            "first and third": f"only {first} and {third}",
            "second and third": f"only {second} and {third}",
            "first": f"only {first}",
            "second": f"only {second}",
            "third": f"only {third}",
            "none": "none of them",
        }
    (one, other), (not_one, not_other) = figure.labels, figure.otherwise
    if isinstance(figure, SortVenn):  # its rings show what goes together
        return "venn", {"first": one, "both": "both", "second": other, "neither": "neither"}
    return "carroll", {
        "first": f"{one}, {not_other}",
        "both": f"{one} and {other}",
        "second": f"{other}, {not_one}",
        "neither": f"{not_one} and {not_other}",
    }


def _regions(layout: Layout, pieces: Sequence[Piece], names: Mapping[str, str], placing: Placing) -> Board:
    by_id = {piece.id for piece in pieces}
    places = tuple(Place(region, name) for region, name in names.items())
    way = {str(region): list(_as_pieces(ids, by_id)) for region, ids in placing.regions.items()}
    return Board(layout, "", tuple(pieces), places, keyed(places, [[way]]))


def _boxes(pieces: Sequence[Piece], found: Sequence[Sequence[str]]) -> Board:
    by_id = {piece.id for piece in pieces}
    places = tuple(Place(f"box-{n}", f"box {n}", 1) for n in range(1, len(found[0]) + 1))
    ways = [
        [{place.id: [one] for place, one in zip(places, _as_pieces(filling, by_id), strict=True)}] for filling in found
    ]
    return Board("rows", "", tuple(pieces), places, keyed(places, ways))


def _as_pieces(ids: Sequence[str], known: set[str]) -> Iterator[str]:
    return (one if one in known else card_id(one) for one in ids)
