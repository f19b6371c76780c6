"""Sequences: gaps to fill, the unit of a pattern, what comes later, which numbers are said, the mistake."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from ...activities.ordinals import ordinal
from ...activities.saying import written
from ...activities.sequence.tasks import (
    FilledPattern,
    FilledRow,
    Mistake,
    PatternFields,
    RepeatingUnit,
    RowFields,
    SaidNumber,
    SaidTask,
    SequenceAnswer,
    SequenceTask,
    TermAt,
    ThingAt,
)
from ...activities.worked import Worked
from ...model.activity import GAP, CastMember
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, cast, matched, sort_in_two, with_nearby

SequenceWorked = Worked[SequenceTask, SequenceAnswer]


def boards(worked: SequenceWorked) -> Iterable[Board]:
    """Of the form the sequence asks for; a board for each place that is asked about."""
    values = [answer.value for answer in worked.solution.answers]
    match values:
        case [SaidNumber(), *_]:
            yield _which_are_said(worked, [value.said for value in values if isinstance(value, SaidNumber)])
        case [Mistake(), *_]:
            yield _mistake(worked, [value for value in values if isinstance(value, Mistake)])
        case [FilledRow() | FilledPattern() as filled]:
            yield _gaps(worked, filled)
        case [TermAt(), *_]:
            yield from _later(
                [(value.place, _face(value.term, worked)) for value in values if isinstance(value, TermAt)], values
            )
        case [ThingAt(), *_]:
            yield from _later([(value.place, value.term) for value in values if isinstance(value, ThingAt)], values)
        case [RepeatingUnit(unit=unit)]:
            yield _unit(worked, unit)


def _face(term: Fraction | str, worked: SequenceWorked) -> str:
    """What is on the card of a term."""
    if isinstance(term, str):
        return term
    places = worked.fields.decimals if isinstance(worked.fields, RowFields) else 0
    return card(int(term)).name if term.denominator == 1 else written(term, places)


def _whole(terms: Iterable[Fraction | str]) -> list[int]:
    return [int(term) for term in terms if isinstance(term, Fraction) and term.denominator == 1]


def _shown(worked: SequenceWorked) -> list[str]:
    task = worked.fields
    return list(task.pattern) if isinstance(task, PatternFields) else [_face(term, worked) for term in task.terms]


def _gaps(worked: SequenceWorked, filled: FilledRow | FilledPattern) -> Board:
    shown, gaps = _shown(worked), [_face(gap, worked) for gap in filled.gaps]
    places = tuple(Place(f"gap-{n}", f"gap {n}", 1) for n in range(1, len(gaps) + 1))
    way = dict(zip((place.id for place in places), _ids(worked, gaps), strict=True))
    numbers = _whole(filled.gaps)
    pieces = with_nearby(numbers, None) if len(numbers) == len(gaps) else _members(worked, [*shown, *gaps])
    names = {character.id: character.name for character in worked.context.characters}
    # No comma after a gap: a line of the screen may begin there.
    between = ", ".join(names.get(term, term) for term in shown).replace(f"{GAP},", GAP).split(GAP)
    return Board("sentence", "", pieces, places, keyed(places, [[way]]), between=tuple(between))


def _ids(worked: SequenceWorked, faces: Iterable[str]) -> list[list[str]]:
    known = _ids_of(worked.context.characters)
    return [[known.get(face, card_id(face))] for face in faces]


def _ids_of(characters: Iterable[CastMember]) -> dict[str, str]:
    known: dict[str, str] = {}
    for character in characters:
        known[character.name] = known[character.id] = character.id
    return known


def _members(worked: SequenceWorked, faces: Sequence[str]) -> tuple[Piece, ...]:
    known = _ids_of(worked.context.characters)
    wanted = {known[face] for face in faces if face in known}
    characters = [character for character in worked.context.characters if character.id in wanted]
    words = dict.fromkeys(face for face in faces if face not in known and face != GAP)
    return (*cast(characters, copies=None), *(card(word, None) for word in words))


def _unit(worked: SequenceWorked, unit: Sequence[str]) -> Board:
    places = tuple(Place(f"place-{n}", ordinal(n), 1) for n in range(1, len(unit) + 1))
    way = dict(zip((place.id for place in places), _ids(worked, unit), strict=True))
    return Board("slots", "", _members(worked, unit), places, keyed(places, [[way]]))


def _later(found: Sequence[tuple[int, str]], values: Sequence[SequenceAnswer]) -> Iterator[Board]:
    """What comes at each place, among the other things of the unit or among numbers nearby."""
    units = (value.unit for value in values if isinstance(value, ThingAt))
    nearby = with_nearby(_whole(value.term for value in values if isinstance(value, TermAt)))
    others = [*next(units, ()), *(piece.name for piece in nearby)]
    return matched([f"the {ordinal(place)}" for place, _ in found], [face for _, face in found], others)


def _which_are_said(worked: SequenceWorked, found: Sequence[Fraction]) -> Board:
    asked = worked.fields.said if isinstance(worked.fields, SaidTask) else ()
    said = list(dict.fromkeys(card_id(_face(number, worked)) for number in found))
    pieces = [card(face) for face in dict.fromkeys(_face(number, worked) for number in asked)]
    return sort_in_two("", pieces, said, "we shall say it", "we shall not")


def _mistake(worked: SequenceWorked, found: Sequence[Mistake]) -> Board:
    shown = _shown(worked)
    places = (Place("wrong", "the mistake is", 1, takes="term"), Place("right", "it should be", 1, takes="card"))
    # Where it stands is said only of one of several that are written alike.
    named = [f"{term} ({ordinal(n)})" if shown.count(term) > 1 else term for n, term in enumerate(shown, 1)]
    pieces = tuple(Piece(f"term-{n}", name, sort="term") for n, name in enumerate(named, 1))
    whole = [number for number in _whole(one.should_be for one in found) if number >= 0]
    faces = dict.fromkeys([*shown, *(_face(one.should_be, worked) for one in found)])
    cards = [piece.name for piece in with_nearby(whole)] if whole else list(faces)
    ways = [[{"wrong": [f"term-{one.place}"], "right": [card_id(_face(one.should_be, worked))]}] for one in found]
    return Board("rows", "", (*pieces, *(card(one, sort="card") for one in cards)), places, keyed(places, ways))
