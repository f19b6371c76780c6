"""The sitemap against the protocol's schema. Source: ``sitemap.xsd``, which says what it was written down from."""

from __future__ import annotations

from pathlib import Path

import pytest
from lxml import etree
from project import collection
from storymaths.model.address import source_of
from storymaths.model.site_settings import SiteSettings
from storymaths.publish.open_data.sitemap import MOST, sitemap
from storymaths.render.site import Site

NAMESPACE = {"s": "http://www.sitemaps.org/schemas/sitemap/0.9"}
SCHEMA = etree.XMLSchema(etree.parse(Path(__file__).parent / "sitemap.xsd"))
ROOT = "https://ploverquay.example/"


@pytest.fixture(scope="module")
def root() -> etree._Element:
    text = sitemap(Site(collection(), settings=SiteSettings(url=ROOT, authors_guide=True)))
    return etree.fromstring(text.encode())


def test_it_keeps_the_schema(root: etree._Element) -> None:
    assert SCHEMA.validate(root), SCHEMA.error_log


@pytest.mark.parametrize(
    "entry",
    [
        "",
        "<url><lastmod>2027-01-11</lastmod></url>",
        "<url><lastmod>2027-01-11</lastmod><loc>https://ploverquay.example/</loc></url>",
        "<url><loc>https://ploverquay.example/</loc><lastmod>11 January 2027</lastmod></url>",
        "<url><loc>short</loc></url>",
        "<url><loc>https://ploverquay.example/</loc><changefreq>often</changefreq></url>",
    ],
)
def test_the_schema_refuses_what_is_not_so(entry: str) -> None:
    assert not SCHEMA.validate(etree.fromstring(f'<urlset xmlns="{NAMESPACE["s"]}">{entry}</urlset>'))


def test_every_page_is_there_once_with_its_own_day(root: etree._Element) -> None:
    pages = {
        entry.findtext("s:loc", namespaces=NAMESPACE): entry.findtext("s:lastmod", namespaces=NAMESPACE)
        for entry in root.findall("s:url", NAMESPACE)
    }
    documents = {source_of(page.path): page.fields.updated for page in collection().documents}
    assert len(root) == len(pages) == len({*documents, *collection().generated_pages})
    assert all(str(address).startswith(ROOT) for address in pages)
    assert pages[f"{ROOT}books/cliff-house-lift/session-2.html"] == "2026-11-09"
    assert pages[f"{ROOT}series/a-term-on-plover-quay.html"] == "2026-11-25"
    assert pages[f"{ROOT}concepts/equality.html"] is None
    assert ROOT in pages
    days = sorted(str(day) for day in documents.values() if day)
    assert sorted(day for day in pages.values() if day) == days


def test_it_is_within_what_one_sitemap_may_hold(root: etree._Element) -> None:
    """The protocol: at most 50,000 addresses, and 50 MB (52,428,800 bytes)."""
    assert len(root) <= MOST == 50_000
    assert len(etree.tostring(root)) <= 52_428_800


def test_addresses_are_escaped() -> None:
    settings = SiteSettings(url="https://ploverquay.example/a/")
    assert (
        settings.full_address("books/ça va & co/index.md") == f"{settings.url}books/%C3%A7a%20va%20%26%20co/index.html"
    )
    assert settings.full_address("safety.md#small-parts") == f"{settings.url}safety.html#small-parts"
