"""The feed against RFC 4287, The Atom Syndication Format: the rules of its sections, named beside each check.

It is also read by ``feedparser``, as a reader's own program would.
"""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise
from urllib.parse import urlsplit

import feedparser
import pytest
from lxml import etree
from project import collection
from storymaths.model.collection import Collection
from storymaths.model.home import Home
from storymaths.model.session import Session
from storymaths.model.site_settings import SiteSettings
from storymaths.publish.open_data.feed import ADDRESS, NEWEST, feed
from storymaths.publish.open_data.feed import entries as entries_of
from storymaths.publish.open_data.files import open_data
from storymaths.render.site import Site

SETTINGS = SiteSettings("Plover Quay", url="https://ploverquay.example/")
ATOM = {"a": "http://www.w3.org/2005/Atom"}
ONE, AT_MOST_ONE = (1, 1), (0, 1)
FEED = {"id": ONE, "title": ONE, "updated": ONE, "generator": AT_MOST_ONE, "icon": AT_MOST_ONE, "logo": AT_MOST_ONE,
        "rights": AT_MOST_ONE, "subtitle": AT_MOST_ONE}  # fmt: skip
"""How many of each element a feed has. Source: RFC 4287, section 4.1.1."""
ENTRY = {"id": ONE, "title": ONE, "updated": ONE, "content": AT_MOST_ONE, "published": AT_MOST_ONE,
         "rights": AT_MOST_ONE, "source": AT_MOST_ONE, "summary": AT_MOST_ONE}  # fmt: skip
"""The same for an entry. Source: RFC 4287, section 4.1.2."""
ALLOWED = {
    "feed": {*FEED, "author", "category", "contributor", "link", "entry"},
    "entry": {*ENTRY, "author", "category", "contributor", "link"},
}
_MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?(Z|[+-]\d\d:\d\d)")
"""RFC 4287, section 3.3: RFC 3339, with capital T and Z."""


def site(whole: Collection | None = None) -> Site:
    return Site(whole or collection(), settings=SETTINGS)


@pytest.fixture(scope="module")
def root() -> etree._Element:
    return etree.fromstring(feed(site()).encode())


def entries(root: etree._Element) -> list[etree._Element]:
    return list(root.findall("a:entry", ATOM))


def text(element: etree._Element, name: str) -> str:
    return str(element.findtext(f"a:{name}", namespaces=ATOM))


def test_every_element_is_there_as_often_as_it_may_be(root: etree._Element) -> None:
    for element, counts in [(root, FEED), *((entry, ENTRY) for entry in entries(root))]:
        kind = etree.QName(element).localname
        assert {etree.QName(child).localname for child in element} <= ALLOWED[kind]
        for name, (least, most) in counts.items():
            assert least <= len(element.findall(f"a:{name}", ATOM)) <= most, name


def test_ids_are_absolute_and_each_is_one_thing(root: etree._Element) -> None:
    """RFC 4287, section 4.2.6: an IRI with its scheme, that stays when the feed moves."""
    ids = [text(element, "id") for element in (root, *entries(root))]
    assert all(urlsplit(name).scheme == "urn" for name in ids)
    assert len(ids) == len(set(ids))
    moved = Site(collection(), settings=replace(SETTINGS, url="https://elsewhere.example/"))
    there = etree.fromstring(feed(moved).encode())
    assert [text(element, "id") for element in (there, *entries(there))] == ids


def test_moments_are_written_as_they_must_be(root: etree._Element) -> None:
    moments = [e.text for e in root.iter() if etree.QName(e).localname in ("updated", "published")]
    assert all(_MOMENT.fullmatch(str(moment)) for moment in moments)
    assert text(root, "updated") == max(text(entry, "updated") for entry in entries(root))


def test_somebody_wrote_it(root: etree._Element) -> None:
    """RFC 4287, sections 4.1.1 and 4.2.1: an author for the feed serves its entries; a person has one name."""
    (author,) = root.findall("a:author", ATOM)
    assert text(author, "name") == collection().reference.imprint.publisher


def test_links_say_what_they_are(root: etree._Element) -> None:
    """RFC 4287, section 4.1.1: a link to itself, and no two alternates of one type and language."""
    selves = [link.get("href") for link in root.findall("a:link", ATOM) if link.get("rel") == "self"]
    assert selves == [f"{SETTINGS.url}{ADDRESS}"]
    for element in (root, *entries(root)):
        others = [link for link in element.findall("a:link", ATOM) if link.get("rel") == "alternate"]
        assert len(others) == 1, "an entry without content has an alternate (section 4.1.2)"
        assert str(others[0].get("href")).startswith(SETTINGS.url)


def test_a_feed_reader_reads_it() -> None:
    read = feedparser.parse(feed(site()))
    assert not read.bozo, read.get("bozo_exception")
    assert read.version == "atom10"
    assert read.feed.title == "Plover Quay: new and changed"
    newest = read.entries[0]
    assert newest.link == "https://ploverquay.example/books/twenty-lamps/session-3.html"
    assert newest.updated_parsed[:3] == (2026, 11, 23)
    assert newest.published_parsed[:3] == (2026, 10, 5)
    assert newest.summary.startswith("Changed: Going deeper has a third part")
    assert {"Year 2", "Equal groups"} <= {tag.term for tag in newest.tags}


def test_every_dated_session_and_home_activity_is_in_it_newest_first(root: etree._Element) -> None:
    days = [text(entry, "updated") for entry in entries(root)]
    assert all(before >= after for before, after in pairwise(days))
    pages = [*collection().of_kind(Session), *collection().of_kind(Home)]
    assert len(days) == min(NEWEST, sum(page.fields.updated is not None for page in pages))


def test_words_of_any_kind_come_through() -> None:
    whole = collection()
    page = next(page for page in whole.of_kind(Session) if page.fields.changed)
    last = page.fields.changed[-1].model_copy(update={"what": "A **new** [page](session-1.md), 5&nbsp;< 6."})
    update = {"title": "5 < 6 & “so” \x01]]>", "summary": "a\ud800b", "changed": (last,)}
    odd = page.fields.model_copy(update=update)
    changed = tuple(replace(d, fields=odd) if d.path == page.path else d for d in whole.documents)
    written = feed(site(replace(whole, documents=changed)))
    assert not feedparser.parse(written).bozo
    root = etree.fromstring(written.encode())
    (entry,) = [entry for entry in entries(root) if "5 < 6" in text(entry, "title")]
    assert text(entry, "title") == "5 < 6 & “so” ]]> (The Cliff House Lift)"
    assert text(entry, "summary") == "Changed: A new page, 5 < 6. ab", "words, and no Markdown"


def test_without_dates_or_without_an_address_there_is_no_feed() -> None:
    whole = collection()
    undated = tuple(
        replace(d, fields=d.fields.model_copy(update={"published": None, "changed": ()}))
        if isinstance(d.fields, (Session, Home))
        else d
        for d in whole.documents
    )
    assert entries_of(site(replace(whole, documents=undated))) == []
    assert ADDRESS not in open_data(site(replace(whole, documents=undated)))
    assert ADDRESS not in open_data(Site(whole))
    assert ADDRESS in open_data(site())
