"""A purse to put coins or things in, or a card with the amount."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from ...activities.money.amount import tell_briefly
from ...activities.money.coins import mark_coins
from ...activities.money.tasks import (
    ChangeDue,
    ChooseThings,
    CoinWay,
    HowMany,
    MakeAmount,
    MakeInFewest,
    MakeTask,
    MoneyAnswer,
    MoneyTask,
    Price,
    Purchase,
    PurseCompared,
    Share,
    Total,
    Weeks,
)
from ...activities.worked import Worked
from ...model.activity import Context
from .board import Board, Piece, Place, keyed
from .pieces import card, cast, one_card, with_nearby

_NEARBY = (1, -1, 2, 5, 10, -5, -10)


def boards(worked: Worked[MoneyTask, MoneyAnswer]) -> Iterable[Board]:
    """Coins for ways to pay, the things for what to buy, else a card for the answer."""
    answers = [answer.value for answer in worked.solution.answers]
    match worked.fields:
        case MakeAmount() | MakeInFewest() as task:
            yield _coins(task, [one for one in answers if isinstance(one, CoinWay)], worked.context)
        case ChooseThings() as task:
            yield _bought(task, [one for one in answers if isinstance(one, Purchase)], worked)
        case _:
            for answer in answers:
                yield _card(answer, worked.context)


def _coins(task: MakeTask, ways: Sequence[CoinWay], context: Context) -> Board:
    purse = Counter(task.purse)
    used = {coin for way in ways for coin in way.coins}
    worths = sorted({*used, *purse, *task.coins})
    pieces = tuple(
        Piece(f"coin-{worth}", text, copies=purse[worth] if purse else None, look="coin")
        for worth, text in zip(worths, mark_coins(worths, context), strict=True)
    )
    place = Place("paid", "paid with")
    placings = [[{"paid": [f"coin-{coin}" for coin in way.coins]}] for way in ways]
    return Board("rings", "", pieces, (place,), keyed((place,), placings))


def _bought(task: ChooseThings, found: Sequence[Purchase], worked: Worked[MoneyTask, MoneyAnswer]) -> Board:
    context, copies = worked.context, None if task.repeats else 1
    if task.prices:
        pieces = tuple(
            Piece(f"thing-{n}", name, shows=tell_briefly(price, context), copies=copies)
            for n, (name, price) in enumerate(task.prices.items(), 1)
        )
        ids = {name: piece.id for name, piece in zip(task.prices, pieces, strict=True)}
    else:
        pieces = cast(context.characters, worked.solution.task.shows, copies)
        ids = {character.id: character.id for character in context.characters}
    place = Place("paid-for", "paid for")
    placings = [[{"paid-for": [ids[thing] for thing in one.things]}] for one in found]
    return Board("rings", "", pieces, (place,), keyed((place,), placings))


def _card(answer: MoneyAnswer, context: Context) -> Board:
    match answer:
        case HowMany(count, _, who):
            return one_card(who or "", count, with_nearby([count]))
        case Weeks(weeks):
            return one_card("", weeks, with_nearby([weeks]))
        case ChangeDue(change=pence) | PurseCompared(difference=pence):
            return _amount(pence, context)
        case Total(pence) | Price(pence) | Share(pence):
            return _amount(pence, context)
        case CoinWay() | Purchase():
            raise AssertionError("coins and things have a board of their own")


def _amount(right: int, context: Context) -> Board:
    near = [right + step for step in _NEARBY if right + step > 0]
    cards = [card(tell_briefly(pence, context)) for pence in sorted({right, *near})]
    return one_card("", tell_briefly(right, context), cards)
