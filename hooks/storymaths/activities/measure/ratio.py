"""Amounts that keep in step with one another, and an amount shared in a ratio."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.quantity import UNITS
from ..kind import Unsolvable
from ..saying import capital, listed, plain
from .amount import Amount, in_sum, say, shown
from .words import all_alike, solution, turned

if TYPE_CHECKING:
    from . import MeasureFields


def rate(fields: MeasureFields, context: Context) -> Solution:
    """What so much comes to, when another amount of the same is known: down to one part, then up to as many."""
    of, comes_to, want, year = fields.of, fields.comes_to, fields.want, context.year
    if of is None or comes_to is None or want is None or of.number <= 0 or want.number <= 0 or comes_to.number <= 0:
        raise Unsolvable(("of",), "One of the amounts is nothing.", "give amounts more than 0.")
    if of.kind != want.kind:
        message = f"{capital(shown(of, year))} and {shown(want, year)} are not of one kind."
        raise Unsolvable(("want",), message, "ask for more or less of the same thing.")
    to = fields.to or comes_to.unit
    found = turned(Amount(comes_to.number * want.size / of.size, comes_to.unit), to, ("to",))
    known = turned(comes_to, to, ("to",))
    times, parts = (want.size / of.size).as_integer_ratio()
    one = Amount(known.number / parts, to)
    sentences = all_alike([comes_to], to, context)
    if of.unit != want.unit and of.unit in UNITS:
        sentences += all_alike([of, want], min(of.unit, want.unit, key=lambda unit: UNITS[unit][1]), context)
    if parts > 1:
        sentences.append(f"{in_sum(known, year)} ÷ {parts} = {in_sum(one, year)}")
    if times > 1:
        sentences.append(f"{in_sum(one, year)} × {times} = {in_sum(found, year)}")
    worked = ". ".join(sentences or [f"It is the same amount, so the same {say(found, year)}"]) + "."
    task = Task(
        f"{capital(shown(of, year))} {_come(of)} to {shown(comes_to, year)}. What {_do(want)} {shown(want, year)} come to?"
    )
    answer = Answer(
        f"{capital(shown(want, year))} {_come(want)} to {say(found, year)}.",
        worked,
        {"amount": plain(found.number), "unit": to},
    )
    likely_error = None
    added = known.number + (want.number - of.number)
    if of.unit == want.unit and added > 0 and added != found.number:
        likely_error = LikelyError(
            "Adds the same to both in place of keeping them in step.", say(Amount(added, to), year)
        )
    note = "Both grow in step, so one equal part is worth the same each time."
    return solution(task, [answer], max(1, len(sentences)), note, likely_error)


def _come(amount: Amount) -> str:
    return "comes" if amount.number == 1 or amount.unit in UNITS else "come"


def _do(amount: Amount) -> str:
    return "does" if _come(amount) == "comes" else "do"


def parts(fields: MeasureFields, context: Context) -> Solution:
    """An amount shared in a ratio: one share first, then each part in the ratio's order."""
    whole, ratio, year = fields.total, fields.ratio, context.year
    if whole is None or whole.number <= 0 or len(ratio) < 2:
        raise Unsolvable(
            ("ratio",), "There is nothing to share in a ratio.", 'give a "total" and a "ratio" such as [1, 3].'
        )
    shares = sum(ratio)
    one = Amount(whole.number / shares, whole.unit)
    each = [Amount(one.number * count, whole.unit) for count in ratio]
    added = " + ".join(map(str, ratio))
    sentences = [f"{added} = {shares}", f"{in_sum(whole, year)} ÷ {shares} = {in_sum(one, year)}"]
    sentences += [
        f"{count} × {in_sum(one, year)} = {in_sum(amount, year)}"
        for count, amount in zip(ratio, each, strict=True)
        if count > 1
    ]
    said = listed([say(amount, year) for amount in each])
    told = _told_ratio(ratio)
    task = Task(f"{capital(shown(whole, year))} is made of {len(ratio)} parts. {told} How much is each part?")
    likely_error = None
    halves = whole.number / len(ratio)
    if len(set(ratio)) > 1:
        likely_error = LikelyError("Shares it equally.", f"{say(Amount(halves, whole.unit), year)} for each")
    data = {"parts": [plain(amount.number) for amount in each], "unit": whole.unit}
    note = "All the shares together are the whole, so one share has one size."
    return solution(
        task, [Answer(f"{capital(said)}.", ". ".join(sentences) + ".", data)], len(sentences), note, likely_error
    )


def _told_ratio(ratio: tuple[int, ...]) -> str:
    if len(ratio) == 2 and 1 in ratio and max(ratio) > 1:
        first, second = ("first", "second") if ratio[0] > 1 else ("second", "first")
        return f"The {first} is {max(ratio)} times the {second}."
    places = listed([f"{count} in part {place}" for place, count in enumerate(ratio, 1)])
    return f"Of every {sum(ratio)} there are {places}."
