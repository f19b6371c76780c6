"""The first half of a build: read, check, work out. What authors ask for most needs no more than this."""

from __future__ import annotations

import gc
from collections.abc import Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from .activities.memory import Memory
from .check.echoes import without_echoes
from .check.reference_data import as_problems
from .check.rules import check_parts, check_whole
from .model.collection import Collection, Part
from .model.home import Home
from .model.page_fields import PageFields
from .model.problem import Problem
from .model.program_version import is_newer
from .model.reference import Reference
from .model.session import Session
from .naming.print_names import Printed, print_names
from .parse.collection import ContentReader, Progress, silent
from .parse.reference import ReferenceBroken
from .parse.reference_reader import ReferenceReader

if TYPE_CHECKING:
    from .activities.on_pages import PageActivities, PageActivity
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


@dataclass(slots=True)
class _Checked:
    """A part of a collection as it was checked."""

    part: Part
    memory: Memory[WorkedOut]
    """What its activities came to."""
    activities: PageActivities = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)


class ProjectReader:
    """Reads and checks one project. Asked again, it reads, checks and works out only what has changed since."""

    def __init__(self, root: Path) -> None:
        """``root`` is the folder that holds ``content/`` and ``site_data/``."""
        self.root = root
        self._lists, self._content = ReferenceReader(root), ContentReader(root)
        self._read: object = None
        self._reading: Reading | None = None
        self._reference: Reference | None = None
        self._checked: Mapping[str, _Checked] = {}
        self._named: Memory[WorkedOut] = Memory()
        self._printed_before: Printed = {}
        self.examples: Memory[WorkedOut] = Memory()
        """What the examples of the kinds of activity came to, which stand on no author's page."""

    def read(self, progress: Progress = silent) -> Reading:
        """What the project holds, and everything wrong with it; the same object as before where nothing has changed."""
        with no_collecting(first=self._reading is None):
            lists = self._lists.read()
            read = self._content.read(lists, progress) if isinstance(lists, Reference) else lists
            if self._reading is None or read is not self._read:
                self._reading = self._check(self._printed(read))
                self._read = read  # only now: what could not be checked is looked at again
            return self._reading

    def _printed(self, read: Collection | ReferenceBroken) -> Collection | ReferenceBroken:
        """What was read, with what pages name printed in them."""
        if isinstance(read, ReferenceBroken):
            return read
        self._named = Memory(self._named)
        return print_names(read, self._named, self._printed_before)

    def _check(self, read: Collection | ReferenceBroken) -> Reading:
        if isinstance(read, ReferenceBroken):
            return Reading(None, tuple(as_problems(read.faults)))
        before = self._checked
        if read.reference is not self._reference:
            before, self.examples, self._reference = {}, Memory(self.examples), read.reference
        stale = [name for name, part in read.parts.items() if name not in before or not part.is_same(before[name].part)]
        fresh = _check_parts(read.only(stale), {name: self._checked.get(name) for name in stale})
        self._checked = {name: fresh[name] if name in fresh else before[name] for name in read.parts}
        told = {*check_whole(read), *(problem for part in self._checked.values() for problem in part.problems)}
        activities = {path: found for part in self._checked.values() for path, found in part.activities.items()}
        # What only warns hides no problem: a problem is an echo of problems alone.
        last = read.reference.site.checked_with
        problems = without_echoes([problem for problem in told if not is_newer(problem.since, last)])
        warnings = {problem for problem in without_echoes(list(told)) if is_newer(problem.since, last)}
        return Reading(read, tuple(sorted(problems)), activities, tuple(sorted(warnings)))


def read_and_check(root: Path, progress: Progress = silent) -> Reading:
    """Reads ``site_data/`` and ``content/`` under ``root``, works out every activity, and keeps every rule."""
    return ProjectReader(root).read(progress)


def _check_parts(some: Collection, before: Mapping[str, _Checked | None]) -> Mapping[str, _Checked]:
    """Checks the parts of a collection, each given by its name with what it was when it was last checked."""
    checked: dict[str, _Checked] = {}
    owner: dict[str, _Checked] = {}
    for name, last in before.items():
        one = checked[name] = _Checked(some.parts[name], Memory(last.memory if last else None))
        owner |= dict.fromkeys((page.path for page in (*one.part.documents, *one.part.unread)), one)
    for problem in (*_work_out(some, checked.values()), *check_parts(some)):
        owner[problem.place.path].problems.append(problem)
    return checked


def _work_out(some: Collection, parts: Iterable[_Checked]) -> list[Problem]:
    """Every activity worked out once, for all that is made from it; gives what is wrong with them."""
    if not any(page.content.activities or _names_activities(page.fields) for page in some.documents):
        for one in parts:
            one.activities = {page.path: () for page in one.part.documents}
        return []
    from .activities.exit_shown import check_exits  # noqa: PLC0415 - as below
    from .activities.on_pages import activities_of, check_activities  # noqa: PLC0415 - the kinds take half a second to load
    from .activities.page_bends import check_bends  # noqa: PLC0415 - as above
    from .activities.told_claims import check_words  # noqa: PLC0415 - as above

    found: dict[str, tuple[PageActivity, ...]] = {}
    for one in parts:
        one.activities = {page.path: activities_of(page, some, one.memory) for page in one.part.documents}
        one.memory.forget_the_pass_before()
        found |= one.activities
    return [
        *check_activities(found, some.documents),
        *check_bends(some, found),
        *check_exits(some, found),
        *check_words(some, found),
    ]


def _names_activities(fields: PageFields) -> bool:
    return isinstance(fields, Session | Home) and any(bend.activities for bend in fields.bends.values())


@contextmanager
def no_collecting(*, first: bool = True) -> Iterator[None]:
    """Holds the garbage collector back: what is read stays, and looking it over again and again doubles the time.

    What a first reading made is kept out of its sight for good; what later ones leave behind it takes away.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if first:
            gc.freeze()
        if was_on:
            gc.enable()
