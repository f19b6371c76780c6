"""Which idea comes first: every reason a value with its weight, and the next one always the weightiest that is left."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from ..model.reference import Reference
from .gaps import Gaps
from .material import Material
from .reason import (
    BringsTogether,
    CastTakesPart,
    FewWays,
    FirstFor,
    FirstOf,
    LikeOneAbove,
    Noted,
    NumbersChanged,
    NumbersKept,
    OfTheYear,
    OnThePage,
    Reason,
    SmallForTheYear,
    StillMissed,
    SurelyPractised,
)
from .tried import Tried

_NOTED, _EACH_PAGE, _MOST_PAGES, _MOST_NOTED = (20, 8), 3, 6, 2
_KEPT, _CHANGED, _FEW, _SURELY, _OF_YEAR, _SMALL, _CAST = 12, -8, 10, 5, 8, -15, 6
_ON_PAGE, _TOGETHER = 12, 8
_FIRST_FOR, _FIRST_OF, _KIND_AGAIN, _TASK_AGAIN = 10, 15, -8, -16
_MISSED, _MISSED_IN_PART, _MOST_MISSED = 6, 3, 2
_SMALL_BY = 4
Weighed = tuple[Tried, tuple[Reason, ...]]
"""What was tried, and why it is worth proposing."""


def reasons_for(tried: Tried, material: Material, gaps: Gaps, year: int, reference: Reference) -> tuple[Reason, ...]:
    """Why it is worth proposing, apart from what stands above it."""
    found = [
        *_noted(tried, material),
        *_on_the_page(tried, material),
        *_missed(tried, gaps),
        *_practised(tried),
        *_of_the_year(tried, year, reference),
    ]
    if tried.candidate.changes:
        found.append(NumbersChanged(_CHANGED))
    elif not tried.candidate.invented:
        found.append(NumbersKept(_KEPT))
    if (things := len(tried.candidate.uses)) > 1:
        found.append(BringsTogether(things, _TOGETHER))
    if tried.candidate.finds:
        found.append(FewWays(len(tried.solution.answers), _FEW))
    if characters := len(tried.solution.task.characters):
        found.append(CastTakesPart(characters, _CAST))
    return tuple(found)


def _noted(tried: Tried, material: Material) -> Iterator[Reason]:
    """The concepts that the book's notes see, the most often seen first."""
    seen = [concept for concept in material.noted if concept in tried.concepts][:_MOST_NOTED]
    for concept, weight in zip(seen, _NOTED, strict=False):
        pages = material.noted[concept]
        yield Noted(concept, pages, weight + _EACH_PAGE * (min(len(pages), _MOST_PAGES) - 1))


def _on_the_page(tried: Tried, material: Material) -> Iterator[Reason]:
    pages = {page for use in tried.candidate.uses for page in use.pages}
    for note in material.book.maths_on_pages:
        here = sorted(page for page in pages if note.pages.first <= page <= note.pages.last)
        seen = [concept for concept in note.concepts if concept in tried.concepts]
        if here and seen:
            yield OnThePage(seen[0], here[0], _ON_PAGE)
            return


def _missed(tried: Tried, gaps: Gaps) -> Iterator[Reason]:
    told = 0
    for one in tried.practises:
        missing = gaps.misses((one.framework, one.code))
        if missing and told < _MOST_MISSED:
            told += 1
            series, in_part = missing
            yield StillMissed(one.framework, one.code, series, in_part, _MISSED_IN_PART if in_part else _MISSED)


def _practised(tried: Tried) -> Iterator[Reason]:
    yield from (
        SurelyPractised(one.framework, one.code, one.parts, _SURELY) for one in tried.practises[:8] if one.parts
    )


def _of_the_year(tried: Tried, year: int, reference: Reference) -> Iterator[Reason]:
    """Whether it uses what is new in the year, or numbers that are small for it."""
    demands, limits, before = tried.solution.demands, reference.years[year], reference.years.get(year - 1)
    new = (
        demands.signs & set(limits.symbols_new)
        or demands.units & set(limits.units_new)
        or demands.charts & set(limits.charts_new)
    )
    if new or (before and demands.calculated and demands.calculated[-1] > before.largest_calculated):
        yield OfTheYear(_OF_YEAR)
    elif before and demands.operations and demands.largest * _SMALL_BY < before.largest_calculated:
        yield SmallForTheYear(int(demands.largest), _SMALL)


def in_order(found: Sequence[Weighed], material: Material) -> list[Weighed]:
    """The weightiest first, each weighed with what stands above it. What weighs the same stays in order."""
    left, ordered, above = list(found), list[Weighed](), Above(tuple(material.noted))
    while left:
        best = max(left, key=lambda one: _weight(one[1]) + _weight(above.reasons_for(one[0])))
        left.remove(best)
        reasons = (*best[1], *above.reasons_for(best[0]))
        ordered.append((best[0], tuple(sorted(reasons, key=lambda reason: -abs(reason.weight)))))
        above.add(best[0])
    return ordered


@dataclass
class Above:
    """What stands above an idea: how often each kind and task, and the objectives that are practised."""

    noted: tuple[str, ...]
    """The concepts that the book's notes see."""
    kinds: Counter[str] = field(default_factory=Counter)
    tasks: Counter[tuple[str, str]] = field(default_factory=Counter)
    objectives: set[tuple[str, str]] = field(default_factory=set)
    concepts: set[str] = field(default_factory=set)

    def reasons_for(self, tried: Tried) -> tuple[Reason, ...]:
        """Why an idea would come sooner or later for it."""
        found: list[Reason] = []
        first = next((one for one in tried.practises if (one.framework, one.code) not in self.objectives), None)
        if first:
            found.append(FirstFor(first.framework, first.code, _FIRST_FOR))
        new = next((one for one in self.noted if one in tried.concepts and one not in self.concepts), None)
        if new:
            found.append(FirstOf(new, _FIRST_OF))
        if times := self.kinds[tried.kind]:
            same = self.tasks[tried.kind, tried.task]
            found.append(LikeOneAbove(tried.kind, times, same, _KIND_AGAIN * times + _TASK_AGAIN * same))
        return tuple(found)

    def add(self, tried: Tried) -> None:
        """One more."""
        self.kinds[tried.kind] += 1
        self.tasks[tried.kind, tried.task] += 1
        self.concepts |= set(tried.concepts)
        self.objectives |= {(one.framework, one.code) for one in tried.practises}


def _weight(reasons: Sequence[Reason]) -> int:
    return sum(reason.weight for reason in reasons)
