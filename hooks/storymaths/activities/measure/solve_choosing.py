"""Which unit belongs to what is measured."""

from __future__ import annotations

from fractions import Fraction

from ...model.activity import Answer, Context, Solution, Task
from ...model.demands import Demands
from ..kind import Unsolvable
from ..saying import written
from . import say_choosing as say
from .amount import DAY, SIZES, Amount, days_in, of_many, unit_sign
from .answers import ChosenUnit
from .sums import demands_of_told, demands_of_unit
from .tasks import ChooseUnit

_MONEY = "money"
_MOST_HANDY = 100
"""How many of a unit one would still measure with: 8 cm of pod are 80 mm too, and 15 cm of pencil are no 150 mm.
Common practice, no source."""


def choose_unit(task: ChooseUnit, context: Context) -> Solution[ChosenUnit]:
    """The unit of each thing, in the order given: a step for each."""
    units, year = _read_units(task), context.year
    amounts = {name: _read_thing(task, name, amount, units) for name, amount in task.things.items()}
    demands = Demands()
    for unit in units:
        demands |= demands_of_unit(unit)
    told = task.number == "told"
    return Solution(
        Task(
            say.ask_for_units(units, told),
            lines=tuple(say.leave_gap(name, one, told, year) for name, one in amounts.items()),
        ),
        tuple(
            Answer(
                say.say_unit(name, one, told, year),
                say.explain_unit(one, _smaller_and_larger(one, units), _of_other_kinds(one, units), told, year),
                ChosenUnit(name, one.number, one.unit),
            )
            for name, one in amounts.items()
        ),
        demands | demands_of_told(amounts.values() if told else [], year),
        len(amounts),
        "Picture one of each unit beside the thing: how many of them would it take?",
        say.expect_unpictured(*_first_mistaken(amounts, units), told, year),
    )


def kind_of(unit: str) -> str:
    """What a unit measures; months and years measure time, as days do."""
    kind = SIZES[unit][0]
    return "time" if unit in ("month", "months", "year", "years") else kind


def _size(unit: str) -> Fraction:
    """How large one of a unit is beside others of its kind; of months and years the fewest days."""
    one = Amount(Fraction(1), unit)
    return days_in(one)[0] * DAY if kind_of(unit) == "time" else one.size


def _read_units(task: ChooseUnit) -> tuple[str, ...]:
    units = tuple(map(of_many, task.units))
    for index, unit in enumerate(units):
        if unit not in SIZES or kind_of(unit) == _MONEY:
            message = f"“{unit}” is no unit of length, mass, capacity, temperature or time."
            raise Unsolvable(("units", index), message, "write units such as cm, kg, ml or minutes.")
        if any(kind_of(unit) == kind_of(other) and _size(unit) == _size(other) for other in units[:index]):
            raise Unsolvable(("units", index), f"{unit} stands there already.", "name each unit once.")
    return units


def _read_thing(task: ChooseUnit, name: str, amount: Amount, units: tuple[str, ...]) -> Amount:
    one = amount.as_one
    if one.unit not in units:
        message = f"The {name} is told in {one.unit or 'no unit'}, which is not among the units to choose from."
        raise Unsolvable(("things", name), message, "add that unit to units, or tell it in one of them.")
    if one.number <= 0 and not unit_sign(one.unit):
        raise Unsolvable(("things", name), f"The {name} is nothing or less.", "write more than 0.")
    if task.number == "hidden":
        _check_only_choice(name, one, units)
    return one


def _check_only_choice(name: str, amount: Amount, units: tuple[str, ...]) -> None:
    """Raises ``Unsolvable`` where another unit of the same kind would do as well."""
    for unit in (amount.unit, *(unit for some in _smaller_and_larger(amount, units) for unit in some)):
        number = amount.number * _size(amount.unit) / _size(unit)
        if unit == amount.unit and number < 1:
            message = f"The {name} is less than one of {unit}."
            raise Unsolvable(("things", name), message, "tell it in the unit that one would choose.")
        if unit != amount.unit and 1 <= number <= _MOST_HANDY:
            message = f"A child may well choose {unit} for the {name}: it has {written(number, 2)} of them."
            fix = f"leave {unit} out, choose another thing, or write number: told."
            raise Unsolvable(("things", name), message, fix)


def _smaller_and_larger(amount: Amount, units: tuple[str, ...]) -> tuple[list[str], list[str]]:
    """The other units of its kind: those that are smaller, and those that are larger."""
    alike = [unit for unit in units if kind_of(unit) == kind_of(amount.unit) and unit != amount.unit]
    own = _size(amount.unit)
    return [unit for unit in alike if _size(unit) < own], [unit for unit in alike if _size(unit) > own]


def _of_other_kinds(amount: Amount, units: tuple[str, ...]) -> dict[str, list[str]]:
    """The units of other kinds, by what they measure."""
    kinds = dict.fromkeys(kind_of(unit) for unit in units if kind_of(unit) != kind_of(amount.unit))
    return {kind: [unit for unit in units if kind_of(unit) == kind] for kind in kinds}


def _first_mistaken(amounts: dict[str, Amount], units: tuple[str, ...]) -> tuple[str, Amount, bool]:
    """A thing with a unit that is mistaken for its own: one of its kind where there is any."""
    for name, one in amounts.items():
        if alike := [unit for some in _smaller_and_larger(one, units)[::-1] for unit in some]:
            return name, Amount(one.number, alike[0]), True
    name, one = next(iter(amounts.items()))
    return name, Amount(one.number, next(unit for unit in units if unit != one.unit)), False
