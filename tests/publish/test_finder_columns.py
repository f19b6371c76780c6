"""The data files pages read: that they say what the content says, in step with each other, and stay small."""

from __future__ import annotations

import gzip
import json
import re
from pathlib import Path
from typing import Any

import pytest
from bench.many_sessions import make_project
from project import ROOT, collection
from storymaths.check.rules import check_all
from storymaths.model.collection import Collection
from storymaths.model.home import Home
from storymaths.model.material import PRINTED
from storymaths.model.session import Session
from storymaths.parse.collection import read_collection
from storymaths.parse.reference import read_reference
from storymaths.publish.data_files import data_files
from storymaths.publish.finder_columns import ONLY_KITCHEN, addresses, finder_columns
from storymaths.publish.finder_words import SHELF, questions, shelves
from storymaths.publish.ideas import ideas
from storymaths.publish.plan_data import PER, plan_data
from storymaths.publish.text_index import build_text_index
from storymaths.render.site import Site

BYTES_A_SESSION = 60


@pytest.fixture(scope="module")
def site() -> Site:
    return Site(collection())


@pytest.fixture(scope="module")
def many(tmp_path_factory: pytest.TempPathFactory) -> Collection:
    folder = tmp_path_factory.mktemp("many")
    make_project(folder, 500)
    return read_collection(folder, read_reference(folder))


def test_every_row_leads_to_its_page(site: Site) -> None:
    assert addresses(json.loads(json.dumps(finder_columns(site)))) == [idea.address for idea in ideas(site.collection)]


def test_columns_are_in_step(site: Site) -> None:
    rows, number = finder_columns(site)["rows"], len(list(ideas(site.collection)))
    lengths = {
        "kind": len(rows["kind"]), "year": len(rows["year"]), "things": len(rows["things"]), "also": len(rows["also"]) / 2,
        "book": sum(rows["book"]), "file": len(rows["file"].split("\n")), "title": len(rows["title"].split("\n")),
        "minutes": len(rows["minutes"].split(",")), "concepts": len(rows["concepts"].split(",")),
        "themes": len(rows["themes"].split(",")), "questions": len(questions(site)),
        "cards": sum(len(shelf) for shelf in shelves(site).values()),
    }  # fmt: skip
    assert lengths == dict.fromkeys(lengths, number)


def test_columns_say_what_the_authors_wrote(site: Site) -> None:
    found, columns = list(ideas(site.collection)), finder_columns(site)
    rows = columns["rows"]
    for n, idea in enumerate(found):
        if isinstance(idea.fields, Session):
            concepts = [columns["concepts"][int(c)][0] for c in rows["concepts"].split(",")[n].split()]
            assert concepts == list(idea.fields.concepts)
            assert {y for y in range(7) if int(rows["also"][2 * n : 2 * n + 2], 16) >> y & 1} == set(idea.fields.bends)
            assert rows["minutes"].split(",")[n] == str(idea.fields.minutes)


def test_nothing_to_print_and_only_kitchen_things_are_true_of_the_materials(site: Site) -> None:
    materials, rows = site.collection.reference.materials, finder_columns(site)["rows"]
    for idea, things in zip(ideas(site.collection), rows["things"], strict=True):
        if things == "-":
            continue
        needed = {materials[thing] for thing in (idea.things or ())}
        assert bool(int(things) & 1) == (not any(material.id in PRINTED for material in needed))
        assert bool(int(things) & ONLY_KITCHEN) == all(material.household for material in needed)


def test_everything_said_to_be_printed_is_a_material() -> None:
    assert set(collection().reference.materials) >= PRINTED


def test_a_home_activity_never_needs_a_printer(site: Site) -> None:
    kinds = finder_columns(site)["rows"]["kind"]
    assert all(
        int(things) & 1
        for kind, things in zip(kinds, finder_columns(site)["rows"]["things"], strict=True)
        if kind == "h"
    )


@pytest.mark.parametrize("children", [1, 2, 27, 30, 31])
def test_a_plan_adds_up_as_the_session_does(site: Site, children: int) -> None:
    data = plan_data(site)
    for idea in ideas(site.collection):
        if not isinstance(idea.fields, Session):
            continue
        *_, group, needed, _, _ = data["ideas"][idea.address.removesuffix(".html")]
        triples = [needed[at : at + 3] for at in range(0, len(needed), 3)]
        sizes = {"child": 1, "pair": 2, "group": group, "class": children}
        worked = [count * -(-children // sizes[PER[per]]) for _, count, per in triples]
        assert worked == [thing.for_class(children, idea.fields.group_size) for thing in idea.fields.materials]


def test_a_plan_knows_every_session_and_home_activity(site: Site) -> None:
    assert len(plan_data(site)["ideas"]) == sum(len(site.collection.of_kind(kind)) for kind in (Session, Home))


def test_each_file_has_a_script_twin_with_the_same_data(site: Site) -> None:
    files = data_files(site)
    for name in (name for name in files if name.endswith(".json")):
        stem = name.removesuffix(".json")
        assigned = re.fullmatch(
            r"\(window\.storymathsData\?\?=\{\}\)\[\"(.+?)\"\]=(.*);\n", files[f"{stem}.js"], re.DOTALL
        )
        assert assigned
        assert assigned.group(1) == stem
        assert json.loads(assigned.group(2)) == json.loads(files[name])


def test_questions_hold_the_words_and_the_questions_of_the_stops(site: Site) -> None:
    for idea, text in zip(ideas(site.collection), questions(site), strict=True):
        if isinstance(idea.fields, Session):
            assert all(stop.ask.split()[-1] in text for reading in idea.fields.reads for stop in reading.stops)
            assert all(word in text for word in idea.fields.words.new)


def test_made_up_projects_keep_every_rule(many: Collection) -> None:
    assert check_all(many) == []


def test_the_columns_stay_small(many: Collection) -> None:
    packed = gzip.compress(data_files(Site(many))["finder-data.json"].encode())
    assert len(packed) <= BYTES_A_SESSION * len(many.of_kind(Session))


def test_the_script_knows_how_long_a_shelf_is() -> None:
    script = (ROOT / "hooks" / "scripts" / "finder" / "cards.js").read_text("utf-8")
    assert f"const SHELF = {SHELF};" in script


def test_the_text_index_is_joined_to_the_rows(site: Site, tmp_path: Path) -> None:
    columns = finder_columns(site)
    (tmp_path / "finder-data.json").write_text(json.dumps(columns), encoding="utf-8")
    pages = addresses(columns)
    for address in (*pages, "books/cliff-house-lift/story.html", "concepts/equality.html"):
        (tmp_path / address).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / address).write_text(_page(address), encoding="utf-8")
    build_text_index(tmp_path)
    joined: dict[str, Any] = json.loads((tmp_path / "text-rows.json").read_text("utf-8"))
    marks = joined["rows"].split(",")
    assert len(set(marks) - {""}) == len(pages)
    assert list(joined["stories"].values()) == [pages.index("books/cliff-house-lift/index.html")]
    fragments = {file.stem.rpartition("_")[2] for file in (tmp_path / "pagefind" / "fragment").iterdir()}
    assert fragments == {*marks, *joined["stories"]}, "pages the finder does not lead to are indexed"


def _page(address: str) -> str:
    return f'<!doctype html><html lang="en-GB"><title>{address}</title><main data-pagefind-body><p>The page {address}.</p></main>'
