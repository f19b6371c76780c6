"""Fact families: every number sentence with one sign that three numbers make."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..met import demands_met
from ..saying import listed, written
from ..tables_used import table_of

if TYPE_CHECKING:
    from . import NumberSentenceFields

_UNDOES = {"+": "−", "×": "÷"}
_KINDS = {"+": "adding and taking away", "×": "multiplying and dividing"}
Family = tuple[Fraction, Fraction, Fraction]
"""Two parts and their whole, or two factors and their product."""


def family_solution(given: Sequence[Fraction | str], sign: str, context: Context) -> Solution:
    """Every family the given numbers belong to, the missing number rising."""
    families = _families(given, sign, context)
    shown = [text if isinstance(text, str) else written(text, 3) for text in given]
    answers = [_answer(family, sign) for family in families]
    ask = f"Write every number sentence for {_KINDS[sign]} that {listed(shown)} make."
    if "___" in given:
        ask = f"{listed([text for text in shown if text != '___'])} belong to a family of three. What is the third?"
        ask = f"{ask} Find every number it could be, and write the families."
    line = f"___ {sign} ___ = ___"
    task = Task(ask, lines=(line, line.replace(sign, _UNDOES[sign])), figures=_figures(given, families, sign))
    return Solution(
        task=task,
        answers=tuple(answers),
        demands=demands_met(task, answers, ("part", "whole", "number sentence"), _tables(families, sign, context)),
        steps=2 + len(families),
        note=_note(sign, "___" in given),
        likely_error=_slip(families[0], sign),
    )


def _families(given: Sequence[Fraction | str], sign: str, context: Context) -> list[Family]:
    known = sorted(number for number in given if isinstance(number, Fraction))
    if len(known) < 2:
        raise Unsolvable(("family",), "Two of the three numbers have to be known.", "leave out one at most.")
    if known[0] < 0 or (sign == "×" and (known[0] <= 0 or any(number.denominator > 1 for number in known))):
        shown = next((n for n in known if n.denominator > 1), known[0])
        raise Unsolvable(("family",), f"{written(shown, 3)} cannot stand in this family.", "use whole numbers from 1.")
    a, b = known[0], known[1]
    if len(known) == 3:
        if (a + b if sign == "+" else a * b) != known[2]:
            small, large = written(a, 3), written(b, 3)
            message = f"{listed([written(n, 3) for n in known])} are no family: {small} {sign} {large} ≠ {written(known[2], 3)}."
            raise Unsolvable(("family",), message, "correct one of the three numbers.")
        return [(a, b, known[2])]
    if sign == "+":
        found = [_rising(a, b - a, b), (a, b, a + b)]
    else:
        found = [_rising(a, b / a, b), (a, b, a * b)]
        found = [family for family in found if all(n.denominator == 1 for n in family)] or found[1:]
    families = list(dict.fromkeys(found))
    if families[-1][2] > context.caps.number:
        raise Unsolvable(("family",), f"The whole would be beyond {context.caps.number:,}.", "use smaller numbers.")
    return families


def _rising(one: Fraction, other: Fraction, whole: Fraction) -> Family:
    return min(one, other), max(one, other), whole


def sentences_of_family(family: Family, sign: str) -> list[str]:
    """Each sentence once: parts first, then the whole first, then undone; = at the end, then at the front."""
    a, b, whole = (written(number, 3) for number in family)
    undo = _UNDOES[sign]
    made = [f"{a} {sign} {b}", f"{b} {sign} {a}"]
    left = [(f"{whole} {undo} {a}", b), (f"{whole} {undo} {b}", a)]
    if family[0] == 0 and sign == "×":
        left = []
    ends = [f"{sum_} = {whole}" for sum_ in made] + [f"{taken} = {rest}" for taken, rest in left]
    fronts = [f"{whole} = {sum_}" for sum_ in made] + [f"{rest} = {taken}" for taken, rest in left]
    return list(dict.fromkeys([*ends, *fronts]))


def _answer(family: Family, sign: str) -> Answer:
    sentences = sentences_of_family(family, sign)
    numbers = [written(number, 3) for number in family]
    says = f"{listed(numbers)}: {', '.join(sentences)}"
    a, b, whole = numbers
    worked = f"The parts are {a} and {b}, the whole is {whole}: {a} {sign} {b} = {whole}."
    data = [number.numerator if number.denominator == 1 else written(number, 3) for number in family]
    return Answer(says, worked, {"family": data, "sentences": sentences})


def _note(sign: str, missing: bool) -> str:
    note = f"Each part comes first once with {sign}, and each is taken from the whole once with {_UNDOES[sign]}."
    note += " Then the same with = near the front. Equal parts give half as many."
    if missing:
        note = f"The missing number is either a part or the whole. {note}"
    return note


def _slip(family: Family, sign: str) -> LikelyError | None:
    a, _, whole = family
    if sign == "×" or a == whole or a == 0:
        return None
    small, large = written(a, 3), written(whole, 3)
    return LikelyError(
        f"Takes the whole from a part: {small} − {large}.", f"{written(whole - a, 3)}, which is {large} − {small}."
    )


def _figures(given: Sequence[Fraction | str], families: Sequence[Family], sign: str) -> tuple[Figure, ...]:
    if sign != "+" or "___" in given:
        return ()
    a, b, whole = (written(number, 3) for number in families[0])
    data = {"whole": whole, "parts": [a, b]}
    return (Figure("part-whole", data, f"A part–whole model: the whole is {whole}, the parts are {a} and {b}."),)


def _tables(families: Sequence[Family], sign: str, context: Context) -> frozenset[int]:
    if sign == "+":
        return frozenset()
    return frozenset().union(*(table_of(a, b, context.year) for a, b, _ in families))


def family_versions(
    fields: NumberSentenceFields, context: Context
) -> Iterator[tuple[NumberSentenceFields, Context, str]]:
    """Families that suit the year, crossing ten before not, the same number missing."""
    year = context.year
    given = [number for number in fields.family or () if isinstance(number, Fraction)]
    ranks = sorted(given)
    for a, b in pairs_for(fields.family_of, context.year):
        whole = a + b if fields.family_of == "+" else a * b
        if whole <= min(year.largest_calculated, year.largest_number):
            new = dict(zip(ranks, map(Fraction, (a, b, whole)), strict=False))
            family = tuple(new.get(old, old) if isinstance(old, Fraction) else old for old in fields.family or ())
            if len(new) == len(given):
                yield (
                    fields.model_copy(update={"family": family}),
                    context,
                    f"The family of {listed([written(n) for n in (a, b, whole)])}.",
                )


def pairs_for(sign: str, year: YearLimits) -> list[tuple[int, int]]:
    """Pairs of parts, or a table and a factor, best first."""
    if sign == "×":
        tables = [table for table in year.tables if table > 1]
        return [(min(t, n), max(t, n)) for n in (6, 7, 8, 9, 4, 3, 12, 11) for t in reversed(tables) if t != n]
    top = year.largest_calculated
    if top >= 100:
        size = min(top, 10_000) // 100
        return [(a * size, b * size) for a, b in ((15, 38), (27, 45), (16, 64), (24, 57), (18, 24), (29, 36))]
    pairs = [(a, b) for a in range(2, top) for b in range(a + 1, top - a + 1)]
    return sorted(pairs, key=lambda pair: (pair[0] % 10 + pair[1] % 10 <= 10, -pair[0], pair[1]))[:200]
