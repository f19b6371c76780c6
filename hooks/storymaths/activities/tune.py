"""Values for a cast, or other numbers, with which an activity comes out in a year as often as is wanted."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

import yaml

from ..model.book import Book
from ..model.effort import GivenUp
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.reference import Reference
from .bending import Version, candidates, say_given_up, why_not
from .block import read_block
from .context import build_context
from .kind import ActivityFields, Unsolvable
from .rules import NO_VERSION
from .saying import counted, written
from .work_out import as_problem

_PROPOSALS = 3
_ANSWERS_SHOWN = 6


@dataclass(frozen=True, slots=True)
class Proposal:
    """Other numbers, as lines to put into the activity, and what comes of them."""

    lines: str
    version: Version


@dataclass(frozen=True, slots=True)
class Tuned:
    """Up to three proposals, the best first, or why there is none."""

    year: int
    answers: tuple[int, int]
    proposals: tuple[Proposal, ...] = ()
    problems: tuple[Problem, ...] = field(default=())


def tune(text: str, year: int, answers: tuple[int, int], book: Book | None, reference: Reference) -> Tuned:
    """Proposes numbers for the activity in ``text``. Characters written out may lack values; they are then found."""
    block = read_block(text)
    if isinstance(block, list):
        return Tuned(year, answers, problems=tuple(block))
    limits = reference.years[year]
    fields = _with_all_values(block.fields).model_copy(update={"answers": None, "wished": answers, "year": year})
    context = build_context(fields, book, "", limits, reference)
    if isinstance(context, list):
        return Tuned(year, answers, problems=tuple(as_problem(error, block) for error in context))
    proposals: list[Proposal] = []
    try:
        for version in candidates(block.kind, fields, context, limits):
            if not why_not(version, limits, reference):
                lines = _as_lines(fields, version)
                proposals += [Proposal(lines, version)] * (lines not in [proposal.lines for proposal in proposals])
            if len(proposals) == _PROPOSALS:
                break
    except Unsolvable as error:
        return Tuned(year, answers, problems=(as_problem(error, block),))
    except GivenUp:
        if not proposals:
            return Tuned(year, answers, problems=(NO_VERSION.problem(block.place(()), *say_given_up(year)),))
    if not proposals:
        few, many = answers
        message = f"No numbers were found for {year_name(year)} with {few} to {many} answers."
        fix = "allow more answers, use fewer characters, or choose an older year."
        return Tuned(year, answers, problems=(NO_VERSION.problem(block.place(()), message, fix),))
    return Tuned(year, answers, tuple(proposals))


def _with_all_values(fields: ActivityFields) -> ActivityFields:
    """The fields with a rising value for each character that lacks one."""
    fact, cast = fields.fact, fields.cast
    if fact is None or not isinstance(cast, Mapping) or all(fact in facts for facts in cast.values()):
        return fields
    taken = [int(facts[fact]) for facts in cast.values() if isinstance(facts.get(fact), int)]
    free = iter(range(max(taken, default=0) + 1, max(taken, default=0) + 1 + len(cast)))
    filled = {id_: facts if fact in facts else {**facts, fact: next(free)} for id_, facts in cast.items()}
    return fields.model_copy(update={"cast": filled})


def _as_lines(fields: ActivityFields, version: Version) -> str:
    """What to write in the activity: the cast's values if it turns on a fact, and every field that changed."""
    lines: dict[str, Any] = {}
    characters = version.context.characters
    if fields.fact and characters:
        lines["cast"] = {character.id: {fields.fact: character.facts[fields.fact]} for character in characters}
    before, after = fields.model_dump(by_alias=True), version.fields.model_dump(by_alias=True)
    lines |= {name: _plain(value) for name, value in after.items() if before[name] != value}
    return yaml.safe_dump(lines, sort_keys=False, allow_unicode=True, default_flow_style=None, width=110).rstrip()


def _plain(value: Any) -> Any:
    """Values as YAML writes them: exact numbers as 3, 2.5 or 3/4."""
    if isinstance(value, Fraction):
        return value.numerator if value.denominator == 1 else str(value)
    if isinstance(value, Mapping):
        return {key: _plain(inner) for key, inner in value.items()}
    return [_plain(inner) for inner in value] if isinstance(value, (list, tuple)) else value


def tuned_as_text(tuned: Tuned) -> str:
    """The proposals for people, or the problems."""
    if tuned.problems:
        return "\n".join(str(problem) for problem in tuned.problems)
    told = ("\n".join(_told(proposal)) for proposal in tuned.proposals)
    return "\n\n".join(f"{number}. {lines}" for number, lines in enumerate(told, start=1))


def _told(proposal: Proposal) -> Iterator[str]:
    solution = proposal.version.solution
    yield proposal.version.changed
    yield from (f"   {line}" for line in proposal.lines.splitlines() if line != "{}")
    yield f"   {counted(len(solution.answers), 'answers')}, largest number {written(solution.demands.largest, 3)}:"
    yield from (f"     {answer.says}" for answer in solution.answers[:_ANSWERS_SHOWN])
    if len(solution.answers) > _ANSWERS_SHOWN:
        yield f"     and {len(solution.answers) - _ANSWERS_SHOWN} more"
