"""What a page shows its author when something is wrong with it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Any

import jinja2

from ..model.problem import Problem
from .site import Rendered

_TEMPLATES = jinja2.Environment(
    loader=jinja2.FileSystemLoader(Path(__file__).parent / "templates"),
    autoescape=True,
    undefined=jinja2.StrictUndefined,
)


def draw_problems(problems: Sequence[Problem]) -> str:
    """The problems of a page, to stand above it; empty when there are none."""
    return _draw("problems.html", problems=problems) if problems else ""


def draw_unread(source: str) -> Rendered:
    """A page whose front matter gives nothing to show."""
    title = source.rpartition("/")[2]
    return Rendered(source, title, "", _draw("unread.html", title=title), "unread", searched=False)


def _draw(template: str, **values: Any) -> str:
    return _TEMPLATES.get_template(template).render(**values)
