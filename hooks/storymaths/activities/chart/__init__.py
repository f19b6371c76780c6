"""Charts: amounts shown by tallies, pictures, blocks, bars or in a table, to be read or drawn, with questions."""

from __future__ import annotations

from collections.abc import Iterator
from typing import ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import ChartAnswer, ChartTask, DrawChart, ReadChart
from .versions import versions_of


class ChartKind(Kind[ChartTask, ChartAnswer]):
    """Charts and their questions.

    Steps: those of the longest question, one for each amount read off and one for each + − or ÷; a row to be
    drawn counts one.
    """

    name = "chart"
    says = (
        "Amounts in a tally chart, pictogram, block diagram, bar chart, line graph, pie chart or table, of one column or "
        "several, to read or draw, with questions."
    )
    answer_shape = (
        "{ask: how many, of: crabs, answer: 6}; {ask: more, of: crabs, than: seals, answer: 2}; {ask: most, answer: [crabs], "
        "amount: 6}; {ask: altogether, of: [labels], answer: 20}; {ask: mean, answer: 5}; {ask: at, of: 2.5, answer: 5.5} for "
        "a line graph; {draw: crabs, pictures: 3, halves: 1, quarters: 0}"
    )
    more_examples = (
        """\
kind: chart
title: How the tide rose
show: line
axis: o'clock
thing: cm
data: {"6": 20, "7": 60, "8": 110, "9": 140}
questions:
  - {ask: how many, of: "8"}
  - {ask: where, of: "60"}
  - {ask: range}
year: 5
answers: 3
""",
        """\
kind: chart
title: Boats and nets
show: bar
columns: [boats, nets]
data: {Monday: [3, 4], Tuesday: [5, 2], Wednesday: [6, 6]}
questions:
  - {ask: more, of: Tuesday, than: Monday, column: boats}
  - {ask: altogether, column: nets}
  - {ask: altogether, of: Wednesday}
year: 3
answers: 3
""",
    )
    practises: ClassVar[dict[str, str]] = {
        "1NF-2": "counting in twos, fives or tens along a row of pictures",
        "2AS-2": "how many more and how many fewer, read as a gap between two rows",
        "2AS-3": "ones and tens added to find how many altogether",
        "2MD-1": "pictures that each stand for 2, 5 or 10",
    }
    tasks = (ReadChart, DrawChart)
    told_by = "task"
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

    def solve(self, fields: ChartTask, context: Context) -> Solution[ChartAnswer]:
        """Every question answered, in the order asked; before them, where it is to be drawn, every row."""
        return solve(fields, context)

    def versions(
        self, fields: ChartTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[ChartTask, Context, str]]:
        """The same questions with amounts, pictures and a chart that suit the year."""
        return versions_of(fields, context, year)


KIND = ChartKind()
