"""The public catalogue, as JSON and as a table: it keeps its own schema, says what pages say, and opens in a spreadsheet."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import jsonschema
import pytest
from bench.many_sessions import make_project
from project import collection
from storymaths.model.book import Book
from storymaths.model.fields import Claim
from storymaths.model.session import Session
from storymaths.model.site_settings import SiteSettings
from storymaths.parse.collection import read_collection
from storymaths.parse.reference import read_reference
from storymaths.publish.open_data import catalogue as public
from storymaths.publish.open_data.catalogue_table import ADDRESS as TABLE
from storymaths.publish.open_data.catalogue_table import HEADINGS
from storymaths.publish.open_data.files import open_data, open_files
from storymaths.publish.open_data.spreadsheet import as_csv
from storymaths.render.site import Site

SETTINGS = SiteSettings("Plover Quay", "Maths lessons.", "https://ploverquay.example/")
Record = dict[str, Any]


@pytest.fixture(scope="module")
def site() -> Site:
    return Site(collection(), settings=SETTINGS)


@pytest.fixture(scope="module")
def files(site: Site) -> dict[str, str]:
    return dict(open_data(site))


@pytest.fixture(scope="module")
def data(files: dict[str, str]) -> Record:
    return dict(json.loads(files[public.ADDRESS]))


def validator(files: dict[str, str]) -> jsonschema.Draft202012Validator:
    schema = json.loads(files[public.SCHEMA_ADDRESS])
    return jsonschema.Draft202012Validator(schema, format_checker=jsonschema.FormatChecker())


def test_the_schema_is_a_schema_and_says_where_it_is(files: dict[str, str]) -> None:
    """JSON Schema, draft 2020-12: against its own meta-schema, which ``jsonschema`` carries."""
    schema = json.loads(files[public.SCHEMA_ADDRESS])
    jsonschema.Draft202012Validator.check_schema(schema)
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert schema["$id"] == "https://ploverquay.example/open-data/catalogue.schema.json"


def test_the_catalogue_keeps_its_schema(files: dict[str, str], data: Record) -> None:
    assert [error.message for error in validator(files).iter_errors(data)] == []
    assert data["format"] == public.FORMAT


def test_so_do_other_collections(files: dict[str, str], tmp_path: Path) -> None:
    make_project(tmp_path, 12)
    many = Site(read_collection(tmp_path, read_reference(tmp_path)))
    assert list(validator(files).iter_errors(public.catalogue(many))) == []
    none = Site(replace(collection(), documents=()), settings=SETTINGS)
    assert list(validator(files).iter_errors(public.catalogue(none))) == []


def test_the_schema_describes_every_part_and_refuses_any_other(files: dict[str, str], data: Record) -> None:
    def objects(schema: Any) -> Iterator[Record]:
        if isinstance(schema, dict):
            if "properties" in schema:
                yield schema
            for value in schema.values():
                yield from objects(value)
        elif isinstance(schema, list):
            for value in schema:
                yield from objects(value)

    schema = json.loads(files[public.SCHEMA_ADDRESS])
    for found in objects(schema):
        assert found["additionalProperties"] is False
        assert set(found["required"]) <= set(found["properties"])
    for key, value in (("format", "3.0"), ("books", {}), ("extra", 1), ("updated", "yesterday")):
        assert list(validator(files).iter_errors(data | {key: value})), key


def test_it_says_what_the_pages_say(data: Record) -> None:
    whole = collection()
    assert [book["id"] for book in data["books"]] == list(whole.books)
    for book in data["books"]:
        for told, page in zip(book["sessions"], whole.sessions_of(book["id"]), strict=True):
            session = page.fields
            assert (told["title"], told["minutes"], told["number"]) == (session.title, session.minutes, session.number)
            assert told["objectives"] == {
                framework: [claim.code for claim in claims] for framework, claims in session.objectives.items()
            }
            assert told["parts"] == {
                framework: named
                for framework, claims in session.objectives.items()
                if (named := {claim.code: _parts(framework, claim) for claim in claims if claim.parts})
            }
            assert told["year"] == f"Year {session.year}"
            assert told["url"] == f"{SETTINGS.url}{page.path.removeprefix('content/')[:-3]}.html"
            assert told.get("published") == (str(session.published) if session.published else None)
        assert len(book["home"]) == len(whole.homes_of(book["id"]))
    assert data["updated"] == max(str(page.fields.updated) for page in whole.documents if page.fields.updated)


def test_every_id_named_is_in_a_list_of_the_same_file(data: Record) -> None:
    known = {
        name: {item["id"] for item in data[name]} for name in ("concepts", "themes", "frameworks", "books", "strands")
    }
    for book in data["books"]:
        assert set(book["themes"]) <= known["themes"]
        for item in (*book["sessions"], *book["home"]):
            assert set(item["concepts"]) <= known["concepts"]
            assert set(item["themes"]) <= known["themes"]
        for session in book["sessions"]:
            assert set(session["objectives"]) | set(session["revisits"]) <= known["frameworks"]
    assert all(set(series["books"]) <= known["books"] for series in data["series"])
    assert all(idea["strand"] in known["strands"] for idea in data["concepts"])


def _parts(framework: str, claim: Claim) -> list[str]:
    """The ids a session names, in the objective's own order."""
    parts = [part.id for part in collection().reference.objectives[framework, claim.code].parts]
    return [part for part in parts if part in claim.parts or "all" in claim.parts]


def test_a_book_of_another_keeps_its_rights(site: Site) -> None:
    whole = collection()
    first = next(page for page in whole.documents if isinstance(page.fields, Book))
    rights = {"rights": "in-copyright", "publisher": "A Publisher", "isbn": "978-3-16-148410-0"}
    theirs = replace(first, fields=first.fields.model_copy(update=rights))
    changed = replace(whole, documents=tuple(theirs if page is first else page for page in whole.documents))
    files = dict(open_data(Site(changed, settings=SETTINGS)))
    data = json.loads(files[public.ADDRESS])
    assert list(validator(files).iter_errors(data)) == []
    assert (data["books"][0]["rights"], data["books"][0]["publisher"]) == ("in-copyright", "A Publisher")
    rows = list(csv.DictReader(io.StringIO(files[TABLE].removeprefix("\ufeff"), newline="")))
    assert rows[0]["licence"] == ""
    assert all(row["licence"] for row in rows if row["kind"] != "book")


def test_the_table_opens_as_spreadsheet_programs_want(files: dict[str, str], data: Record) -> None:
    """A byte order mark and RFC 4180: lines end in CR LF, every row has as many cells."""
    text = files[TABLE]
    assert text.encode().startswith(b"\xef\xbb\xbf")
    assert text.count("\n") == text.count("\r\n")
    rows = list(csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline=""), strict=True))
    assert tuple(rows[0]) == HEADINGS
    assert {len(row) for row in rows} == {len(HEADINGS)}
    told = sum(1 + len(book["sessions"]) + len(book["home"]) for book in data["books"])
    assert len(rows) == told + 1


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"])
def test_no_words_are_taken_for_a_formula(start: str) -> None:
    """The signs OWASP's page on CSV injection lists, and their wide forms."""
    (row,) = csv.reader(io.StringIO(as_csv([[f"{start}1+1", "a=b", 7]]).removeprefix("\ufeff"), newline=""))
    assert row == [f"'{start}1+1", "a=b", "7"]


def test_a_title_that_looks_like_a_formula_is_a_title() -> None:
    whole = collection()
    page = whole.of_kind(Session)[0]
    odd = replace(page, fields=page.fields.model_copy(update={"title": '=HYPERLINK("x"), said "she"'}))
    changed = replace(whole, documents=tuple(odd if it is page else it for it in whole.documents))
    text = open_data(Site(changed, settings=SETTINGS))[TABLE]
    titles = [row["title"] for row in csv.DictReader(io.StringIO(text.removeprefix("\ufeff"), newline=""))]
    assert '\'=HYPERLINK("x"), said "she"' in titles


def test_without_an_address_only_what_can_do_without_one_is_offered() -> None:
    nameless = Site(collection())
    assert {file.address for file in open_files(nameless)} == {public.ADDRESS, public.SCHEMA_ADDRESS, TABLE}
    data = public.catalogue(nameless)
    assert data["books"][0]["url"] == "../books/cliff-house-lift/index.html"
    assert "case" not in data["frameworks"][0]
    assert json.loads(open_data(nameless)[public.SCHEMA_ADDRESS])["$id"] == "catalogue.schema.json"


def test_every_file_is_offered_once_with_its_standard_and_version(site: Site) -> None:
    addresses = [file.address for file in open_files(site)]
    assert len(addresses) == len(set(addresses)) == 3 + 3 + 2
    assert all(file.says and file.standard and file.version and file.media_type for file in open_files(site))
