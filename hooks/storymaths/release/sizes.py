"""Nothing in the built site is larger than its limit: a page, any one file, the whole."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.problem import Place, Problem
from ..model.reference import PublishedLimits
from ..model.rule import HOUSE_RULE, Rule
from .built_pages import BuiltSite

RULE = Rule(
    name="published-too-large",
    says="The finished pages, files and site are within the sizes in site_data/limits.yaml.",
    why="What grows without anybody seeing it is slow on a phone at a kitchen table.",
    source=HOUSE_RULE,
    wrong="a page of 2 MB",
    right="two pages",
)
_FIX = "make it smaller or split it; the limits are in site_data/limits.yaml, under published."


def check(site: BuiltSite, limits: PublishedLimits) -> Iterator[Problem]:
    """A problem for each page, file and site above its limit."""
    for address, size in site.files.items():
        page = address in site.pages
        most = limits.page_bytes if page else limits.file_bytes
        if size > most:
            place = site.place_of(address) if page else Place(address)
            yield RULE.problem(place, f"{address} is {size:,} bytes; {most:,} is the most.", _FIX)
    whole = sum(site.files.values())
    if whole > limits.site_bytes:
        yield RULE.problem(
            Place("site_data/limits.yaml"), f"The site is {whole:,} bytes; {limits.site_bytes:,} is the most.", _FIX
        )
