"""Which objectives a session teaches, and which it takes up again: of its concepts, what its activities and words show."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from ..activities.work_out import WorkedOut
from ..check.objective_without_trace import lesson_of, stands_in, times_in
from ..covers.marks import marks_of
from ..covers.practised import practised_in
from ..edits.edit import AddItem, Value
from ..model.objective import Objective
from .draft import Draft
from .proposal import Proposal
from .signs import propose_signs

_Reasons = dict[str, str]
"""Of each part that is seen, why; under no name, why the whole is."""
_OFTEN = 4
"""What is taught is spoken of more than once or twice."""


def propose_objectives(draft: Draft) -> Iterator[Proposal]:
    """Objectives of the session's year, where none is named yet, with the parts that are seen; others are hers to tick."""
    if not draft.is_open("objectives"):
        return
    named = _find_named(draft)
    for framework, objective, parts in _find_shown(draft):
        if objective.code in named:
            continue
        known = [part for part in parts if part]
        value: Value = {objective.code: list(known)} if objective.has_parts and known else objective.code
        reason = f"{objective.code}, {objective.says} {next(iter(parts.values()))}"
        yield Proposal("objectives", AddItem(("objectives", framework), value), reason)


def propose_revisits(draft: Draft) -> Iterator[Proposal]:
    """What of the year before the activities take up again, or, of a concept that none of them is of, what it holds there."""
    if not draft.is_open("revisits"):
        return
    reference = draft.reference
    told = {(framework, claim.code) for framework, claims in draft.fields.revisits.items() for claim in claims}
    taught = (
        {objective.code for _, objective, _ in _find_shown(draft)} if draft.lacks("objectives") else _find_named(draft)
    )
    marks = [activity_marks for one in draft.activities if (activity_marks := marks_in(one.worked))]
    for concept, framework, before in of_concepts(draft, draft.fields.year - 1):
        known = reference.concepts[concept]
        if taught.isdisjoint(code for codes in known.objectives.values() for code in codes):
            continue
        is_done = any(reference.practised_by.is_of(concept, one) for one in marks)
        for objective in before:
            key = (framework, objective.code)
            if key in told or (is_done and not any(reference.practised_by.practises(key, one) for one in marks)):
                continue
            told.add(key)  # two concepts may hold it
            reason = f"{objective.code}, {objective.says} (The year before, of the concept {known.name.lower()}.)"
            yield Proposal("revisits", AddItem(("revisits", framework), objective.code), reason)


def _find_named(draft: Draft) -> set[str]:
    return {claim.code for claims in draft.fields.objectives.values() for claim in claims}


def _find_shown(draft: Draft) -> list[tuple[str, Objective, Mapping[str, str]]]:
    """The objectives that are seen in the session, and of each the parts, with why."""
    found: dict[tuple[str, str], _Reasons] = {}
    for activity in draft.activities:
        title = activity.worked.fields.title if activity.worked.fields else ""
        for one in practised_in(activity.worked, draft.reference):
            parts = found.setdefault((one.framework, one.objective.code), {})
            parts.update({part.id: f"(“{title}” practises it.)" for part in one.parts})
    lesson, introduced = lesson_of(draft.page), _signs_introduced(draft)
    for concept, framework, own in of_concepts(draft, draft.fields.year):
        for objective in own:
            if reasons := _traces(draft, objective, lesson, introduced, concept):
                key = (framework, objective.code)
                found[key] = reasons | found.get(key, {})
    return _in_framework_order(draft, found or _practised(draft))


def of_concepts(draft: Draft, year: int) -> Iterator[tuple[str, str, list[Objective]]]:
    """For each concept of a session and framework that rests on law, the objectives of a year."""
    for concept in draft.concepts:
        known = draft.reference.concepts.get(concept)
        for framework, codes in known.objectives.items() if known else ():
            if draft.reference.frameworks[framework].rests_on_law:
                every = (draft.reference.objectives[framework, code] for code in codes)
                yield concept, framework, [one for one in every if one.year == year]


def _practised(draft: Draft) -> dict[tuple[str, str], _Reasons]:
    """Where nothing is seen for sure: what of its concepts an activity can practise; which parts is hers to say."""
    found: dict[tuple[str, str], _Reasons] = {}
    for activity in draft.activities:
        for concept, key in practised_of_concepts(draft, activity.worked, draft.fields.year):
            title = activity.worked.fields.title if activity.worked.fields else ""
            found.setdefault(key, {"": f"(Of the concept {concept}, and “{title}” practises it.)"})
    return found


def practised_of_concepts(draft: Draft, worked: WorkedOut, year: int) -> Iterator[tuple[str, tuple[str, str]]]:
    """Of each concept of the session, the objectives of a year that an activity as it is worked out can practise."""
    marks = marks_in(worked)
    for concept, framework, own in of_concepts(draft, year):
        for objective in own:
            key = (framework, objective.code)
            if draft.reference.practised_by.practises(key, marks):
                yield concept, key


def marks_in(worked: WorkedOut) -> frozenset[str]:
    """The marks of an activity; none where it cannot be worked out."""
    if worked.kind is None or worked.fields is None or worked.solution is None:
        return frozenset()
    return marks_of(worked.kind.name, worked.fields, worked.solution)


def _in_framework_order(
    draft: Draft, found: Mapping[tuple[str, str], _Reasons]
) -> list[tuple[str, Objective, Mapping[str, str]]]:
    return [
        (key[0], objective, {part: found[key][part] for part in _in_order(objective, found[key])})
        for key, objective in draft.reference.objectives.items()
        if key in found
    ]


def _in_order(objective: Objective, parts: _Reasons) -> list[str]:
    return [part.id for part in objective.parts if part.id in parts] or list(parts)


def _signs_introduced(draft: Draft) -> set[str]:
    """The signs that are new in the session: a sign that is known shows nothing of what is taught."""
    proposed = (one.edit for one in propose_signs(draft) if one.field == "symbols.new")
    return {*draft.fields.symbols.new, *(str(edit.value) for edit in proposed if isinstance(edit, AddItem))}


def _traces(draft: Draft, objective: Objective, lesson: str, introduced: set[str], concept: str) -> _Reasons:
    found = {}
    for part in objective.parts:
        named = draft.reference.concepts.keys() & {*part.id.split("-")}
        if named and named.isdisjoint(draft.concepts):
            continue  # 1M1 lists all that is measured
        seen = next((sign for sign in part.trace if _is_seen(sign, lesson, introduced)), None)
        if seen is not None and (not seen[0].isalpha() or _times(part.trace, lesson) >= _OFTEN):
            found[part.id] = f"(Its concept is {concept}, and “{seen}” stands in it.)"
    return found


def _times(words: Sequence[str], lesson: str) -> int:
    """How often any of the words stands in the lesson."""
    return sum(times_in(lesson, word) for word in words)


def _is_seen(sign: str, lesson: str, introduced: set[str]) -> bool:
    return stands_in(lesson, sign) if sign[0].isalpha() else sign in introduced
