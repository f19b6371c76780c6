"""Things of the story shared out, or put in equal groups."""

from __future__ import annotations

from ...activities.saying import counted
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..material import Material
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
    totals = {one.number: one for one in reversed(material.counted)}
    for whole in sorted(totals.values(), key=material.counted.index)[:_MOST_TOTALS]:
        ask = (
            f"Put {counted(whole.number, whole.things)} into equal groups, with more than one in each. Find every way."
        )
        rest: dict[str, Plain] = {
            "things": str(whole.things),
            "total": whole.number,
            "fewest": 2,
            "most": max(2, whole.number // 2),
        }
        lines = activity("share", f"Equal groups of {whole.number} {whole.things}", ask, **rest)
        yield Candidate(lines, (from_counted(whole.number, whole.things, whole.pages),), finds=True)
    for numbers in number_sets(material, limits):
        if numbers.fact.of == "count":
            ask = f"Who can put all their {numbers.fact.things} in pairs, with none left over?"
            yield numbers.with_cast("share", f"In pairs: {numbers.fact.things}", ask, lists=True, each=2)


SEED = Seed("things counted that come out in equal groups", _plant)
