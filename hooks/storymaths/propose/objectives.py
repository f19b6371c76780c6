"""Which objectives a session teaches, and which it takes up again: of its concepts, what its activities and words show."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..check.objective_without_trace import lesson_of, stands_in
from ..covers.practised import practised_in
from ..edits.edit import AddItem, Value
from ..model.objective import Objective
from .draft import Draft
from .proposal import Proposal
from .signs import propose_signs

_Reasons = dict[str, str]


def propose_objectives(draft: Draft) -> Iterator[Proposal]:
    """Objectives of the session's year that are not named, with the parts that are seen, where none is named yet."""
    if not draft.lacks("objectives"):
        return
    for framework, objective, parts in _find_shown(draft):
        value: Value = {objective.code: list(parts)} if objective.has_parts else objective.code
        reason = f"{objective.code}, {objective.says} {next(iter(parts.values()))}"
        yield Proposal("objectives", AddItem(("objectives", framework), value), reason)


def propose_revisits(draft: Draft) -> Iterator[Proposal]:
    """What of the year before the concepts hold by which the session teaches its own objectives."""
    if not draft.lacks("revisits"):
        return
    year, reference = draft.fields.year, draft.reference
    taught = (
        {objective.code for _, objective, _ in _find_shown(draft)} if draft.lacks("objectives") else _find_named(draft)
    )
    told = set()
    for concept in draft.concepts:
        known = reference.concepts.get(concept)
        if known is None or taught.isdisjoint(code for codes in known.objectives.values() for code in codes):
            continue
        for framework, codes in known.objectives.items():
            for code in codes if reference.frameworks[framework].rests_on_law else ():
                before = reference.objectives[framework, code]
                if before.year == year - 1 and (framework, code) not in told:
                    told.add((framework, code))  # two concepts may hold it
                    reason = f"{code}, {before.says} (The year before, of the concept {known.name.lower()}.)"
                    yield Proposal("revisits", AddItem(("revisits", framework), code), reason)


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
    return _in_framework_order(draft, found or _only_ones(draft))


def of_concepts(draft: Draft, year: int) -> Iterator[tuple[str, str, list[Objective]]]:
    """For each concept of a session and framework that rests on law, the objectives of a year."""
    for concept in draft.concepts:
        known = draft.reference.concepts.get(concept)
        for framework, codes in known.objectives.items() if known else ():
            if draft.reference.frameworks[framework].rests_on_law:
                every = (draft.reference.objectives[framework, code] for code in codes)
                yield concept, framework, [one for one in every if one.year == year]


def _only_ones(draft: Draft) -> dict[tuple[str, str], _Reasons]:
    """Where nothing is seen: what is the only objective of its concept in the year, with the first of its parts."""
    return {
        (framework, own[0].code): {
            own[0].parts[0].id
            if own[0].parts
            else "": f"(It is what {draft.reference.concepts[concept].name.lower()} comes to in this year.)"
        }
        for concept, framework, own in of_concepts(draft, draft.fields.year)
        if len(own) == 1 and not any(part.trace for part in own[0].parts)
    }


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
        if seen is not None:
            found[part.id] = f"(Its concept is {concept}, and “{seen}” stands in it.)"
    return found


def _is_seen(sign: str, lesson: str, introduced: set[str]) -> bool:
    return stands_in(lesson, sign) if sign[0].isalpha() else sign in introduced
