"""Parts of amounts and of shapes, and fractions to put on a line, in order, in pairs or in another form."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from ...activities.fraction.answers import (
    EqualPair,
    FractionAnswer,
    Group,
    NumberAtMark,
    NumbersInOrder,
    PartFound,
    PartOfCast,
    PlaceAtMark,
    PlaceBetween,
    Rest,
    Rewritten,
    ShapePart,
    SharedCount,
    Whole,
)
from ...activities.fraction.number import as_amount
from ...activities.fraction.tasks import (
    EqualTask,
    FractionTask,
    GroupsTask,
    LineTask,
    PartTask,
    ShapeTask,
    ShareTask,
)
from ...activities.saying import spoken, written
from ...activities.worked import Worked
from ...expression.number import WrittenNumber
from ...model.figures.fractions import ShapeInParts
from .board import Board, Piece, Place, keyed
from .order import ranked
from .pieces import card, card_id, cast, one_card, sort_in_two, with_nearby

FractionWorked = Worked[FractionTask, FractionAnswer]
_MOST_COUNTERS, _MOST_CARDS, _MOST_ON_LINE = 20, 24, 17
_MOST_PLACES = 4


def boards(worked: FractionWorked) -> Iterator[Board]:
    """One board for answers that belong together, else one for each."""
    task, values = worked.fields, [answer.value for answer in worked.solution.answers]
    match task:
        case ShareTask():
            yield from _which_share(worked, [value for value in values if isinstance(value, SharedCount)])
        case GroupsTask():
            place = Place("together", "together")
            ways = [[{place.id: list(value.characters)}] for value in values if isinstance(value, Group)]
            yield Board(
                "rings",
                "",
                cast(worked.context.characters, worked.solution.task.shows),
                (place,),
                keyed((place,), ways),
            )
        case ShapeTask() if task.fraction:
            yield _which_shapes(worked, task, [value.shape for value in values if isinstance(value, ShapePart)])
        case EqualTask():
            yield from _pairs([value.equal for value in values if isinstance(value, EqualPair)], task.numbers)
        case LineTask() if task.numbers:
            yield from _on_line(task, values)
        case _:
            names = {one.id: one.name for one in worked.context.characters}
            for value in values:
                yield from _one(value, task, names)


def _one(value: FractionAnswer, task: FractionTask, names: dict[str, str]) -> Iterator[Board]:
    """A question of its own."""
    match value:
        case PartFound(of, part, who) if isinstance(task, PartTask):
            yield _part(task, names.get(who or "", ""), of, part)
        case Rest(left=number) | Whole(whole=number):
            yield _number("", number)
        case PartOfCast(fraction=number) | Rewritten(written=number):
            says = f"{value.number.text} =" if isinstance(value, Rewritten) else ""
            yield one_card(says, number.text, _cards([number.text, *_alike(number)]))
        case ShapePart(shape, fraction, number):
            right = number or as_amount(fraction)
            yield one_card(f"Shape {shape}", right.text, _cards([right.text, *_alike(right)]))
        case NumberAtMark(mark, at) if isinstance(task, LineTask):
            others = [task.number_at(n) for n in (mark - 2, mark - 1, mark + 1, mark + 2) if 0 <= n <= task.parts]
            cards = _cards([as_amount(number).text for number in sorted([at, *others])])
            yield one_card(f"Mark {mark}", as_amount(at).text, cards)
        case NumbersInOrder(order, equal):
            yield ranked([one.text for one in order], [[one.text for one in some] for some in equal])


def _cards(texts: Iterable[str]) -> list[Piece]:
    return [card(text) for text in sorted(set(texts))]


def _number(says: str, right: Fraction) -> Board:
    if right.denominator == 1:
        return one_card(says, int(right), with_nearby([int(right)]))
    number = as_amount(right)
    return one_card(says, number.text, _cards([number.text, *_alike(number)]))


def _alike(number: WrittenNumber) -> Iterator[str]:
    """Numbers written as one is, that are not worth the same."""
    value, under = number.value, number.under
    if under == 1:
        for other in (value * 10, value / 10, *(value + Fraction(step, 10) for step in (-1, 1))):
            if other > 0:
                yield f"{written(other * 100, _MOST_PLACES)}%" if "%" in number.text else written(other, _MOST_PLACES)
        return
    whole = int(value) if " " in number.text else 0
    over = int((value - whole) * under)
    for part, parts in (
        (over - 1, under),
        (over + 1, under),
        (under - over, under),
        (over, under + 1),
        (over, under + 2),
    ):
        if part > 0 and parts > 1 and Fraction(part, parts) + whole != value and (value > 1 or part < parts):
            yield f"{whole} {part}/{parts}" if whole else f"{part}/{parts}"


def _part(task: PartTask, who: str, of: Fraction, part: Fraction) -> Board:
    """Counters to put into the part and the rest where there are few enough, else a card."""
    if of > _MOST_COUNTERS or not of.denominator == part.denominator == 1:
        return _number(who, part)
    places = (Place("part", spoken(task.fraction.value)), Place("rest", "the rest"))
    way = {"part": ["counter"] * int(part), "rest": ["counter"] * int(of - part)}
    counter = Piece("counter", task.things or "counters", copies=int(of), look="counter")
    return Board("rings", who, (counter,), places, keyed(places, [[way]]))


def _which_share(worked: FractionWorked, found: Sequence[SharedCount]) -> Iterator[Board]:
    task = worked.fields
    assert isinstance(task, ShareTask), "only counts are shared"
    counts = task.counts or range(1, (task.up_to or 0) + 1)
    cards = tuple(map(card, dict.fromkeys(counts)))
    pieces = cast(worked.context.characters, worked.solution.task.shows) if task.fact else cards
    if len(pieces) <= _MOST_CARDS:
        right = list(dict.fromkeys(one.character or card_id(one.count) for one in found))
        yield sort_in_two("", pieces, right, "a whole number", "not a whole number")


def _which_shapes(worked: FractionWorked, task: ShapeTask, right: Sequence[str]) -> Board:
    assert task.fraction is not None, "one is looked for"
    shown = (figure.data for figure in worked.solution.task.figures)
    shapes = [Piece(one.label, f"shape {one.label}") for one in shown if isinstance(one, ShapeInParts)]
    part = spoken(task.fraction.value)
    return sort_in_two("", shapes, right, f"{part} is shaded", f"not {part}")


def _pairs(found: Sequence[tuple[WrittenNumber, WrittenNumber]], numbers: Sequence[WrittenNumber]) -> Iterator[Board]:
    """Two places for two that are worth the same, either way round."""
    every = [one for pair in found for one in pair]
    texts = Counter(one.text for one in numbers)
    texts |= Counter({one.text: 2 if one == other else 1 for pair in found for one, other in (pair, pair[::-1])})
    if not numbers:
        texts |= Counter(_alike(every[0]))
    if len(texts) <= _MOST_CARDS:
        places = (Place("one", "one number", 1), Place("other", "the other number", 1))
        ids = [[card_id(number.text) for number in pair] for pair in found]
        ways = [[{"one": [one], "other": [other]}, {"one": [other], "other": [one]}] for one, other in ids]
        pieces = tuple(card(text, copies) for text, copies in sorted(texts.items()))
        yield Board("sentence", "", pieces, places, keyed(places, ways), between=("", " = ", ""))


def _on_line(task: LineTask, values: Sequence[FractionAnswer]) -> Iterator[Board]:
    """A place at every mark, and between any two where a number stands between."""
    between = any(isinstance(value, PlaceBetween) for value in values)
    halves = range(0, 2 * task.parts + 1, 1 if between else 2)
    if len(halves) > _MOST_ON_LINE:
        return
    places = tuple(
        Place(f"at-{n}", f"between mark {n // 2} and mark {n // 2 + 1}", marks=("between",))
        if n % 2
        else Place(f"at-{n}", f"mark {n // 2}")
        for n in halves
    )
    way: dict[str, list[str]] = {}
    for value in values:
        if isinstance(value, PlaceAtMark):
            way.setdefault(f"at-{2 * value.mark}", []).append(card_id(value.number.text))
        elif isinstance(value, PlaceBetween):
            way.setdefault(f"at-{2 * value.between[0] + 1}", []).append(card_id(value.number.text))
    ends = [as_amount(end, _MOST_PLACES).text for end in task.ends]
    columns = (ends[0], *[""] * (len(halves) - 2), ends[1])
    pieces = tuple(_cards(number.text for number in task.numbers))
    yield Board("line", "", pieces, places, keyed(places, [[way]]), columns=columns, rows=("",))
