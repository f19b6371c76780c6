"""The whole story of a build: read, check, work out, render, publish."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from .check.reference_data import as_problems
from .check.rules import check_all
from .model.collection import Collection
from .model.problem import Problem
from .parse.collection import Progress, read_collection, silent
from .parse.reference import ReferenceError, read_reference


@dataclass(frozen=True)
class Reading:
    """What was read from a project, and everything wrong with it."""

    collection: Collection | None
    """None when ``site_data/`` itself cannot be used."""
    problems: tuple[Problem, ...]


def read_and_check(root: Path, progress: Progress = silent) -> Reading:
    """Reads ``site_data/`` and ``content/`` under ``root`` and keeps every rule."""
    try:
        reference = read_reference(root)
    except ReferenceError as error:
        return Reading(None, tuple(as_problems(error.faults)))
    collection = read_collection(root, reference, progress=progress)
    return Reading(collection, tuple(check_all(collection)))
