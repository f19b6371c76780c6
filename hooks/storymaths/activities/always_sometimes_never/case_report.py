"""What is said of a statement tried in every case: the task, the verdict, why, the slip, the figure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

from ...model.activity import Context, Figure, LikelyError
from ...model.demands import Demands, amounts, operation
from ...model.figures.cases import CaseGrid, CaseStrip, Mark
from ...model.year import YearLimits
from ..rule_language.reasons import explain
from ..rule_language.tree import Operation, decider
from ..rule_language.words import clause, numbers_in, signs_in, tables_in, words_in
from ..saying import capital, listed
from .case_statement import Statement
from .cases_tried import Tried, case_text, telling

LISTED = 12
"""At most so many examples, and so many counter-examples, are listed in an answer's data."""
_FIGURE_ACROSS, _DIGITS = 12, 3
"""The most numbers across a figure, and the most digits that fit in its squares."""


def ask_of(statement: Statement, context: Context) -> str:
    """What a pupil is asked to do, and with which numbers."""
    spans = {letter: _span(numbers) for letter, numbers in statement.letters.items()}
    if len(set(spans.values())) == 1:
        stretch = next(iter(spans.values()))
    else:
        stretch = listed([f"{span} for {letter}" for letter, span in spans.items()])
    who = f"{capital(context.characters[0].name)} says this. " if context.characters else ""
    return f"{who}Is it always, sometimes or never true? Try {stretch}, and show how you know."


def _span(numbers: Sequence[int]) -> str:
    ends = [str(end).replace("-", "−") for end in (numbers[0], numbers[-1])]
    if isinstance(numbers, range) and len(numbers) > 2:
        return f"whole numbers from {ends[0]} to {ends[1]}"
    return listed([str(number).replace("-", "−") for number in numbers], "or")


def line_of(statement: Statement, year: YearLimits) -> str:
    """The statement itself, in words and letters."""
    claim = clause(statement.then, year)
    if statement.say:
        return f"If {clause(statement.say, year)}, then {claim}."
    return f"{claim if claim[1:2] == ' ' else capital(claim)}."  # a letter that stands for a number stays small


def verdict_says(tried: Tried, letters: bool) -> str:
    """The verdict, with an example of each sort; ``letters`` tells whether the pupil's statement has them."""
    true, false = (case_text(telling(cases), letters) if cases else "" for cases in (tried.true, tried.false))
    if tried.verdict == "always":
        return f"Always true, in all {len(tried.true):,} cases, for example when {true}."
    if tried.verdict == "never":
        return f"Never true, in none of {len(tried.false):,} cases: not when {false}, for example."
    return f"Sometimes true: it is so when {true}, and it is not so when {false}."


def verdict_worked(statement: Statement, year: YearLimits, letters: bool) -> str:
    """The sums of one case that holds and one that does not, as far as there are such."""
    shown = []
    for cases, said in ((statement.tried.true, "It is so"), (statement.tried.false, "It is not so")):
        if cases:
            case = telling(cases)
            shown.append(f"{said} when {case_text(case, letters)}: {explain(statement.then, case, year)}.")
    return " ".join(shown)


def verdict_data(tried: Tried) -> dict[str, Any]:
    """The verdict, how many cases, and the first of each sort."""
    return {
        "verdict": tried.verdict,
        "tried": len(tried.true) + len(tried.false),
        "true": len(tried.true),
        "false": len(tried.false),
        "examples": tried.true[:LISTED],
        "counter_examples": tried.false[:LISTED],
    }


def note_of(tried: Tried, because: str | None) -> str:
    """How one knows, for the adult, and what trying cannot show."""
    outside = f"; of {tried.passed_over:,} more it says nothing, as its if-part is not so" if tried.passed_over else ""
    reason = because or "For all numbers there must be a reason: ask for it."
    return f"All {len(tried.true) + len(tried.false):,} cases it speaks of were tried{outside}. {reason}"


def slip_of(tried: Tried, letters: bool) -> LikelyError | None:
    """The likely slip, when these numbers let it happen: stopping early, or turning the statement round."""
    if tried.verdict == "sometimes":
        word = "Always" if tried.first in tried.true else "Never"
        return LikelyError(
            f"Stops after one case, when {case_text(tried.first, letters)}.", f'"{word} true", which is not so.'
        )
    if not tried.outside:
        return None
    case = case_text(telling(tried.outside), letters)
    if tried.verdict == "never":
        return LikelyError(
            "Tries numbers the statement does not speak of.", f'"Sometimes true", because it is so when {case}.'
        )
    return LikelyError("Turns the statement round.", f"Something that is not always so: look what happens when {case}.")


def uses_of(statement: Statement, texts: Sequence[str], year: YearLimits) -> Demands:
    """What the statement, its sums in every case, and the texts shown ask of a year."""
    ends = [numbers[i] for numbers in statement.letters.values() for i in (0, -1)]
    shown = [telling(cases) for cases in (statement.tried.true, statement.tried.false) if cases]
    sums = [decider(part) for part in statement.parts if isinstance(part, Operation)]
    asked = statement.tried.true + statement.tried.false
    come_of_it = {Fraction(value) for work in sums for value in (max(map(work, asked)), min(map(work, asked)))}
    rules = [rule for rule in (statement.say, statement.then) if rule]
    named = frozenset[Fraction]().union(*map(numbers_in, rules))
    met = {Fraction(number) for number in (*ends, *(value for case in shown for value in case.values()))}
    return Demands(
        amounts=amounts(met | named),
        operations=(operation("+", *sorted(come_of_it)),) if come_of_it else (),
        signs=signs_in(*texts),
        words=tuple(dict.fromkeys(word for rule in rules for word in words_in(rule, year))),
        tables=frozenset[int]().union(*map(tables_in, rules)),
    )


def figures_of(statement: Statement) -> Iterator[Figure]:
    """A grid of all cases, marked, when there are one or two letters and it can be taken in at a glance."""
    letters, tried = statement.letters, statement.tried
    if any(len(str(end)) > _DIGITS for numbers in letters.values() for end in (min(numbers), max(numbers))):
        return
    marks: dict[tuple[int, ...], Mark] = {tuple(case.values()): "yes" for case in tried.true}
    marks |= {tuple(case.values()): "no" for case in tried.false}
    if len(letters) == 2 and all(len(numbers) <= _FIGURE_ACROSS for numbers in letters.values()):
        down, across = letters.values()
        first, second = letters
        cells = tuple(tuple(marks.get((row, column), "") for column in across) for row in down)
        yield Figure(CaseGrid((first, second), tuple(across), tuple(down), cells), _alt(statement))
    elif len(letters) == 1 and len(next(iter(letters.values()))) <= 100:
        (numbers,) = letters.values()
        rows = tuple(tuple(numbers[at : at + 10]) for at in range(0, len(numbers), 10))
        cells = tuple(tuple(marks.get((number,), "") for number in row) for row in rows)
        yield Figure(CaseStrip(rows, cells), _alt(statement))


def _alt(statement: Statement) -> str:
    tried = statement.tried
    of = "pairs of numbers" if len(statement.letters) == 2 else "numbers"
    return f"All {of}: {len(tried.true)} marked with a tick, {len(tried.false)} with a cross, the rest left empty."
