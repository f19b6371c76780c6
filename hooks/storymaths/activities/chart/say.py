"""What is asked of a chart, its rows and its drawing, in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from ...model.activity import LikelyError, Table
from ...model.demands import Operation
from ...model.year import YearLimits
from ..saying import capital, counted, listed
from .rows import Row, Rows
from .say_questions import explain_by_sums
from .tasks import Bar, Blocks, Pictures, RowMarks, Show, Tallies, write_number

NAMES: Mapping[Show, str] = {
    "tally": "tally chart",
    "pictogram": "pictogram",
    "block": "block diagram",
    "bar": "bar chart",
    "table": "table",
}
"""As in ``years.yaml``."""
_PICTURE_CHART = "picture chart"


def name_chart(show: Show, year: YearLimits) -> str:
    """What the year calls it: a pictogram goes without its name until that is met."""
    return _PICTURE_CHART if show == "pictogram" and not year.draws(NAMES[show]) else NAMES[show]


def ask_to_draw(show: Show, each: int, thing: str, year: YearLimits) -> str:
    """What is to be drawn."""
    return f"Draw the {name_chart(show, year)} from the table.{_key(show, each, thing)}"


def ask_to_read(show: Show, each: int, thing: str, year: YearLimits) -> str:
    """What is to be read."""
    return f"Look at the {name_chart(show, year)}.{_key(show, each, thing)} Answer the questions."


def _key(show: Show, each: int, thing: str) -> str:
    return f" Each picture stands for {counted(each, thing)}." if show == "pictogram" else ""


def write_table(rows: Rows) -> Table:
    """The amounts in a table, with a gap for the one left open."""
    head = capital(rows.thing) if rows.thing else "How many"
    cells = tuple((row.label, "___" if row.hidden else write_number(row.amount)) for row in rows.rows)
    caption = f"{head} of each" if rows.owned else "How many of each"
    return Table(caption, ("Who" if rows.owned else "Which", head), cells)


def say_marks(marks: RowMarks) -> str:
    """``2 fives and 3 ones``, ``2 and a half pictures``, ``5 blocks``, ``a bar to 12``."""
    match marks:
        case Tallies(_, fives, ones):
            parts = [counted(count, name) for count, name in ((fives, "fives"), (ones, "ones")) if count]
            return listed(parts) or "no marks"
        case Pictures(_, whole, 0):
            return counted(whole, "pictures") if whole else "no pictures"
        case Pictures(_, whole, _):
            return f"{whole} and a half pictures" if whole else "half a picture"
        case Blocks(_, blocks):
            return counted(blocks, "blocks")
        case Bar(_, height):
            return f"a bar to {write_number(height.number)}"


def say_row(marks: RowMarks) -> str:
    """A row to be drawn: ``Gulls: 2 fives and 3 ones.``"""
    return f"{capital(marks.draw)}: {say_marks(marks)}."


def explain_row(marks: RowMarks | None, sums: Iterable[Operation]) -> str:
    """How a row is read: off the table, by counting what it holds, or by what is seen at once."""
    if marks is None:
        return "Read off the table."
    if worked := list(sums):
        return explain_by_sums(worked)
    said = say_marks(marks)
    return f"There {'is' if said.startswith(('1 ', 'a ', 'half')) else 'are'} {said}."


def describe_chart(marks: Mapping[str, RowMarks | None], show: Show, each: int, thing: str, unseen: str) -> str:
    """The drawing in words."""
    rows = [f"{capital(label)}: {say_marks(held) if held else unseen}." for label, held in marks.items()]
    scale = f" Its scale goes up in {each}s." if show == "bar" else ""
    return f"A {NAMES[show]}.{_key(show, each, thing)}{scale} {' '.join(rows)}"


ONE_ANSWER_EACH = "Each question has one answer, since each amount is there to be read or worked out."


def expect_pictures_as_ones(row: Row, each: int) -> LikelyError:
    """Counting pictures as ones where each is more."""
    pictures = row.amount / each
    told = write_number(pictures) if pictures.denominator == 1 else f"{int(pictures)} and a half"
    gives = f"{told} for {row.label} in place of {write_number(row.amount)}."
    return LikelyError(f"Counts each picture as 1, not {each}.", gives)
