"""Comparisons in words: what is asked, why each is true, what the false ones should be, and the likely error."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...expression.tree import Number, fill_gap, quantity_of
from ...model.activity import LikelyError
from ...model.year import YearLimits
from ..saying import listed, written
from .completed import Completed, write_amount
from .statement import GAP, Statement, joined, whole_terms
from .tasks import Outcome

_GO_ON = (("+",), ("−",), ("×",))
"""Signs after which a gap that stands first is likely filled with what comes before it."""


def ask_for(statements: Sequence[Statement], signs: Sequence[str]) -> str:
    """What is asked, by what the statements lack."""
    parts = []
    if any(_is_judged(statement) for statement in statements):
        parts.append("Which of these are true? Show how you know.")
    if any(statement.sign_gap is not None for statement in statements):
        parts.append(f"Write {listed(signs, 'or')} in each gap.")
    gapped = [statement for statement in statements if statement.gap_side is not None]
    if gapped:
        several = any("=" not in statement.signs for statement in gapped)
        parts.append(
            f"Write a number in the gap to make it true.{' Find every whole number that fits.' if several else ''}"
        )
    return " ".join(parts)


def find_words(statements: Sequence[Statement]) -> Iterator[str]:
    """The words of the word bank in what is asked."""
    if any(_is_judged(statement) or statement.gap_side is not None for statement in statements):
        yield "true"


def _is_judged(statement: Statement) -> bool:
    return statement.gap_side is None and statement.sign_gap is None


def explain(completed: Completed) -> str:
    """One line that shows that it holds: in numbers, then what each sum comes to. True statements only."""
    line = joined(completed.sides, completed.signs)
    sums = dict.fromkeys(f"{side} = {write_amount(result)}" for side, result in completed.results())
    # 6 + 3 = 9 needs no second telling.
    reasons = [one for one in sums if one != line]
    return f"{line}, because {'; '.join(reasons)}." if reasons else f"{line}."


def explain_all(outcomes: Sequence[Outcome], year: YearLimits) -> str:
    """Why these are all: every line was worked out, and the false ones are put right."""
    false = [outcome.false for outcome in outcomes if outcome.false is not None]
    without = [outcome.statement.text for outcome in outcomes if not outcome.completed]
    parts = ["Every line was worked out on both sides."]
    if false:
        right = [f"{one.text} should be {explain(one.put_right(year.knows('<')))[:-1]}" for one in false]
        parts.append(f"Not true as written: {'; '.join(right)}.")
    if without:
        parts.append(f"Nothing fits in {listed(without)}.")
    return " ".join(parts)


def find_error(outcomes: Sequence[Outcome]) -> LikelyError | None:
    """The first slip likely in any line, and what it gives there."""
    for outcome in outcomes:
        found = _answer_comes_next(outcome) or _largest_number_wins(outcome) or _sum_comes_first(outcome)
        if found:
            return found
    return None


def _answer_comes_next(outcome: Outcome) -> LikelyError | None:
    """6 + 3 = ___ + 4 filled with 9."""
    statement, side = outcome.statement, outcome.statement.gap_side
    if not side or not outcome.found or statement.signs[side - 1] != "=":
        return None
    terms = whole_terms(statement.trees[side - 1])
    if not terms or not statement.sides[side].startswith(GAP) or statement.operators[side][:1] not in _GO_ON:
        return None
    before = sum(terms)
    filled = quantity_of(fill_gap(statement.trees[side], Number(before, written(before))))
    if filled.kind or filled.amount == before:
        return None
    wrong = statement.sides[side].replace(GAP, written(before))
    return LikelyError(
        "Takes = to mean that the answer comes next.",
        f"{written(before)} in the gap of {statement.text}; but {wrong} = {written(filled.amount)}.",
    )


def _largest_number_wins(outcome: Outcome) -> LikelyError | None:
    """The side with the largest single number taken for the greater one."""
    if outcome.statement.sign_gap is None or not outcome.found or len(outcome.statement.trees) != 2:
        return None
    completed = outcome.found[0].statement
    one, other = map(whole_terms, completed.trees)
    if not one or not other:
        return None
    guess = "=" if max(one) == max(other) else ">" if max(one) > max(other) else "<"
    if guess == completed.true_signs()[0]:
        return None
    return LikelyError(
        "Compares the largest number on each side instead of what the sides come to.",
        f"{guess} in {outcome.statement.text}; but {explain(completed)}",
    )


def _sum_comes_first(outcome: Outcome) -> LikelyError | None:
    """A true statement with its sum on the right taken for a wrong one."""
    statement = outcome.statement
    if not _is_judged(statement) or not outcome.found:
        return None
    if "=" not in statement.signs or "+" not in statement.operators[-1]:
        return None
    why = "there is a sum on both sides" if "+" in statement.operators[0] else "the sum stands on the right"
    return LikelyError(
        f"Calls a statement wrong because {why}.",
        f"{statement.text} crossed out; but {explain(outcome.found[0].statement)}",
    )
