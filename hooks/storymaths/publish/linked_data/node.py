"""A thing said in schema.org's words, and where it is: what every describing function takes and gives."""

from __future__ import annotations

import datetime
from collections.abc import Callable, Sequence
from typing import Any

from ...model.address import LICENCE_IN_WORDS
from ...model.year import YearLimits
from ...parse.body import words_of
from ...render.site import Site

Node = dict[str, Any]
At = Callable[[str], str]
"""The address of a source, as the page being described gives it."""


def work(types: str | list[str], source: str, name: str, says: str, at: At) -> Node:
    """A page of the site as a work: what it is, where, its name and what it is about."""
    url = at(source)
    node: Node = {"@type": types, "@id": url, "url": url, "name": words_of(name)}
    if says:
        node["description"] = words_of(says)
    return node


def licensed(site: Site, source: str, at: At) -> Node:
    """Who publishes a page, under which licence, and whether it costs nothing to use."""
    return {
        "isAccessibleForFree": site.terms(source).free,
        "license": licence_at(site, source, at),
        "publisher": {"@type": "Organization", "name": site.collection.reference.imprint.publisher},
    }


def licence_at(site: Site, source: str, at: At) -> str:
    """Where the licence of a page can be read: as it is published, or in words on the page of credits."""
    return site.terms(source).url or at(LICENCE_IN_WORDS)


def dated(published: datetime.date | None, updated: datetime.date | None) -> Node:
    """When a page was published and last changed, as far as it says so."""
    node: Node = {}
    if published:
        node["datePublished"] = published.isoformat()
    if updated and updated != published:
        node["dateModified"] = updated.isoformat()
    return node


def minutes(number: int) -> str:
    """A length of time as ISO 8601 writes it: 50 is ``PT50M``."""
    return f"PT{number}M"


def ages(years: Sequence[YearLimits]) -> str:
    """The ages of some school years together, youngest to oldest: ``5-8`` for Years 1 to 3."""
    ends = [int(age) for limits in years for age in limits.ages.split("-")]
    return f"{min(ends)}-{max(ends)}"
