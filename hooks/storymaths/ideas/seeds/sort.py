"""The cast sorted by what is so of some and not of others, and by how many they have."""

from __future__ import annotations

from itertools import combinations

from ...activities.rule_language.denial import is_verb_first
from ...activities.saying import counted
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..idea import FromStory
from ..material import Material, NumberFact, YesNoFact
from ..number_sets import number_sets
from ..wording import number_of
from .groups import groups_of
from .seed import Seed

_SECOND_RULES = 2
_LONGEST_LABEL, _FEWEST_NUMBERS, _MOST_NUMBERS = 40, 5, 10


def _plant(material: Material, limits: YearLimits) -> Candidates:
    told = [fact for fact in material.yes_no if len(fact.means) <= _LONGEST_LABEL]
    whole = [fact for fact in material.numbers if len(fact.who) == len(material.book.cast)]
    numbered = [(more, FromStory(fact.means)) for fact in whole if (more := _more_than(fact))]
    for at, fact in enumerate(told):
        rule, use = _yes_or_no(fact), FromStory(fact.means)
        lines = activity("sort", f"Who {fact.means}?", "", cast="all", by=[rule], diagram="hoop")
        yield Candidate(lines, (use,))
        others: list[tuple[Plain, FromStory]] = [
            (_yes_or_no(other), FromStory(other.means)) for other in told[at + 1 :]
        ]
        for other, further in [*others, *numbered][:_SECOND_RULES]:
            lines = activity("sort", "Sort them two ways", "", cast="all", by=[rule, other], diagram="carroll")
            yield Candidate(lines, (use, further))
    for labelled, use in numbered:
        lines = activity("sort", f"Who has {labelled['says']}?", "", cast="all", by=[labelled], diagram="hoop")
        yield Candidate(lines, (use,))
    for numbers in number_sets(material, limits, least=0):
        if len({value % 2 for value in numbers.values.values()}) == 1:
            continue
        title = f"Odd or even {numbers.fact.things}"
        ask = f"Who has an even number of {numbers.fact.things}? Who stays outside the ring?"
        lines = activity("sort", title, ask, cast=numbers.cast, by=[f"even({numbers.fact.id})"], diagram="hoop")
        yield Candidate(lines, numbers.uses, numbers.changes, numbers.marks | {"odd or even"})
    yield from _by_tables(material, limits)


def _yes_or_no(fact: YesNoFact) -> Plain:
    """The fact, with a label for the others where denying it would make no sentence."""
    return fact.id if is_verb_first(fact.means) else {"rule": fact.id, "says": fact.means, "otherwise": "everyone else"}


def _by_tables(material: Material, limits: YearLimits) -> Candidates:
    """The story's numbers by two of its tables, of which some fit both, one or neither."""
    numbers = sorted({one.number for one in material.counted if one.number <= limits.largest_calculated})
    sizes = {one.each for one in groups_of(material)} | {one.many for one in groups_of(material)}
    for first, second in combinations(sorted(size for size in sizes if size in limits.tables and size > 1), 2):
        told: list[Plain] = [*numbers[:_MOST_NUMBERS]]
        by: list[Plain] = [f"multiple(n, {first})", f"multiple(n, {second})"]
        title = f"Numbers of the story: {number_of(first)} and {number_of(second)}"
        lines = activity("sort", title, "", numbers=told, by=by, diagram="venn")
        if len(numbers) >= _FEWEST_NUMBERS:
            yield Candidate(
                lines,
                tuple(from_counted(one.number, one.things, one.pages) for one in material.counted),
                marks=frozenset({"by tables"}),
            )


def _more_than(fact: NumberFact) -> dict[str, Plain] | None:
    """More than the one in the middle; None where nobody or everybody has."""
    values = sorted(fact.values.values())
    middle = values[(len(values) - 1) // 2]
    if values[-1] <= middle:
        return None
    says, otherwise = f"more than {counted(middle, fact.things)}", f"{counted(middle, fact.things)} or fewer"
    if max(len(says), len(otherwise)) > _LONGEST_LABEL:
        return None
    return {"rule": f"{fact.id} > {middle}", "says": says, "otherwise": otherwise}


SEED = Seed("something that is so of some characters and not of others, or a number each", _plant)
