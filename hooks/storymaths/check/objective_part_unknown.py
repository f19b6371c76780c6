"""Objectives that have parts where a session does not say which it teaches, or names a part that is none of theirs."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.objective import ALL, Objective
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.suggestion import did_you_mean
from .codes_named import NamedCode, codes_named

RULE = Rule(
    name="objective-part-unknown",
    says="Where an objective has parts, a session says which of them it teaches, by the names that its page gives them.",
    why="“Taught” means every part; an objective named whole for the sake of one part is what a school would trust in vain.",
    source=HOUSE_RULE,
    wrong="england-content-domain: [2N1]",
    right="england-content-domain: [2N1: [tens, tens-back]], or [2N1: all] for every part",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each objective taught without its parts, and for each part that is not known or named twice."""
    for named in codes_named(collection):
        objective = collection.reference.objectives.get((named.framework, named.code))
        if objective is None:
            continue  # objective-unknown tells of it
        if objective.has_parts and not named.parts and named.role == "taught":
            yield RULE.problem(
                named.page.place(*named.loc),
                f"{named.code} has parts, and nothing says which of them this session teaches.",
                f"write {named.code}: all, or {named.code}: [{objective.parts[0].id}] with those it teaches of: "
                f"{_listed(objective)}.",
            )
        yield from _parts(named, objective)


def _parts(named: NamedCode, objective: Objective) -> Iterator[Problem]:
    known, seen = [ALL, *(part.id for part in objective.parts)], set[str]()
    for part in named.parts:
        if part not in known and not objective.has_parts:
            yield _problem(named, part, f"{named.code} has no parts.", f"write {named.code} alone.")
            return
        if part not in known:
            unknown = f'"{part}" is not a part of {named.code}.{did_you_mean(part, known)}'
            yield _problem(named, part, unknown, f"use all, or some of: {_listed(objective)}.")
        elif part in seen:
            yield _problem(named, part, f'"{part}" is named twice.', "take one of the two out.")
        elif part == ALL and len(named.parts) > 1:
            fix = f"write {named.code}: all, or the parts alone."
            yield _problem(named, part, '"all" already says every part.', fix)
        seen.add(part)


def _problem(named: NamedCode, part: str, message: str, fix: str) -> Problem:
    return RULE.problem(named.page.place(*named.loc, within=part), message, fix)


def _listed(objective: Objective) -> str:
    return ", ".join(f"{part.id} ({part.says})" for part in objective.parts)
