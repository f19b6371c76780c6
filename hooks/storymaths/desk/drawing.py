"""Draws the desk's templates, in which every word is a word and never HTML."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any
from urllib.parse import quote

import jinja2

from ..model.fields import year_name


def draw(template: str, **values: Any) -> str:
    """A template filled."""
    return _templates().get_template(template).render(**values)


@cache
def _templates() -> jinja2.Environment:
    environment = jinja2.Environment(
        loader=jinja2.FileSystemLoader(Path(__file__).parent / "templates"),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters |= {"year": year_name, "in_address": quote, "pair": lambda one: (one, one)}
    environment.globals["chr10"] = "\n"  # a box's own first line break: HTML takes one away
    return environment
