"""What one file of ``site_data/`` says of another must hold: ids once only, and every id named exists."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence

from ..model.concept import Concept
from ..model.document import Fault, Loc, Locator
from ..model.holiday import BankHolidays
from ..model.objective import ALL
from ..model.page_schemas import SCHEMAS
from ..model.reference import Reference

_FRIDAY = 4
Listed = Mapping[str, Sequence[tuple[str, str]]]
"""By file: the list's key and the id of each item, in the order written."""


def faults_in_links(reference: Reference, listed: Listed, locators: Mapping[str, Locator]) -> Iterator[Fault]:
    """Every id written twice, every name that leads nowhere, and every day outside the years its list is for."""
    for file, items in listed.items():
        seen: set[str] = set()
        for index, (key, item) in enumerate(items):
            if item in seen:
                yield Fault("duplicate", locators[file].place((key, index)), item, "is already in this list")
            seen.add(item)
    yield from _parts_twice(reference, locators)
    yield from _asked_twice(reference, locators)
    yield from faults_in_bank_holidays(reference.bank_holidays, locators["bank_holidays.yaml"])
    order = {file: {item: index for index, (_, item) in enumerate(items)} for file, items in listed.items()}
    for file, loc, name, known in _names(reference, order):
        if name not in known:
            place = locators[file].place(loc)
            yield Fault("mistyped", place, _field(loc), f'is "{name}", which is not a known id')


def faults_in_bank_holidays(bank: BankHolidays, locator: Locator) -> Iterator[Fault]:
    """Days outside the years of the list, on another day than usual, and years that lack one."""
    years = range(bank.first_year, bank.last_year + 1)
    for index, day in enumerate(bank.holidays):
        usual = next((one for one in bank.each_year if day.name.startswith(one.name)), None)
        why = "" if day.date.year in years else f"outside the years {bank.first_year} to {bank.last_year}"
        if not why and not day.moved and day.date.weekday() > _FRIDAY:
            why = "a Saturday or Sunday; its substitute stands in this list"
        if not why and usual and not day.moved and not usual.is_usual(day.date):
            why = f"and {usual.name} is {usual.when}; if it was moved, add moved: and who says so"
        if why:
            place = locator.place(("holidays", index, "date"))
            yield Fault("mistyped", place, "date", f"is {day.date}, {why}")
    for year, one in ((year, one) for year in years for one in bank.each_year):
        if not any(day.date.year == year and day.name.startswith(one.name) for day in bank.holidays):
            told = f"has no {one.name} in {year}; every year has one, {one.when}"
            yield Fault("mistyped", locator.place(("holidays",)), "holidays", told)


def _field(loc: Loc) -> str:
    """The field a place is in: what is an item of a list is told by the list's name."""
    return next(str(step) for step in reversed(loc) if isinstance(step, str))


def _parts_twice(reference: Reference, locators: Mapping[str, Locator]) -> Iterator[Fault]:
    """Parts of one objective with one id, or with the word that stands for every part."""
    for framework in reference.frameworks.values():
        for row, objective in enumerate(framework.objectives):
            seen = {ALL}
            for index, part in enumerate(objective.parts):
                if part.id in seen:
                    place = locators[f"curricula/{framework.id}.yaml"].place(("objectives", row, "parts", index, "id"))
                    yield Fault("duplicate", place, part.id, "is already in this list")
                seen.add(part.id)


def _asked_twice(reference: Reference, locators: Mapping[str, Locator]) -> Iterator[Fault]:
    """Ways of asking that stand in two places, so that one would never be meant."""
    seen: set[str] = set()
    for row, meaning in enumerate(reference.asked.asked):
        for index, words in enumerate(meaning.says):
            if words.lower() in seen:
                place = locators["asked.yaml"].place(("asked", row, "says", index))
                yield Fault("duplicate", place, words, "is already in this list")
            seen.add(words.lower())


Named = tuple[str, Loc, str, Container[str]]


def _names(reference: Reference, order: Mapping[str, Mapping[str, int]]) -> Iterator[Named]:
    """Every name one item gives of another: its file, where, the name, and what it may be."""
    for concept in reference.concepts.values():
        yield from _names_in_concept(concept, order["concepts.yaml"][concept.id], reference)
    for word in reference.words.values():
        loc = ("words", order["words.yaml"][word.word], "concept")
        yield "words.yaml", loc, word.concept, reference.concepts
    yield from _names_asked(reference)
    yield from _names_practised(reference)
    for material in reference.materials.values():
        for hazard in material.hazards:
            loc = ("materials", order["materials.yaml"][material.id], "hazards")
            yield "materials.yaml", loc, hazard, reference.cautions
    for row, area in enumerate(reference.areas.values()):
        for index, risk in enumerate(area.own_cautions):
            yield "areas.yaml", ("areas", row, "own_cautions", index), risk, reference.cautions
    for index, thing in enumerate(reference.prose.handling.things):
        for hazard in thing.hazards:
            yield "prose.yaml", ("handling", "things", index, "hazards"), hazard, reference.cautions
    for item, usual in reference.proposals.things.items():
        yield "proposals.yaml", ("things", item, "[key]"), item, reference.materials
        for index, other in enumerate(usual.takes):
            yield "proposals.yaml", ("things", item, "takes", index), other, reference.materials
    for risk in reference.proposals.notes:
        yield "proposals.yaml", ("notes", risk, "[key]"), risk, reference.cautions
    units = reference.facts.units
    for index, made in enumerate(units.makes):
        yield "facts.yaml", ("units", "makes", index, "one"), made.one, units.names
        yield "facts.yaml", ("units", "makes", index, "of"), made.of, units.names
    for index, day in enumerate(reference.bank_holidays.holidays):
        grounds = [ground.id for ground in reference.bank_holidays.grounds]
        yield "bank_holidays.yaml", ("holidays", index, "by"), day.by, grounds
    for framework in reference.frameworks.values():
        file = f"curricula/{framework.id}.yaml"
        codes = {objective.code for objective in framework.objectives}
        if framework.replaced_by:
            yield file, ("replaced_by",), framework.replaced_by, reference.frameworks
        for index, objective in enumerate(framework.objectives):
            yield file, ("objectives", index, "strand"), objective.strand, framework.strands
            for before in objective.follows:
                yield file, ("objectives", index, "follows"), before, codes
            if objective.replaced_by:
                known = {f"{name}:{code}" for name, code in reference.objectives}
                yield file, ("objectives", index, "replaced_by"), objective.replaced_by, known


def _names_in_concept(concept: Concept, index: int, reference: Reference) -> Iterator[Named]:
    file = "concepts.yaml"
    yield file, ("concepts", index, "strand"), concept.strand, reference.strands
    if concept.under:
        yield file, ("concepts", index, "under"), concept.under, reference.concepts
    for framework, codes in concept.objectives.items():
        loc: Loc = ("concepts", index, "objectives", framework)
        yield file, loc, framework, reference.frameworks
        if framework in reference.frameworks:
            known = {objective.code for objective in reference.frameworks[framework].objectives}
            for code in codes:
                yield file, loc, code, known


def _names_practised(reference: Reference) -> Iterator[Named]:
    file, practised = "practised.yaml", reference.practised_by
    for framework, codes in practised.objectives.items():
        yield file, ("objectives", framework), framework, reference.frameworks
        if framework in reference.frameworks:
            known = {objective.code for objective in reference.frameworks[framework].objectives}
            yield from ((file, ("objectives", framework, code), code, known) for code in codes)
    for concept in practised.concepts:
        yield file, ("concepts", concept), concept, reference.concepts


def _names_asked(reference: Reference) -> Iterator[Named]:
    for row, meaning in enumerate(reference.asked.asked):
        for part, names, known in (
            ("concepts", meaning.concepts, reference.concepts),
            ("words", meaning.words, reference.words),
            ("themes", meaning.themes, reference.themes),
            ("kinds", meaning.kinds, SCHEMAS),
            ("nearest", meaning.nearest, reference.concepts),
        ):
            for index, name in enumerate(names):
                yield "asked.yaml", ("asked", row, part, index), name, known
