"""Charts: amounts shown by tallies, pictures, blocks, bars or in a table, to be read or drawn, with questions."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Figure, LikelyError, Solution, Table, Task
from ...model.fields import Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Exact, Kind
from ..met import demands_met
from ..saying import capital, counted
from .figure import NAMES, drawn, figure, reason, scale_step, tables_of
from .questions import Asked, Question, usual_questions, work_out
from .rows import Amount, Row, Rows, Show, check_shown, rows_of
from .versions import chart_versions
from .words import number

_FIRST_WITH_CHARTS = 2
_WORDS = {"tally": ("tally",), "pictogram": ("pictogram",), "block": ("block diagram",), "bar": ("bar chart",)}
_ASKED_WORDS = {"altogether": "altogether", "fewer": "fewer", "most": "most", "more": "more", "mean": "mean average"}
Label = Annotated[Text, Field(max_length=40)]


class ChartFields(ActivityFields):
    """Fields of a chart."""

    data: Mapping[Label, Amount] | None = None
    """Each row's label and amount; in place of a fact of the cast. One amount may be ``?`` when the total is given."""
    thing: Label | None = None
    """What is counted, in the plural, such as ``boats``; for a fact of the cast, its unit or name if not stated."""
    show: Show = "table"
    """What shows the amounts."""
    each: Annotated[int, Field(ge=1, le=1_000_000, strict=True)] | None = None
    """Pictogram: how many a picture stands for. Bar chart: the numbers from one mark of the scale to the next."""
    total: Exact | None = None
    """All amounts together, where one is left open."""
    task: Literal["read", "draw"] = "read"
    """Whether pupils read the chart, or draw it from a table."""
    questions: Annotated[tuple[Question, ...], Field(max_length=12)] = ()
    """Questions about it; the usual ones when left out, and none where it is to be drawn."""


class Chart(Kind[ChartFields]):
    """Charts and their questions.

    Steps: those of the longest question, one for each amount read off and one for each + − or ÷; a row to be
    drawn counts one.
    """

    name = "chart"
    says = "Amounts in a tally chart, pictogram, block diagram, bar chart or table, to read or draw, with questions."
    answer_shape = (
        "{ask: how many, of: crabs, answer: 6}; {ask: more, of: crabs, than: seals, answer: 2}; {ask: most, answer: [crabs], "
        "amount: 6}; {ask: altogether, of: [labels], answer: 20}; {ask: mean, answer: 5}; {draw: crabs, pictures: 3, halves: 1}"
    )
    practises: ClassVar[dict[str, str]] = {
        "1NF-2": "counting in twos, fives or tens along a row of pictures",
        "2AS-2": "how many more and how many fewer, read as a gap between two rows",
        "2AS-3": "ones and tens added to find how many altogether",
        "2MD-1": "pictures that each stand for 2, 5 or 10",
    }
    fields = ChartFields
    example = """\
kind: chart
title: Who came to the harbour steps
data: {gulls: 8, crabs: 5, seals: 3, puffins: 6}
show: pictogram
each: 2
questions:
  - {ask: how many, of: crabs}
  - {ask: more, of: gulls, than: seals}
  - {ask: fewer, of: crabs, than: puffins}
  - {ask: most}
  - {ask: altogether}
answers: 5
years: {1: {}, 3: {}}
"""

    def solve(self, fields: ChartFields, context: Context) -> Solution:
        """Every question answered, in the order asked; before them, where it is to be drawn, every row."""
        rows = rows_of(fields.data, fields.fact, fields.thing, fields.total, context)
        check_shown(rows, fields.show, fields.each)
        each = scale_step(rows, fields.each) if fields.show == "bar" else fields.each or 1
        asked = _asked(fields, rows, each, context.year.year)
        to_draw = fields.task == "draw" and fields.show != "table"
        rows_drawn = [drawn(row, fields.show, each, context.year.year) for row in rows.rows] if to_draw else []
        answers = (*rows_drawn, *(question.answer for question in asked))
        task = _task(fields, rows, each, asked, context, to_draw)
        demands = demands_met(task, answers, (), tables_of(fields.show, each))
        return Solution(
            task,
            answers,
            replace(demands, words=_words(fields, asked, context)),
            max([question.steps for question in asked] + [1] * bool(rows_drawn)),
            "Each question has one answer, since each amount is there to be read or worked out.",
            _slip(fields.show, each, rows, asked),
            _answer_figures(fields, rows, each, to_draw),
        )

    def versions(
        self, fields: ChartFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[ChartFields, Context, str]]:
        """The same questions with amounts, pictures and a chart that suit the year; see ``chart_versions``."""
        return chart_versions(
            fields, rows_of(fields.data, fields.fact, fields.thing, fields.total, context), context, year
        )


def _asked(fields: ChartFields, rows: Rows, each: int, year: int) -> list[Asked]:
    questions = fields.questions
    if not questions:
        questions = () if fields.task == "draw" and fields.show != "table" else tuple(usual_questions(rows))

    def read(row: Row) -> str:
        return reason(row, fields.show, each, year)

    return [work_out(question, rows, ("questions", index), read, year) for index, question in enumerate(questions)]


def _task(fields: ChartFields, rows: Rows, each: int, asked: list[Asked], context: Context, to_draw: bool) -> Task:
    figures = () if fields.show == "table" else (figure(rows, fields.show, each, filled=not to_draw),)
    table = _table(rows) if fields.show == "table" or to_draw else None
    ask = fields.ask or _ask(fields.show, each, rows, context, to_draw)
    return Task(
        ask, context.characters if rows.owned else (), (), tuple(question.line for question in asked), table, figures
    )


def _ask(show: Show, each: int, rows: Rows, context: Context, to_draw: bool) -> str:
    name = NAMES[show] if context.year.year >= _FIRST_WITH_CHARTS or show == "table" else "picture chart"
    key = f" Each picture stands for {counted(each, rows.thing)}." if show == "pictogram" else ""
    if to_draw:
        return f"Draw the {name} from the table.{key}"
    return f"Look at the {name}.{key} Answer the questions."


def _table(rows: Rows) -> Table:
    head = capital(rows.thing) if rows.thing else "How many"
    cells = tuple((row.label, "___" if row.hidden else number(row.amount)) for row in rows.rows)
    return Table(
        "How many of each" if not rows.owned else f"{head} of each", ("Who" if rows.owned else "Which", head), cells
    )


def _answer_figures(fields: ChartFields, rows: Rows, each: int, to_draw: bool) -> tuple[Figure, ...]:
    if fields.show == "table" or not (to_draw or rows.hidden):
        return ()
    return (figure(rows, fields.show, each, filled=True, revealed=True),)


def _words(fields: ChartFields, asked: list[Asked], context: Context) -> tuple[str, ...]:
    named = _WORDS.get(fields.show, ()) if context.year.year >= _FIRST_WITH_CHARTS else ()
    used = (_ASKED_WORDS.get(str(question.answer.data["ask"]), "") for question in asked)
    return tuple(dict.fromkeys(filter(None, (*named, *used))))


def _slip(show: Show, each: int, rows: Rows, asked: list[Asked]) -> LikelyError | None:
    """Counting pictures as ones where each is more; else answering how many for how many more."""
    counted_as_ones = next((row for row in rows.rows if row.amount and not row.hidden), None)
    if show == "pictogram" and each > 1 and counted_as_ones:
        row = counted_as_ones
        said = (
            number(row.amount / each)
            if (row.amount / each).denominator == 1
            else f"{int(row.amount / each)} and a half"
        )
        return LikelyError(
            f"Counts each picture as 1, not {each}.", f"{said} for {row.label} in place of {number(row.amount)}."
        )
    for question in asked:
        data: Mapping[str, object] = question.answer.data
        if data["ask"] in ("more", "fewer"):
            named = rows[str(data["of"])].amount
            return LikelyError(
                f"Answers how many, not how many {data['ask']}.", f"{number(named)} in place of {data['answer']}."
            )
    return None


KIND = Chart()
