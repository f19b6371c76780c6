"""A kind of page is its schema, its folder and its row: with these alone a poem is everywhere a reader may look for it."""

from __future__ import annotations

import json
from dataclasses import replace
from functools import partial
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator
from mini_sites.three_small_books import three_small_books
from page_kinds.poem import POEM, Poem
from project import reference
from storymaths.build import Build
from storymaths.check.rules import check_all
from storymaths.model.address import LISTS, concept_page, year_page
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.page_schemas import SCHEMAS
from storymaths.model.site_settings import SiteSettings
from storymaths.parse.document import parse_document
from storymaths.pipeline import write_site
from storymaths.publish.finder_columns import addresses, finder_columns
from storymaths.publish.finder_words import questions
from storymaths.publish.generated import generated
from storymaths.publish.linked_data.of_page import PageDescriber
from storymaths.publish.open_data.catalogue import catalogue
from storymaths.publish.open_data.catalogue_schema import catalogue_schema
from storymaths.publish.open_data.catalogue_table import catalogue_table
from storymaths.publish.open_data.feed import feed
from storymaths.publish.pack.make import pack_files
from storymaths.publish.page_kinds.table import PAGE_KINDS, kind_of
from storymaths.publish.sections import on_front
from storymaths.publish.starters import start, starters
from storymaths.reading import Reading
from storymaths.render.site import Site

ADDRESS, ELSEWHERE = "books/boats/poem-1.html", "books/bones/poem-1.html"
TITLE = "Two by two"


@pytest.fixture(autouse=True)
def _poems(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(SCHEMAS, "poem", Poem)  # type: ignore[arg-type]
    monkeypatch.setitem(PAGE_KINDS, "poem", POEM)  # type: ignore[arg-type]


def a_poem(folder: str, **fields: object) -> Document[Poem]:
    front = {
        "kind": "poem", "book": folder, "title": TITLE, "summary": "Boats go out in pairs.", "by": "Somebody", "number": 1,
        "year": 2, "pages": 3, "concepts": ["equality"], "published": "2027-01-11",
    } | fields  # fmt: skip
    page = parse_document(f"content/books/{folder}/poem-1.md", f"---\n{json.dumps(front)}\n---\nRow **two** by two.\n")
    assert isinstance(page, Document), page.faults
    return page  # type: ignore[return-value]


def collection(**fields: object) -> Collection:
    whole = three_small_books()
    poems = (a_poem("boats", **fields), a_poem("bones", title="One by one"))
    return replace(whole, documents=(*whole.documents, *poems), files=whole.files | {poem.path for poem in poems})


@pytest.fixture
def site() -> Site:
    return Site(collection(), settings=SiteSettings("Plover Quay", "Maths", "https://ploverquay.example/"))


def test_it_is_drawn_with_all_its_fields(site: Site) -> None:
    html = kind_of(a_poem("boats")).draw(site, a_poem("boats")).html
    assert "by Somebody" in html
    assert "<strong>two</strong>" in html


def test_it_is_in_the_finder(site: Site) -> None:
    columns = finder_columns(site)
    row = addresses(columns).index(ADDRESS)
    assert columns["rows"]["kind"][row] == "p"
    assert columns["rows"]["year"][row] == "2"
    assert columns["rows"]["title"].split("\n")[row] == TITLE
    assert ["p", "poem", "Poems", "plays with", "text-card", "from", 0] in columns["kinds"]
    assert questions(site)[row] == "Boats go out in pairs. · Somebody"


def test_it_is_in_the_feed(site: Site) -> None:
    told = feed(site)
    assert f"https://ploverquay.example/{ADDRESS}" in told
    assert "Sessions, home activities, ideas for any book and poems, new and changed." in told


def test_it_is_in_the_catalogue_which_keeps_to_its_schema(site: Site) -> None:
    data, schema = catalogue(site), catalogue_schema()
    boats = next(book for book in data["books"] if book["id"] == "boats")
    assert [poem["title"] for poem in boats["poems"]] == [TITLE]
    Draft202012Validator.check_schema(schema)
    assert [error.message for error in Draft202012Validator(schema).iter_errors(data)] == []
    assert f"poem,boats,,{TITLE}," in catalogue_table(site)
    page = generated(site)[LISTS["catalogue"]]().html
    assert f"A poem: {TITLE}" in page
    assert "<span>2 poems</span>" in page


def test_it_is_on_the_pages_of_its_concepts_and_its_year_and_on_the_front(site: Site) -> None:
    pages = generated(site)
    assert 'href="../books/boats/poem-1.html"' in pages[concept_page("equality")]().html
    assert 'href="../books/boats/poem-1.html"' in pages[year_page(2)]().html
    assert TITLE not in pages[concept_page("counting")]().html
    assert TITLE not in pages[year_page(3)]().html
    assert any(TITLE in section.html for section in on_front(site, "index.md"))


def test_programs_are_told_what_it_is(site: Site) -> None:
    poem = a_poem("boats")
    node = PageDescriber(site).node(poem, kind_of(poem).draw(site, poem))
    assert (node["@type"], node["name"]) == ("CreativeWork", TITLE)
    listed = PageDescriber(site).node(None, generated(site)[LISTS["catalogue"]]())
    assert {"CreativeWork"} < {part["@type"] for part in listed["hasPart"]}


def test_it_is_in_the_pack_of_a_series_with_its_book_and_in_no_other(tmp_path: Path) -> None:
    whole = collection()
    ours, mini = reference(), whole.reference
    mini = replace(
        mini,
        frameworks={**ours.frameworks, **mini.frameworks},  # the gallery shows what practises a framework of ours
        objectives={**ours.objectives, **mini.objectives},
        site=replace(mini.site, print_sheets=False),
    )
    whole = replace(whole, reference=mini)
    reading = Reading(whole, (), {page.path: () for page in whole.documents})
    build = Build(tmp_path, reading, only_series="both")
    packed = pack_files(whole, whole.series["both"], partial(write_site, build))
    assert b"by Somebody" in packed[f"pages/{ADDRESS}"]
    assert f"pages/{ELSEWHERE}" not in packed
    assert TITLE.encode() in packed["pages/finder-data.js"]
    assert TITLE.encode() in packed["pages/concepts/equality.html"]


def test_rules_that_know_no_poem_hold_for_poems() -> None:
    broken = collection(book="boat", concepts=["equalitty"], pages=9)
    named = {(problem.rule, problem.place.path) for problem in check_all(broken)}
    path = "content/books/boats/poem-1.md"
    assert {("concept-unknown", path), ("book-unknown", path)} <= named
    too_far = check_all(collection(pages=9))
    assert ("page-outside-book", path) in {(problem.rule, problem.place.path) for problem in too_far}


def test_a_draft_of_its_book_takes_it_along() -> None:
    whole = collection()
    boats = whole.books["boats"]
    draft = replace(boats, fields=boats.fields.model_copy(update={"status": "draft"}))
    documents = tuple(draft if page is boats else page for page in whole.documents)
    kept = [page.path for page in replace(whole, documents=documents).without_drafts().documents]
    assert "content/books/boats/poem-1.md" not in kept
    assert "content/books/bones/poem-1.md" in kept


def test_an_author_can_start_one(tmp_path: Path) -> None:
    (tmp_path / "content/books/boats").mkdir(parents=True)
    (tmp_path / "content/books/boats/index.md").touch()
    words, starter = starters()["poem"]
    first, second = (start(tmp_path, starter, TITLE, "2027-01-11", "boats") for _ in range(2))
    assert (words, first.name, second.name) == ("poem", "poem-1.md", "poem-2.md")
    page = parse_document("content/books/boats/poem-2.md", second.read_text(encoding="utf-8"))
    assert isinstance(page, Document)
    assert page.fields.place == 2
