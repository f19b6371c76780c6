"""Things of the story shared out, or put in equal groups."""

from __future__ import annotations

from ...activities.saying import counted, owner
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..idea import FromStory
from ..material import Counted, Material
from ..number_sets import number_sets
from .groups import groups_of
from .seed import Seed

_MOST_GROUPS, _MOST_TOTALS = 4, 5


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for groups in groups_of(material)[:_MOST_GROUPS]:
        total = counted(groups.total, groups.things)
        things, holders = str(groups.things), groups.holders
        ask = f"Share {total} equally between {counted(groups.many, holders)}. How many {things} are there for each?"
        lines = activity("share", f"Shares for {holders}", ask, things=things, total=groups.total, among=groups.many)
        if not groups.alike:
            yield Candidate(lines, groups.uses, groups.changes)
        ask = (
            f"There are {total}, and each of the {holders} has {groups.each}. How many {holders} are there?"
            if groups.alike
            else f"There are {total}. Put {groups.each} together each time. How many groups are there?"
        )
        lines = activity(
            "share", f"Groups of {groups.each} {things}", ask, things=things, total=groups.total, each=groups.each
        )
        yield Candidate(lines, groups.uses, groups.changes)
        ask = f"There are {groups.told}. How many {things} is that altogether?"
        lines = activity(
            "share",
            f"{counted(groups.many, holders)} together",
            ask,
            things=things,
            among=groups.many,
            each=groups.each,
        )
        yield Candidate(lines, groups.uses, groups.changes)
    for told, whole, use in _wholes(material):
        ask = f"Put {told} into equal groups, with more than one in each. Find every way."
        rest: dict[str, Plain] = {"total": whole.number, "fewest": 2, "most": max(2, whole.number // 2)}
        lines = activity("share", f"Equal groups: {told}", ask, things=str(whole.things), **rest)
        yield Candidate(lines, (use,), finds=True)
    for numbers in number_sets(material, limits):
        if numbers.fact.of == "count" and not numbers.fact.of_body:
            ask = f"Who can put all their {numbers.fact.things} in pairs, with none left over?"
            yield numbers.with_cast("share", f"In pairs: {numbers.fact.things}", ask, lists=True, each=2)


def _wholes(material: Material) -> list[tuple[str, Counted, FromStory]]:
    """What can be put in groups, as it is told: what the one with the most has, then what the story counts."""
    found = []
    for fact in [one for one in material.of("count") if not one.of_body]:
        most = max(fact.who, key=lambda one: fact.values[one.id])
        whole = Counted(fact.values[most.id], fact.things, ())
        found.append((f"{owner(most.name)} {counted(whole.number, whole.things)}", whole, FromStory(fact.means)))
    totals = {one.number: one for one in reversed(material.counted)}
    found += [
        (counted(one.number, one.things), one, from_counted(one.number, one.things, one.pages))
        for one in sorted(totals.values(), key=material.counted.index)[:_MOST_TOTALS]
    ]
    return found


SEED = Seed("things counted that come out in equal groups", _plant)
