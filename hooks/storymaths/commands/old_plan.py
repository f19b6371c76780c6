"""Makes a draft session of an old plan: what is recognised in the head, the steps in the body, and all else kept in full."""

from __future__ import annotations

from dataclasses import dataclass, field
from string import Template
from typing import Any

import yaml

from ..model.fields import year_name
from ..model.old_plans import PlanPart
from ..model.reference import Reference
from ..parse.old_plan import facts
from ..parse.old_plan.as_markdown import as_blocks, as_text
from ..parse.old_plan.sections import PlanSection

KEPT = "Kept from the old plan"
_NOT_SAID = 10
"""Minutes of a step that says nothing of its length, until its author does."""
_LISTS: tuple[tuple[PlanPart, str], ...] = (("easier", "easier"), ("harder", "harder"), ("look_for", "look_for"))


@dataclass(slots=True)
class Draft:
    """A page, and what was told apart in the old plan and what was not."""

    head: dict[str, Any]
    body: str = ""
    recognised: list[str] = field(default_factory=list)
    missing: list[str] = field(default_factory=list)

    def take(self, name: str, value: Any, said: str = "") -> None:
        """Puts a value into the head if there is one; otherwise what the starter says stands there."""
        if value:
            self.head[name] = value
            self.recognised.append(f"{name}: {said or value}")
        else:
            self.missing.append(name)

    @property
    def text(self) -> str:
        """The page's text."""
        head = yaml.safe_dump(self.head, sort_keys=False, allow_unicode=True, width=1000)
        return f"---\n{head}---\n\n{self.body}\n"


def draft_of(sections: list[PlanSection], reference: Reference, starter: str, about: dict[str, str | int]) -> Draft:
    """The draft. ``starter`` is the page a new session begins with, ``about`` its book, number and needs, and a title in case."""
    told = {**about, "needs": "[]", "year": 2}
    draft = Draft(yaml.safe_load(Template(starter).substitute(told).split("---\n")[1]))
    title = facts.title_in(sections, reference)
    draft.take("title", as_text(title)[:120] if title else None)
    year = facts.year_in(sections, reference)
    if year is None:
        draft.missing.append("year")
    else:
        draft.take("year", year or "Reception", year_name(year))
    objectives = facts.objectives_in(sections, reference)
    draft.take(
        "objectives", objectives, ", ".join(code for codes in objectives.values() for one in codes for code in one)
    )
    _take_steps(draft, sections)
    words, things = facts.words_in(sections, reference), facts.things_in(sections, reference)
    draft.take("words", {"new": words, "again": []} if words else None, ", ".join(words))
    draft.take("materials", things, ", ".join(str(one["item"]) for one in things))
    for part, name in _LISTS:
        draft.take(name, facts.lines_of_part(part, sections))
    wrong = facts.lines_of_part("misconceptions", sections)
    left = draft.head["misconceptions"][0]
    draft.take("misconceptions", [{**left, "says": says} for says in wrong], "; ".join(wrong))
    question = facts.question_in(sections)
    draft.take("exit_question", {**draft.head["exit_question"], "ask": question} if question else None, question)
    _take_cautions(draft, sections, reference)
    draft.missing += ["concepts", "reads", "summary", "task", "stem_sentences"]
    draft.body = _body(sections)
    return draft


def _take_steps(draft: Draft, sections: list[PlanSection]) -> None:
    steps = [section for section in sections if _is_step(section)]
    names: set[str] = set()
    for section in steps:
        while as_text(section.heading).lower() in names:
            section.heading += " (again)"
        names.add(as_text(section.heading).lower())
    if not steps:
        steps.append(PlanSection("step", KEPT))
        draft.missing.append("steps")
    said = [section.minutes for section in steps]
    whole = facts.minutes_of_all(sections)
    left = (whole or 0) - sum(filter(None, said))
    unsaid = said.count(None)
    each = left // unsaid if unsaid and left >= unsaid else _NOT_SAID
    minutes = [one or each for one in said]
    if unsaid and whole and left >= unsaid:
        last = max(at for at, one in enumerate(said) if one is None)
        minutes[last] += whole - sum(minutes)
    draft.head["steps"] = [
        {"name": as_text(section.heading), "minutes": lasts} for section, lasts in zip(steps, minutes, strict=True)
    ]
    draft.take("minutes", whole or (sum(minutes) if not unsaid else None))
    draft.head["minutes"] = whole or sum(minutes)
    if names:
        draft.recognised.append(f"steps: {'; '.join(section.heading for section in steps)}")
    if unsaid:
        draft.missing.append("minutes of each step")


def _take_cautions(draft: Draft, sections: list[PlanSection], reference: Reference) -> None:
    notes = facts.lines_of_part("cautions", sections)
    general = "risk-assessment"
    if general in reference.cautions:
        draft.take("cautions", [{"risk": general, "note": " ".join(notes)}] if notes else None, " ".join(notes))


def _is_step(section: PlanSection) -> bool:
    """A heading over steps is none itself."""
    return section.part in ("step", "exit") and bool(section.heading and (section.blocks or section.minutes))


def _body(sections: list[PlanSection]) -> str:
    steps = [f"## {as_text(one.heading)}\n\n{as_blocks(one.blocks)}" for one in sections if _is_step(one)]
    rest = [
        (f"#### {as_text(one.heading)}\n\n" if one.heading else "") + as_blocks(one.blocks)
        for one in sections
        if not _is_step(one) and (one.heading or one.blocks)
    ]
    # Before the first step, where a page may say what belongs to none.
    head = [f"## {KEPT}"] if not steps else [f"### {KEPT}"] if rest else []
    return "\n\n".join([*head, *rest, *steps])
