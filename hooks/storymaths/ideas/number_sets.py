"""The numbers of the cast as a year can use them: as they are in the story, fewer of the cast, or as many times as much."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import accumulate

from ..model.book import Character
from ..model.plain import Plain
from ..model.year import YearLimits
from .candidate import Candidate, activity, everyone
from .idea import Change, FromStory
from .material import Material, NumberFact
from .wording import FactWords

_MOST, _MOST_FACTS = 8, 3
_MOST_TIMES = 1000
"""A story's number grows no further: 9 bricks may become 9,000."""


@dataclass(frozen=True, slots=True)
class NumberSet:
    """Some of the cast with their numbers of one fact, smallest cast first as the book lists them."""

    fact: NumberFact
    who: tuple[Character, ...]
    values: Mapping[str, int]
    cast: Plain
    """What to write after ``cast:``."""
    times: int = 1
    """How many times the story's numbers they are."""

    @property
    def words(self) -> FactWords:
        """How its numbers are spoken of."""
        return FactWords(self.fact)

    @property
    def uses(self) -> tuple[FromStory, ...]:
        """The fact it turns on."""
        return (FromStory(self.fact.means),)

    @property
    def changes(self) -> tuple[Change, ...]:
        """What is other than in the story."""
        if self.times == 1:
            return ()
        return tuple(Change(one.name, self.fact.id, self.fact.values[one.id], self.values[one.id]) for one in self.who)

    @property
    def marks(self) -> frozenset[str]:
        """What the numbers are of."""
        return frozenset({f"of {self.fact.of}"})

    def with_cast(
        self, kind: str, title: str, ask: str, *, finds: bool = False, lists: bool = False, **rest: Plain
    ) -> Candidate:
        """An activity that turns on the fact; ``cast`` where not all of these take part."""
        cast = rest.pop("cast", self.cast)
        lines = activity(kind, title, ask, fact=self.fact.id, cast=cast, **rest)
        return Candidate(lines, self.uses, self.changes, self.marks, finds, lists)

    def with_numbers(self, kind: str, title: str, ask: str, **rest: Plain) -> Candidate:
        """An activity with the numbers alone."""
        return Candidate(activity(kind, title, ask, **rest), self.uses, self.changes, self.marks)

    @property
    def rising(self) -> list[Character]:
        """The characters, the least first."""
        return sorted(self.who, key=lambda one: self.values[one.id])

    def only(self, who: tuple[Character, ...]) -> Plain:
        """What to write after ``cast:`` for some of them, in the book's order."""
        ids = [one.id for one in self.who if one in who]
        return {id_: self.cast[id_] for id_ in ids} if isinstance(self.cast, dict) else list[Plain](ids)


def number_sets(material: Material, limits: YearLimits, fewest: int = 3, least: int = 1) -> Iterator[NumberSet]:
    """Each fact in numbers that suit the year, those of the story before changed ones; no number below ``least``."""
    for fact in _worth_using(material):
        who = tuple(one for one in fact.who if fact.values[one.id] >= least)[:_MOST]
        within = tuple(one for one in who if fact.values[one.id] <= limits.largest_calculated)
        if len(within) >= fewest:
            yield NumberSet(fact, within, _values(fact, within), everyone(material, tuple(one.id for one in within)))
        few = _that_fit(fact, within, limits)
        if fewest <= len(few) < len(within):
            yield NumberSet(fact, few, _values(fact, few), everyone(material, tuple(one.id for one in few)))
        times = min(limits.practice.number_sentence.times, _MOST_TIMES)
        total = sum(_values(fact, who).values())
        grows = not fact.of_body and 10 in limits.tables and total * times <= limits.largest_calculated
        if grows and len(who) >= fewest:
            larger = {one.id: fact.values[one.id] * times for one in who}
            cast: dict[str, Plain] = {one.id: {"name": one.name, fact.id: larger[one.id]} for one in who}
            yield NumberSet(fact, who, larger, cast, times)


def _worth_using(material: Material) -> list[NumberFact]:
    """The first few facts in which not all are equal, no two of them with the same numbers."""
    apart = {tuple(sorted(fact.values.items())): fact for fact in reversed(material.numbers)}
    return [fact for fact in material.numbers if fact in apart.values() and len(set(fact.values.values())) > 1][
        :_MOST_FACTS
    ]


def _values(fact: NumberFact, who: tuple[Character, ...]) -> dict[str, int]:
    return {one.id: fact.values[one.id] for one in who}


def _that_fit(fact: NumberFact, who: tuple[Character, ...], limits: YearLimits) -> tuple[Character, ...]:
    """As many of the smallest as together come to no more than twice what the year adds to."""
    rising = sorted(who, key=lambda one: fact.values[one.id])
    sums = accumulate(fact.values[one.id] for one in rising)
    fitting = {one.id for one, total in zip(rising, sums, strict=True) if total <= 2 * limits.largest_calculated}
    return tuple(one for one in who if one.id in fitting)
