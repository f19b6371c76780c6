"""Nothing in the built site is larger than its limit: a page, any one file, the whole."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.problem import Place, Problem
from ..model.reference import PublishedLimits
from ..model.rule import HOUSE_RULE, Rule
from .built_pages import BuiltSite

RULE = Rule(
    name="published-too-large",
    says="The finished pages, files and site are within their limits.",
    why="What grows without anybody seeing it is slow on a phone at a kitchen table.",
    source=HOUSE_RULE,
    wrong="a page of 2 MB",
    right="two pages",
)


def check(site: BuiltSite, limits: PublishedLimits) -> Iterator[Problem]:
    """A problem for each page, file and site above its limit."""
    for address, size in site.files.items():
        page = address in site.pages
        name, most = ("page_bytes", limits.page_bytes) if page else ("file_bytes", limits.file_bytes)
        if size > most:
            place = site.place_of(address) if page else Place(address)
            yield RULE.problem(place, f"{address} is {size:,} bytes; {most:,} is the most.", _fix(name, size))
    whole = sum(site.files.values())
    if whole > limits.site_bytes:
        told = f"The site is {whole:,} bytes; {limits.site_bytes:,} is the most."
        yield RULE.problem(Place("site"), told, _fix("site_bytes", whole))


def _fix(limit: str, size: int) -> str:
    return (
        "make it smaller or split it; or allow more in site_data/limits.yaml (make that file if you have none): "
        f"published: {{{limit}: {size}}}"
    )
