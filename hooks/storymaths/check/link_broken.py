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
from .html_found import Address, Text, addresses_in, texts_of

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
_WITHOUT_ADDRESS = re.compile(r"\[[^\[\]]+\]\[[^\[\]]*\]")
_ON_OTHER_PAGES = (("title",), ("summary",))
"""What lists and cards say of a page as well."""


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each link of a page that leads nowhere. Links to other sites are not followed."""
    lead = _Leads(collection)
    for page in collection.documents:
        for text in texts_of(page):
            for address in addresses_in(text.content):
                elsewhere = text.loc in _ON_OTHER_PAGES
                if (elsewhere or not address.picture) and (why := lead.why_not(page, text, address)):
                    yield RULE.problem(
                        text.place(address.line, address.to or address.written),
                        why,
                        _fix(address),
                    )
        for run in page.content.runs:
            if run.kind == "words" and (mark := _WITHOUT_ADDRESS.search(run.text)):
                yield RULE.problem(
                    page.place_on_line(run.line, mark[0]),
                    f"{mark[0]} looks like a link, and no line of the page says where it leads.",
                    "write the address after the words, as in [the words](../../words.md).",
                )


def _fix(address: Address) -> str:
    if _WEBSITE.match(address.to):
        return f"if it is a website, write https://{address.to}"
    return "correct the link; it is written from the folder of this file."


class _Leads:
    """Says of links whether they lead anywhere."""

    def __init__(self, collection: Collection) -> None:
        self._collection = collection
        self._generated = frozenset(collection.published_pages)
        self._pages = {page.source: page for page in collection.documents}
        self._unread = {page.source for page in collection.unread}
        self._files = {source_of(file) for file in collection.files}

    def why_not(self, page: Document[PageFields], text: Text, address: Address) -> str:
        """What is wrong with a link; nothing if it leads somewhere."""
        if not address.to:
            return "This link has no address, so it leads nowhere."
        if _ELSEWHERE.match(address.to):
            return ""
        if text.loc in _ON_OTHER_PAGES:
            return "The title and the summary stand on other pages too, from where this address leads elsewhere."
        path, _, anchor = address.to.partition("#")
        found = resolve(path, page.source) if path else page.source
        if found not in self._files and found not in self._generated:
            near = did_you_mean(found, {*self._pages, *self._generated})
            moved = self._collection.reference.moved.get(found)
            now = f" It has moved: see {CONTENT}{moved.leads_to}." if moved else near
            return f"The link leads to {CONTENT}{found}, which is not there.{now}"
        if path.endswith(".md") and address.written.startswith("<"):
            return (
                f"A link to a page is written [words]({address.to}): as HTML it leads to the file and not to its page."
            )
        if anchor and found not in self._unread and anchor not in _anchors(found, self._pages, self._collection):
            return f'There is no place called "{anchor}" on {found}.'
        return ""


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
