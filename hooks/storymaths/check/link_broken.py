"""Links that lead to no page, no file, or no place on a page."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from ..model.address import CONTENT, LISTS, resolve, slug, source_of
from ..model.body import Heading
from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.suggestion import did_you_mean
from .html_found import Address, addresses_in

RULE = Rule(
    name="link-broken",
    says="A link within the site leads to a page that is there, and to a heading that is on it.",
    why="A reader who meets one dead link trusts no link.",
    source=HOUSE_RULE,
    wrong="[the words](../words.md)",
    right="[the words](../../words.md)",
)
_WEBSITE = re.compile(r"www\.|[\w-]+(\.[\w-]+)*\.(com|org|net|uk|co|info|example)(/|$)", re.IGNORECASE)
_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//", re.IGNORECASE)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each link of a body that leads nowhere. Links to other sites are not followed."""
    generated = frozenset(collection.generated_pages)
    pages = {page.source: page for page in collection.documents}
    unread = {page.source for page in collection.unread}
    files = {source_of(file) for file in collection.files}
    for source, page in pages.items():
        for address in addresses_in(page.content):
            target = address.to
            if address.picture:
                continue
            if _ELSEWHERE.match(target):
                continue
            path, _, anchor = target.partition("#")
            found = resolve(path, source) if path else source
            if found not in files and found not in generated:
                known = {*pages, *generated}
                if _WEBSITE.match(target):
                    yield RULE.problem(
                        page.place_on_line(address.line, target),
                        f"The link leads to a page of this site called {target}, which is not there.",
                        f"if it is a website, write https://{target}",
                    )
                    continue
                near = did_you_mean(found, known)
                moved = collection.reference.moved.get(found)
                now = f" It has moved: see {CONTENT}{moved.leads_to}." if moved else near
                yield _problem(page, address, f"The link leads to {CONTENT}{found}, which is not there.{now}")
            elif anchor and found not in unread and anchor not in _anchors(found, pages, collection):
                yield _problem(page, address, f'There is no place called "{anchor}" on {found}.')


def _problem(page: Document[PageFields], address: Address, message: str) -> Problem:
    return RULE.problem(
        page.place_on_line(address.line, address.to),
        message,
        "correct the link; it is written from the folder of this file.",
    )


def _anchors(source: str, pages: Mapping[str, Document[PageFields]], collection: Collection) -> set[str]:
    reference = collection.reference
    if source in pages:
        return {heading.anchor for heading in pages[source].content.every(Heading)}
    listed = {
        LISTS["words"]: map(slug, reference.words),
        LISTS["materials"]: iter(reference.materials),
        LISTS["safety"]: iter(reference.cautions),
    }
    return set(listed.get(source, ()))
