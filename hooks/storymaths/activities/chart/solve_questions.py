"""Questions about a chart, worked out: how many, how many more or fewer, altogether, most, least, the mean."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from ...check.suggestion import did_you_mean
from ...model.activity import Answer, Context, LikelyError
from ...model.demands import Demands, operation
from ...model.document import Loc
from ..kind import Unsolvable
from ..saying import listed
from ..tables_used import table_of
from . import say_questions as say
from .rows import Row, Rows
from .say_questions import ChartWords
from .sums import demands_of_numbers, demands_of_sums
from .tasks import Altogether, AtEnd, Found, HowMany, HowManyMore, Mean, Question, QuestionAnswer, write_number

Explained = tuple[str, Demands]
"""How an amount is come by in words, and what that demands."""
_WORDS = {"altogether": "altogether", "fewer": "fewer", "most": "most", "more": "more", "mean": "mean average"}
_NAMES_ROWS: dict[str, tuple[int, str]] = {
    "how many": (1, ", of: …"),
    "more": (1, ", of: …, than: …"),
    "fewer": (1, ", of: …, than: …"),
    "most": (0, ""),
    "least": (0, ""),
    "mean": (0, ""),
}
"""How many rows a question is of, and how that is written; any number for ``altogether``."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A question in words with its answer, what it demands, and how many steps it takes."""

    line: str
    answer: Answer[QuestionAnswer]
    demands: Demands
    steps: int
    """One for each amount read off, and one for each + − or ÷."""


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
    return asked if rows.hidden else [*asked, Question(ask="altogether")]


def answer_question(
    question: Question, rows: Rows, loc: Loc, read: Callable[[Row], Explained], context: Context
) -> Asked:
    """A question answered; ``read`` tells how a row is read. Raises ``Unsolvable`` at the question that cannot be."""
    labels = _labels(question, rows, loc)
    match question.ask:
        case "how many":
            asked = _count(rows[labels[0]], rows, read)
        case "more" | "fewer":
            asked = _compare(question.ask, labels, rows, loc, context)
        case "altogether":
            asked = _add_up(labels, rows, context)
        case "mean":
            asked = _find_mean(rows, context)
        case "most" | "least":
            asked = _find_end(question.ask, rows)
    word = _WORDS.get(question.ask)
    words = Demands(words=(word,) if word else ())
    return Asked(asked.line, asked.answer, words | asked.demands, asked.steps)


def _labels(question: Question, rows: Rows, loc: Loc) -> tuple[str, ...]:
    of = (question.of,) if isinstance(question.of, str) else question.of
    wanted, form = _NAMES_ROWS.get(question.ask, (len(of), ""))
    if len(of) != wanted or (question.than is None) == (question.ask in ("more", "fewer")):
        message = f'The question "{question.ask}" does not say what it needs, or says more.'
        raise Unsolvable(loc, message, f"write {{ask: {question.ask}{form}}}.")
    labels = (*of, question.than) if question.than else of
    for label in labels:
        if label not in rows.labels:
            near = did_you_mean(label[:40], rows.labels)
            raise Unsolvable(loc, f'The chart has no row "{label[:40]}".{near}', f"use {listed(rows.labels, 'or')}.")
    if len(set(labels)) < len(labels):
        raise Unsolvable(loc, f'"{labels[0]}" is named twice.', "name rows that differ.")
    return labels or rows.labels


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
    said, sums = ChartWords(rows), [operation("−", larger.amount, smaller.amount, gap)]
    signed = context.year.knows("−")
    worked = say.explain_by_sums(sums) if signed else say.explain_by_pairing(larger.label, gap)
    demands = demands_of_sums(sums) if signed else demands_of_numbers([gap])
    value = HowManyMore(word, one, other, Found(gap))
    return Asked(said.ask_gap(one, other, word), Answer(said.say_gap(one, other, word, gap), worked, value), demands, 3)


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
        if isinstance(value, HowManyMore) and rows[value.of].amount != value.answer.number:
            return say.expect_how_many(value.ask, rows[value.of].amount, value.answer.number)
    return None
