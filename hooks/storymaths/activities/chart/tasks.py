"""What can be asked with a chart, a schema for reading and one for drawing, and what the answers hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Literal, Self

from pydantic import Field, PlainValidator, TypeAdapter, ValidationError

from ...model.fields import Strict, Text
from ...model.plain import Plain
from ..kind import ActivityFields, Exact
from ..saying import written

Chart = Literal["tally", "pictogram", "block", "bar", "line", "pie"]
Show = Literal[Chart, "table"]
UPRIGHT: frozenset[Show] = frozenset({"block", "bar"})
"""What may stand up, or lie on its side; a line graph always stands."""
Ask = Literal[
    "how many", "more", "fewer", "altogether", "most", "least", "mean", "range", "key", "at", "where"
]  # fmt: skip
_EXACT: TypeAdapter[Fraction] = TypeAdapter(Exact)
PLACES = 3
"""Decimal places that amounts are written with, where they need them."""


def _amount(value: Any) -> Any:
    if value == "?":
        return value
    try:
        return _EXACT.validate_python(value)
    except ValidationError:
        raise ValueError("should be a number such as 7, 2.5 or 3/4, or ? for the one left open") from None


def _amounts(value: Any) -> Any:
    return tuple(map(_amount, value)) if isinstance(value, (list, tuple)) else _amount(value)


Amount = Fraction | str
"""An exact number, or ``?`` for an amount that is left open."""
Amounts = Annotated[Amount | tuple[Amount, ...], PlainValidator(_amounts)]
"""An amount, or one for each column."""
Label = Annotated[Text, Field(max_length=40)]
Each = Annotated[int, Field(ge=1, le=1_000_000, strict=True)]


class Question(Strict):
    """A question about a chart."""

    ask: Ask
    """What is asked, such as how many, more, altogether or most."""
    of: Text | tuple[Text, ...] = ()
    """The row, or rows, it is about; for ``altogether`` all rows when left out. A number with ``at`` and ``where``."""
    than: Text | None = None
    """With ``more`` and ``fewer``: the row compared with."""
    column: Text | None = None
    """Where there are columns: the only one it is about."""
    nearest: Each | None = None
    """With ``at`` and ``where``: the answer is wanted to the nearest of these, such as 1 or 10."""


class ChartFields(ActivityFields):
    """Amounts to be shown."""

    data: Mapping[Label, Amounts] | None = None
    """Each row's label and amount; in place of a fact of the cast. One amount may be ``?`` when the total is given.

    Where there are columns, a list of amounts for each label.
    """
    columns: Annotated[tuple[Label, ...], Field(max_length=3)] = ()
    """What the amounts of each label are, where it has several: ``[boys, girls]``."""
    axis: Label | None = None
    """Line graph: what the labels count, such as ``kg`` or ``hours``."""
    thing: Label | None = None
    """What is counted, in the plural, such as ``boats``; for a fact of the cast, its unit or name if not stated."""
    each: Each | None = None
    """Pictogram: how many a picture stands for. Bar chart: the numbers from one mark of the scale to the next."""
    upright: bool = False
    """Block diagram or bar chart: whether its columns stand up; they lie on their side when left out."""
    total: Exact | None = None
    """All amounts together, where one is left open."""
    questions: Annotated[tuple[Question, ...], Field(max_length=12)] = ()
    """Questions about it; the usual ones when left out, and none where it is to be drawn."""

    @property
    def asks_for_key(self) -> bool:
        """Whether what a picture stands for is to be found."""
        return any(question.ask == "key" for question in self.questions)

    def with_chart(self, show: Show, each: int | None) -> Self:
        """The same amounts in another chart."""
        upright = self.upright and show in UPRIGHT
        return self.model_copy(update={"show": show, "each": each, "upright": upright})

    def with_amounts(self, amounts: Mapping[str, Fraction]) -> Self:
        """Other amounts by their labels; what is left open stays so, and the total is theirs."""
        total = None if self.total is None else sum(amounts.values(), Fraction(0))
        if self.data is None:
            return self.model_copy(update={"total": total})
        data: dict[str, Amount | tuple[Amount, ...]] = {}
        for label, old in self.data.items():
            names = [name_in(label, column) for column in self.columns] or [label]
            each = old if isinstance(old, tuple) else (old,)
            new = tuple(
                amounts[name] if isinstance(one, Fraction) else one for one, name in zip(each, names, strict=True)
            )
            data[label] = new if isinstance(old, tuple) else new[0]
        return self.model_copy(update={"total": total, "data": data})


def name_in(label: str, column: str) -> str:
    """What an amount is called where a label has several: ``Monday, boys``."""
    return f"{label}, {column}"


class ReadChart(ChartFields):
    """A chart or a table to be read."""

    task_name: ClassVar[str] = "read"
    task: Literal["read"] = "read"
    show: Show = "table"
    """What shows the amounts."""


class DrawChart(ChartFields):
    """A chart to be drawn from a table."""

    task_name: ClassVar[str] = "draw"
    task: Literal["draw"] = "draw"
    show: Chart
    """What is to be drawn."""


ChartTask = ReadChart | DrawChart


def write_number(value: Fraction | int) -> str:
    """An amount as written: whole, or with up to three decimal places."""
    return written(value, PLACES)


@dataclass(frozen=True, slots=True)
class Found:
    """A number in an answer: plain data as it is written, such as ``2.5``."""

    number: Fraction

    def as_plain(self) -> Plain:
        """A whole number as such; any other as it is written."""
        return self.number.numerator if self.number.denominator == 1 else write_number(self.number)


@dataclass(frozen=True, slots=True)
class HowMany:
    """How many of one row."""

    ask: Literal["how many"] = field(default="how many", init=False)
    of: str
    answer: Found


@dataclass(frozen=True, slots=True)
class HowManyMore:
    """How many more, or fewer, of one row than of another."""

    ask: Literal["more", "fewer"]
    of: str
    than: str
    answer: Found


@dataclass(frozen=True, slots=True)
class Altogether:
    """How many in several rows."""

    ask: Literal["altogether"] = field(default="altogether", init=False)
    of: tuple[str, ...]
    answer: Found


@dataclass(frozen=True, slots=True)
class Mean:
    """The mean of all rows."""

    ask: Literal["mean"] = field(default="mean", init=False)
    answer: Found


@dataclass(frozen=True, slots=True)
class AtEnd:
    """The rows with the most, or the least, and how many that is."""

    ask: Literal["most", "least"]
    answer: tuple[str, ...]
    amount: Found


@dataclass(frozen=True, slots=True)
class RangeOfAll:
    """From the least amount to the most."""

    ask: Literal["range"] = field(default="range", init=False)
    answer: Found


@dataclass(frozen=True, slots=True)
class Key:
    """How many a picture stands for, told by one row."""

    ask: Literal["key"] = field(default="key", init=False)
    of: str
    answer: Found


@dataclass(frozen=True, slots=True)
class ReadOff:
    """What a line graph shows at a number, or where it shows one."""

    ask: Literal["at", "where"]
    of: Found
    answer: Found


@dataclass(frozen=True, slots=True)
class Tallies:
    """A row to draw in tallies."""

    draw: str
    fives: int
    ones: int


@dataclass(frozen=True, slots=True)
class Pictures:
    """A row to draw in pictures, with half a picture, a quarter, or both, or none."""

    draw: str
    pictures: int
    halves: int
    quarters: int = 0


@dataclass(frozen=True, slots=True)
class Blocks:
    """A row to draw in blocks."""

    draw: str
    blocks: int


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar to draw."""

    draw: str
    height: Found


@dataclass(frozen=True, slots=True)
class Point:
    """A point of a line graph."""

    draw: str
    at: Found


@dataclass(frozen=True, slots=True)
class Slice:
    """A slice of a pie chart."""

    draw: str
    degrees: Found


QuestionAnswer = HowMany | HowManyMore | Altogether | Mean | AtEnd | RangeOfAll | Key | ReadOff
RowMarks = Tallies | Pictures | Blocks | Bar | Point | Slice
ChartAnswer = QuestionAnswer | RowMarks
