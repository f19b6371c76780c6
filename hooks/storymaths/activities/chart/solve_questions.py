"""Questions about a chart, worked out: how many, how many more or fewer, altogether, most, least, the mean."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from fractions import Fraction
from typing import Literal

from ...model.activity import Answer, Context, LikelyError
from ...model.demands import Demands, Operation, operation
from ...model.document import Loc
from ...parse.suggestion import did_you_mean
from ..kind import Unsolvable
from ..saying import capital, listed
from ..tables_used import table_of
from . import say_questions as say
from .asked import Asked
from .read_off import read_off
from .rows import Row, Rows
from .say_questions import ChartWords
from .sums import demands_of_numbers, demands_of_sums
from .tasks import (
    Altogether,
    AtEnd,
    Found,
    HowMany,
    HowManyMore,
    Key,
    Mean,
    Question,
    RangeOfAll,
    Show,
    name_in,
    write_number,
)

Explained = tuple[str, Demands]
"""How an amount is come by in words, and what that demands."""
_WORDS = {"altogether": "altogether", "fewer": "fewer", "most": "most", "more": "more", "mean": "mean average"}
_KNOWN_BY = {"key": "pictogram", "at": "line", "where": "line"}
"""The chart that a question is about; any other question may be asked of all."""
_NAMES_ROWS: dict[str, tuple[int, str]] = {
    "how many": (1, ", of: …"),
    "more": (1, ", of: …, than: …"),
    "fewer": (1, ", of: …, than: …"),
    "most": (0, ""),
    "least": (0, ""),
    "mean": (0, ""),
    "range": (0, ""),
    "key": (1, ", of: …"),
    "at": (1, ", of: 7"),
    "where": (1, ", of: 7"),
}
"""How many rows a question is of, and how that is written; any number for ``altogether``."""


def usual_questions(rows: Rows) -> list[Question]:
    """A question of each sort, where none are given: first the amount left open, if there is one."""
    by_size = sorted(rows.rows, key=lambda row: row.amount)
    least, most = by_size[0], by_size[-1]
    first = rows.hidden or rows.rows[0]
    asked = [Question(ask="how many", of=first.label), Question(ask="most"), Question(ask="least")]
    if least.amount < most.amount:
        asked.append(Question(ask="more", of=most.label, than=least.label))
    between = [row for row in by_size if least.amount < row.amount < most.amount]
    if between:
        asked.append(Question(ask="fewer", of=between[-1].label, than=most.label))
    return asked if rows.hidden or least.amount < 0 else [*asked, Question(ask="altogether")]


def answer_question(
    question: Question, all_rows: Rows, loc: Loc, show: Show, read: Callable[[Row], Explained], context: Context
) -> Asked:
    """A question answered; ``read`` tells how a row is read. Raises ``Unsolvable`` at the question that cannot be."""
    rows = _rows_for(question, all_rows, loc, show)
    if question.ask in ("at", "where"):
        return read_off(question, rows, loc)
    labels = _labels(question, rows, loc, context)
    asked = _answer(question, labels, rows, loc, read, context)
    word = _WORDS.get(question.ask)
    words = Demands(words=(word,) if word else ())
    line = f"{capital(question.column)}: {asked.line[0].lower()}{asked.line[1:]}" if question.column else asked.line
    return Asked(line, asked.answer, words | asked.demands, asked.steps)


def _rows_for(question: Question, rows: Rows, loc: Loc, show: Show) -> Rows:
    """The rows a question is about: of one column, or all. Raises ``Unsolvable`` for what this chart cannot answer."""
    if show != _KNOWN_BY.get(question.ask, show):
        message = f'The question "{question.ask}" is for a {"line graph" if question.ask != "key" else "pictogram"}.'
        raise Unsolvable(loc, message, "ask something else, or show another chart.")
    if question.column is None:
        return rows
    if question.column not in rows.columns:
        named = f"use {listed(rows.columns, 'or')}." if rows.columns else "leave column out."
        raise Unsolvable(loc, f'There is no column "{question.column}".', named)
    return rows.in_column(question.column)


def _answer(
    question: Question,
    labels: tuple[str, ...],
    rows: Rows,
    loc: Loc,
    read: Callable[[Row], Explained],
    context: Context,
) -> Asked:
    match question.ask:
        case "how many":
            return _count(rows[labels[0]], rows, read)
        case "more" | "fewer":
            return _compare(question.ask, labels, rows, loc, context)
        case "altogether":
            return _add_up(labels, rows, context)
        case "mean":
            return _find_mean(rows, context)
        case "most" | "least":
            return _find_end(question.ask, rows)
        case "range":
            return _find_range(rows)
        case _:
            return _find_key(rows[labels[0]], rows, read)


def _labels(question: Question, rows: Rows, loc: Loc, context: Context) -> tuple[str, ...]:
    of = (question.of,) if isinstance(question.of, str) else question.of
    wanted, form = _NAMES_ROWS.get(question.ask, (len(of), ""))
    if len(of) != wanted or (question.than is None) == (question.ask in ("more", "fewer")):
        message = f'The question "{question.ask}" does not say what it needs, or says more.'
        raise Unsolvable(loc, message, f"write {{ask: {question.ask}{form}}}.")
    by_id = {character.id: character.name for character in context.characters}
    asked = (*of, question.than) if question.than else of
    named = [label if label in rows.labels else by_id.get(label, label) for label in asked]
    labels = tuple(one for label in named for one in _with_columns(label, rows, question.ask))
    for label in labels:
        if label not in rows.labels:
            near = did_you_mean(label[:40], rows.labels)
            raise Unsolvable(loc, f'The chart has no row "{label[:40]}".{near}', f"use {listed(rows.labels, 'or')}.")
    if len(set(labels)) < len(labels):
        raise Unsolvable(loc, f'"{labels[0]}" is named twice.', "name rows that differ.")
    return labels or rows.labels


def _with_columns(label: str, rows: Rows, ask: str) -> tuple[str, ...]:
    """A label as it is; of one that has several columns, where they may be added up, all of them."""
    inside = tuple(name_in(label, column) for column in rows.columns)
    return inside if ask == "altogether" and inside and inside[0] in rows.labels else (label,)


def _find_range(rows: Rows) -> Asked:
    least, most = (end(row.amount for row in rows.rows) for end in (min, max))
    sums = [_gap_between(most, least)]
    answer = Answer(
        f"The range is {write_number(most - least)}.", say.explain_by_sums(sums), RangeOfAll(Found(most - least))
    )
    return Asked("What is the range, from the least to the most?", answer, demands_of_sums(sums), len(rows.rows) + 1)


def _find_key(row: Row, rows: Rows, read: Callable[[Row], Explained]) -> Asked:
    """How many a picture stands for, from one row whose number is told."""
    pictures = row.amount / rows.each
    if not pictures or pictures.denominator > 1:
        message = f"{row.label} has no whole number of pictures."
        raise Unsolvable(("questions",), message, "tell the key by a row of whole pictures.")
    said, sums = ChartWords(rows), [operation("÷", row.amount, pictures, rows.each)]
    answer = Answer(said.say_key(rows.each), say.explain_by_sums(sums), Key(row.label, Found(Fraction(rows.each))))
    return Asked(said.ask_key(row.label, row.amount), answer, demands_of_sums(sums), 2)


def _count(row: Row, rows: Rows, read: Callable[[Row], Explained]) -> Asked:
    said = ChartWords(rows)
    line, says = said.ask_count(row.label), said.say_count(row.label, row.amount)
    value = HowMany(row.label, Found(row.amount))
    if not row.hidden:
        why, demands = read(row)
        return Asked(line, Answer(says, why, value), demands | demands_of_numbers([row.amount]), 1)
    known = [other.amount for other in rows.rows if other is not row]
    together = sum(known, Fraction(0))
    sums = [operation("+", *known, together)] if len(known) > 1 else []
    sums.append(operation("−", rows.total, together, row.amount))
    answer = Answer(says, say.explain_by_sums(sums), value)
    return Asked(said.add_known(line), answer, demands_of_sums(sums), 2 * len(known))


def _compare(word: Literal["more", "fewer"], labels: Sequence[str], rows: Rows, loc: Loc, context: Context) -> Asked:
    one, other = labels
    larger, smaller = (rows[one], rows[other]) if word == "more" else (rows[other], rows[one])
    gap = larger.amount - smaller.amount
    if gap <= 0:
        have = f"{one} has {write_number(rows[one].amount)} and {other} has {write_number(rows[other].amount)}"
        raise Unsolvable(loc, f"{have}: that is not {word}.", "ask it the other way round.")
    said, sums = ChartWords(rows), [_gap_between(larger.amount, smaller.amount)]
    signed = context.year.knows("−")
    worked = say.explain_by_sums(sums) if signed else say.explain_by_pairing(larger.label, gap)
    demands = demands_of_sums(sums) if signed else demands_of_numbers([gap])
    value = HowManyMore(word, one, other, Found(gap))
    return Asked(said.ask_gap(one, other, word), Answer(said.say_gap(one, other, word, gap), worked, value), demands, 3)


def _gap_between(more: Fraction, less: Fraction) -> Operation:
    """The less taken from the more; of numbers below nought, how far both are from it."""
    if less < 0 < more:
        return operation("+", -less, more, more - less)
    if less < 0:
        return operation("−", -less, -more, more - less)
    return operation("−", more, less, more - less)


def _add_up(labels: Sequence[str], rows: Rows, context: Context) -> Asked:
    parts = [rows[label].amount for label in labels]
    total = sum(parts, Fraction(0))
    said, sums = ChartWords(rows), [operation("+", *parts, total)]
    signed = len(parts) > 1 and context.year.knows("+")
    worked = say.explain_by_sums(sums) if signed else say.explain_by_counting(total)
    demands = demands_of_sums(sums) if signed else demands_of_numbers([total])
    answer = Answer(said.say_total(labels, total), worked, Altogether(tuple(labels), Found(total)))
    return Asked(said.ask_total(labels), answer, demands, 2 * len(parts) - 1)


def _find_mean(rows: Rows, context: Context) -> Asked:
    parts, said = [row.amount for row in rows.rows], ChartWords(rows)
    mean = rows.total / len(parts)
    sums = [operation("+", *parts, rows.total), operation("÷", rows.total, len(parts), mean)]
    demands = demands_of_sums(sums) | Demands(tables=table_of(len(parts), mean, context.year))
    answer = Answer(said.say_mean(mean), say.explain_by_sums(sums), Mean(Found(mean)))
    return Asked(said.ask_mean(), answer, demands, 2 * len(parts))


def _find_end(word: Literal["most", "least"], rows: Rows) -> Asked:
    parts, said = [row.amount for row in rows.rows], ChartWords(rows)
    sizes = sorted(set(parts), reverse=word == "most")
    labels = tuple(row.label for row in rows.rows if row.amount == sizes[0])
    value = AtEnd(word, labels, Found(sizes[0]))
    answer = Answer(said.say_end(word, labels, sizes[0]), say.explain_end(sizes), value)
    return Asked(said.ask_end(word), answer, demands_of_numbers(sizes), len(parts))


def expect_how_many(asked: Sequence[Asked], rows: Rows) -> LikelyError | None:
    """Answering how many where how many more is asked."""
    for value in (one.answer.value for one in asked):
        told = isinstance(value, HowManyMore) and value.of in rows.labels
        if told and isinstance(value, HowManyMore) and rows[value.of].amount != value.answer.number:
            return say.expect_how_many(value.ask, rows[value.of].amount, value.answer.number)
    return None
