"""A plan of the weeks as one page to print: everything it needs is inside it, so that it can be sent and kept."""

from __future__ import annotations

import base64
import re
from pathlib import Path

from ..render.site import Site
from ..render.weeks_plan import draw_table
from ..weeks.as_text import title_of
from ..weeks.lessons import SeriesRun
from ..weeks.plan import Plan
from .assets import stylesheet
from .fonts import letterforms

_FACE = re.compile(r'url\("\.\./(fonts/[a-z-]+\.woff2)"\)')
_NOWHERE = "plan-of-weeks.md"


def draw_weeks_page(site: Site, run: SeriesRun, plan: Plan, kept: Path) -> str:
    """The page. ``kept`` is the folder in which letterforms are kept."""
    return site.draw(
        "weeks_page.html",
        _NOWHERE,
        title=title_of(run, plan),
        sentences=plan.sentences,
        table=draw_table(site, plan, _NOWHERE, linked=False),
        style=_with_letterforms(stylesheet(), kept),
    )


def _with_letterforms(style: str, kept: Path) -> str:
    faces = {name: base64.b64encode(face).decode("ascii") for name, face in letterforms(kept).items()}
    return _FACE.sub(lambda match: f'url("data:font/woff2;base64,{faces[match.group(1)]}")', style)
