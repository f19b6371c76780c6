"""The gallery: every kind of activity with an example, its fields and its answers. Authors' reference and test bed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from ..activities.kind import ActivityFields, Kind
from ..activities.memory import Memory
from ..activities.table import KINDS
from ..activities.work_out import WorkedOut, work_out
from ..model.address import LISTS
from ..model.field_notes import notes_of
from ..model.objective import Objective
from ..model.reference import Reference
from ..render.activity import draw_activity
from ..render.screens.pages import draw_screen_to_try
from ..render.screens.table import PLAYED
from ..render.site import Rendered, Site

_READY = "england-ready-to-progress"
_EXAMPLE_YEAR = 2
_TASK_NAMED = "Which of the tasks is meant, by its name."


@dataclass(frozen=True, slots=True)
class Field:
    """A field of a kind as the gallery lists it."""

    name: str
    needed: bool
    says: str


def examples_of(
    kind: Kind[Any], reference: Reference, memory: Memory[WorkedOut] | None = None
) -> list[tuple[str, WorkedOut]]:
    """A kind's own examples, as written and worked out."""
    texts = (kind.example, *kind.more_examples)
    return [
        (text.strip(), work_out(text, "gallery", 1, None, _EXAMPLE_YEAR, reference, memory=memory)) for text in texts
    ]


def fields_of(kind: Kind[Any]) -> Iterator[Field]:
    """The fields a kind adds to those all kinds share."""
    needed = {name: all(_needs(task, name) for task in kind.tasks) for task in kind.tasks for name in task.model_fields}
    shown: set[str] = set()
    for task in kind.tasks:
        for name, field in task.model_fields.items():
            if name not in ActivityFields.model_fields and name not in shown:
                shown.add(name)
                says = notes_of(task).get(name, _TASK_NAMED if name == kind.told_by else "")
                yield Field(field.alias or name, needed[name], says)


def _needs(task: type[ActivityFields], name: str) -> bool:
    return name in task.model_fields and task.model_fields[name].is_required()


def practised(reference: Reference) -> list[tuple[Objective, list[tuple[Kind[Any], str]]]]:
    """Each ready-to-progress criterion of Years 1 and 2, and the kinds that can practise it, with how."""
    by_code: dict[str, list[tuple[Kind[Any], str]]] = {}
    for kind in KINDS.values():
        for code, how in kind.practises.items():
            by_code.setdefault(code, []).append((kind, how))
    criteria = reference.frameworks[_READY].objectives
    return [(criterion, by_code.get(criterion.code, [])) for criterion in criteria if criterion.year <= 2]


def draw_gallery(site: Site) -> Rendered:
    """The gallery page."""
    source, reference = LISTS["gallery"], site.collection.reference
    shown: Mapping[str, list[tuple[str, str]]] = {
        kind.name: [
            (text, draw_activity(site, worked, source, f"example-{kind.name}{f'-{n}' if n > 1 else ''}", level=3))
            for n, (text, worked) in enumerate(examples_of(kind, reference, site.memory), 1)
        ]
        for kind in KINDS.values()
    }
    html = site.draw(
        "gallery.html",
        source,
        kinds=[(kind, shown[kind.name], list(fields_of(kind))) for kind in KINDS.values()],
        shared=[
            Field(name, field.is_required(), notes_of(ActivityFields)[name])
            for name, field in ActivityFields.model_fields.items()
        ],
        practised=practised(reference),
    )
    return Rendered(source, "Kinds of activity", "Every kind of activity, with an example worked out.", html, "gallery")


def draw_examples_to_try(site: Site) -> Rendered:
    """The class screen on which the examples can be tried."""
    reference = site.collection.reference
    return draw_screen_to_try(site, [examples_of(KINDS[name], reference, site.memory)[0][1] for name in PLAYED])
