"""What a session gets out: the things its text names, what its activities and sheets need, for whom and how many."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from ..check.things_used import DOING, Harmless
from ..expression.number_words import ONES, TENS
from ..model.session import Needed, Per
from .draft import Draft

_NEGATED = re.compile(r"\b(?:no|not|without|never|instead of|rather than)\b[^.;:!?\n]{0,25}$")
_ENDS = re.compile(r"[.!?][\"”’')]*\s|\n")


@dataclass(slots=True)
class Seen:
    """A thing that is to be got out, and why."""

    item: str
    reason: str
    per: list[Per] = field(default_factory=list)
    counts: list[int] = field(default_factory=list)
    in_short: bool = False
    """Whether the text has only a shorter name of it."""


def things_of(draft: Draft) -> list[tuple[Needed, str]]:
    """What the session gets out, and of each thing why."""
    seen: dict[str, Seen] = {}
    if draft.fields.reads and "reads" not in draft.made_up:
        seen["picture-book"] = Seen("picture-book", "It is read from.")
    for step in draft.fields.steps:
        for item in (*step.models, *step.alone):
            seen.setdefault(item, Seen(item, f"It is used in “{step.name}”."))
    named = list(_find_named(draft))
    there_too = {one.item for one in named} | {needed.item for needed in draft.fields.materials}
    for one in named:
        if one.in_short and not _may_be_meant(draft, one.item, there_too):
            continue
        there = seen.setdefault(one.item, one)
        there.per += one.per
        there.counts += one.counts
    limits = draft.reference.years.get(draft.fields.year)
    on_paper = limits is not None and limits.writes and "plain-paper" not in seen
    if on_paper and any(one.worked.done for one in draft.activities):
        seen.setdefault("recording-sheet", Seen("recording-sheet", "Its activities have a sheet to write on."))
    for item in list(seen):
        for other in draft.reference.proposals.usual(item).takes:
            seen.setdefault(other, Seen(other, f"The {draft.reference.materials[item].name} is of no use without."))
    return [(_needed(draft, one), one.reason) for one in seen.values()]


def _may_be_meant(draft: Draft, item: str, there_too: set[str]) -> bool:
    """Whether a thing may be what its shorter name stands for, beside the others of the session."""
    if item == "cast-card" and not any(
        one.worked.solution and one.worked.solution.task.characters for one in draft.activities
    ):
        return False
    return there_too.isdisjoint(draft.reference.proposals.usual(item).not_with)


def _needed(draft: Draft, seen: Seen) -> Needed:
    usual = draft.reference.proposals.usual(seen.item)
    per = max(set(seen.per), key=seen.per.count) if seen.per else usual.per
    count = _for_each(max(seen.counts), per, draft) if seen.counts else usual.count
    if seen.item == "cast-card" and draft.book:
        count = len(draft.book.cast)
    return Needed(item=seen.item, count=count, per=per)


def _for_each(number: int, per: Per, draft: Draft) -> int:
    """How many each, where the number is that of the whole class: fifteen plates are one for a pair."""
    children = draft.reference.limits.class_size
    of_them = Needed(item="a", per=per).for_class(children, draft.fields.group_size)
    return number // of_them if 1 < of_them <= number and number % of_them == 0 else number


def _find_named(draft: Draft) -> Iterator[Seen]:
    """Each time the lesson names a thing that is handled, in order."""
    forms = _forms(draft)
    pattern = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, sorted(forms, key=len, reverse=True)))})(?![\w-])")
    prose, harmless = draft.page.prose, Harmless(draft.reference.prose.handling)
    for match in pattern.finditer(prose.lowered):
        at, part = match.start(), prose.part_at(match.start())
        if part.year is not None or part.loc[0] not in DOING or _NEGATED.search(prose.lowered, max(0, at - 40), at):
            continue
        if harmless.is_spoken_of(prose.lowered, at, match.end()):
            continue
        before = _ENDS.split(prose.lowered[max(0, at - 200) : at])[-1]
        after = _ENDS.split(prose.lowered[match.end() : match.end() + 200])[0]
        item = forms[match.group()]
        # Five coins are one set of coins.
        counts = [] if draft.reference.materials[item].name.startswith("set of") else _counts(before)
        in_short = match.group() in draft.reference.proposals.usual(item).also
        yield Seen(item, f"The text says “{match.group()}”.", _for_whom(draft, before, after), counts, in_short)


def _for_whom(draft: Draft, before: str, after: str) -> list[Per]:
    """Whom the sentence around a thing says it is for: what stands nearest counts."""
    found: list[tuple[int, Per]] = []
    for whom, words in draft.reference.proposals.for_whom.items():
        said = re.compile(rf"\b(?:{'|'.join(map(re.escape, words))})\b")
        found += [(len(before) - match.end(), whom) for match in said.finditer(before)]
        found += [(match.start(), whom) for match in said.finditer(after)]
    return [min(found)[1]] if found else []


def _forms(draft: Draft) -> dict[str, str]:
    """The ways a thing is written, and its id. What is no thing of a classroom is named in full or not at all."""
    known = draft.reference.proposals
    found = {}
    for item, material in draft.reference.materials.items():
        if item in known.things or material.apparatus:
            for form in (material.name, material.plural, *material.also, *known.usual(item).also):
                found[form.lower()] = item
    return found


def _counts(before: str) -> list[int]:
    """The number right before a thing, perhaps with a word between."""
    match = re.search(r"(\d+|[a-z]+)(?: (?:loose|large|small|paper|different))? $", before)
    if match is None:
        return []
    number = int(match[1]) if match[1].isdecimal() else {**ONES, **TENS}.get(match[1])
    return [number] if number else []
