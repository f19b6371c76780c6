"""Totals and purses compared, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Context, LikelyError, Line
from ..saying import capital, listed
from .amount import Notation, notation_for, tell, tell_briefly
from .bill import LOTS, Term, list_bill
from .sums import Sum, write_sums
from .tasks import AddUp, PurseCompared


def ask_for_total(task: AddUp, context: Context) -> str:
    """What there is and what goes."""
    gone = listed([tell_briefly(pence, context) for pence in task.less])
    then = f" Then {gone} goes." if task.less else ""
    return f"The money is {list_bill(task.bill, context, LOTS)}.{then} How much is it in all?"


def leave_gap(terms: Sequence[Term], less: Sequence[int], context: Context) -> Line:
    """``75p + 3 × 5p = ___``."""
    write = notation_of_line(terms, less, context).write
    parts = [f"{count:,} × {write(each)}" if count > 1 else write(each) for count, each in terms]
    return Line((" − ".join([" + ".join(parts), *map(write, less)]) + " = ", ""))


def notation_of_line(terms: Sequence[Term], less: Sequence[int], context: Context) -> Notation:
    """How the amounts of the line are written: as their total will be."""
    return notation_for([pence for count, each in terms for pence in (each, count * each)] + list(less), context)


def explain_total(sums: Sequence[Sum], left: int, context: Context) -> str:
    """The sums that lead to it, if there are any."""
    return f"{write_sums(sums, context)}." if sums else f"There is {tell(left, context)} and nothing more."


def expect_counting(coins: int, left: int, context: Context) -> LikelyError:
    """Counting coins."""
    return LikelyError("Counts the coins and not what they are worth.", f"{coins} instead of {tell(left, context)}")


def expect_once(once: int, context: Context) -> LikelyError:
    """Adding each sort once."""
    return LikelyError("Adds one of each sort instead of all.", tell(once, context))


def list_purse(name: str, purse: Sequence[int], context: Context) -> Line:
    """``The first: 10p and 10p``."""
    return Line((f"The {name}: {listed([tell_briefly(worth, context) for worth in purse])}",))


def say_comparison(one: PurseCompared, context: Context) -> str:
    """``The first holds 5p more``."""
    if one.more == "same":
        return "Both hold the same"
    return f"The {one.more} holds {tell(one.difference, context)} more"


def explain_comparison(sums: Sequence[Sum], one: int, context: Context) -> str:
    """The sums that lead to it, if there are any."""
    return capital(write_sums(sums, context) if sums else f"both are {tell(one, context)}") + "."


def expect_more_coins(first: bool) -> LikelyError:
    """Going by the number of coins."""
    return LikelyError("Thinks that more coins are more money.", f"the {'first' if first else 'second'} purse")
