"""What can be bought, in words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from ...model.activity import Context, LikelyError, Line, Table
from ..saying import capital, listed, number_word
from .amount import tell
from .sums import Sum, write_sums
from .tasks import ChooseThings, HowMany, Purchase

MOST_ADDED = 12
"""The most things whose prices are written down one by one."""


def ask_to_choose(task: ChooseThings, amount: int, context: Context) -> str:
    """What is asked of a price list, or of the cast."""
    exactly, money = task.spend == "all", tell(amount, context)
    many = f"{number_word(task.choose)} " if task.choose else ""
    if not task.prices:
        about = context.facts.get(task.fact or "")
        who = f"Which {many}come" if many else "Whose come"
        limit = "exactly" if exactly else "no more than"
        of_each = f"The cards show each one's {about.means if about else task.fact}."
        return f"{of_each} {who} to {limit} {money}? Find every way."
    opening = f"There is {money} to spend{', all of it' if exactly else ''}."
    if task.change:
        paid, back = tell(task.handed_over, context), tell(task.change, context)
        opening = f"{capital(paid)} is paid and {back} comes back."
    how = "A thing may be bought more than once." if task.repeats else "Nothing is bought twice."
    things = "one thing" if task.choose == 1 else f"{many}things"
    return f"{opening} {how} Which {things} could be bought? Find every way."


def leave_gap(amount: int, context: Context) -> Line:
    """``___ = 20p``."""
    return Line(("", f" = {tell(amount, context)}"))


def list_prices(prices: Mapping[str, int], context: Context) -> Table:
    """The price list."""
    return Table("Prices", ("Thing", "Price"), tuple((name, tell(price, context)) for name, price in prices.items()))


def say_purchase(one: Purchase, names: Mapping[str, str]) -> str:
    """``Bun and two times roll``."""
    chosen = Counter(one.things).items()
    told = [names[id_] if count == 1 else f"{number_word(count)} times {names[id_]}" for id_, count in chosen]
    return capital(listed(told))


def explain_purchase(one: Purchase, sums: Sequence[Sum], context: Context) -> str:
    """What the things come to, and what is left."""
    opening = [f"It comes to {tell(one.spent, context)}"] if len(one.things) > MOST_ADDED else []
    return ". ".join([*opening, *([write_sums(sums, context)] if sums else [])]) + "."


def how_chosen(task: ChooseThings, amount: int, found: bool, context: Context) -> str:
    """How one knows that these are all, or that there is none."""
    note = "Every choice was tried: with the first thing on the list, then without it, and so on down the list."
    as_little = "" if task.spend == "all" else "as little as "
    return note if found else f"No choice comes to {as_little}{tell(amount, context)}. {note}"


def expect_dearest(name: str, left: int, context: Context) -> LikelyError:
    """Keeping to the dearest thing."""
    does = f"Starts with {name}, the dearest, and keeps to it."
    return LikelyError(does, f"{tell(left, context)} that cannot be spent")


def refuse_search(amount: int, context: Context) -> tuple[str, str]:
    """That there is too much to try, and what to do."""
    message = f"With {tell(amount, context)} there is too much to try."
    return message, 'say how many things with "choose", or shorten the list.'


def refuse_choices(amount: int, limit: int, context: Context) -> tuple[str, str]:
    """That there are too many choices, and what to do."""
    message = f"There are more than {limit} choices for {tell(amount, context)}."
    return message, 'say how many things with "choose", shorten the list, or take a smaller amount.'


def ask_how_many(price: int, amount: int | None, context: Context) -> str:
    """What is asked of one amount, or of what each of the cast has."""
    have = "Each has the money shown." if amount is None else f"There is {tell(amount, context)}."
    return f"One costs {tell(price, context)}. {have} How many can be bought?"


def say_how_many(one: HowMany, name: str, context: Context) -> str:
    """``There is enough for 4, with 5p left``."""
    who = f"{name} can buy" if name else "There is enough for"
    rest = f", with {tell(one.left, context)} left" if one.left else ""
    return capital(f"{who} {one.count:,}{rest}")


def explain_how_many(amount: int, price: int, sums: Sequence[Sum], context: Context) -> str:
    """What they cost, and what is left."""
    if not sums:
        return f"{capital(tell(amount, context))} is less than {tell(price, context)}."
    return write_sums(sums, context) + "."


def expect_rounding(count: int) -> LikelyError:
    """Buying one that is not paid for."""
    return LikelyError("Rounds up, so that the last one is not paid for.", f"{count + 1:,} instead of {count:,}")
