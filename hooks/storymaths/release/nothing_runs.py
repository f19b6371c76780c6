"""Every page of the built site carries its policy, and holds nothing that its policy would have to stop."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.problem import Problem
from ..model.rule import Rule
from .built_pages import BuiltSite

RULE = Rule(
    name="published-page-unguarded",
    says="Each finished page has its Content Security Policy first, and no script, style, frame or handler within it.",
    why="Two locks: if words ever pass the first, the browser still runs nothing but the site's own files.",
    source="W3C, Content Security Policy Level 3.",
    wrong='<p onclick="…">',
    right="a script in a file of its own",
)
_NEEDED = ("default-src 'self'", "script-src 'self'", "object-src 'none'", "base-uri 'none'")


def check(site: BuiltSite) -> Iterator[Problem]:
    """A problem for each page without its policy, and for each thing on a page that could run."""
    for address, page in site.pages.items():
        missing = [part for part in _NEEDED if part not in page.policy]
        if missing or "unsafe-inline" in page.policy:
            yield RULE.problem(
                site.place_of(address),
                f"{address} does not open with its Content Security Policy.",
                "see the frame of every page, hooks/theme/main.html.",
            )
        for danger in dict.fromkeys(page.dangers):
            yield RULE.problem(
                site.place_of(address),
                f"{address}: {danger}, which the page's policy forbids.",
                "put scripts and styles in files of their own; an author's page holds none.",
            )
