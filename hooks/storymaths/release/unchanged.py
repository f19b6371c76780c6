"""What is the same as in the release before keeps its date, so that browsers that have it need not fetch it again."""

from __future__ import annotations

import filecmp
import os
from dataclasses import dataclass
from pathlib import Path

from .built_pages import NOT_FOUND


@dataclass(frozen=True, slots=True)
class Changes:
    """How many pages are new, changed and gone."""

    new: int
    changed: int
    gone: int


def keep_dates(now: Path, before: Path | None) -> Changes:
    """Gives each file that has not changed the time of its file before; counts the pages that have.

    Web servers make an entity tag of a file's time and size, and answer a browser that shows it with "not modified".
    """
    new = changed = 0
    for path in sorted(now.rglob("*")):
        if not path.is_file():
            continue
        old = before / path.relative_to(now) if before else None
        page = path.suffix == ".html" and path.name != NOT_FOUND
        if old is None or not old.is_file():
            new += page
        elif filecmp.cmp(path, old, shallow=False):
            about = old.stat()
            os.utime(path, ns=(about.st_atime_ns, about.st_mtime_ns))
        else:
            changed += page
    earlier = [path for path in before.rglob("*.html") if path.name != NOT_FOUND] if before else []
    gone = [path for path in earlier if before and not (now / path.relative_to(before)).exists()]
    return Changes(new, changed, len(gone))
