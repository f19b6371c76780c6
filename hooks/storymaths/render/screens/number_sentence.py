"""Number sentences with gaps to fill, one board a sentence; sentences to judge; families to build."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import permutations
from typing import Any

from ...activities.work_out import WorkedOut
from ...model.activity import Answer
from ...parse.number_sentence import find_number_sentences, is_true
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, cast, characters_of, with_nearby

_GAP = "___"
_SIGNS = ("+", "−", "×", "÷", "=", "≠", "<", ">")


def boards(worked: WorkedOut) -> Iterable[Board]:
    """A board for each sentence with gaps; one for all that are to be judged; one for a family."""
    assert worked.solution is not None
    answers = worked.solution.answers
    gapped = [answer for answer in answers if "gaps" in answer.data]
    for line in dict.fromkeys(answer.data["line"] for answer in gapped):
        yield _filled(worked, line, [answer for answer in gapped if answer.data["line"] == line])
    judged = [answer for answer in answers if "true" in answer.data]
    if judged:
        yield _judged(worked, judged)
    for answer in answers:
        if "family" in answer.data:
            yield _family(answer.data["sentences"])


def _filled(worked: WorkedOut, line: int, answers: Sequence[Answer]) -> Board:
    assert worked.solution is not None
    shown = worked.solution.task.lines[line - 1]
    between = tuple(shown.split(_GAP))
    places = tuple(Place(f"gap-{n}", f"gap {n}", 1) for n in range(1, len(between)))
    written = worked.fields.sentences[line - 1] if worked.fields else ""  # type: ignore[attr-defined]
    swaps = getattr(worked.fields, "swapped", "counts") == "same"
    ways = [list(_ways(places, answer.data, written, swaps)) for answer in answers]
    who = "who" in answers[0].data
    pieces = _cast(worked) if who else _cards([gap for answer in answers for gap in answer.data["gaps"]])
    return Board("sentence", "", pieces, places, keyed(places, ways), between=between)


def _cast(worked: WorkedOut) -> tuple[Piece, ...]:
    assert worked.solution is not None
    once = bool(getattr(worked.fields, "each_once", False))
    return cast(characters_of(worked), worked.solution.task.shows, 1 if once else None)


def _cards(gaps: Sequence[Any]) -> tuple[Piece, ...]:
    signs = [gap for gap in gaps if gap in _SIGNS]
    whole = [gap for gap in gaps if isinstance(gap, int)]
    others = [gap for gap in gaps if not isinstance(gap, int) and gap not in _SIGNS]
    wanted = (card(sign, None) for sign in (_SIGNS if signs and {"=", "<", ">"} & set(signs) else _SIGNS[:4]))
    numbers = with_nearby(whole, None) if whole else ()
    return (*numbers, *(card(str(one), None) for one in dict.fromkeys(others)), *(wanted if signs else ()))


def _ways(places: Sequence[Place], data: Any, written: str, swaps: bool) -> Iterator[dict[str, list[str]]]:
    ids = data["who"] if "who" in data else [card_id(gap) for gap in data["gaps"]]
    pairs = list(zip(ids, data["gaps"], strict=True))
    for order in dict.fromkeys(permutations(pairs)) if swaps else [tuple(pairs)]:
        if list(order) == pairs or _holds(written, data["sentence"], [gap for _, gap in order]):
            yield {place.id: [one] for place, (one, _) in zip(places, order, strict=True)}


def _holds(written: str, sentence: str, gaps: Sequence[Any]) -> bool:
    """Whether the sentence is true with other numbers in its gaps."""
    frame, words = written.split(), sentence.split()
    if len(frame) != len(words):
        return False
    rest = iter(gaps)
    told = " ".join(str(next(rest)) if mark == _GAP else word for mark, word in zip(frame, words, strict=True))
    found = find_number_sentences(told)
    return bool(found) and all(is_true(one) for one in found)


def _judged(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    assert worked.solution is not None
    lines = [worked.solution.task.lines[answer.data["line"] - 1].partition(_GAP)[0].strip() for answer in answers]
    pieces = tuple(Piece(f"line-{n}", line) for n, line in enumerate(lines, 1))
    places = (Place("true", "true"), Place("not-true", "not true"))
    true = [piece.id for piece, answer in zip(pieces, answers, strict=True) if answer.data["true"]]
    ways = [[{"true": true, "not-true": [piece.id for piece in pieces if piece.id not in true]}]]
    return Board("rings", "", pieces, places, keyed(places, ways))


def _family(sentences: Sequence[str]) -> Board:
    tokens = [sentence.split() for sentence in sentences]
    places = tuple(Place(f"card-{n}", f"card {n}", 1) for n in range(1, len(tokens[0]) + 1))
    ways = [[{place.id: [card_id(one)] for place, one in zip(places, row, strict=True)}] for row in tokens]
    pieces = tuple(card(one, None) for one in dict.fromkeys(token for row in tokens for token in row))
    return Board("sentence", "", pieces, places, keyed(places, ways), between=("",) * (len(places) + 1))
