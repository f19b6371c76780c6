"""Files that stand beside the pages: scripts and their data, and the stylesheet in one piece."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path

from ..model.carried import carried
from ..model.site_settings import Colours, SiteSettings
from ..parse.drawing import served_drawing
from ..render.site import Site
from .class_records import class_records
from .coverage_files import coverage_files
from .data_files import data_files
from .moved_pages import moved_pages
from .page_scripts import page_scripts
from .stands_on import NOTICES, notices

_LOOK = carried("theme") / "look"
PARTS = ("values.css", "pages.css", "activities.css", "controls.css", "weeks.css", "print.css")
"""Values come first: the rest speaks of them by name."""
_FOR_DEVELOPERS = re.compile(r"/\*.*?\*/\s*|^[ \n]+", re.DOTALL | re.MULTILINE)


def assets(site: Site) -> Mapping[str, bytes | str]:
    """What the collection gives: each file's address from the site's root, and what is in it."""
    return {**data_files(site), **coverage_files(site), **class_records(site), **moved_pages(site)}


def picture(file: Path) -> Path | str | None:
    """What is served of a picture's file: a photograph as it is, a drawing as the list of drawings lets it through."""
    return served_drawing(file.read_bytes()) if file.suffix == ".svg" else file


def look(settings: SiteSettings) -> Mapping[str, bytes | str]:
    """What every page needs, whatever the collection holds, besides its letterforms."""
    return {**page_scripts(), "look/site.css": stylesheet(settings.colours), NOTICES: notices(settings.letterforms)}


def stylesheet(colours: Colours = "harbour") -> str:
    """All styles as one file, so that nothing else holds up the first paint; without what is for developers."""
    parts = [_LOOK / part for part in PARTS]
    if colours != "harbour":
        parts.insert(1, _LOOK / "colours" / f"{colours}.css")
    return "".join(_FOR_DEVELOPERS.sub("", part.read_text("utf-8")) for part in parts)
