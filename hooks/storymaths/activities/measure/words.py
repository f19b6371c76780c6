"""What measure activities share: the amounts of the cast, refusals in a teacher's words, and the words looked for."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from pydantic import TypeAdapter, ValidationError

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ...model.document import Loc
from ..kind import Unsolvable
from ..met import demands_met
from .amount import Amount, Measure, UnlikeUnits, common_unit, made_like

if TYPE_CHECKING:
    from . import MeasureFields

WORDS = (
    "length", "height", "mass", "capacity", "volume", "temperature", "long", "longer", "shorter", "heavier", "lighter",
    "more", "less", "most", "least", "measure", "unit", "scale", "balance", "balanced", "weight", "total", "difference",
    "order", "cuboid", "half", "quarter",
)  # fmt: skip
"""Words of measure to look for in a task and its answers."""
_AMOUNT: TypeAdapter[Amount] = TypeAdapter(Measure)
Named = tuple[str, str, Amount]
"""Id, name and amount of something measured; the id is empty where it belongs to nobody."""


def named_amounts(fields: MeasureFields, context: Context) -> list[Named]:
    """What is measured, in order: of the cast, of named things, or of nothing in particular."""
    named: list[Named] = [("", "", amount) for amount in fields.amounts]
    if fields.fact:
        named = [
            (character.id, character.name, _of_character(fields, context, i))
            for i, character in enumerate(context.characters)
        ]
    elif fields.things:
        named = [(name, name, amount) for name, amount in fields.things.items()]
    for _, name, amount in named:
        if amount.number < 0 and amount.unit not in ("", "°C"):
            message = (
                f"{name or 'An amount'} is {amount.text or amount.number} {'' if amount.text else amount.unit}".strip()
            )
            fix = "only temperatures and bare numbers go below nought."
            raise Unsolvable(("fact",) if fields.fact else ("amounts",), f"{message}, which is less than nothing.", fix)
    return named


def _of_character(fields: MeasureFields, context: Context, index: int) -> Amount:
    character, fact = context.characters[index], fields.fact or ""
    value, about = character.facts.get(fact), context.facts.get(fact)
    if value is None:
        message = f'{character.name} has no fact "{fact}".'
        raise Unsolvable(("fact",), message, "give the character that fact.", "activity-fact-missing")
    try:
        amount = _AMOUNT.validate_python(value)
    except ValidationError:
        message = f"The {fact} of {character.name} is {str(value)[:40]!r}, which is not an amount."
        raise Unsolvable(("fact",), message, 'write an amount such as 12 or "2.5 kg".') from None
    unit = amount.unit or fields.unit or (about.unit if about else "")
    return Amount(amount.number, unit, amount.count)


def like_units(amounts: Sequence[Amount], loc: Loc) -> str:
    """The common unit of amounts of one kind; ``Unsolvable`` when they are not."""
    try:
        return common_unit(amounts)
    except UnlikeUnits as unlike:
        message = f"Amounts of {unlike} do not go together."
        raise Unsolvable(loc, message, "give amounts of one kind.") from None


def turned(amount: Amount, unit: str, loc: Loc) -> Amount:
    """An amount in another unit; ``Unsolvable`` where that makes no sense."""
    try:
        return amount.into(unit)
    except UnlikeUnits:
        message = f"An amount of {amount.unit or 'no unit'} cannot be told in {unit or 'no unit'}."
        raise Unsolvable(loc, message, "choose a unit of the same kind.") from None


def all_alike(amounts: Sequence[Amount], unit: str, context: Context) -> list[str]:
    """Sentences that bring amounts into one unit, each once."""
    return list(dict.fromkeys(text for amount in amounts for text in made_like(amount, unit, context.year)))


def leaned(count: int, each: Fraction, context: Context) -> list[int]:
    """The table that so many of one size lean on, once there are tables."""
    whole = each.denominator == 1 and 1 < each <= 12 and 1 < count <= 12
    return [int(each)] if whole and context.year.year >= 2 else []


def solution(
    task: Task,
    answers: Sequence[Answer],
    steps: int,
    note: str,
    likely_error: LikelyError | None = None,
    figures: tuple[Figure, ...] = (),
    tables: Sequence[int] = (),
) -> Solution:
    """A solution whose uses are read off its words."""
    return Solution(task, tuple(answers), demands_met(task, answers, WORDS, tables), steps, note, likely_error, figures)
