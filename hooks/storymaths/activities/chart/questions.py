"""Questions about a chart, worked out: how many, how many more or fewer, altogether, most, least, the mean."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Literal

from ...check.suggestion import did_you_mean
from ...model.activity import Answer
from ...model.fields import Strict, Text
from ...model.prose import Loc
from ..kind import Unsolvable
from ..saying import listed
from .rows import Row, Rows
from .words import ChartWords, number

Ask = Literal["how many", "more", "fewer", "altogether", "most", "least", "mean"]


class Question(Strict):
    """A question about a chart."""

    ask: Ask
    of: Text | tuple[Text, ...] = ()
    """The row, or rows, it is about; for ``altogether`` all rows when left out."""
    than: Text | None = None
    """With ``more`` and ``fewer``: the row compared with."""


@dataclass(frozen=True, slots=True)
class Asked:
    """A question in words with its answer, and how many steps it takes."""

    line: str
    answer: Answer
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


def work_out(question: Question, rows: Rows, loc: Loc, read: Callable[[Row], str], year: int) -> Asked:
    """A question answered; ``read`` tells how a row is read. Raises ``Unsolvable`` at the question that cannot be."""
    said = ChartWords(rows)
    labels = _labels(question, rows, loc)
    match question.ask:
        case "how many":
            return _count(labels[0], rows, said, read)
        case "more" | "fewer":
            return _gap(question.ask, labels, rows, said, loc, year)
        case "altogether":
            return _altogether(labels, rows, said, year)
        case "mean":
            return _mean(rows, said)
        case "most" | "least":
            return _end(question.ask, rows, said)


def _labels(question: Question, rows: Rows, loc: Loc) -> tuple[str, ...]:
    of = (question.of,) if isinstance(question.of, str) else question.of
    wanted = {"how many": 1, "more": 1, "fewer": 1, "most": 0, "least": 0, "mean": 0}.get(question.ask, len(of))
    if len(of) != wanted or (question.than is None) == (question.ask in ("more", "fewer")):
        form = {"how many": "of: …", "more": "of: …, than: …", "fewer": "of: …, than: …"}.get(question.ask, "")
        fix = f"write {{ask: {question.ask}{', ' if form else ''}{form}}}."
        raise Unsolvable(loc, f'The question "{question.ask}" does not say what it needs, or says more.', fix)
    labels = (*of, question.than) if question.than else of
    for label in labels:
        if label not in rows.labels:
            near = did_you_mean(label[:40], rows.labels)
            raise Unsolvable(loc, f'The chart has no row "{label[:40]}".{near}', f"use {listed(rows.labels, 'or')}.")
    if len(set(labels)) < len(labels):
        raise Unsolvable(loc, f'"{labels[0]}" is named twice.', "name rows that differ.")
    return labels or rows.labels


def _count(label: str, rows: Rows, said: ChartWords, read: Callable[[Row], str]) -> Asked:
    row = rows[label]
    data = {"ask": "how many", "of": label, "answer": _plain(row.amount)}
    if not row.hidden:
        answer = Answer(said.say_count(label, row.amount), read(row), data)
        return Asked(said.ask_count(label), answer, 1)
    known = [other.amount for other in rows.rows if other is not row]
    together = f"{_sum(known)} = {number(sum(known, Fraction(0)))}" if len(known) > 1 else ""
    rest = f"{number(rows.total)} − {number(rows.total - row.amount)} = {number(row.amount)}"
    worked = f"{together}; {rest}." if together else f"{rest}."
    line = f"There are {number(rows.total)} in all. {said.ask_count(label)}"
    return Asked(line, Answer(said.say_count(label, row.amount), worked, data), 2 * len(known))


def _gap(word: str, labels: Sequence[str], rows: Rows, said: ChartWords, loc: Loc, year: int) -> Asked:
    one, other = labels
    larger, smaller = (one, other) if word == "more" else (other, one)
    gap = rows[larger].amount - rows[smaller].amount
    if gap <= 0:
        message = (
            f"{one} has {number(rows[one].amount)} and {other} has {number(rows[other].amount)}: that is not {word}."
        )
        raise Unsolvable(loc, message, "ask it the other way round.")
    more, less = number(rows[larger].amount), number(rows[smaller].amount)
    worked = f"{more} − {less} = {number(gap)}." if year else f"Pair them off: {larger} has {number(gap)} left over."
    data = {"ask": word, "of": one, "than": other, "answer": _plain(gap)}
    return Asked(said.ask_gap(one, other, word), Answer(said.say_gap(one, other, word, gap), worked, data), 3)


def _altogether(labels: Sequence[str], rows: Rows, said: ChartWords, year: int) -> Asked:
    amounts = [rows[label].amount for label in labels]
    total = sum(amounts, Fraction(0))
    worked = f"{_sum(amounts)} = {number(total)}." if len(amounts) > 1 and year else f"Count them all: {number(total)}."
    data = {"ask": "altogether", "of": list(labels), "answer": _plain(total)}
    steps = len(amounts) + len(amounts) - 1
    return Asked(said.ask_total(labels), Answer(said.say_total(labels, total), worked, data), steps)


def _mean(rows: Rows, said: ChartWords) -> Asked:
    amounts = [row.amount for row in rows.rows]
    mean = rows.total / len(amounts)
    worked = f"{_sum(amounts)} = {number(rows.total)}; {number(rows.total)} ÷ {len(amounts)} = {number(mean)}."
    return Asked(
        said.ask_mean(), Answer(said.say_mean(mean), worked, {"ask": "mean", "answer": _plain(mean)}), 2 * len(amounts)
    )


def _end(word: str, rows: Rows, said: ChartWords) -> Asked:
    amounts = [row.amount for row in rows.rows]
    end = max(amounts) if word == "most" else min(amounts)
    labels = [row.label for row in rows.rows if row.amount == end]
    sort = sorted(set(amounts), reverse=word == "most")
    worked = f"In order: {', '.join(map(number, sort))}."
    data = {"ask": word, "answer": labels, "amount": _plain(end)}
    return Asked(said.ask_end(word), Answer(said.say_end(word, labels, end), worked, data), len(amounts))


def _sum(amounts: Sequence[Fraction]) -> str:
    return " + ".join(map(number, amounts))


def _plain(amount: Fraction) -> Any:
    """A whole number as such; any other as it is written."""
    return amount.numerator if amount.denominator == 1 else number(amount)
