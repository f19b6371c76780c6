"""A purse to put coins or things in, or a card with the amount."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from ...activities.money.amount import brief
from ...activities.money.coins import coin_name
from ...activities.work_out import WorkedOut
from ...model.activity import Answer
from .board import Board, Piece, Place, keyed
from .pieces import card, cast, characters_of, one_card, with_nearby

_PENCE = ("change", "total", "difference", "price", "share")
_NEARBY = (1, -1, 2, 5, 10, -5, -10)


def boards(worked: WorkedOut) -> Iterable[Board]:
    """Coins for ways to pay, the things for what to buy, else a card for the answer."""
    assert worked.solution is not None
    answers = worked.solution.answers
    if not answers:
        return
    first = answers[0].data
    if "coins" in first and "change" not in first:
        yield _coins(worked, answers)
    elif "things" in first:
        yield _bought(worked, answers)
    else:
        yield from _amounts(worked, answers)


def _coins(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    purse = Counter(getattr(worked.fields, "purse", ()) or ())
    used = {coin for answer in answers for coin in answer.data["coins"]}
    kinds = sorted({*used, *purse, *(getattr(worked.fields, "coins", ()) or ())})
    pieces = tuple(Piece(f"coin-{coin}", coin_name(coin), copies=purse[coin] if purse else None) for coin in kinds)
    place = Place("paid", "paid with")
    ways = [[{"paid": [f"coin-{coin}" for coin in answer.data["coins"]]}] for answer in answers]
    return Board("rings", "", pieces, (place,), keyed((place,), ways))


def _bought(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    assert worked.solution is not None
    again = bool(getattr(worked.fields, "repeats", False))
    characters = characters_of(worked)
    prices = getattr(worked.fields, "prices", None)
    if prices:
        assert worked.context is not None
        year = worked.context.year
        pieces = tuple(
            Piece(f"thing-{n}", name, shows=brief(price, year), copies=None if again else 1)
            for n, (name, price) in enumerate(prices.items(), 1)
        )
        ids = {name: piece.id for name, piece in zip(prices, pieces, strict=True)}
    else:
        pieces = cast(characters, worked.solution.task.shows, None if again else 1)
        ids = {character.id: character.id for character in characters}
    place = Place("paid-for", "paid for")
    ways = [[{"paid-for": [ids[thing] for thing in answer.data["things"]]}] for answer in answers]
    return Board("rings", "", pieces, (place,), keyed((place,), ways))


def _amounts(worked: WorkedOut, answers: Sequence[Answer]) -> Iterable[Board]:
    assert worked.context is not None
    for answer in answers:
        says = answer.data.get("player", "")
        for name in _PENCE:
            if name in answer.data:
                right = answer.data[name]
                near = [right + step for step in _NEARBY if right + step > 0]
                cards = [card(brief(pence, worked.context.year)) for pence in sorted({right, *near})]
                yield one_card(str(says), brief(right, worked.context.year), cards)
        for name in ("count", "weeks"):
            if name in answer.data:
                yield one_card(str(says), answer.data[name], with_nearby([answer.data[name]]))
