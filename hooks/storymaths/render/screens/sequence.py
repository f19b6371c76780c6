"""Sequences: gaps to fill, the unit of a pattern, what comes later, which numbers are said, the mistake."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from ...activities.ordinals import ordinal
from ...activities.work_out import WorkedOut
from ...model.activity import Answer, CastMember
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, cast, characters_of, matched, with_nearby


def boards(worked: WorkedOut) -> Iterable[Board]:
    """One board, of the form the sequence asks for."""
    assert worked.solution is not None
    answers = worked.solution.answers
    if not answers:
        return
    first = answers[0].data
    if "said" in first:
        yield _said(worked, answers)
    elif "should_be" in first:
        yield _mistake(worked, answers)
    elif "gaps" in first:
        yield _gaps(worked, answers)
    elif "term" in first:
        yield _later(answers)
    elif "unit" in first:
        yield _unit(worked, answers)


def _gaps(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    assert worked.fields is not None
    shown = list(getattr(worked.fields, "terms", ()) or getattr(worked.fields, "pattern", ()))
    gaps = answers[0].data["gaps"]
    places = tuple(Place(f"gap-{n}", f"gap {n}", 1) for n in range(1, len(gaps) + 1))
    ways = [[dict(zip((place.id for place in places), _ids(worked, a.data["gaps"]), strict=True))] for a in answers]
    numbers = [int(gap) for gap in gaps if str(gap).lstrip("−-").isdecimal()]
    pieces = with_nearby(numbers) if len(numbers) == len(gaps) else _members(worked, [*shown, *gaps])
    return Board("sentence", "", pieces, places, keyed(places, ways), between=_between(worked, shown))


def _between(worked: WorkedOut, shown: Sequence[Any]) -> tuple[str, ...]:
    names = {character.id: character.name for character in characters_of(worked)}
    text = ", ".join("___" if term == "___" else names.get(str(term), str(term)) for term in shown)
    return tuple(text.split("___"))


def _ids(worked: WorkedOut, terms: Iterable[Any]) -> list[list[str]]:
    known = _ids_of(characters_of(worked))
    return [[known.get(str(term), card_id(term))] for term in terms]


def _ids_of(characters: Iterable[CastMember]) -> dict[str, str]:
    known: dict[str, str] = {}
    for character in characters:
        known[character.name] = known[character.id] = character.id
    return known


def _members(worked: WorkedOut, terms: Sequence[Any]) -> tuple[Piece, ...]:
    known = _ids_of(characters_of(worked))
    wanted = {known[str(term)] for term in terms if str(term) in known}
    characters = [character for character in characters_of(worked) if character.id in wanted]
    words = dict.fromkeys(str(term) for term in terms if str(term) not in known and term != "___")
    return (*cast(characters, copies=None), *(card(word, None) for word in words))


def _unit(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    unit = answers[0].data["unit"]
    places = tuple(Place(f"place-{n}", ordinal(n), 1) for n in range(1, len(unit) + 1))
    way = dict(zip((place.id for place in places), _ids(worked, unit), strict=True))
    return Board("slots", "", _members(worked, unit), places, keyed(places, [[way]]))


def _later(answers: Sequence[Answer]) -> Board:
    lines = [f"the {ordinal(answer.data['place'])}" for answer in answers]
    right = [str(answer.data["term"]) for answer in answers]
    others = [str(term) for term in answers[0].data.get("unit", ())]
    if not others:
        others = [piece.name for piece in with_nearby(int(term) for term in right)]
    return matched(lines, right, others)


def _said(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    asked = [int(number) for number in getattr(worked.fields, "said", ())]
    said = [card_id(answer.data["said"]) for answer in answers]
    places = (Place("said", "we shall say it"), Place("not-said", "we shall not"))
    others = [card_id(number) for number in asked if card_id(number) not in said]
    pieces = tuple(card(number) for number in asked)
    return Board("rings", "", pieces, places, keyed(places, [[{"said": said, "not-said": others}]]))


def _mistake(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    terms = [str(term) for term in (getattr(worked.fields, "terms", ()) or getattr(worked.fields, "pattern", ()))]
    places = (Place("wrong", "the mistake is", 1, takes="term"), Place("right", "it should be", 1, takes="card"))
    pieces = tuple(Piece(f"term-{n}", f"{term} ({ordinal(n)})", sort="term") for n, term in enumerate(terms, 1))
    numbers = [answer.data["should_be"] for answer in answers]
    whole = [int(number) for number in numbers if str(number).isdecimal()]
    named = dict.fromkeys([*terms, *map(str, numbers)])
    cards = [piece.name for piece in with_nearby(whole)] if whole else list(named)
    ways = [[{"wrong": [f"term-{a.data['place']}"], "right": [card_id(a.data["should_be"])]}] for a in answers]
    return Board("rows", "", (*pieces, *(card(one, sort="card") for one in cards)), places, keyed(places, ways))
