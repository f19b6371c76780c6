"""Number sentences in words: what is asked, each answer, why, how one knows that these are all, and the likely error."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...expression.gapped import written_out
from ...expression.tokens import Token
from ...model.activity import GAP, LikelyError, Line
from ...model.demands import Operation
from ...model.year import YearLimits
from ..saying import capital, listed, written
from ..sentences import write_calculation
from .filled import Filled
from .reasoning import Step, find_steps, find_steps_to_judge, put_right
from .say_error import find_error
from .tasks import Judged, SentencesTask

_TRY_GAP_BY_GAP = "Try everything in the first gap in turn, then in the next; the last gap follows."
_ASKS_FOR = {"gap": "number", "digits": "digit", "sign-gap": "sign"}
Lines = Sequence[tuple[Token, ...]]


def has_gap(tokens: Sequence[Token]) -> bool:
    """Whether anything is missing in a line."""
    return any(token.kind in _ASKS_FOR for token in tokens)


def write_line(tokens: Sequence[Token]) -> Line:
    """A line for pupils: with its gaps, or to be judged."""
    text = written_out(tokens, names=True)
    return Line(tuple(text.split(GAP))) if has_gap(tokens) else Line((f"{text} ", " (true or not?)"))


def ask_for(task: SentencesTask, lines: Lines) -> str:
    """What is asked."""
    kinds: list[str] = [token.kind for tokens in lines for token in tokens]
    missing = []
    for kind, thing in _ASKS_FOR.items():
        if count := kinds.count(kind):
            missing.append(f"missing {thing}{'s' if count > 1 or kind == 'digits' else ''}")
    ask = [f"Find the {listed(missing)}."] if missing else []
    if task.gaps == "cast" and "gap" in kinds:
        ask = ["Who can stand in the gaps? Find every way."]
    elif task.gaps is not None and "gap" in kinds:
        ask += [f"Use {_say_choice(task.gaps)}.", *(["Use each number once."] if task.each_once else [])]
    if not all(map(has_gap, lines)):
        ask.append("Which are true? Say how you know." if len(lines) > 1 else "Is it true? Say how you know.")
    return " ".join(ask)


def find_words(task: SentencesTask, lines: Lines) -> Iterator[str]:
    """The words of the word bank in what is asked."""
    kinds = {token.kind for tokens in lines for token in tokens}
    if task.gaps == "cast" and "gap" in kinds:
        return
    yield from (
        word for kind, word in (("gap", "missing number"), ("digits", "digit"), ("sign-gap", "sign")) if kind in kinds
    )


def _say_choice(gaps: range | tuple[int, ...] | str) -> str:
    if isinstance(gaps, range):
        return f"numbers from {written(gaps[0])} to {written(gaps[-1])}"
    return f"only {listed([written(number) for number in gaps if isinstance(number, int)], 'or')}"


def say_filled(one: Filled) -> str:
    """The sentence filled in, after who stands in its gaps or the same in names."""
    says = one.sentence_text()
    if one.who:
        return f"{capital(listed([character.name for character in one.who]))}: {says}"
    if any(token.kind == "name" for token in one.sentence.tokens):
        return f"{capital(one.sentence_text(names=True))}: {says}"
    return says


def explain(one: Filled, year: YearLimits) -> str:
    """True number sentences that lead to the filling."""
    return _write_steps(find_steps(one, year), one) or f"{one.sentence_text()}."


def _write_steps(steps: Sequence[Step], one: Filled) -> str:
    lines = [_write_step(step, one.places) for step in steps]
    return f"{'; '.join(lines)}." if lines else ""


def _write_step(step: Step, places: int) -> str:
    if isinstance(step, Operation):
        return write_calculation(step, places)
    return f"{written(step.left, places)} {step.relation} {written(step.right, places)}"


def say_judged(judged: Judged) -> str:
    """Whether a line is true, and what is true instead."""
    shown = judged.as_filled()
    if judged.true:
        return f"It is true: {shown.sentence_text()}"
    right = put_right(shown)
    if right is None:
        return "It is not true: it divides by nought"
    relations = judged.sentence.relations
    if len(relations) > 1:
        return f"It is not true: {_write_step(right, shown.places)}"
    tokens = [
        token._replace(text=right.relation) if token.kind == "relation" else token for token in judged.sentence.tokens
    ]
    return f"It is not true: {written_out(tokens)}"


def explain_judged(judged: Judged, year: YearLimits) -> str:
    """Why a line is true, or what is true instead."""
    shown = judged.as_filled()
    if judged.true:
        return explain(shown, year)
    if steps := find_steps_to_judge(shown, year):
        return _write_steps(steps, shown)
    right = put_right(shown)
    if right is None:
        return "Nothing can be shared into no parts."
    left, _, other = written_out(judged.sentence.tokens).partition(f" {judged.sentence.relations[0]} ")
    so = "the same as" if right.left == right.right else "less than" if right.left < right.right else "more than"
    return f"{left} is {so} {other}."


def explain_all(task: SentencesTask, lines: Lines, filled: Sequence[Filled]) -> str:
    """How one knows that these are all."""
    notes = []
    if any(plan.way for one in filled if (plan := one.single_plan())):
        notes.append("Work backwards: only one number fits the gap.")
    if any(len(one.in_gaps()) > 1 or not one.single_plan() for one in filled):
        several = any(len(one.in_gaps()) > 1 for one in filled)
        notes.append(_TRY_GAP_BY_GAP if several else "Try each in the gap, and see which makes it true.")
    if task.swapped == "same" and filled:
        notes.append("The same numbers in other gaps are counted once.")
    for line, tokens in enumerate(lines, start=1):
        if has_gap(tokens) and not any(one.line == line for one in filled):
            notes.append(f"{_name_line(line, len(lines))}Nothing that may stand in the gaps makes it true.")
    return " ".join(notes)


def find_likely_error(filled: Sequence[Filled], lines: int) -> LikelyError | None:
    """The first slip likely in any line."""
    for one in filled:
        if error := find_error(one):
            return LikelyError(f"{_name_line(one.line, lines)}{error.does}", error.gives)
    ways = {line: sum(one.line == line for one in filled) for line in range(1, lines + 1)}
    most = max(ways, key=lambda line: ways[line], default=0)
    if most and ways[most] > 1:
        does = f"{_name_line(most, lines)}Stops at the first way that works."
        return LikelyError(does, f"1 way, and there are {ways[most]}.")
    return None


def _name_line(line: int, lines: int) -> str:
    return f"Line {line}. " if lines > 1 else ""
