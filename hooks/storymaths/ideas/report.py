"""Ideas as they are printed: for people, or as data for other programs."""

from __future__ import annotations

import json
from collections.abc import Iterator
from itertools import groupby

from ..model.fields import year_name
from ..model.plain import Plain, as_plain_mapping
from ..model.reference import Reference
from .idea import Idea, Ideas, Practises
from .say_reasons import say_change, say_hardness, say_reason, say_unfed, say_use, say_why_not

_ANSWERS_SHOWN, _REASONS_SHOWN = 6, 6


def as_text(ideas: Ideas, reference: Reference, first: int) -> str:
    """The first so many ideas with all that is known of each; then what nothing in the book can carry."""
    parts = [_opening(ideas, first)]
    parts += ["\n".join(_idea(number, idea, reference)) for number, idea in enumerate(ideas.ideas[:first], start=1)]
    if ideas.not_carried:
        lines = [f"Nothing in this book can carry, for {year_name(ideas.year)}:"]
        for framework, some in groupby(ideas.not_carried, key=lambda one: one.framework):
            lines.append(f"  {reference.frameworks[framework].short_name}")
            lines += [f"    {one.code:<8} {one.says}: {say_why_not(one, ideas.year)}." for one in some]
        parts.append("\n".join(lines))
    if ideas.unfed and ideas.objective is None:
        parts.append(
            "\n".join(["Kinds of activity without an idea here:", *(f"  {say_unfed(one)}." for one in ideas.unfed)])
        )
    return "\n\n".join(parts)


def _opening(ideas: Ideas, first: int) -> str:
    count, shown = len(ideas.ideas), min(first, len(ideas.ideas))
    about = f" for {ideas.objective[1]}" if ideas.objective else ""
    ways = "1 idea" if count == 1 else f"{count} ideas"
    rest = f", the first {shown} of them here" if shown < count else ""
    series = f" Gaps looked at: {', '.join(ideas.series)}." if ideas.series else ""
    had = f" What its pages have already is left out: {ideas.had}." if ideas.had else ""
    return f"{ideas.title}, {year_name(ideas.year)}: {ways}{about}{rest}.{series}{had}"


def _idea(number: int, idea: Idea, reference: Reference) -> Iterator[str]:
    yield f"{number}. {idea.title} ({idea.kind})"
    yield f"   {idea.ask}"
    for framework, some in groupby(idea.practises, key=lambda one: one.framework):
        yield f"   {reference.frameworks[framework].short_name}: {'; '.join(map(_practises, some))}."
    yield f"   Answers: {'; '.join(answer.rstrip('.') for answer in idea.answers[:_ANSWERS_SHOWN])}{_more(idea)}."
    yield f"   How hard: {say_hardness(idea.hardness)}."
    yield f"   From the book: {'; '.join(map(say_use, idea.uses))}."
    if idea.changes:
        yield f"   Changed: {', '.join(map(say_change, idea.changes))}."
    yield f"   Why here: {'; '.join(say_reason(reason, reference) for reason in idea.reasons[:_REASONS_SHOWN])}."
    yield from (f"   {line}" if line else "" for line in idea.fenced.splitlines())


def _practises(one: Practises) -> str:
    return f"{one.code} {one.says[:1].lower() + one.says[1:]}"


def _more(idea: Idea) -> str:
    left = len(idea.answers) - _ANSWERS_SHOWN
    return f"; and {left} more" if left > 0 else ""


def as_json(ideas: Ideas, reference: Reference, first: int) -> str:
    """The same as data: what ``Ideas`` holds, with each reason's name, weight and words, and each block with its fences."""
    return json.dumps(as_record(ideas, reference, first), ensure_ascii=False, indent=2)


def as_record(ideas: Ideas, reference: Reference, first: int) -> dict[str, Plain]:
    """Plain data of the first so many ideas."""
    record = as_plain_mapping(ideas)
    record["ideas"] = [_record(idea, reference) for idea in ideas.ideas[:first]]
    return record


def _record(idea: Idea, reference: Reference) -> Plain:
    reasons: list[Plain] = [
        {"reason": type(reason).__name__, **as_plain_mapping(reason), "says": say_reason(reason, reference)}
        for reason in idea.reasons
    ]
    return {**as_plain_mapping(idea), "weight": idea.weight, "fenced": idea.fenced, "reasons": reasons}
