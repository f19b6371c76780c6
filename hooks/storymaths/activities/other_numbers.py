"""Further sets of numbers for an activity, in its own year: of the same shape, with as many answers, its pins kept."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property, partial
from itertools import chain, islice, pairwise
from operator import add
from typing import Any

from pydantic import ValidationError

from ..expression.number_words import ONES
from ..model.activity import Context, Solution
from ..model.effort import GivenUp
from ..model.reference import Reference
from .alike import NUMBER, are_alike, numbers_in, relabelled
from .bending import Version, why_not
from .kind import ActivityFields, Kind, Unsolvable
from .pins import Pinned, pinned
from .solving import solve

MOST_SETS = 5
_MOST_OFFERED, _MOST_SOLVED = 1500, 60
"""Candidates looked at, and those of them worked out."""
_BESIDE = frozenset({"kind", "id", "title", "ask", "answers", "wished", "at_most", "years", "year", "fact", "cast"})
_RELABELLED = frozenset({"sentences", "statements", "whole", "known", "amount", "gaps", "things"})
_SHIFTED = frozenset({"terms", "times"})
_SHIFTS = (1, 2, 3, -1, -2, -3, 4, -4)
_HELD_CLOSE = frozenset({"number-sentence", "bonds", "compare", "sequence", "measure", "clock"})
"""Kinds in which each number matters by itself, and not only how they lie to one another."""
_ANSWERS_HELD_CLOSE = frozenset({"number-sentence", "bonds", "compare"})
_ONLY_MOVED = frozenset({"clock"})
_NOT_OF_NUMBERS = frozenset({"always-sometimes-never"})
"""What turns on a statement, for which other numbers to try it on are no other task."""


@dataclass(frozen=True)
class OtherNumbers:
    """An activity whose further sets of numbers are searched for when they are first asked for, and then kept."""

    kind: Kind[Any]
    fields: ActivityFields
    context: Context
    solution: Solution
    reference: Reference
    raw: Mapping[str, Any]

    @cached_property
    def sets(self) -> tuple[Version, ...]:
        """At most five; none where none fits, and only those found where the search is given up."""
        if not self.solution.answers or self.kind.name in _NOT_OF_NUMBERS:
            return ()
        own = self.context.year
        try:
            held = pinned(self.kind, self.fields, self.context, own, self.fields.years.get(own.year, {}), self.raw)
        except Unsolvable:
            return ()
        sets: list[Version] = []
        with suppress(GivenUp):
            sets.extend(islice(self._found(held), MOST_SETS))
        return tuple(sets)

    def _found(self, held: Pinned) -> Iterator[Version]:
        count = len(self.solution.answers)
        wished = held.fields.model_copy(update={"answers": None, "wished": (count, count)})
        seen = [_given(self.fields, self.context)]
        solved = 0
        for fields, context in islice(self._offered(wished, held), _MOST_OFFERED):
            given = _given(fields, context)
            if not (held.keeps(fields, context) and self._has_the_shape(fields, context)):
                continue
            if any(_nearly_same(given, one) for one in seen):
                continue
            solved += 1
            if solved > _MOST_SOLVED:
                return
            found = self._worked(fields, replace(context, year=held.limits))
            if found and len(found.solution.answers) == count and not why_not(found, held.limits, self.reference):
                seen.append(given)
                yield found

    def _offered(self, fields: ActivityFields, held: Pinned) -> Iterator[tuple[ActivityFields, Context]]:
        of_kind = ((one, context) for one, context, _ in self.kind.versions(fields, held.context, held.limits))
        if fields.fact:
            return of_kind
        if self.kind.name in _ONLY_MOVED:
            return ((one, held.context) for one in self._remade())
        return chain(((one, held.context) for one in self._remade()), of_kind)

    def _remade(self) -> Iterator[ActivityFields]:
        """The activity with numbers that stand for the old ones, or with all of them moved by as much."""
        own = {name: value for name, value in self.raw.items() if name in _RELABELLED}
        says = [line for answer in self.solution.answers for line in (answer.says, answer.worked)]
        if own and self.kind.name in _HELD_CLOSE | {"money"}:
            for stands_for in relabelled(_numbers(list(own.values())), says):
                yield from self._with(own, partial(_standing_for, stands_for))
        moved = {name: value for name, value in self.raw.items() if name in _SHIFTED}
        for by in _SHIFTS if moved else ():
            yield from self._with(moved, partial(add, by))

    def _with(self, own: Mapping[str, Any], change: Callable[[int], int]) -> Iterator[ActivityFields]:
        """The activity with every number of some fields changed; nothing where one cannot be so."""
        new = {**self.raw, **{name: _changed(value, change) for name, value in own.items()}, "answers": None}
        try:
            yield type(self.fields).model_validate(new)
        except ValidationError:
            return

    def _has_the_shape(self, fields: ActivityFields, context: Context) -> bool:
        if _shape(fields) != _shape(self.fields):
            return False
        if fields.fact:
            return _keeps_order(_facts(self.context, fields.fact), _facts(context, fields.fact))
        old, new = _numbers(self.fields), _numbers(fields)
        if self.kind.name in _HELD_CLOSE:
            return are_alike(old, new)
        return max(new, default=0) <= 2 * max(old, default=0) and max(old, default=0) <= 3 * max(new, default=0)

    def _worked(self, fields: ActivityFields, context: Context) -> Version | None:
        try:
            solution = solve(self.kind, fields.model_copy(update={"ask": None}), context)
        except Unsolvable:
            return None
        if self.kind.name in _ANSWERS_HELD_CLOSE and not fields.fact:
            old, new = (" ".join(answer.says for answer in one.answers) for one in (self.solution, solution))
            if NUMBER.sub("#", old) != NUMBER.sub("#", new) or not are_alike(numbers_in(old), numbers_in(new)):
                return None
        if _are_in_fractions(solution) != _are_in_fractions(self.solution):  # half a nut is another task
            return None
        whole = replace(solution, likely_error=None)
        ask, title = (words if not self._is_stale(words) else "" for words in (fields.ask or "", fields.title))
        if ask:
            whole = replace(whole, task=replace(whole.task, ask=ask))
        return Version(fields.model_copy(update={"ask": ask or None, "title": title or _NO_TITLE}), context, whole, "")

    def _is_stale(self, words: str) -> bool:
        """Whether words of the author name a number that may be one of the old set; who takes part is the same."""
        stay = {1, len(self.context.characters), *(value for name, value in self.fields if name in _HOW_MANY)}
        named = {ONES[word] for word in re.findall(r"[a-z]+", words.casefold()) if word in ONES}
        parted = self.kind.name == "fraction" and _PART_BY_NAME.search(words)
        return bool(parted or _BY_NAME.search(words)) or not named <= stay


_HOW_MANY = ("teams", "choose", "parts")
"""Fields that say how a task is done, and are no numbers of it."""
_BY_NAME = re.compile(
    r"\d|\b(?:twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand)\b", re.IGNORECASE
)
_PART_BY_NAME = re.compile(r"\b(?:half|halves|third|quarter|fifth|sixth|eighth|tenth)s?\b", re.IGNORECASE)
_NO_TITLE = "With other numbers"
"""Where the author's title names the old numbers."""
_NUMBER_TO_CHANGE = re.compile(r"(?<![\d:.])\d+")
"""Not the minutes of a time, nor what stands after a point."""


def _are_in_fractions(solution: Solution) -> bool:
    return any("/" in answer.says for answer in solution.answers)


def _standing_for(new: Mapping[int, int], number: int) -> int:
    return new.get(number, number)


def _changed(value: Any, change: Callable[[int], int]) -> Any:
    if isinstance(value, str):
        return _NUMBER_TO_CHANGE.sub(lambda match: str(change(int(match.group()))), value)
    if isinstance(value, Mapping):
        return {name: _changed(one, change) for name, one in value.items()}
    if isinstance(value, list):
        return [_changed(one, change) for one in value]
    return change(value) if type(value) is int else value


def _numbers(value: object) -> list[int]:
    """Every whole number in a value, in order."""
    if isinstance(value, ActivityFields):
        return [number for name, one in value if name not in _BESIDE for number in _numbers(one)]
    if isinstance(value, Mapping):
        return [number for one in value.values() for number in _numbers(one)]
    if isinstance(value, (tuple, list)):
        return [number for one in value for number in _numbers(one)]
    whole = isinstance(value, Fraction) and value.denominator == 1
    return [] if isinstance(value, bool) else numbers_in(str(value) if whole or isinstance(value, str) else repr(value))


def _shape(value: object) -> object:
    """What stays when numbers change: fields, signs, gaps and words."""
    if isinstance(value, ActivityFields):
        return {name: _shape(one) for name, one in value if name not in _BESIDE}
    if isinstance(value, str):
        return NUMBER.sub("#", value)
    if isinstance(value, (bool, range)) or value is None:
        return "range" if isinstance(value, range) else value
    if isinstance(value, (int, Fraction)):
        return "#"
    if isinstance(value, Mapping):
        return tuple((_shape(name), _shape(one)) for name, one in value.items())
    return tuple(map(_shape, value)) if isinstance(value, Sequence) else NUMBER.sub("#", repr(value))


def _facts(context: Context, fact: str) -> dict[str, int]:
    return {one.id: value for one in context.characters if isinstance(value := one.facts.get(fact), int)}


def _keeps_order(old: Mapping[str, int], new: Mapping[str, int]) -> bool:
    """Whether whoever had more has more still, equals are equal, and all are about as large."""
    if old.keys() != new.keys() or not old:
        return False
    rising = sorted(old, key=lambda one: (old[one], new[one]))
    kept = all((old[low] < old[high]) == (new[low] < new[high]) for low, high in pairwise(rising))
    return kept and all(
        before <= 2 * after and 2 * after <= 5 * before
        for before, after in ((max(old.values()), max(new.values())), (sum(old.values()), sum(new.values())))
    )


def _given(fields: ActivityFields, context: Context) -> list[int]:
    """The numbers of a set, by which two are told apart."""
    return [*_numbers(fields), *(_facts(context, fields.fact).values() if fields.fact else ())]


def _nearly_same(one: Sequence[int], other: Sequence[int]) -> bool:
    """Whether two sets differ in less than a third of their numbers."""
    return len(one) == len(other) and 3 * sum(a != b for a, b in zip(one, other, strict=True)) < max(1, len(one))
