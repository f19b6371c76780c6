"""A statement and the verdict on it, in words: what is asked, the verdict, why, how one knows, the likely error."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ...model.activity import CastMember, LikelyError
from ...model.year import YearLimits
from ..rule_language.words import clause
from ..saying import capital, listed, written
from .statement import Statement
from .tasks import NumberCase, VerdictWord


def say_case(case: NumberCase, with_letters: bool = True) -> str:
    """``a = 3, b = 5``; without letters ``the numbers are 3 and 5``."""
    values = {letter: _plain(value) for letter, value in case.items()}
    if with_letters:
        return ", ".join(f"{letter} = {value}" for letter, value in values.items())
    return f"the number{'s are' if len(values) > 1 else ' is'} {listed(list(values.values()))}"


def _plain(number: int) -> str:
    return written(number).replace(",", "")


def ask_to_judge(letters: Mapping[str, Sequence[int]], who: CastMember | None) -> str:
    """What a pupil is asked to do, and with which numbers."""
    spans = {letter: _say_span(numbers) for letter, numbers in letters.items()}
    if len(set(spans.values())) == 1:
        stretch = next(iter(spans.values()))
    else:
        stretch = listed([f"{span} for {letter}" for letter, span in spans.items()])
    says = f"{capital(who.name)} says this. " if who else ""
    return f"{says}Is it always, sometimes or never true? Try {stretch}, and show how you know."


def _say_span(numbers: Sequence[int]) -> str:
    if isinstance(numbers, range) and len(numbers) > 2:
        return f"whole numbers from {_plain(numbers[0])} to {_plain(numbers[-1])}"
    return listed([_plain(number) for number in numbers], "or")


def say_statement(statement: Statement, year: YearLimits) -> str:
    """The statement itself, in words and letters."""
    claim = clause(statement.then, year)
    if statement.say:
        return f"If {clause(statement.say, year)}, then {claim}."
    return f"{claim if claim[1:2] == ' ' else capital(claim)}."  # a letter that stands for a number stays small


def say_verdict(verdict: VerdictWord, cases: int, true: str, false: str, year: YearLimits) -> str:
    """The verdict, with an example of each sort; how many cases there are, where the year has met such numbers."""
    if verdict == "sometimes":
        return f"Sometimes true: it is so when {true}, and it is not so when {false}."
    if cases == 1:
        so = f"it is so when {true}" if verdict == "always" else f"it is not so when {false}"
        return f"{capital(verdict)} true: there is only one case, and {so}."
    if verdict == "always":
        every = f"all {cases:,} cases" if cases <= year.largest_number else "every case"
        return f"Always true, in {every}, for example when {true}."
    none = f"none of {cases:,} cases" if cases <= year.largest_number else "no case"
    return f"Never true, in {none}: not when {false}, for example."


def explain_verdict(shown: Iterator[tuple[bool, str, str]]) -> str:
    """Of a case that holds and of one that does not: whether it does, when it is, and the reasons."""
    return " ".join(f"It is {'' if so else 'not '}so when {when}: {reasons}." for so, when, reasons in shown)


def note_on_trying(cases: int, passed_over: int, because: str | None) -> str:
    """How one knows, for the adult, and what trying cannot show."""
    fitting = " that fit the “if”" if passed_over else ""
    tried = "The one case was tried" if cases == 1 else f"All {cases:,} cases{fitting} were tried"
    return f"{tried}. {because or 'Trying is not a proof: ask for the reason.'}"


def expect_stopping_early(when: str, is_so: bool) -> LikelyError:
    """Judging by one case."""
    word = "Always" if is_so else "Never"
    return LikelyError(f"Stops after one case, when {when}.", f'"{word} true", which is not so.')


def expect_other_numbers(verdict: VerdictWord, when: str) -> LikelyError:
    """Looking at a case that it does not speak of, or turning it round."""
    if verdict == "never":
        gives = f'"Sometimes true", because it is so when {when}.'
        return LikelyError("Tries numbers the statement does not speak of.", gives)
    return LikelyError("Turns the statement round.", f"Something that is not always so: look what happens when {when}.")


def describe_cases(letters: int, true: int, false: int) -> str:
    """The drawing in words."""
    of = "pairs of numbers" if letters == 2 else "numbers"
    return f"All {of}: {true} marked with a tick, {false} with a cross, the rest left empty."
