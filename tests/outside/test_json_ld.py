"""The JSON-LD of every page against the schema.org vocabulary and the W3C group's accessibility vocabulary.

Sources: ``schema_org_names.json`` and ``accessibility_features.yaml``, which name theirs.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from html.parser import HTMLParser
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
import yaml
from project import PROJECT, collection
from storymaths.build import Build
from storymaths.model.address import source_of
from storymaths.model.session import Session
from storymaths.model.site_settings import SiteSettings
from storymaths.publish.linked_data.of_page import script
from storymaths.reading import read_and_check

from .schema_org import faults, types_of

SETTINGS = SiteSettings("Plover Quay", "Maths lessons.", "https://ploverquay.example/")
FEATURES = yaml.safe_load((Path(__file__).parent / "accessibility_features.yaml").read_text("utf-8"))[
    "features"
].split()
SCRIPT = re.compile(r'<script type="application/ld\+json">(.*?)</script>', re.DOTALL)
LESSON = "books/cliff-house-lift/session-2.md"


@dataclass(frozen=True)
class Described:
    html: str
    node: dict[str, Any]


def described(settings: SiteSettings = SETTINGS) -> Mapping[str, Described]:
    reference = replace(collection().reference, site=settings)
    build = Build(PROJECT, replace(read_and_check(PROJECT), collection=replace(collection(), reference=reference)))
    sources = {source_of(page.path) for page in collection().documents} | set(collection().generated_pages)
    found = {}
    for source in sorted(sources):
        drawn = build.draw(source)
        (block,) = SCRIPT.findall(drawn.for_machines)
        found[source] = Described(drawn.page.html, json.loads(block))
    return found


@pytest.fixture(scope="module")
def pages() -> Mapping[str, Described]:
    return described()


def nodes(node: Any) -> Iterator[dict[str, Any]]:
    """A node and all within it."""
    for item in node if isinstance(node, list) else [node]:
        if isinstance(item, dict):
            yield item
            for value in item.values():
                yield from nodes(value)


def test_every_page_is_described_in_words_of_the_vocabulary(pages: Mapping[str, Described]) -> None:
    wrong = {source: list(faults(page.node)) for source, page in pages.items()}
    assert {source: found for source, found in wrong.items() if found} == {}
    assert {page.node["@context"] for page in pages.values()} == {"https://schema.org"}


def test_the_checker_sees_what_is_wrong() -> None:
    good = {"@type": "LearningResource", "timeRequired": "PT50M", "isAccessibleForFree": True}
    assert list(faults(good)) == []
    for key, value in (
        ("timeRequired", "50 minutes"),
        ("termCode", "2C4"),  # of DefinedTerm
        ("teches", "2C4"),
        ("license", "CC BY"),
        ("isAccessibleForFree", "yes"),
        ("datePublished", "2027-02"),
        ("hasPart", {"@type": "DefinedTerm", "name": "Equality"}),
    ):
        assert list(faults(good | {key: value})), key


def test_a_session_says_what_its_author_wrote(pages: Mapping[str, Described]) -> None:
    node = pages[LESSON].node
    session = next(page.fields for page in collection().of_kind(Session) if source_of(page.path) == LESSON)
    assert node["@type"] == "LearningResource"
    assert node["@id"] == node["url"] == "https://ploverquay.example/books/cliff-house-lift/session-2.html"
    assert node["name"] == session.title
    assert node["timeRequired"] == f"PT{session.minutes}M"
    assert node["typicalAgeRange"] == "6-7"
    assert node["educationalLevel"]["name"] == "Year 2"
    assert node["isAccessibleForFree"] is True
    assert node["license"] == "https://creativecommons.org/licenses/by/4.0/"
    assert node["inLanguage"] == "en-GB"
    assert node["isPartOf"]["@id"] == "https://ploverquay.example/books/cliff-house-lift/index.html"
    assert (node["datePublished"], node["dateModified"]) == ("2026-09-07", "2026-11-09")
    # It teaches one part of each of its objectives, and of none the whole: the parts have our words and no code.
    taught = [term["@id"].partition("/objectives/")[2] for term in node["teaches"]]
    assert taught == [
        f"{framework}/{claim.code.lower()}.html#part-{part}"
        for framework, claims in session.objectives.items()
        for claim in claims
        for part in claim.parts
    ]
    assert not any("termCode" in term for term in node["teaches"])


def test_every_address_within_the_site_is_a_page_of_it(pages: Mapping[str, Described]) -> None:
    theirs = {page.node["@id"] for page in pages.values()}
    named = {node["@id"].partition("#")[0] for page in pages.values() for node in nodes(page.node) if "@id" in node}
    named |= {n["inDefinedTermSet"] for page in pages.values() for n in nodes(page.node) if "inDefinedTermSet" in n}
    assert named - theirs == set()
    assert len(theirs) == len(pages), "two pages go by one name"


def test_each_sort_of_page_is_what_it_says(pages: Mapping[str, Described]) -> None:
    kinds = {
        "index.md": ["WebSite"],
        "books/cliff-house-lift/index.md": ["CollectionPage", "LearningResource"],
        "books/cliff-house-lift/story.md": ["ShortStory"],
        "books/cliff-house-lift/home-1.md": ["LearningResource"],
        "series/a-term-on-plover-quay.md": ["CreativeWorkSeries", "LearningResource"],
        "concepts/equality.md": ["DefinedTerm"],
        "concepts/index.md": ["DefinedTermSet"],
        "objectives/england-content-domain/2c4.md": ["DefinedTerm"],
        "objectives/england-content-domain/index.md": ["DefinedTermSet"],
        "books/index.md": ["CollectionPage"],
        "open-data.md": ["DataCatalog"],
        "safety.md": ["WebPage"],
    }
    assert {source: types_of(pages[source].node) for source in kinds} == kinds


class Outline(HTMLParser):
    """The headings, pictures and named maths of a page."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.levels: list[int] = []
        self.alts: list[str | None] = []
        self.figures = self.sums = 0
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if re.fullmatch("h[1-6]", tag):
            self.levels.append(int(tag[1]))
        if tag == "img":
            self.alts.append(given.get("alt"))
        if tag == "div" and given.get("role") == "img" and given.get("aria-label"):
            self.figures += 1
        if tag == "span" and "sum" in (given.get("class") or "").split() and given.get("aria-label"):
            self.sums += 1


def test_accessibility_features_are_of_the_vocabulary_and_true(pages: Mapping[str, Described]) -> None:
    claimed = set()
    for source, page in pages.items():
        found = page.node.get("accessibilityFeature", [])
        if not found:
            assert page.node["@type"] == "DefinedTerm", source
            continue
        claimed.update(found)
        outline = Outline(page.html)
        assert set(found) <= set(FEATURES), source
        assert outline.levels[0] == 1, source
        assert outline.levels.count(1) == 1, source
        assert all(after <= before + 1 for before, after in pairwise(outline.levels)), source
        assert None not in outline.alts, source
        assert ("alternativeText" in found) == bool(any(outline.alts) or outline.figures), source
        assert ("describedMath" in found) == bool(outline.sums), source
    assert claimed == {
        "structuralNavigation", "displayTransformability", "unlocked", "alternativeText", "describedMath",
    }  # fmt: skip


@pytest.mark.parametrize(
    "words", ["</script><script>alert(1)</script>", "<!-- <script>", "a & b", "line\u2028end", "]]>", "\\</ScRiPt >"]
)
def test_no_words_can_close_the_element(words: str) -> None:
    element = script({"@type": "WebPage", "name": words})
    inside = element.removeprefix('<script type="application/ld+json">').removesuffix("</script>")
    assert not set("<>&\u2028") & set(inside)
    assert json.loads(inside)["name"] == words


def test_without_an_address_links_lead_from_the_page() -> None:
    node = described(replace(SETTINGS, url=""))[LESSON].node
    assert node["url"] == "session-2.html"
    assert node["isPartOf"]["@id"] == "index.html"
    assert node["educationalLevel"]["@id"] == "../../years/year-2.html"
