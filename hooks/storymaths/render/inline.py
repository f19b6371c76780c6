"""A line of an author's words into HTML: emphasis, links, gaps to fill, mistakes made on purpose."""

from __future__ import annotations

import re
from dataclasses import replace

from markupsafe import Markup

from ..model.body import Paragraph, Runs
from ..parse.body import read_text
from .body import draw_blocks, draw_runs
from .spoken import GAP_HTML

_GAP = re.compile(r"_{3,}")


def inline(text: str, here: str = "") -> Markup:
    """One line or paragraph, without a paragraph's tags around it. ``here`` is the source it stands in."""
    return _drawn(text, here, told=True)


def asked(text: str, here: str = "") -> Markup:
    """As ``inline``, for a class that is to find out for itself which number sentence is wrong: none is marked."""
    return _drawn(text, here, told=False)


def _drawn(text: str, here: str, told: bool) -> Markup:
    blocks = read_text(text).blocks
    if not told:
        blocks = tuple(replace(b, runs=_untold(b.runs)) if isinstance(b, Paragraph) else b for b in blocks)
    only = blocks[0] if len(blocks) == 1 else None
    html = draw_runs(only.runs, here) if isinstance(only, Paragraph) else draw_blocks(blocks, here)
    return Markup(_GAP.sub(GAP_HTML, html))


def _untold(runs: Runs) -> Runs:
    return tuple(replace(run, marks=tuple(mark for mark in run.marks if mark.name != "wrong")) for run in runs)
