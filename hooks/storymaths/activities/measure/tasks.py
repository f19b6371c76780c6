"""What can be asked about measures, a schema for each task. A bare number has no unit."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, ClassVar, Literal, Self

from pydantic import Field

from ...model.fields import Text
from ..given import Castless
from ..kind import ActivityFields, Exact
from .amount import Amount, Measure

_UNIT = "unit"
"""Marks a field that names a unit."""
Amounts = Annotated[tuple[Measure, ...], Field(max_length=12)]
Named = Annotated[Mapping[Text, Measure], Field(max_length=12)]
MaybeUnit = Annotated[Text | None, _UNIT]
Marks = Annotated[int, Field(ge=1, le=200, strict=True)]
Ratio = Annotated[tuple[Annotated[int, Field(ge=1, le=100, strict=True)], ...], Field(min_length=1, max_length=6)]


@dataclass(frozen=True, slots=True)
class AmountChange:
    """What an amount becomes, and what a unit becomes."""

    amount: Callable[[Amount], Amount]
    unit: Callable[[str], str]


class MeasureFields(ActivityFields):
    """A task with amounts."""

    kept: ClassVar[frozenset[str]] = frozenset()
    """Fields whose amounts are the same in every version."""

    def with_amounts(self, change: AmountChange) -> Self:
        """The task with other amounts, in the kind's own words: the author's name the old ones."""
        new: dict[str, object] = {"ask": None}
        for name, value in self:
            if _UNIT in type(self).model_fields[name].metadata:
                new[name] = change.unit(str(value)) if value else value
            elif name not in self.kept:
                new[name] = _change_each(value, change.amount)
        return self.model_copy(update=new)


def _change_each(value: object, change: Callable[[Amount], Amount]) -> object:
    """The value with every amount in it changed; anything else stays as it is."""
    if isinstance(value, Amount):
        return change(value)
    if isinstance(value, tuple):
        return tuple(_change_each(one, change) for one in value)
    if isinstance(value, Mapping) and any(isinstance(one, Amount) for one in value.values()):
        return {name: _change_each(one, change) for name, one in value.items()}
    return value


class WithUnit(MeasureFields):
    """Amounts that may stand without their unit."""

    unit: MaybeUnit = None
    """The unit of the cast's fact, or of a scale."""

    def with_unit(self, unit: str) -> Self:
        """The same in a unit of its own, where it has none."""
        return self if self.unit or not unit else self.model_copy(update={"unit": unit})


class WithMeasured(WithUnit):
    """Amounts alone, of named things, or of the cast."""

    amounts: Amounts = ()
    """Amounts with their units, such as 1 m 20 cm; or else fact names each character's."""
    things: Named | None = None
    """Amounts by name: ``{stick: 60 cm}``."""


class CompareAmounts(WithMeasured):
    """Which of two is more, and by how much."""

    task_name: ClassVar[str] = "compare"
    find: Literal["compare"] = "compare"


class OrderAmounts(WithMeasured):
    """Amounts put in order."""

    task_name: ClassVar[str] = "order"
    find: Literal["order"] = "order"
    greatest_first: bool = False
    """true to begin with the greatest."""


class ConvertAmounts(WithMeasured):
    """Amounts told in another unit."""

    task_name: ClassVar[str] = "convert"
    find: Literal["convert"] = "convert"
    to: Annotated[Text, _UNIT]
    """The unit to tell it in."""


class ReadScale(WithUnit, Castless):
    """What the arrows at a scale show."""

    task_name: ClassVar[str] = "read"
    find: Literal["read"] = "read"
    ends: tuple[Exact, Exact] = (Fraction(0), Fraction(100))
    """The numbers at the ends of a scale."""
    parts: Marks
    """How many small parts the scale has."""
    numbered: Marks | None = None
    """A number stands at every so many marks; every mark if left out."""
    pointers: Annotated[tuple[Exact, ...], Field(min_length=1, max_length=6)]
    """What the arrows show."""
    form: Literal["ruler", "jug", "thermometer"] = "ruler"
    """What it is read on."""

    def with_scale(self, end: int, parts: int, numbered: int, pointers: tuple[Fraction, ...], unit: str | None) -> Self:
        """Arrows on another scale from nought, in the kind's own words."""
        new = {"parts": parts, "numbered": numbered, "pointers": pointers, "unit": unit, "ask": None}
        return self.model_copy(update={"ends": (Fraction(0), Fraction(end)), **new})


class CountUnits(MeasureFields, Castless):
    """How many of each unit make an amount."""

    task_name: ClassVar[str] = "units"
    find: Literal["units"] = "units"
    amount: Measure
    """What is measured with units."""
    by: Annotated[Mapping[Text, Measure], Field(min_length=1, max_length=12)]
    """Units and their size: ``{shell: 4 cm}``."""


class WithWeights(MeasureFields):
    """Weights for a balance."""

    weights: Annotated[tuple[Measure, ...], Field(min_length=1, max_length=40)]
    """The weights there are, one entry each."""
    pans: Literal["one", "both"] = "one"
    """Whether weights may stand beside the load too."""


class LevelLoad(WithUnit, WithWeights):
    """Every way to level a load, or what each of the cast weighs, with weights."""

    task_name: ClassVar[str] = "level"
    find: Literal["level"] = "level"
    load: Measure | None = None
    """The load to be levelled; or else fact names what each character weighs."""


class ReachLoads(WithWeights, Castless):
    """Every load that weights can level."""

    task_name: ClassVar[str] = "reach"
    find: Literal["reach"] = "reach"
    up_to: Annotated[int, Field(ge=1, le=10_000, strict=True)] | None = None
    """The largest load asked for."""


class FindTotal(MeasureFields, Castless):
    """What there is in all, less what goes."""

    task_name: ClassVar[str] = "total"
    find: Literal["total"] = "total"
    start: Measure | None = None
    """What there is at first."""
    amounts: Amounts = ()
    """What is put to it."""
    things: Named | None = None
    """Amounts by name: ``{stick: 60 cm}``."""
    less: Amounts = ()
    """What is taken away."""
    to: MaybeUnit = None
    """The unit to tell it in."""

    @property
    def there(self) -> tuple[Amount, ...]:
        """All that is put together."""
        return (*([self.start] if self.start else []), *self.amounts, *(self.things or {}).values())


class KeepInStep(MeasureFields, Castless):
    """What so much comes to, when another amount of the same is known."""

    task_name: ClassVar[str] = "rate"
    kept: ClassVar[frozenset[str]] = frozenset({"of", "want"})  # half a block would be no block
    find: Literal["rate"] = "rate"
    of: Measure
    """The amount that is known to come to something."""
    comes_to: Measure
    """What it comes to."""
    want: Measure
    """How much of it is wanted."""
    to: MaybeUnit = None
    """The unit to tell it in."""


class ShareInRatio(MeasureFields, Castless):
    """An amount shared in a ratio."""

    task_name: ClassVar[str] = "parts"
    find: Literal["parts"] = "parts"
    total: Measure
    """The amount that is shared."""
    ratio: Ratio
    """The parts, such as [2, 3]."""

    @property
    def times(self) -> int | None:
        """How many times one of two parts the other is, where it is so many times."""
        return max(self.ratio) if len(self.ratio) == 2 and 1 in self.ratio and max(self.ratio) > 1 else None


class FindVolume(MeasureFields, Castless):
    """The volume of a cuboid."""

    task_name: ClassVar[str] = "volume"
    find: Literal["volume"] = "volume"
    sides: Annotated[tuple[Measure, ...], Field(min_length=1, max_length=3)]
    """How long, wide and high: one side for a cube, all three for a box."""


class ChooseUnit(MeasureFields, Castless):
    """Which unit belongs to what is measured."""

    task_name: ClassVar[str] = "unit"
    find: Literal["unit"] = "unit"
    things: Annotated[Mapping[Text, Measure], Field(min_length=1, max_length=12)]
    """What is measured, each with its true amount: ``{length of a pencil: 15 cm}``."""
    units: Annotated[tuple[Text, ...], Field(min_length=2, max_length=8)]
    """The units to choose from, such as ``[cm, m, kg]``."""
    number: Literal["told", "hidden"] = "told"
    """Whether the number is told and only its unit left open (15 ___), or ``hidden``."""

    def with_units(self, units: tuple[str, ...], things: Mapping[str, Amount]) -> Self:
        """Fewer units and things, in the kind's own words."""
        return self.model_copy(update={"units": units, "things": things, "ask": None})


class FindPerimeter(MeasureFields, Castless):
    """The distance all the way round a flat shape."""

    task_name: ClassVar[str] = "perimeter"
    find: Literal["perimeter"] = "perimeter"
    sides: Annotated[tuple[Measure, ...], Field(max_length=8)] = ()
    """The sides: two of a rectangle, the one of a shape with ``equal`` sides, all of any other, going round."""
    equal: Annotated[int, Field(ge=3, le=8, strict=True)] | None = None
    """How many sides it has, where all are equal and one is given."""
    squares: Annotated[tuple[Text, ...], Field(max_length=12)] = ()
    """In place of sides, a shape on squares, row by row: x is a square, a full stop is empty."""
    side: Measure | None = None
    """How long a side of a square is; 1 cm when left out."""

    def with_side(self, side: Amount) -> Self:
        """The same with the side of a square told."""
        return self.model_copy(update={"side": side})


MeasureTask = (
    CompareAmounts
    | OrderAmounts
    | ConvertAmounts
    | ReadScale
    | CountUnits
    | LevelLoad
    | ReachLoads
    | FindTotal
    | KeepInStep
    | ShareInRatio
    | FindVolume
    | ChooseUnit
    | FindPerimeter
)
