"""Files that stand beside the pages: scripts and their data, the stylesheet in one piece, and the letterforms."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from ..render.site import Site
from .coverage_files import coverage_files
from .data_files import data_files
from .fonts import letterforms
from .moved_pages import moved_pages
from .page_scripts import page_scripts

_LOOK = Path(__file__).parents[2] / "theme" / "look"
PARTS = ("values.css", "pages.css", "activities.css", "controls.css", "weeks.css", "print.css")
"""Values come first: the rest speaks of them by name."""
_NOTE = re.compile(r"/\*.*?\*/\s*", re.DOTALL)


def assets(site: Site) -> Mapping[str, bytes | str]:
    """What the collection gives: each file's address from the site's root, and what is in it."""
    return {**data_files(site), **coverage_files(site), **moved_pages(site)}


def look(kept: Path) -> Mapping[str, bytes | str]:
    """What every page needs, whatever the collection holds. ``kept`` is the folder of what is made once."""
    return {**page_scripts(), "look/site.css": stylesheet(), **letterforms(kept / "letterforms")}


def stylesheet() -> str:
    """All styles as one file, so that nothing else holds up the first paint; notes for developers left out."""
    return "".join(_NOTE.sub("", (_LOOK / part).read_text("utf-8")) for part in PARTS)
