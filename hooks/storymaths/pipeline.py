"""The whole story of a build: read, check, work out, render, publish."""

from __future__ import annotations

import gc
import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from .check.reference_data import as_problems
from .check.rules import check_all
from .model.collection import Collection
from .model.problem import Problem
from .parse.collection import Progress, read_collection, silent
from .parse.reference import ReferenceBroken, read_reference

_ACTIVITY = re.compile(r"^ *(?:`{3,}|~{3,}) *maths", re.MULTILINE)


@dataclass(frozen=True)
class Reading:
    """What was read from a project, and everything wrong with it."""

    collection: Collection | None
    """None when ``site_data/`` itself cannot be used."""
    problems: tuple[Problem, ...]


def read_and_check(root: Path, progress: Progress = silent) -> Reading:
    """Reads ``site_data/`` and ``content/`` under ``root`` and keeps every rule."""
    with _no_collecting():
        try:
            reference = read_reference(root)
        except ReferenceBroken as error:
            return Reading(None, tuple(as_problems(error.faults)))
        collection = read_collection(root, reference, progress=progress)
        problems = {*check_all(collection), *_activity_problems(collection)}
        return Reading(collection, tuple(sorted(problems)))


def _activity_problems(collection: Collection) -> list[Problem]:
    if not any(_ACTIVITY.search(page.body) for page in collection.documents):
        return []
    from .activities.on_pages import check_activities  # noqa: PLC0415 - the kinds take a quarter of a second to load

    return check_activities(collection)


@contextmanager
def _no_collecting() -> Iterator[None]:
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
