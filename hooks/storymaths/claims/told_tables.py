"""What the rows of a table claim together: totals and their sums, figures and words, and one rule kept by all rows but one.

It reads a column headed One more, Ten less, Half or Double after one of whole numbers; a column headed Total whose row holds
sums; two columns with the same numbers in figures and in words; and three columns of whole numbers, one of which is the sum,
the product, or tens and ones of the two others in every row but one, of five or more. It leaves cells with anything else in
them. Source: the table itself.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from itertools import permutations
from typing import NamedTuple

from ..expression.say import written
from ..model.body import Table, words_of_runs
from .form import Form
from .number_words import NUMBER_IN_WORDS, number_in_words

_TOTAL = Form(r"(?:the )?(?:total|sum|altogether|in all)")
_SUM = Form(r"\d+(?: \+ \d+)+")
_FIGURES = Form(r"\d{1,6}")
_WORDS = Form(NUMBER_IN_WORDS)
_MORE_OR_LESS = Form(rf"(?P<many>{NUMBER_IN_WORDS}|\d{{1,4}}) (?P<way>more|less|fewer)")
_TIMES = {
    "double": Fraction(2), "doubled": Fraction(2), "twice": Fraction(2), "half": Fraction(1, 2), "halved": Fraction(1, 2),
    "quarter": Fraction(1, 4), "a quarter": Fraction(1, 4), "ten times": Fraction(10), "10 times": Fraction(10), "× 10": Fraction(10),
}  # fmt: skip
"""Heads of a column that say what is done to the number in the column before it."""
_ROWS = 5
_RULES: tuple[tuple[str, Callable[[int, int], int]], ...] = (
    ("{} + {} is {}", lambda one, other: one + other),
    ("{} × {} is {}", lambda one, other: one * other),
    ("{} tens and {} ones are {}", lambda one, other: 10 * one + other),
)


class UntrueRow(NamedTuple):
    """A cell that its row, or the other rows, contradict: the row's line, the cell's words, and what is so."""

    line: int
    words: str
    so: str


def untrue_rows(table: Table) -> Iterator[UntrueRow]:
    """What in a table does not hold."""
    head = [words_of_runs(cell).strip().lower() for cell in table.head]
    rows = [[words_of_runs(cell).strip().lower() for cell in row] for row in table.rows]
    rows = [row for row in rows if len(row) == len(head)]
    lines = range(table.line + 2, table.line + 2 + len(rows))
    for at, name in enumerate(head):
        if _TOTAL.fullmatch(name):
            yield from _totals(at, rows, lines)
        if at and (rule := _rule_of(name)):
            yield from _kept(at, rule, rows, lines)
    columns = [[_whole(row[at]) for row in rows] for at in range(len(head))]
    whole = [at for at, column in enumerate(columns) if None not in column]
    for one, other in permutations(whole, 2):
        in_words = all(_WORDS.fullmatch(row[other]) for row in rows) and all(row[one].isdigit() for row in rows)
        differ = [place for place, (a, b) in enumerate(zip(columns[one], columns[other], strict=True)) if a != b]
        if in_words and len(differ) == 1 < len(rows):
            yield UntrueRow(lines[differ[0]], rows[differ[0]][other], f"in figures it is {rows[differ[0]][one]}")
            return
    yield from _unlike_the_rest(columns, whole, rows, lines)


def _rule_of(name: str) -> Fraction | int | None:
    """What the head of a column does to the number before: so many more or less as a whole number, a part as a fraction."""
    if match := _MORE_OR_LESS.fullmatch(name):
        many = _whole(match["many"]) or 0
        return many if match["way"] == "more" else -many
    return _TIMES.get(name)


def _kept(at: int, rule: Fraction | int, rows: Sequence[Sequence[str]], lines: Sequence[int]) -> Iterator[UntrueRow]:
    """Rows whose number is not what the head of their column says of the number before it."""
    for row, line in zip(rows, lines, strict=True):
        before, told = _whole(row[at - 1]), _whole(row[at])
        if before is not None and told is not None:
            right = before * rule if isinstance(rule, Fraction) else before + rule
            if told != right:
                yield UntrueRow(line, row[at], f"for {row[at - 1]} it is {written(right)}")


def _totals(at: int, rows: Sequence[Sequence[str]], lines: Sequence[int]) -> Iterator[UntrueRow]:
    for row, line in zip(rows, lines, strict=True):
        for other, cell in enumerate(row):
            for match in _SUM.finditer(cell) if other != at and row[at].isdigit() else ():
                total = sum(map(int, match.group().split(" + ")))
                if total != int(row[at]):
                    yield UntrueRow(line, match.group(), f"that is {total}, and the total is {row[at]}")


def _unlike_the_rest(
    columns: Sequence[Sequence[int | None]], whole: Sequence[int], rows: Sequence[Sequence[str]], lines: Sequence[int]
) -> Iterator[UntrueRow]:
    if len(rows) < _ROWS or len(whole) < 3:
        return
    missed = []
    for one, other, got in permutations(whole, 3):
        for says, rule in _RULES:
            values = [(row[one], row[other], row[got]) for row in zip(*columns, strict=True)]
            wrong = [at for at, (a, b, c) in enumerate(values) if a is None or b is None or rule(a, b) != c]
            if not wrong:
                return  # the columns keep a rule
            if len(wrong) == 1:
                a, b, _ = values[wrong[0]]
                so = says.format(a, b, rule(a or 0, b or 0)) + ", as in the other rows"
                missed.append(UntrueRow(lines[wrong[0]], rows[wrong[0]][got], so))
    yield from missed[:1]


def _whole(cell: str) -> int | None:
    if _FIGURES.fullmatch(cell):
        return int(cell)
    return number_in_words(cell) if _WORDS.fullmatch(cell) else None
