"""Pieces that several kinds of activity put on their boards: the cast, numbers and answers among likely others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from ...activities.worked import AnyWorked
from ...model.activity import CastMember, Shown
from ...model.address import slug
from .board import Board, Piece, Place, keyed

_NEARBY = (1, -1, 10, -10, 2)
_MOST_CARDS = 12


def characters_of(worked: AnyWorked) -> tuple[CastMember, ...]:
    """The cast an activity is played with."""
    assert worked.context is not None
    return worked.context.characters


def cast(characters: Iterable[CastMember], shows: Sequence[Shown] = (), copies: int | None = 1) -> tuple[Piece, ...]:
    """A piece for each of the cast."""
    return tuple(
        Piece(character.id, character.name, character.picture, str(shows[n]) if n < len(shows) else "", copies)
        for n, character in enumerate(characters)
    )


def ids_by_name(characters: Iterable[CastMember]) -> dict[str, str]:
    """The cast's ids by their names: answers speak of them by name."""
    return {character.name: character.id for character in characters}


def card(words: str | int, copies: int | None = 1, sort: str = "") -> Piece:
    """A card with words or a number on it."""
    said = str(words).replace("-", "−") if isinstance(words, int) else words
    return Piece(card_id(said), said, copies=copies, sort=sort)


def card_id(words: object) -> str:
    """The id of a card: the same for the same words, and fit to stand in a key."""
    text = str(words).replace("-", "−")
    return f"card-{text}" if slug(text) == text else "signs-" + "-".join(f"{ord(sign):x}" for sign in text)


def nearby(numbers: Iterable[int], below_nought: bool = False) -> list[int]:
    """Numbers and likely others, so that what is on the table does not give the answer away."""
    wanted = dict.fromkeys(numbers)
    others = dict.fromkeys(number + step for number in wanted for step in _NEARBY if below_nought or number + step >= 0)
    room = max(4, _MOST_CARDS - len(wanted))
    extra = [number for number in others if number not in wanted][:room]
    return sorted([*wanted, *extra])


def with_nearby(numbers: Iterable[int], copies: int | None = 1) -> tuple[Piece, ...]:
    """A card for each of the numbers and of likely others."""
    return tuple(card(number, copies) for number in nearby(numbers))


def one_card(says: str, right: str | int, cards: Sequence[Piece]) -> Board:
    """A question with one place for its answer."""
    place = Place("answer", "the answer", 1)
    return Board("slots", says, tuple(cards), (place,), keyed((place,), [[{"answer": [card_id(right)]}]]))


def pick(name: str, choices: Iterable[str], right: Iterable[str]) -> Board:
    """Cards of which all that are right are laid in one ring."""
    place = Place("right", name)
    pieces = tuple(map(card, dict.fromkeys(choices)))
    return Board("rings", "", pieces, (place,), keyed((place,), [[{"right": list(map(card_id, right))}]]))


def numbers_for(says: str, right: Mapping[str, int]) -> Board:
    """A row for each name, to put a number in."""
    told = {name: card(number).name for name, number in right.items()}
    return one_each(says, told, with_nearby(right.values(), None))


def one_each(says: str, right: Mapping[str, str], cards: Sequence[Piece]) -> Board:
    """A row for each name, to put one of the cards in."""
    places = tuple(Place(f"row-{n}", name, 1) for n, name in enumerate(right, 1))
    way = {place.id: [card_id(words)] for place, words in zip(places, right.values(), strict=True)}
    return Board("rows", says, tuple(cards), places, keyed(places, [[way]]))


def sort_in_two(says: str, pieces: Sequence[Piece], right: Sequence[str], name: str, otherwise: str) -> Board:
    """Pieces to lay in one ring or the other; ``right`` are the ids of those that belong in the first."""
    places = (Place("first", name), Place("other", otherwise))
    way = {"first": list(right), "other": [piece.id for piece in pieces if piece.id not in right]}
    return Board("rings", says, tuple(pieces), places, keyed(places, [[way]]))


def matched(lines: Sequence[str], right: Sequence[str], others: Iterable[str] = ()) -> Iterator[Board]:
    """A board for each line; the cards are the answers of all of them, mixed with others."""
    cards = [card(words) for words in sorted({*right, *others})]
    yield from (one_card(line, told, cards) for line, told in zip(lines, right, strict=True))
