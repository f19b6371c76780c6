"""Number sentences with gaps to fill, one board a sentence; sentences to judge; families to build."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import permutations

from ...activities.number_sentence.filled import PLACES, Filled
from ...activities.number_sentence.gap_filling import is_filled_truly
from ...activities.number_sentence.tasks import (
    ChoiceTask,
    Chosen,
    Family,
    Judged,
    NumberSentenceAnswer,
    NumberSentenceTask,
    SentencesTask,
)
from ...activities.saying import written
from ...activities.worked import Worked
from ...expression.gapped import written_out
from ...expression.number import Rational
from .board import Board, Piece, Place, keyed
from .compare import judge
from .pieces import card, card_id, cast, pick, with_nearby

_SIGNS = ("+", "−", "×", "÷", "=", "≠", "<", ">")
_HERE = "\0"
"""Marks a place in a sentence that is written out."""


def boards(worked: Worked[NumberSentenceTask, NumberSentenceAnswer]) -> Iterable[Board]:
    """A board for each sentence with gaps; one for all that are to be judged; one for a family."""
    values = [answer.value for answer in worked.solution.answers]
    filled = [value for value in values if isinstance(value, Filled)]
    for line in dict.fromkeys(one.line for one in filled):
        yield _fill(worked, [one for one in filled if one.line == line])
    judged = [value for value in values if isinstance(value, Judged)]
    if judged:
        lines = [written_out(one.sentence.asked, names=True) for one in judged]
        yield judge(lines, [one.true for one in judged])
    if isinstance(worked.fields, ChoiceTask):
        chosen = [value.choice for value in values if isinstance(value, Chosen)]
        yield pick("right", [str(line) for line in worked.solution.task.lines], chosen)
    yield from (_build(value) for value in values if isinstance(value, Family))


def _fill(worked: Worked[NumberSentenceTask, NumberSentenceAnswer], filled: Sequence[Filled]) -> Board:
    task, one = worked.fields, filled[0]
    assert isinstance(task, SentencesTask), "a family is not filled"
    gaps = len(one.in_gaps())
    between = tuple(written_out(one.sentence.asked, [_HERE] * gaps, names=True).split(_HERE))
    places = tuple(Place(f"gap-{n}", f"gap {n}", 1) for n in range(1, gaps + 1))
    ways = [list(_ways(places, each, task.swapped == "same")) for each in filled]
    if one.who:
        pieces = cast(worked.context.characters, worked.solution.task.shows, 1 if task.each_once else None)
    else:
        pieces = _cards([gap for each in filled for gap in _write_gaps(each)])
    return Board("sentence", "", pieces, places, keyed(places, ways), between=between)


def _write_gaps(filled: Filled) -> list[int | str]:
    """What stands in the gaps: whole numbers, and signs and other numbers as they are written."""
    return [gap if isinstance(gap, (int, str)) else written(gap, filled.places) for gap in filled.in_gaps()]


def _cards(gaps: Sequence[int | str]) -> tuple[Piece, ...]:
    signs = [gap for gap in gaps if gap in _SIGNS]
    whole = [gap for gap in gaps if isinstance(gap, int)]
    others = [gap for gap in gaps if not isinstance(gap, int) and gap not in _SIGNS]
    wanted = (card(sign, None) for sign in (_SIGNS if signs and {"=", "<", ">"} & set(signs) else _SIGNS[:4]))
    numbers = with_nearby(whole, None) if whole else ()
    return (*numbers, *(card(one, None) for one in dict.fromkeys(others)), *(wanted if signs else ()))


def _ways(places: Sequence[Place], filled: Filled, swaps: bool) -> Iterator[dict[str, list[str]]]:
    """What may lie in the places; with swaps, the same numbers in any gaps in which the sentence is true."""
    count = len(filled.numbers)
    for order in permutations(range(count)) if swaps else [tuple(range(count))]:
        numbers = tuple(filled.numbers[at] for at in order)
        if is_filled_truly(filled.sentence, numbers):
            ids = [filled.who[at].id for at in order] if filled.who else _card_ids(filled, numbers)
            yield {place.id: [one] for place, one in zip(places, ids, strict=True)}


def _card_ids(filled: Filled, numbers: tuple[Rational, ...]) -> list[str]:
    swapped = Filled(filled.line, filled.sentence, numbers)
    return [card_id(gap) for gap in _write_gaps(swapped)]


def _build(family: Family) -> Board:
    rows = [
        [one if isinstance(one, str) else written(one or 0, PLACES) for one in sentence]
        for sentence in family.sentences()
    ]
    places = tuple(Place(f"card-{n}", f"card {n}", 1) for n in range(1, len(rows[0]) + 1))
    ways = [[{place.id: [card_id(one)] for place, one in zip(places, row, strict=True)}] for row in rows]
    pieces = tuple(card(one, None) for one in dict.fromkeys(word for row in rows for word in row))
    return Board("sentence", "", pieces, places, keyed(places, ways), between=("",) * (len(places) + 1))
