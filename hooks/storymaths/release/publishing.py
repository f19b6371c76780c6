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
from .editions import Editions
from .lock import locked
from .packed import pack
from .refused import Refused
from .trial import try_out
from .unchanged import Changes, keep_dates

Builder = Callable[[Path], None]
"""Builds the site into an empty folder."""


@dataclass(frozen=True, slots=True)
class Asked:
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
    edition: int | None
    """None where nothing was published."""


def publish(editions: Editions, asked: Asked) -> Outcome:
    """Publishes. Until the last step the site is as it was; after it the new one is whole. Raises ``Refused``."""
    editions.open()
    with locked(editions.folder, asked.wait, asked.waiting):
        editions.look()  # while this one waited, another may have published
        editions.tidy()
        aside = editions.aside()
        try:
            asked.build(aside)
            site = read_built(aside, asked.written)
            problems = try_out(site, asked.limits, editions.known_pages(), asked.today)
            if problems:
                return _outcome(site, problems, _since(aside, editions))
            packed = pack(aside, _shown(editions))
            changes = _since(aside, editions)
            number = editions.keep(aside, site.titles())
            editions.show(number)
            return _outcome(site, (), changes, packed, number)
        finally:
            shutil.rmtree(aside, ignore_errors=True)
            editions.tidy()


def rehearse(editions: Editions, asked: Asked) -> Outcome:
    """All of it but the publishing: nothing is written beside the site."""
    editions.look()
    with tempfile.TemporaryDirectory(prefix="storymaths-") as folder:
        aside = Path(folder)
        asked.build(aside)
        site = read_built(aside, asked.written)
        problems = try_out(site, asked.limits, editions.known_pages(), asked.today)
        return _outcome(site, problems, _since(aside, editions))


def go_back(editions: Editions, wait: bool, waiting: Callable[[], None]) -> int:
    """Shows the edition before the current one; asked again, the current one once more. Raises ``Refused``."""
    editions.look()
    if editions.current is None:
        raise Refused(f"There is no earlier edition of {editions.dest} to go back to.")
    editions.open()
    with locked(editions.folder, wait, waiting):
        return editions.go_back()


def _since(aside: Path, editions: Editions) -> Changes:
    return keep_dates(aside, _shown(editions))


def _shown(editions: Editions) -> Path | None:
    current = editions.current
    return editions.path_of(current) if current is not None else None


def _outcome(
    site: BuiltSite, problems: Sequence[Problem], changes: Changes, packed: int = 0, edition: int | None = None
) -> Outcome:
    size = sum(site.files.values())
    return Outcome(problems, len(site.titles()), size, packed or size, changes, edition)
