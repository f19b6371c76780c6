"""The whole story of publishing: build aside, try, pack, and put it in the last one's place in one step."""

from __future__ import annotations

import datetime
import shutil
import tempfile
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from ..model.problem import Problem
from ..model.reference import PublishedLimits
from .built_pages import BuiltSite, read_built
from .lock import hold_lock
from .packed import pack
from .refused import Refused
from .releases import Releases
from .trial import try_out
from .unchanged import Changes, keep_dates

Builder = Callable[[Path], None]
"""Builds the site into an empty folder."""


@dataclass(frozen=True, slots=True)
class Request:
    """What is to be published, where, and how."""

    build: Builder
    limits: PublishedLimits
    written: frozenset[str]
    """Content files, as paths from the project's root."""
    today: datetime.date
    wait: bool = False
    waiting: Callable[[], None] = lambda: None


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of it."""

    problems: Sequence[Problem]
    """Where there are any, nothing was published."""
    pages: int
    size: int
    """Bytes of the site, not packed."""
    packed: int
    """Bytes of the smallest form of each file; the same as ``size`` in a dry run."""
    changes: Changes
    release: int | None
    """None where nothing was published."""


def publish(releases: Releases, request: Request) -> Outcome:
    """Publishes. Until the last step the site is as it was; after it the new one is whole. Raises ``Refused``."""
    releases.open()
    with hold_lock(releases.folder, request.wait, request.waiting):
        releases.look()  # while this one waited, another may have published
        releases.tidy()
        staging = releases.staging()
        try:
            request.build(staging)
            site = read_built(staging, request.written)
            problems = try_out(site, request.limits, releases.known_pages(), request.today)
            if problems:
                return _outcome(site, problems, _compare(staging, releases))
            packed = pack(staging, _current_folder(releases))
            changes = _compare(staging, releases)
            number = releases.keep(staging, site.titles())
            releases.show(number)
            return _outcome(site, (), changes, packed, number)
        finally:
            shutil.rmtree(staging, ignore_errors=True)
            releases.tidy()


def rehearse(releases: Releases, request: Request) -> Outcome:
    """All of it but the publishing: nothing is written beside the site."""
    releases.look()
    with tempfile.TemporaryDirectory(prefix="storymaths-") as folder:
        staging = Path(folder)
        request.build(staging)
        site = read_built(staging, request.written)
        problems = try_out(site, request.limits, releases.known_pages(), request.today)
        return _outcome(site, problems, _compare(staging, releases))


def go_back(releases: Releases, wait: bool, waiting: Callable[[], None]) -> int:
    """Shows the release before the current one; asked again, the current one once more. Raises ``Refused``."""
    releases.look()
    if releases.current is None:
        raise Refused(f"There is no earlier release of {releases.dest} to go back to.")
    releases.open()
    with hold_lock(releases.folder, wait, waiting):
        return releases.go_back()


def _compare(staging: Path, releases: Releases) -> Changes:
    return keep_dates(staging, _current_folder(releases))


def _current_folder(releases: Releases) -> Path | None:
    current = releases.current
    return releases.path_of(current) if current is not None else None


def _outcome(
    site: BuiltSite, problems: Sequence[Problem], changes: Changes, packed: int = 0, release: int | None = None
) -> Outcome:
    size = sum(site.files.values())
    return Outcome(problems, len(site.titles()), size, packed or size, changes, release)
