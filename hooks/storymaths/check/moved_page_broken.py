"""Pages that are said to have moved, and have not, or have moved to where there is nothing."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.address import CONTENT
from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.suggestion import did_you_mean

RULE = Rule(
    name="moved-page-broken",
    says="A page that has moved leads straight to a page that is there, and is not itself a page any more.",
    why="A reader with an old address should be one step from what they wanted, and never go round in a circle.",
    source=HOUSE_RULE,
    wrong="{from: books/lift/home-3.md, to: books/lift/home-4.md}, and home-4 has moved to home-2",
    right="{from: books/lift/home-3.md, to: books/lift/home-2.md}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each entry of ``site_data/moved.yaml`` whose old page is there or whose new page is not."""
    reference = collection.reference
    if not reference.moved:
        return
    pages = {page.source for page in collection.without_drafts().documents}
    pages.update(page.source for page in collection.unread)
    pages.update(collection.without_drafts().published_pages)
    for was, moved in reference.moved.items():
        place, target = reference.moved_places[was], moved.leads_to
        if was in pages:
            yield RULE.problem(
                place,
                f"{CONTENT}{was} is said to have moved, and there is a page of that name.",
                "take the entry out, or rename that page: an old address leads to one place only.",
            )
        if target in reference.moved:
            yield RULE.problem(
                place,
                f"{target} has moved itself, to {reference.moved[target].leads_to}.",
                "lead straight to where the page is now.",
            )
        elif target not in pages:
            near = did_you_mean(target, pages)
            yield RULE.problem(
                place,
                f"There is no page {CONTENT}{target} to lead to, or it is a draft.{near}",
                "name a page as its file is named inside content/.",
            )
