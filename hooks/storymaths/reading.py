"""The first half of a build: read, check, work out. What authors ask for most needs no more than this."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from .activities.memory import Memory
from .check.echoes import without_echoes
from .check.reference_data import as_problems
from .check.rules import check_all
from .model.collection import Collection
from .model.home import Home
from .model.page_fields import PageFields
from .model.problem import Problem
from .model.program_version import is_newer
from .model.session import Session
from .naming.print_names import print_names
from .parse.collection import Progress, read_collection, silent
from .parse.reference import ReferenceBroken, read_reference

if TYPE_CHECKING:
    from .activities.on_pages import PageActivities
    from .activities.work_out import WorkedOut


@dataclass(frozen=True)
class Reading:
    """What was read from a project, its activities worked out, and everything wrong with it."""

    collection: Collection | None
    """None when ``site_data/`` itself cannot be used."""
    problems: tuple[Problem, ...]
    activities: PageActivities = field(default_factory=dict)
    """Those of every page, by its path."""
    warnings: tuple[Problem, ...] = ()
    """What breaks a rule that is newer than the version the collection was last checked with: it stops nothing yet."""


def read_and_check(root: Path, progress: Progress = silent, memory: Memory[WorkedOut] | None = None) -> Reading:
    """Reads ``site_data/`` and ``content/`` under ``root``, works out every activity, and keeps every rule.

    What ``memory`` holds is not solved again.
    """
    with no_collecting():
        try:
            reference = read_reference(root)
        except ReferenceBroken as error:
            return Reading(None, tuple(as_problems(error.faults)))
        memory = Memory() if memory is None else memory
        collection = print_names(read_collection(root, reference, progress=progress), memory)
        activities, found = _work_out(collection, memory)
        told, last = (*check_all(collection), *found), reference.site.checked_with
        # What only warns hides no problem: a problem is an echo of problems alone.
        problems = without_echoes([problem for problem in told if not is_newer(problem.since, last)])
        warnings = {problem for problem in without_echoes(told) if is_newer(problem.since, last)}
        return Reading(collection, tuple(sorted(problems)), activities, tuple(sorted(warnings)))


def _work_out(collection: Collection, memory: Memory[WorkedOut] | None) -> tuple[PageActivities, list[Problem]]:
    """Every activity worked out once, for all that is made from it; and what is wrong with them."""
    if not any(page.content.activities or _names_activities(page.fields) for page in collection.documents):
        return {page.path: () for page in collection.documents}, []
    from .activities.on_pages import check_activities, work_out_pages  # noqa: PLC0415 - the kinds take half a second to load
    from .activities.page_bends import check_bends  # noqa: PLC0415 - as above

    activities = work_out_pages(collection, memory)
    return activities, [*check_activities(activities, collection.documents), *check_bends(collection, activities)]


def _names_activities(fields: PageFields) -> bool:
    return isinstance(fields, Session | Home) and any(bend.activities for bend in fields.bends.values())


@contextmanager
def no_collecting() -> Iterator[None]:
    """Holds the garbage collector back: what is read stays, and looking it over again and again doubles the time."""
    was_on = gc.isenabled()
    gc.unfreeze()  # what an earlier reading left may go
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        if was_on:
            gc.enable()
