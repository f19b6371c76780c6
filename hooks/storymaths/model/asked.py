"""``site_data/asked.yaml``: words that teachers and parents type into the finder, and what they mean by them here."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from .fields import Id, Strict, Text, Year


class Meaning(Strict):
    """Ways of asking for one thing, and what is meant: what a page must be of, or a filter."""

    id: Id
    says: Annotated[tuple[Text, ...], Field(min_length=1)]
    concepts: tuple[Id, ...] = ()
    """The first is meant most."""
    words: tuple[Text, ...] = ()
    """Of ``words.yaml``; each stands for its concept."""
    themes: tuple[Id, ...] = ()
    years: tuple[Year, ...] = ()
    kinds: tuple[Id, ...] = ()
    pages: tuple[Literal["coverage", "governors", "materials", "plan", "safety", "series", "shelf", "words"], ...] = ()
    """Pages of the whole collection that answer it, by their names in ``LISTS``."""
    nearest: tuple[Id, ...] = ()
    """Concepts to show where no page is of those meant."""


class Asked(Strict):
    """The whole file."""

    passed_over: tuple[Text, ...]
    """Words of a question that say nothing of what is looked for."""
    minutes: tuple[Text, ...]
    """A number before one of these is how long it may take."""
    asked: tuple[Meaning, ...]
