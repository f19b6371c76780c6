"""The steps of a session and the sections of its text go together: what is done to a step is done to its section."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from ..edits.edit import AddSection, Edit, MoveItem, MoveSection, RemoveItem, RemoveSection, RenameSection, SetValue
from .page_text import PageText

_STEPS, _NAME = "steps", "name"


def with_sections(edits: Sequence[Edit], page: PageText) -> list[Edit]:
    """The changes, with those to the sections that follow from them."""
    return [all_of_it for edit in edits for all_of_it in (edit, *_following(edit, page))]


def _following(edit: Edit, page: PageText) -> Iterator[Edit]:
    sections = [section.name for section in page.sections[1:]]
    match edit:
        case SetValue((str(steps), int(at), str(name)), str(new)) if (steps, name) == (_STEPS, _NAME):
            old = _name(page, at)
            if not new or new in sections or "\n" in new:
                return
            if sections.count(old) == 1:
                yield RenameSection(old, new)
            else:
                yield AddSection(new, "", _place(page, at, sections))
        case MoveItem((str(steps), int(at)), to) if steps == _STEPS:
            own, there = _name(page, at), _name(page, to)
            if sections.count(own) == sections.count(there) == 1:
                yield MoveSection(own, sections.index(there))
        case RemoveItem((str(steps), int(at))) if steps == _STEPS:
            name = _name(page, at)
            # What has been written in a section stays, until it is taken out by itself.
            if sections.count(name) == 1 and not any(
                part.text for part in page.sections[sections.index(name) + 1].parts
            ):
                yield RemoveSection(name)


def _name(page: PageText, at: int) -> str:
    steps: Any = (page.raw or {}).get(_STEPS)
    step = steps[at] if isinstance(steps, list) and 0 <= at < len(steps) else None
    return str(step.get(_NAME) or "") if isinstance(step, dict) else ""


def _place(page: PageText, at: int, sections: Sequence[str]) -> int | None:
    """Where the section of a new step goes: behind that of the step before it; None for the end."""
    before = _name(page, at - 1) if at else ""
    return sections.index(before) + 1 if before in sections else None
