"""The authors' guide: no field without its note and an example, and no example that breaks a rule."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
import yaml
from project import PROJECT, ROOT, collection, copy_of_project, text_of
from pydantic import BaseModel
from storymaths.activities.table import KINDS
from storymaths.build import Build
from storymaths.check import link_broken
from storymaths.model.address import LISTS, guide_page
from storymaths.model.document import Document
from storymaths.model.field_notes import notes_of
from storymaths.model.generated_pages import FOR_AUTHORS
from storymaths.model.page_schemas import SCHEMAS
from storymaths.model.site_settings import SiteSettings
from storymaths.parse.collection import read_page
from storymaths.parse.reference import read_reference
from storymaths.parse.schema_faults import schema_in
from storymaths.publish.generated import generated
from storymaths.publish.guide.fields import FieldLine, example_page, fields_of
from storymaths.publish.guide.names import name_lists
from storymaths.publish.guide.pages import COMMONEST
from storymaths.publish.page_kinds.kind import NotListed
from storymaths.publish.page_kinds.table import PAGE_KINDS
from storymaths.publish.starter_examples import with_examples
from storymaths.reading import Reading, read_and_check
from storymaths.render.site import Site

GUIDED = Site(collection(), settings=SiteSettings(authors_guide=True))


def front_of(kind: str) -> dict[str, Any]:
    front: dict[str, Any] = yaml.safe_load(example_page(kind).split("---\n")[1])
    return front


def schemas_within(schema: type[BaseModel]) -> Iterator[type[BaseModel]]:
    yield schema
    for field in schema.model_fields.values():
        if within := schema_in(field.annotation):
            yield from schemas_within(within)


def entries(value: Any) -> list[Any]:
    """What a field holds one by one: entries of a list, or of a mapping by names of the author's own."""
    return value if isinstance(value, list) else [value]


def untold(fields: tuple[FieldLine, ...], value: Any, way: str) -> Iterator[str]:
    """The fields that an example does not show."""
    for field in fields:
        held = [one[field.name] for one in entries(value) if isinstance(one, dict) and field.name in one]
        if not held:
            yield f"{way}.{field.name}"
        elif field.inside:
            inner = [each for one in held for each in entries(one)]
            named = [each for one in inner if isinstance(one, dict) for each in one.values() if isinstance(each, dict)]
            shown = [list(untold(field.inside, one, f"{way}.{field.name}")) for one in (inner, named)]
            yield from min(shown, key=len)


@pytest.mark.parametrize("kind", SCHEMAS)
def test_every_field_of_a_page_has_a_note(kind: str) -> None:
    for schema in schemas_within(SCHEMAS[kind]):
        assert schema.model_fields.keys() <= notes_of(schema).keys(), schema.__name__


@pytest.mark.parametrize("kind", KINDS)
def test_every_field_of_an_activity_has_a_note(kind: str) -> None:
    for task in KINDS[kind].tasks:
        assert task.__doc__
        for schema in schemas_within(task):
            assert schema.model_fields.keys() <= {*notes_of(schema), KINDS[kind].told_by}, schema.__name__


@pytest.mark.parametrize("kind", SCHEMAS)
def test_every_field_has_an_example_and_stands_on_its_page(kind: str) -> None:
    fields = tuple(fields_of(SCHEMAS[kind]))
    assert list(untold(fields, front_of(kind), kind)) == []
    html = generated(GUIDED)[guide_page(kind)]().html
    for field in fields:
        assert f'id="field-{field.name}"' in html
    SCHEMAS[kind].model_validate(front_of(kind))


def test_the_examples_keep_every_rule(tmp_path: Path) -> None:
    root = copy_of_project(tmp_path / "project")
    shutil.rmtree(root / "content")
    book = root / "content" / "books" / "mittens-on-the-line"
    book.mkdir(parents=True)
    for name in ("mittens.svg", "mole.svg", "six-pegs.svg"):
        (book / name).write_text(
            '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M1 1h7v7z"/></svg>'
        )
    first = example_page("session")  # the one before, in which what the example takes as known is met
    for old, new in (
        ("number: 2\n", "number: 1\n"),
        ("needs: [1]", "needs: []"),
        ("title: Who fills", "title: Who could fill"),
        ("    going_back: true\n", ""),
        ("  new: [part]\n", "  new: []\n"),
        ('  new: []\n  again: ["+", "="]', '  new: ["+", "="]'),
    ):
        assert old in first
        first = first.replace(old, new)
    (book / "session-1.md").write_text(first, encoding="utf-8")
    before = root / "content" / "books" / "ten-pegs"  # the book that the example comes after
    shutil.copytree(book, before, ignore=shutil.ignore_patterns("*.md"))
    ten_pegs = (
        example_page("book").replace("after: [ten-pegs]\n", "").replace("title: Mittens on the Line", "title: Ten Pegs")
    )
    (before / "index.md").write_text(ten_pegs, encoding="utf-8")
    for kind, name in (("book", "index"), ("session", "session-2"), ("home", "home-1")):
        (book / f"{name}.md").write_text(example_page(kind), encoding="utf-8")
    (root / "content" / "a-winter-of-bonds.md").write_text(example_page("series"), encoding="utf-8")
    (root / "content" / "shared-out.md").write_text(example_page("any-book"), encoding="utf-8")
    (root / "content" / "about.md").write_text(example_page("page"), encoding="utf-8")
    assert read_and_check(root).problems == ()


def test_every_name_can_be_copied() -> None:
    reference = collection().reference
    written = {one.write.partition(":")[0] for every in name_lists(reference) for one in every.names}
    for every in (reference.concepts, reference.themes, reference.materials, reference.cautions, reference.words):
        assert written >= every.keys()
    assert written >= {code for _, code in reference.objectives}
    assert "interlocking-cube</code>" in generated(GUIDED)[LISTS["guide-names"]]().html


def test_the_commonest_problems_are_fifteen_and_each_says_how_it_is_mended() -> None:
    assert len(set(COMMONEST)) == 15
    html = generated(GUIDED)[LISTS["guide-problems"]]().html
    assert html.count("<dt>Right</dt>") == 15


@pytest.mark.parametrize("kind", [name for name, row in PAGE_KINDS.items() if not isinstance(row.starter, NotListed)])
def test_a_starter_has_a_finished_example_beside_each_text(kind: str) -> None:
    starter = PAGE_KINDS[kind].starter
    assert not isinstance(starter, NotListed)
    lines = with_examples(example_page(kind), starter.text.read_text(encoding="utf-8")).splitlines()
    for number, line in enumerate(lines):
        if line.endswith(">-"):
            assert "# Such as: " in lines[number - 1], line


def test_the_guide_names_the_files_a_new_collection_has() -> None:
    html = generated(GUIDED)[LISTS["guide"]]().html
    folder = ROOT / "hooks" / "storymaths" / "commands" / "collection"
    for name in ("open-on-windows.bat", "open-on-a-mac.command", "open-on-linux.sh"):
        assert (folder / name).is_file()
        assert name in html


def test_the_guide_is_its_authors_and_no_readers_unless_she_says_so() -> None:
    # Readers of a site are not those who write it; common practice, no source.
    unsaid = Site(collection())
    assert not FOR_AUTHORS & generated(unsaid).keys()
    assert generated(GUIDED).keys() >= FOR_AUTHORS
    site = collection().reference.site
    for shown, serving in ((False, False), (False, True), (True, False)):
        reference = replace(collection().reference, site=replace(site, authors_guide=shown))
        build = Build(PROJECT, Reading(replace(collection(), reference=reference), ()), serving=serving, offered={})
        assert ("guide/index.html" in build.page("credits.md")) == (shown or serving)
        assert ("guide/index.md" in build.pages) == (shown or serving)


def test_a_link_to_a_guide_that_readers_do_not_get_is_broken() -> None:
    site = replace(collection().reference.site, authors_guide=False)
    text = text_of("about-the-quay.md") + "\n[How it is written](guide/index.md)\n"
    page = read_page("content/about-the-quay.md", text.encode(), collection().reference.limits.files)
    assert isinstance(page, Document)
    linking = replace(collection(), documents=(*collection().documents, page))
    assert not list(link_broken.check(linking))
    assert list(link_broken.check(replace(linking, reference=replace(linking.reference, site=site))))


def test_an_entry_of_ones_own_can_be_written_as_the_guide_shows(tmp_path: Path) -> None:
    html = generated(GUIDED)[LISTS["guide-names"]]().html
    own = {one.id: one.own for one in name_lists(collection().reference) if one.own}
    assert own.keys() == {"concepts", "themes", "areas", "materials", "cautions", "words"}
    assert all(f"site_data/{name}.yaml" in html for name in own)
    (tmp_path / "site_data").mkdir()
    shutil.copy(PROJECT / "site_data/site.yaml", tmp_path / "site_data")
    for name, text in own.items():
        entry = yaml.safe_load(text)
        entry[name][0]["word" if name == "words" else "id"] = "kelp"
        (tmp_path / "site_data" / f"{name}.yaml").write_text(yaml.safe_dump(entry, sort_keys=False), encoding="utf-8")
    read = read_reference(tmp_path)
    assert all(
        "kelp" in listed
        for listed in (read.concepts, read.themes, read.areas, read.materials, read.cautions, read.words)
    )
