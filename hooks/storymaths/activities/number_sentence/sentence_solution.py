"""Number sentences worked out and put into words: the task, its answers, and how one knows."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from ...expression.gapped import GappedSentence, sentences_of, written_out
from ...expression.tokens import Token
from ...expression.tree import holds, worth_of
from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..fraction.calculation import tables_leaned
from ..met import as_task, demands_met
from ..saying import capital, listed, written
from ..tables_used import tables_of
from .filled_sentence import Filled, products_in, reasoning, steps_of, worked_out
from .gap_filling import is_filled_truly
from .sentence_bars import bars_of
from .sentence_slips import slip_in
from .sentence_solving import every_filling, lines_of, signs_for

if TYPE_CHECKING:
    from . import NumberSentenceFields

_WORDS = ("missing number", "number sentence", "sign", "digit", "double", "greater than", "less than", "equal to")


def solution_of(fields: NumberSentenceFields, context: Context) -> Solution:
    """Every filling of every line, and whether each line without gaps is true."""
    lines = lines_of(fields, context)
    filled = every_filling(fields, context)
    judged = _judged(fields, lines, context)
    answers = sorted([*((one.line, _answer(one)) for one in filled), *judged], key=lambda numbered: numbered[0])
    task = _task(fields, lines, filled, context)
    told = [answer for _, answer in answers]
    return Solution(
        task=task,
        answers=tuple(told),
        demands=demands_met(task, told, _WORDS, _tables(filled, context)),
        steps=max((steps_of(one) for one in filled), default=1),
        note=_note(fields, lines, filled),
        likely_error=_slip(filled, len(lines)),
    )


def _tables(filled: Sequence[Filled], context: Context) -> frozenset[int]:
    """Those of whole factors, and those that a fraction of a number is found with."""
    pairs = [pair for one in filled for side in one.sentence.sides for pair in products_in(side, one.numbers)]
    parts = [Fraction(number).denominator for pair in pairs for number in pair if Fraction(number).denominator > 1]
    whole = [pair for pair in pairs if all(Fraction(number).denominator == 1 for number in pair)]
    return tables_of(whole, context.year).union(*(tables_leaned(under, context.year) for under in parts))


def _answer(one: Filled) -> Answer:
    says = one.sentence_text()
    if one.who:
        says = f"{capital(listed([character.name for character in one.who]))}: {says}"
    elif any(token.kind == "name" for token in one.sentence.tokens):
        says = f"{capital(one.sentence_text(names=True))}: {says}"
    return Answer(says, reasoning(one), one.data())


def _line(line: int, lines: int) -> str:
    return f"Line {line}. " if lines > 1 else ""


def _judged(
    fields: NumberSentenceFields, lines: Sequence[tuple[Token, ...]], context: Context
) -> list[tuple[int, Answer]]:
    judged = []
    for at, tokens in enumerate(lines):
        sentence = next(sentences_of(tokens, signs_for(fields, tokens, context)), None)
        if sentence and not sentence.gaps and not sentence.signs:
            judged.append((at + 1, _judgement(at + 1, sentence)))
    return judged


def _judgement(line: int, sentence: GappedSentence) -> Answer:
    shown = Filled(line, sentence, (), 3)
    if is_filled_truly(sentence, ()):
        return Answer(f"It is true: {sentence.written(())}", reasoning(shown), {"line": line, "true": True})
    says, worked = _untrue(shown)
    return Answer(f"It is not true: {says}", worked, {"line": line, "true": False})


def _untrue(shown: Filled) -> tuple[str, str]:
    """What is true instead, as a sentence and worked out."""
    sides, relations = shown.sentence.sides, shown.sentence.relations
    worths = [worth_of(side, ()) for side in sides]
    lines = [line for side in sides for line in worked_out(side, shown)]
    for at, relation in enumerate(relations):
        left, right = worths[at], worths[at + 1]
        if left is None or right is None:
            return "it divides by nought", "Nothing can be shared into no parts."
        if not holds(left, relation, right):
            so = "≠" if relation == "=" else "=" if left == right else "<" if left < right else ">"
            lines.append(f"{written(left, shown.places)} {so} {written(right, shown.places)}")
            said = shown.sentence.written(())
            return said.replace(relation, so) if len(relations) == 1 else lines[-1], f"{'; '.join(lines)}."
    raise AssertionError("an untrue sentence has a relation that does not hold")


def _task(
    fields: NumberSentenceFields, lines: Sequence[tuple[Token, ...]], filled: Sequence[Filled], context: Context
) -> Task:
    has_gap = [any(token.kind in ("gap", "sign-gap", "digits") for token in tokens) for tokens in lines]
    shown = [written_out(tokens, names=True) for tokens in lines]
    playing = context.characters if fields.fact else ()
    bars = bars_of(filled) if len(lines) == 1 else None
    return as_task(
        ask=fields.ask or _ask(fields, lines, has_gap),
        characters=playing,
        shows=tuple(written(int(character.facts[fields.fact or ""])) for character in playing),
        lines=tuple(text if gap else f"{text} ___ (true or not?)" for text, gap in zip(shown, has_gap, strict=True)),
        figures=(bars,) if bars else (),
    )


def _ask(fields: NumberSentenceFields, lines: Sequence[tuple[Token, ...]], has_gap: Sequence[bool]) -> str:
    kinds: list[str] = [token.kind for tokens in lines for token in tokens]
    asked = []
    for kind, thing in (("gap", "number"), ("digits", "digit"), ("sign-gap", "sign")):
        count = kinds.count(kind)
        if count:
            asked.append(f"missing {thing}{'s' if count > 1 or kind == 'digits' else ''}")
    ask = [f"Find the {listed(asked)}."] if asked else []
    if fields.gaps == "cast" and "gap" in kinds:
        ask = ["Who can stand in the gaps? Find every way."]
    elif fields.gaps is not None and "gap" in kinds:
        ask += [f"Use {_said(fields.gaps)}.", *(["Use each number once."] if fields.each_once else [])]
    if not all(has_gap):
        ask.append("Which are true? Say how you know." if len(lines) > 1 else "Is it true? Say how you know.")
    return " ".join(ask)


def _said(gaps: range | tuple[int, ...] | str) -> str:
    numbers = [written(number) for number in gaps] if isinstance(gaps, tuple) else []
    if isinstance(gaps, range):
        return f"numbers from {written(gaps[0])} to {written(gaps[-1])}"
    return f"only {listed(numbers, 'or')}"


def _note(fields: NumberSentenceFields, lines: Sequence[tuple[Token, ...]], filled: Sequence[Filled]) -> str:
    notes = []
    if any(one.single_plan() for one in filled):
        notes.append("Undoing a sentence leaves one number for its gap, so there is no other.")
    if any(len(one.in_gaps()) > 1 or not one.single_plan() for one in filled):
        notes.append("Everything that may stand in the first gap was tried in turn, and so on; the last gap follows.")
    if fields.swapped == "same" and fields.sentences and filled:
        notes.append("The same numbers in other gaps are counted once.")
    for at, tokens in enumerate(lines):
        gaps = any(token.kind in ("gap", "sign-gap", "digits") for token in tokens)
        if gaps and not any(one.line == at + 1 for one in filled):
            notes.append(f"{_line(at + 1, len(lines))}Nothing that may stand in the gaps makes it true.")
    return " ".join(notes)


def _slip(filled: Sequence[Filled], lines: int) -> LikelyError | None:
    for one in filled:
        likely_error = slip_in(one)
        if likely_error:
            return LikelyError(f"{_line(one.line, lines)}{likely_error.does}", likely_error.gives)
    most = max((sum(one.line == line for one in filled) for line in range(1, lines + 1)), default=0)
    if most > 1:
        return LikelyError("Stops at the first way that works.", f"1 answer, and there are {most}.")
    return None
