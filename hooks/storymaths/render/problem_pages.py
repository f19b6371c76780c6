"""What a page shows its author when something is wrong with it."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from pathlib import Path
from typing import Any

import jinja2

from ..model.address import LISTS, link, source_of
from ..model.problem import Problem
from ..model.program_version import WARNED
from ..model.site_settings import FRONT
from .site import Rendered

_TEMPLATES = jinja2.Environment(
    loader=jinja2.FileSystemLoader(Path(__file__).parent / "templates"),
    autoescape=True,
    undefined=jinja2.StrictUndefined,
)


def draw_problems(
    problems: Sequence[Problem], warnings: Sequence[Problem], here: str, pages: Collection[str], *, everything: bool
) -> str:
    """The problems of a page, or everything wrong in the collection, to stand above the page ``here``; empty for none.

    What only warns follows in a list of its own.

    Each leads to the page it is of, where that is one of ``pages``.
    """
    if not problems and not warnings:
        return ""

    def linked(found: Sequence[Problem]) -> list[tuple[Problem, str]]:
        told = [(problem, source_of(problem.place.path)) for problem in found]
        return [(problem, link(of, here) if of in pages and of != here else "") for problem, of in told]

    return _draw(
        "problems.html", problems=linked(problems), warnings=linked(warnings), warned=WARNED, everything=everything,
        front=link(FRONT, here), guide=link(LISTS["guide-problems"], here),
    )  # fmt: skip


def draw_unread(source: str, why: str) -> Rendered:
    """A page that gives nothing to show, and why."""
    title = source.rpartition("/")[2]
    return Rendered(source, title, "", _draw("unread.html", title=title, why=why), "unread", searched=False)


def _draw(template: str, **values: Any) -> str:
    return _TEMPLATES.get_template(template).render(**values)
