"""What is measured: the amounts of the cast, of named things or of nothing in particular, with what cannot be refused."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from pydantic import TypeAdapter, ValidationError

from ...model.activity import CastMember, Context, Line, Shown
from ...model.document import Loc
from ...model.year import YearLimits
from ..given import need_cast, need_one
from ..kind import Unsolvable
from .amount import Amount, Measure, UnlikeUnits, common_unit, tell_as_given
from .tasks import LevelLoad, WithMeasured

_AMOUNT: TypeAdapter[Amount] = TypeAdapter(Measure)


@dataclass(frozen=True, slots=True)
class Measured:
    """Something with an amount; ``id`` and ``name`` are empty where it belongs to nobody."""

    id: str
    name: str
    amount: Amount

    def tell(self, year: YearLimits) -> str:
        """Its name, or its amount where it has none."""
        return self.name or tell_as_given(self.amount, year)

    def key(self, year: YearLimits) -> str:
        """What stands for it in an answer."""
        return self.id or tell_as_given(self.amount, year)


def measured_of(task: WithMeasured, context: Context) -> list[Measured]:
    """All that is measured, in order. Raises ``Unsolvable``."""
    need_one(task, amounts=task.amounts, things=task.things, fact=task.fact)
    if task.fact:
        return measured_of_cast(task, context)
    if task.things:
        return _possible((Measured(name, name, amount) for name, amount in task.things.items()), "things", context)
    return _possible((Measured("", "", amount) for amount in task.amounts), "amounts", context)


def measured_of_cast(task: WithMeasured | LevelLoad, context: Context) -> list[Measured]:
    """The amounts of the cast, in its order. Raises ``Unsolvable``."""
    need_cast(context)
    each = (Measured(one.id, one.name, _amount_of(task, one, context)) for one in context.characters)
    return _possible(each, "fact", context)


def _amount_of(task: WithMeasured | LevelLoad, character: CastMember, context: Context) -> Amount:
    fact = task.fact or ""
    value, about = character.facts.get(fact), context.facts.get(fact)
    if value is None:
        message = f'{character.name} has no fact "{fact}".'
        raise Unsolvable(("fact",), message, "give the character that fact.", "activity-fact-missing")
    try:
        amount = _AMOUNT.validate_python(value)
    except ValidationError:
        message = f"The {fact} of {character.name} is {str(value)[:40]!r}, which is not an amount."
        raise Unsolvable(("fact",), message, 'write an amount such as 12 or "2.5 kg".') from None
    unit = amount.unit or task.unit or (about.unit if about else "")
    return Amount(amount.number, unit, amount.count)


def _possible(each: Iterable[Measured], given: str, context: Context) -> list[Measured]:
    found = list(each)
    for one in found:
        if one.amount.number < 0 and one.amount.unit not in ("", "°C"):
            message = (
                f"{one.name or 'An amount'} is {tell_as_given(one.amount, context.year)}, which is less than nothing."
            )
            raise Unsolvable((given,), message, "only temperatures and bare numbers go below nought.")
    return found


def find_common_unit(amounts: Sequence[Amount], loc: Loc) -> str:
    """The common unit of amounts of one kind; ``Unsolvable`` when they are not."""
    try:
        return common_unit(amounts)
    except UnlikeUnits as unlike:
        message = f"Amounts of {unlike} do not go together."
        raise Unsolvable(loc, message, "give amounts of one kind.") from None


def turn_into(amount: Amount, unit: str, loc: Loc) -> Amount:
    """An amount in another unit; ``Unsolvable`` where that makes no sense."""
    try:
        return amount.into(unit)
    except UnlikeUnits:
        message = f"An amount of {amount.unit or 'no unit'} cannot be told in {unit or 'no unit'}."
        raise Unsolvable(loc, message, "choose a unit of the same kind.") from None


def show(amount: Amount, year: YearLimits) -> Shown:
    """An amount on a card."""
    return Shown(tell_as_given(amount, year), amount.number if amount.count == 1 else None)


def list_things(things: Sequence[Measured], year: YearLimits) -> tuple[Line, ...]:
    """A line for each: ``rope: 95 cm``."""
    told = ((one.name, tell_as_given(one.amount, year)) for one in things)
    return tuple(Line((f"{name}: {amount}" if name else amount,)) for name, amount in told)


def add_all(amounts: Iterable[Amount], unit: str) -> Amount:
    """All the amounts of one unit together."""
    return Amount(sum((amount.number for amount in amounts), Fraction(0)), unit)
