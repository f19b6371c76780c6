"""What is said around the statements of a comparison: the task, the note, the slip, and what it asks of a year."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Demands, Figure, LikelyError, Task
from ...model.year import YearLimits
from ...parse.number_sentence import exact, value_of
from ..met import demands_met
from ..saying import listed, written
from ..tables_used import table_of
from .statement import GAP, Statement
from .told import Completed

if TYPE_CHECKING:
    from . import Outcome

_VOCABULARY = ("equal to", "greater than", "less than", "compare", "true")
_PRODUCT = re.compile(r"(\d[\d,]*) [×] (\d[\d,]*)")
_SHARING = re.compile(r"(\d[\d,]*) [÷] (\d[\d,]*)")
_WHOLE_SUM = re.compile(r"\d[\d,]*(?: \+ \d[\d,]*)*")
_STARTS_WITH_GAP = re.compile(rf"{GAP} [+−×] ")
_TERM = re.compile(r"\d[\d,]*")
_FROM_YEAR_OF_SIGNS = 2


def ask(statements: Sequence[Statement], signs: Sequence[str]) -> str:
    """The task, by what the statements lack."""
    parts = []
    if any(s.gap_side is None and s.sign_gap is None for s in statements):
        parts.append("Which of these are true? Show how you know.")
    if any(s.sign_gap is not None for s in statements):
        parts.append(f"Write {listed(signs, 'or')} in each gap between two sides.")
    if any(s.gap_side is not None for s in statements):
        several = any(s.gap_side is not None and "=" not in s.signs for s in statements)
        parts.append(
            f"Write a number in the gap to make it true.{' Find every whole number that fits.' if several else ''}"
        )
    return " ".join(parts)


def note(outcomes: Sequence[Outcome], year: YearLimits) -> str:
    """Why these are all: every line was worked out, and the false ones are put right."""
    signs_known = year.year >= _FROM_YEAR_OF_SIGNS
    false = [o.false for o in outcomes if o.false is not None]
    without = [o.statement.text for o in outcomes if not o.answers and o.false is None]
    parts = ["Every line was worked out on both sides."]
    if false:
        parts.append(
            f"Not true as written: {'; '.join(f'{c.text} should be {c.put_right(signs_known)[:-1]}' for c in false)}."
        )
    if without:
        parts.append(f"Nothing fits in {listed(without)}.")
    return " ".join(parts)


def likely_error(outcomes: Sequence[Outcome]) -> LikelyError | None:
    """The first slip likely in any line, and what it gives there."""
    for outcome in outcomes:
        found = _answer_comes_next(outcome) or _largest_number_wins(outcome) or _sum_comes_first(outcome)
        if found:
            return found
    return None


def _answer_comes_next(outcome: Outcome) -> LikelyError | None:
    """6 + 3 = ___ + 4 filled with 9."""
    statement = outcome.statement
    side = statement.gap_side
    if not side or not outcome.completed or statement.signs[side - 1] != "=":
        return None
    if not _STARTS_WITH_GAP.match(statement.sides[side]) or not _WHOLE_SUM.fullmatch(statement.sides[side - 1]):
        return None
    before = value_of(statement.sides[side - 1]).amount
    wrong = statement.sides[side].replace(GAP, written(before))
    comes_to = value_of(wrong)
    if comes_to.kind or comes_to.amount == before:
        return None
    return LikelyError(
        "Takes = to mean that the answer comes next.",
        f"{written(before)} in the gap of {statement.text}; but {wrong} = {written(comes_to.amount)}.",
    )


def _largest_number_wins(outcome: Outcome) -> LikelyError | None:
    """The side with the largest single number taken for the greater one."""
    if outcome.statement.sign_gap is None or not outcome.completed or len(outcome.statement.sides) != 2:
        return None
    completed = outcome.completed[0]
    numbers = [[exact(n) for n in _TERM.findall(side)] for side in completed.sides]
    if not all(numbers) or not all(_WHOLE_SUM.fullmatch(side) for side in completed.sides):
        return None
    largest = [max(side) for side in numbers]
    guess = "=" if largest[0] == largest[1] else ">" if largest[0] > largest[1] else "<"
    if guess == completed.true_signs()[0]:
        return None
    return LikelyError(
        "Compares the largest number on each side instead of what the sides come to.",
        f"{guess} in {outcome.statement.text}; but {completed.worked()}",
    )


def _sum_comes_first(outcome: Outcome) -> LikelyError | None:
    """A true statement with its sum on the right taken for a wrong one."""
    statement = outcome.statement
    if statement.gap_side is not None or statement.sign_gap is not None or not outcome.completed:
        return None
    if "=" not in statement.signs or "+" not in statement.sides[-1]:
        return None
    why = "there is a sum on both sides" if "+" in statement.sides[0] else "the sum stands on the right"
    return LikelyError(
        f"Calls a statement wrong because {why}.", f"{statement.text} crossed out; but {outcome.completed[0].worked()}"
    )


def demands(task: Task, outcomes: Sequence[Outcome], signs: Sequence[str], year: YearLimits) -> Demands:
    """All that is read and worked out, the false lines included, for those are worked out too."""
    told = [answer for outcome in outcomes for answer in outcome.answers]
    told += [Answer("", o.false.put_right(signs_known=False), {}) for o in outcomes if o.false]
    met = demands_met(task, told, _VOCABULARY, _tables(outcomes, year))
    if any(outcome.statement.sign_gap is not None for outcome in outcomes):
        met = replace(met, symbols=met.symbols | set(signs))
    return met


def _tables(outcomes: Sequence[Outcome], year: YearLimits) -> set[int]:
    tables: set[int] = set()
    for completed in _all_completed(outcomes):
        for side in completed.sides:
            for one, other in _PRODUCT.findall(side):
                tables |= table_of(exact(one), exact(other), year)
            for whole, by in _SHARING.findall(side):
                if exact(by):
                    tables |= table_of(Fraction(exact(whole)) / exact(by), exact(by), year)
    return tables


def _all_completed(outcomes: Sequence[Outcome]) -> list[Completed]:
    return [c for o in outcomes for c in (*o.completed, *((o.false,) if o.false else ()))]


def figures(statements: Sequence[Statement]) -> tuple[Figure, ...]:
    """Two bars for the first line whose sides are sums of whole numbers: as long as what they come to."""
    for statement in statements:
        sums = all(_WHOLE_SUM.fullmatch(side) for side in statement.sides)
        if sums and statement.gap_side is None and len(statement.sides) == 2:
            bars = [[int(exact(n)) for n in _TERM.findall(side)] for side in statement.sides]
            alt = f"Two bars, one above the other: {' and '.join(', then '.join(map(str, bar)) for bar in bars)}."
            return (Figure("two-bars", {"top": bars[0], "bottom": bars[1]}, alt),)
    return ()
