"""What ``storymaths solve`` prints of an activity: words for people, or data for machines."""

from __future__ import annotations

import json
from collections.abc import Iterator
from fractions import Fraction
from typing import Any

from ..model.activity import Solution
from ..model.fields import year_name
from ..model.reference import Reference
from .bending import Version
from .saying import counted, listed, written
from .work_out import WorkedOut

_PLACES = 3


def as_json(worked: WorkedOut, reference: Reference) -> str:
    """``{kind, count, answers, largest, symbols, fits_years, difficulty, problems}``; null for what is not known."""
    solution = worked.solution
    record: dict[str, Any] = {
        "kind": worked.kind.name if worked.kind else None,
        "count": len(solution.answers) if solution else None,
        "answers": [dict(answer.data) for answer in solution.answers] if solution else [],
        "largest": _as_data(solution.demands.largest) if solution else None,
        "symbols": sorted(solution.demands.signs) if solution else [],
        "fits_years": [year or "Reception" for year in worked.years_it_fits(reference)],
        "difficulty": solution.difficulty if solution else None,
        "problems": [problem.as_record() for problem in worked.problems],
    }
    return json.dumps(record, ensure_ascii=False, indent=2)


def as_text(worked: WorkedOut, reference: Reference) -> str:
    """The task, every answer with its reasoning, what it asks of a year, its versions, and what is wrong."""
    parts: list[str] = []
    if worked.solution is not None:
        parts += ["\n".join(_task(worked, worked.solution)), "\n".join(_answers(worked.solution))]
        fits = listed([year_name(year) for year in worked.years_it_fits(reference)]) or "no year"
        parts.append("\n".join((*_demands(worked.solution), f"Fits {fits}.")))
    parts += ["\n".join(_version(year, version)) for year, version in worked.versions.items() if year != worked.year]
    if worked.problems:
        parts.append("\n".join(str(problem) for problem in worked.problems))
    return "\n\n".join(parts)


def _version(year: int, version: Version) -> Iterator[str]:
    """What another year has; of the same nothing is told twice."""
    if version.same:
        yield f"{year_name(year)}: the same."
        return
    solution = version.solution
    yield f"{year_name(year)}: {version.changed}" if version.changed else f"{year_name(year)}, as its author says:"
    yield f"  {solution.task.ask}"
    if solution.task.shows:
        cards = zip(solution.task.characters, solution.task.shows, strict=False)
        yield f"  {', '.join(f'{character.name} {shown}' for character, shown in cards)}"
    yield from (f"  {line}" for line in solution.task.lines)
    yield from ("  Nothing is written.",) * (not version.written)
    yield from _answers(solution)
    yield from _likely_error(solution)


def _task(worked: WorkedOut, solution: Solution) -> Iterator[str]:
    title = worked.fields.title if worked.fields else ""
    kind = worked.kind.name if worked.kind else ""
    yield f"{title} ({kind})"
    yield solution.task.ask
    if solution.task.shows:
        cards = zip(solution.task.characters, solution.task.shows, strict=False)
        yield "  " + ", ".join(f"{character.name} {shown}" for character, shown in cards)
    yield from (f"  {line}" for line in solution.task.lines)


def _answers(solution: Solution) -> list[str]:
    count = len(solution.answers)
    lines = ["No answer." if not count else f"{counted(count, 'answers')}:"]
    width = max((len(answer.says) for answer in solution.answers), default=0)
    lines += [f"  {answer.says:<{min(width, 48)}}  {answer.worked}" for answer in solution.answers]
    return [*lines, solution.note] if solution.note else lines


def _likely_error(solution: Solution) -> Iterator[str]:
    if solution.likely_error:
        yield f"Likely slip: {solution.likely_error.does} It gives: {solution.likely_error.gives}"


def _demands(solution: Solution) -> Iterator[str]:
    yield from _likely_error(solution)
    signs = " ".join(sorted(solution.demands.signs)) or "none"
    yield f"Largest number {_said(solution.demands.largest)}; signs {signs}; difficulty {solution.difficulty}."


def _said(number: Fraction) -> str:
    return written(number, _PLACES)


def _as_data(number: Fraction) -> int | str:
    return number.numerator if number.denominator == 1 else str(number)
