"""Which search answers which task with money."""

from __future__ import annotations

from ...model.activity import Context, Solution
from .solve_buying import buy_many, choose_things
from .solve_making import make, make_in_fewest
from .solve_paying import find_price, give_change
from .solve_saving import save_up, share_money
from .solve_totals import compare_purses, find_total
from .tasks import (
    AddUp,
    BuyMany,
    ChooseThings,
    ComparePurses,
    FindPrice,
    GiveChange,
    MakeAmount,
    MakeInFewest,
    MoneyAnswer,
    MoneyTask,
    SaveUp,
    ShareMoney,
)


def solve(task: MoneyTask, context: Context) -> Solution[MoneyAnswer]:
    """Every answer, and what the task demands."""
    match task:
        case MakeAmount():
            return make(task, context)
        case MakeInFewest():
            return make_in_fewest(task, context)
        case GiveChange():
            return give_change(task, context)
        case ChooseThings():
            return choose_things(task, context)
        case BuyMany():
            return buy_many(task, context)
        case AddUp():
            return find_total(task, context)
        case ComparePurses():
            return compare_purses(task, context)
        case FindPrice():
            return find_price(task, context)
        case ShareMoney():
            return share_money(task, context)
        case SaveUp():
            return save_up(task, context)
