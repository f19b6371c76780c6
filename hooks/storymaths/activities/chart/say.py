"""What is asked of a chart, its rows and its drawing, in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from ...model.activity import LikelyError, Table
from ...model.demands import Operation
from ...model.year import YearLimits
from ..saying import capital, counted, listed, spoken
from .rows import Row, Rows
from .say_questions import explain_by_sums, much
from .tasks import Bar, Blocks, Pictures, Point, RowMarks, Show, Slice, Tallies, write_number

NAMES: Mapping[Show, str] = {
    "tally": "tally chart",
    "pictogram": "pictogram",
    "block": "block diagram",
    "bar": "bar chart",
    "line": "line graph",
    "pie": "pie chart",
    "table": "table",
}
"""As in ``years.yaml``."""
_PICTURE_CHART = "picture chart"


def name_chart(show: Show, year: YearLimits) -> str:
    """What the year calls it: a pictogram goes without its name until that is met."""
    return _PICTURE_CHART if show == "pictogram" and not year.draws(NAMES[show]) else NAMES[show]


def ask_to_draw(show: Show, each: int | None, rows: Rows, year: YearLimits) -> str:
    """What is to be drawn; ``each`` is None where what a picture stands for is to be found."""
    return f"Draw the {name_chart(show, year)} from the table.{_key(show, each, rows)}"


def ask_to_read(show: Show, each: int | None, rows: Rows, year: YearLimits) -> str:
    """What is to be read; ``each`` is None where what a picture stands for is to be found."""
    return f"Look at the {name_chart(show, year)}.{_key(show, each, rows)} Answer the questions."


def _key(show: Show, each: int | None, rows: Rows) -> str:
    """What a picture stands for, or the whole circle."""
    match show:
        case "pictogram" if each:
            return f" Each picture stands for {counted(each, rows.thing)}."
        case "pie":
            return f" The whole circle stands for {much(rows.total, rows.thing)}."
        case _:
            return ""


def write_table(rows: Rows) -> Table:
    """The amounts in a table, with a gap for the one left open."""
    head = capital(rows.thing) if rows.thing else "How many"
    caption = f"{head} of each" if rows.owned else "How many of each"
    shown = ["___" if row.hidden else write_number(row.amount) for row in rows.rows]
    first = "Who" if rows.owned else capital(rows.axis) or "Which"
    if not rows.columns:
        return Table(caption, (first, head), tuple(zip(rows.labels, shown, strict=True)))
    labels, wide = rows.in_column(rows.columns[0]).labels, len(rows.columns)
    cells = tuple((label, *shown[n * wide : (n + 1) * wide]) for n, label in enumerate(labels))
    return Table(caption, (first, *map(capital, rows.columns)), cells)


def say_marks(marks: RowMarks) -> str:
    """``2 fives and 3 ones``, ``2 and a half pictures``, ``5 blocks``, ``a bar to 12``."""
    match marks:
        case Tallies(_, fives, ones):
            parts = [counted(count, name) for count, name in ((fives, "fives"), (ones, "ones")) if count]
            return listed(parts) or "no marks"
        case Pictures(_, whole, 0, 0):
            return counted(whole, "pictures") if whole else "no pictures"
        case Pictures(_, whole, halves, quarters):
            part = {(1, 0): "half", (0, 1): "quarter", (1, 1): "three quarters"}[halves, quarters]
            article = "" if part == "three quarters" else "a "
            return f"{whole} and {article}{part} pictures" if whole else _PARTS_OF_PICTURE[part]
        case Blocks(_, blocks):
            return counted(blocks, "blocks")
        case Bar(_, height):
            return f"a bar to {write_number(height.number)}"
        case Point(_, height):
            return f"a point at {write_number(height.number)}"
        case Slice(_, degrees):
            return f"a slice of {write_number(degrees.number)}°"


_PARTS_OF_PICTURE = {
    "half": "half a picture",
    "quarter": "a quarter of a picture",
    "three quarters": "three quarters of a picture",
}


def say_row(marks: RowMarks) -> str:
    """A row to be drawn: ``Gulls: 2 fives and 3 ones.``"""
    return f"{capital(marks.draw)}: {say_marks(marks)}."


def explain_row(marks: RowMarks | None, sums: Iterable[Operation]) -> str:
    """How a row is read: off the table, by counting what it holds, or by what is seen at once."""
    if marks is None:
        return "Read off the table."
    if worked := list(sums):
        return explain_by_sums(worked)
    if isinstance(marks, Bar):
        return f"The bar reaches {write_number(marks.height.number)}."
    said = say_marks(marks)
    return f"There {'is' if said.startswith(('1 ', 'a ', 'half')) else 'are'} {said}."


def explain_slice(part: Fraction, sums: Sequence[Operation]) -> str:
    """What part of the whole a slice is, and how much that is."""
    if part in (0, 1):
        return f"It is {'all' if part else 'none'} of the circle."
    return f"It is {spoken(part)} of the circle: {explain_by_sums(sums)}"


def describe_chart(marks: Mapping[str, RowMarks | None], show: Show, each: int | None, rows: Rows, unseen: str) -> str:
    """The drawing in words."""
    told = [f"{capital(label)}: {say_marks(held) if held else unseen}." for label, held in marks.items()]
    scale = f" Its scale goes up in {each}s." if show in ("bar", "line") else ""
    return f"A {NAMES[show]}.{_key(show, each, rows)}{scale} {' '.join(told)}"


ONE_ANSWER_EACH = "Each question has one answer: it can be read off or worked out."


def expect_pictures_as_ones(row: Row, each: int) -> LikelyError:
    """Counting pictures as ones where each is more."""
    pictures = row.amount / each
    part = {Fraction(1, 4): "a quarter", Fraction(1, 2): "a half", Fraction(3, 4): "three quarters"}.get(
        pictures % 1, ""
    )
    told = " and ".join(
        filter(None, (write_number(Fraction(int(pictures))) if pictures >= 1 or not part else "", part))
    )
    gives = f"{told} for {row.label} instead of {write_number(row.amount)}."
    return LikelyError(f"Counts each picture as 1, not {each:,}.", gives)
