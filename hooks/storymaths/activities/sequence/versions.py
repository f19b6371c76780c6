"""Sequences for another year: its own steps and starts, still rising or falling; places nearer or further on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from ...model.activity import Context
from ...model.practice.sequence import SequencePractice
from ...model.year import YearLimits
from ..revalue import easier_first
from ..saying import listed, written
from .number_rules import Rule, Steps, Times, mistakes_in, place_of, rule_through, terms_needed
from .repeating import at_place, units_of
from .say import say_rule
from .tasks import Known, MistakeTask, PatternFields, PatternPlacesTask, RowTask, SaidTask, SequenceTask, Term

Version = tuple[SequenceTask, Context, str]


def versions_of(task: SequenceTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """The same first for a younger year and last for an older one; between them, remade ones."""
    there = replace(context, year=year)
    practice, harder = year.practice.sequence, year.year > context.year.year
    others: Iterator[tuple[SequenceTask, str]] = iter(())
    if isinstance(task, PatternPlacesTask):
        others = _with_places(task, practice)
    elif not isinstance(task, PatternFields):
        others = _with_numbers(task, practice)
    for changed, says in easier_first((task, "The same sequence."), others, harder):
        yield changed, there, says


def _with_places(task: PatternPlacesTask, practice: SequencePractice) -> Iterator[tuple[SequenceTask, str]]:
    """Other places; the pattern stays."""
    count, offered = len(task.places), practice.places
    units = units_of(task.pattern)
    choices = [offered[start : start + count] for start in range(len(offered) - count + 1)]
    # Places at which different things come are asked about first.
    for places in sorted(choices, key=lambda places: -len({at_place(unit, at) for unit in units[:1] for at in places})):
        says = f"The {'places are' if count > 1 else 'place is'} {listed([written(place) for place in places])}."
        yield task.with_places(places), says


def _with_numbers(task: RowTask, practice: SequencePractice) -> Iterator[tuple[SequenceTask, str]]:
    """Other steps and starts; gaps, places and the mistake stay where they are."""
    known = task.known
    right = dict(known)
    if isinstance(task, MistakeTask):
        right |= {place: rule.at(place) for place, rule in mistakes_in(known, task.rule, task.step)[:1]}
    if len(right) < terms_needed(task.rule, task.step):
        return
    old = rule_through(right, task.rule, task.step)
    if old is None:
        return
    for new in _rules(old, len(task.terms), practice):
        changed = _follow(task, right, old, new)
        if changed is not None:
            yield changed, f"It starts at {written(new.at(1))}; {say_rule(new)}."


def _rules(old: Rule, length: int, practice: SequencePractice) -> Iterator[Rule]:
    """Rules of the same sort that rise or fall as the old one does."""
    if isinstance(old, Times):
        for factor in practice.factors:
            for first in practice.multiplied:
                rising = Times(Fraction(first), Fraction(factor))
                falling = Times(rising.at(length), Fraction(1, factor))
                yield rising if old.factor >= 1 else falling
        return
    starts = [Fraction(start) for start in practice.starts]
    if _from_table(old) and 0 <= (times := min(old.first, old.at(length)) / abs(old.step)) <= 12:
        starts.insert(0, times)
    for size in practice.steps:
        for start in starts:
            yield _stepping(old, size, start * size if _from_table(old) else start + size, length)


def _from_table(old: Steps) -> bool:
    """Whether its terms are multiples of its step, so that it counts in a table."""
    return old.step != 0 and old.first % old.step == 0


def _stepping(old: Steps, size: int, start: Fraction, length: int) -> Steps:
    if old.grows:
        grows = Fraction(size if old.grows > 0 else -size)
        step = Fraction(size) if old.step > 0 else Fraction(-size)
        return Steps(start if old.step > 0 else start + size * length * length, step, grows)
    if old.step < 0:
        return Steps(start + size * (length - 1), Fraction(-size))
    return Steps(start, Fraction(size) if old.step else Fraction(0))


def _follow(task: RowTask, right: Known, old: Rule, new: Rule) -> RowTask | None:
    """The task with the new rule's terms; None where what is asked does not carry over."""
    terms: list[Term] = []
    for place, term in enumerate(task.terms, 1):
        off = term - right[place] if isinstance(term, Fraction) else 0
        terms.append(new.at(place) + (off > 0) - (off < 0) if isinstance(term, Fraction) else term)
    if tuple(terms) == task.terms:
        return None
    changed = task.with_terms(tuple(terms), new.step if isinstance(new, Steps) else None)
    if not isinstance(changed, SaidTask):
        return changed
    said = [_carry_over(number, old, new) for number in changed.said]
    carried = tuple(number for number in said if number is not None)
    return changed.with_said(carried) if len(set(carried)) == len(said) else None


def _carry_over(number: Fraction, old: Rule, new: Rule) -> Fraction | None:
    """A number that is said in the new count if the old one was said in the old, else one that is not."""
    place = place_of(old, number)
    if place is not None:
        return new.at(min(place, 15))
    if isinstance(old, Times) or isinstance(new, Times) or abs(new.step) < 2 or not old.step:
        return None
    near = max(1, min(14, int((number - old.first) / old.step) + 1))
    return new.at(near) + (1 if new.step > 0 else -1)
