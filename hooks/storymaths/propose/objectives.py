"""Which objectives a session teaches, and which it takes up again: of its concepts, what its activities and words show."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..check.objective_without_trace import lesson_of, stands_in
from ..covers.practised import practised_in
from ..edits.edit import AddItem
from ..model.objective import Objective
from .draft import Draft
from .proposal import Proposal

_Reasons = dict[str, str]


def propose_objectives(draft: Draft) -> Iterator[Proposal]:
    """Objectives of the session's year that are not named, with the parts that are seen, where none is named yet."""
    if not draft.lacks("objectives"):
        return
    for framework, objective, parts in _shown(draft):
        value: object = objective.code if not objective.has_parts else {objective.code: list(parts)}
        assert isinstance(value, str | dict)
        reason = f"{objective.code}, {objective.says} {next(iter(parts.values()))}"
        yield Proposal("objectives", AddItem(("objectives", framework), value), reason)


def propose_revisits(draft: Draft) -> Iterator[Proposal]:
    """What the objectives build on, of the year before, in the concepts of the session."""
    if not draft.lacks("revisits"):
        return
    taught = [(framework, objective) for framework, objective, _ in _shown(draft)]
    if not draft.lacks("objectives"):
        claims = draft.fields.objectives
        named = ((framework, claim.code) for framework, codes in claims.items() for claim in codes)
        taught = [(key[0], draft.reference.objectives[key]) for key in named if key in draft.reference.objectives]
    for framework, code in dict.fromkeys((f, code) for f, objective in taught for code in objective.follows):
        before = draft.reference.objectives[framework, code]
        if before.year == draft.fields.year - 1:
            after = next(objective.code for f, objective in taught if f == framework and code in objective.follows)
            yield Proposal("revisits", AddItem(("revisits", framework), code), f"{after} builds on {code}, {before.says}")


def _shown(draft: Draft) -> list[tuple[str, Objective, Mapping[str, str]]]:
    """The objectives that are seen in the session, and of each the parts, with why."""
    found: dict[tuple[str, str], _Reasons] = {}
    for activity in draft.activities:
        title = activity.worked.fields.title if activity.worked.fields else ""
        for one in practised_in(activity.worked, draft.reference):
            parts = found.setdefault((one.framework, one.objective.code), {})
            parts.update({part.id: f"(“{title}” practises it.)" for part in one.parts})
    lesson = lesson_of(draft.page)
    for concept in draft.concepts:
        known = draft.reference.concepts.get(concept)
        for framework, codes in known.objectives.items() if known else ():
            for code in codes:
                objective = draft.reference.objectives[framework, code]
                if objective.year == draft.fields.year:
                    reasons = _traces(objective, lesson, concept)
                    if reasons:
                        found[framework, code] = reasons | found.get((framework, code), {})
    return [
        (key[0], objective, {part: found[key][part] for part in _in_order(objective, found[key])})
        for key, objective in draft.reference.objectives.items()
        if key in found
    ]


def _in_order(objective: Objective, parts: _Reasons) -> list[str]:
    return [part.id for part in objective.parts if part.id in parts] or list(parts)


def _traces(objective: Objective, lesson: str, concept: str) -> _Reasons:
    found = {}
    for part in objective.parts:
        seen = next((sign for sign in part.trace if stands_in(lesson, sign)), None)
        if seen is not None:
            found[part.id] = f"(Its concept is {concept}, and “{seen}” stands in it.)"
    return found
