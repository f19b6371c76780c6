"""Shares and weeks of saving, in words."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...model.activity import Context, LikelyError
from ..saying import capital, counted, listed, number_word, spoken
from .amount import tell, tell_briefly
from .bill import LOTS, list_bill
from .sums import Sum, write_sum, write_sums
from .tasks import SaveUp, ShareMoney

_IN_WORDS = 12


def ask_for_share(task: ShareMoney, part: Fraction, context: Context) -> str:
    """What is shared and how."""
    off = listed([tell_briefly(pence, context) for pence in task.less])
    first = f" {capital(off)} is taken off first." if task.less else ""
    among = (
        f"It is shared among {number_word(task.among)}." if task.among else f"{capital(spoken(part))} of it is given."
    )
    taken = [tell_briefly(pence, context) for pence in task.each_less]
    then = f" Then {listed(taken)} {'are' if len(taken) > 1 else 'is'} taken from each share." if taken else ""
    asked = "How much does each have in the end?" if task.among else "How much is that?"
    return f"The money is {list_bill(task.bill, context, LOTS)}.{first} {among}{then} {asked}"


def numbers_of_part(task: ShareMoney, part: Fraction) -> list[Fraction | int]:
    """The numbers read of how it is shared: few sharers are told in words, a part is a fraction to be known."""
    if task.among:
        return [task.among] if task.among > _IN_WORDS else []
    return [part]


def say_share(final: int, task: ShareMoney, context: Context) -> str:
    """``Each has 5p``."""
    return f"{'Each has' if task.among else 'It is'} {tell(final, context)}"


def explain_share(sums: Sequence[Sum], context: Context) -> str:
    """The sums that lead to it, if there are any."""
    return f"{write_sums(sums, context)}." if sums else "All of it is given."


def expect_sharing_all(share: int, context: Context) -> LikelyError:
    """Sharing too early."""
    return LikelyError("Shares before anything is taken off.", tell(share, context))


def refuse_share(left: int, context: Context) -> tuple[str, str]:
    """That it does not share out, and what to do."""
    message = f"{capital(tell(left, context))} does not share out in whole {context.money.part.many}."
    return message, "change the amount, or share it otherwise."


def ask_for_weeks(task: SaveUp, context: Context) -> str:
    """The aim, what is there, and what is saved each week."""
    start = f" {capital(tell(task.start, context))} is there already." if task.start else ""
    first = [f"{tell(each, context)} a week for {counted(count, 'weeks')}" for count, each in task.items]
    then = f"{tell(task.each, context)} a week"
    how = f"First it is {listed(first, 'then')}, and after that {then}" if first else f"{capital(then)} is saved"
    return f"The aim is {tell(task.amount, context)}.{start} {how}. How many weeks does it take?"


def say_weeks(weeks: int) -> str:
    """``It takes 5 weeks``."""
    return f"It takes {counted(weeks, 'weeks')}"


def explain_weeks(sums: Sequence[Sum], short: Sum | None, weeks: tuple[int, int, int] | None, context: Context) -> str:
    """The sums that lead to it, that a week fewer is ``short``, and all the weeks added."""
    told = [write_sum(one, context) for one in sums]
    told += [f"{write_sum(short, context)} is not yet enough"] if short else []
    told += ["{:,} + {:,} = {:,}".format(*weeks)] if weeks else []
    return ". ".join(told) + "."


def expect_weeks(more: int) -> LikelyError:
    """Forgetting the weeks told of first."""
    return LikelyError("Leaves out the first weeks.", counted(more, "weeks"))


def refuse_saving(saved: int, aim: int, context: Context) -> tuple[str, str]:
    """That the aim is passed already, and what to do."""
    message = f"{capital(tell(saved, context))} is already more than {tell(aim, context)}."
    return message, "save for something dearer."
