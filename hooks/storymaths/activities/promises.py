"""Whether a version is what its bend says it is: how large, with which signs, units and times, and who takes part."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from ..model.activity import Context, Solution
from ..model.bend import CLOCKS, YearBend
from ..model.demands import Demands
from ..model.fields import year_name
from ..model.reference import Reference
from ..model.year import YearLimits
from .kind import ActivityFields
from .saying import listed, written

_CLOCK_SAID = {minutes: said for said, minutes in CLOCKS.items()}


def broken_promises(
    fields: ActivityFields, context: Context, solution: Solution, bend: YearBend, reference: Reference
) -> list[str]:
    """What of a bend a version does not keep, in plain reasons; empty when it keeps all. ``context`` is of its year."""
    demands = solution.demands
    # Who chooses a sign for a year that does not meet it of itself chooses the words that go with it.
    return [
        *_too_large(demands, bend),
        *_not_said("sign", demands.signs, bend.signs),
        *_not_said("unit", demands.units, bend.units),
        *_too_fine(demands, bend),
        *_not_in_the_cast(fields, context, bend),
        *(
            ()
            if set(bend.signs or ()) & set(context.year.at_choice.signs)
            else _late_words(solution, context.year, reference)
        ),
    ]


def _too_large(demands: Demands, bend: YearBend) -> Iterator[str]:
    largest = max((abs(number) for number in (*demands.numbers, *demands.calculated)), default=Fraction(0))
    if bend.up_to is not None and largest > bend.up_to:
        yield f"it has {written(largest, 3)}, and the bend says up_to: {bend.up_to}"


def _not_said(what: str, met: frozenset[str], promised: tuple[str, ...] | None) -> Iterator[str]:
    if promised is not None and (others := sorted(met - set(promised))):
        yield f"it has the {what}{'s' if len(others) > 1 else ''} {listed(others)}, and the bend says {what}s: {_list(promised)}"


def _list(promised: tuple[str, ...]) -> str:
    return f"[{', '.join(promised)}]" if promised else "none"


def _too_fine(demands: Demands, bend: YearBend) -> Iterator[str]:
    if bend.clock is not None and demands.clock is not None and demands.clock < bend.clock:
        yield f"it reads the clock to {demands.clock} minutes, and the bend says clock: {_CLOCK_SAID[bend.clock]}"


def _not_in_the_cast(fields: ActivityFields, context: Context, bend: YearBend) -> Iterator[str]:
    if bend.cast is None or isinstance(fields.cast, Mapping):
        return
    if others := [character.name for character in context.characters if character.id not in bend.cast]:
        yield f"{listed(others)} {'are' if len(others) > 1 else 'is'} in it, and the bend says cast: {_list(bend.cast)}"


def _late_words(solution: Solution, limits: YearLimits, reference: Reference) -> Iterator[str]:
    """Words that are read in the task and are new in a later year; shapes may be met by name before."""
    task = solution.task
    read = " ".join((task.ask, *map(str, task.lines), *(task.table.columns if task.table else ()))).casefold()
    for name in sorted(set(solution.demands.words) - solution.demands.shapes):
        word = reference.words.get(name)
        late = word is not None and word.year > limits.year and not word.everyday
        if word and late and any(form.casefold() in read for form in (word.word, *word.also)):
            yield f"it uses the word {name}, which is new in {year_name(word.year)}"
