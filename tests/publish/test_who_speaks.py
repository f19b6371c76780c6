"""One file says who speaks: with other answers in it, nothing on the site, in a PDF or in the pack is another's."""

from __future__ import annotations

import re
import shutil
import zipfile
from pathlib import Path

import pypdfium2
import pytest
import yaml
from command import storymaths
from project import PROJECT, ROOT, collection, copy_of_project
from storymaths.model.site_settings import Doors, FrontWords, SiteSettings
from storymaths.pipeline import start_build, write_site
from storymaths.publish.generated import generated
from storymaths.publish.pack.first_page import _PROGRAM_LICENCE
from storymaths.publish.pack.make import pack_files
from storymaths.publish.sheets import sheets_of
from storymaths.reading import Reading
from storymaths.render.site import Site

THEIRS = re.compile(r"cockle|ploverquay|the plover quay collection|creative ?commons|cc[ -]by", re.IGNORECASE)
"""Names, licence and addresses of the demonstration, and of the frozen collection that the book is taken from."""
OPEN = {"kind": "open", "name": "Open Quarry Licence 2", "url": "https://quarry.example/licence/2"}
PAID = {"kind": "paid", "name": "Whole-school licence", "says": "For schools that have bought it; write to us for one."}
RESERVED = {"kind": "reserved"}
COLLECTIONS = {
    "Tern Lane": ({"kind": "each-book"}, PAID, "Whole-school licence"),
    "Quarry Maths": (OPEN, None, "Open Quarry Licence 2"),
    "Number Barn": (RESERVED, None, "All rights reserved"),
}
"""By name: the collection's licence, that of its one book, and what its pages are to say."""


SET_IN_TYPE = "Tern Lane"
"""Its sheets are made, and its pack is made by the command; of the others it is read what sheets would be set from."""


def a_collection(folder: Path, name: str) -> Path:
    """One book with one session and one home activity, and a series of it."""
    project = copy_of_project(folder)
    for path in (project / "content").iterdir():
        if path.is_dir():
            shutil.rmtree(path)
        else:
            path.unlink()
    book = project / "content/books/ferry-fare"
    shutil.copytree(PROJECT / "content/books/ferry-fare", book)
    for path in [*book.glob("session-[2-9].md"), *book.glob("home-[2-9].md")]:
        path.unlink()
    licence, of_book, _ = COLLECTIONS[name]
    record = book / "index.md"
    text = re.sub(r"^rights_note:.*$", "rights_note: Ask us first.", record.read_text("utf-8"), flags=re.MULTILINE)
    own = f"licence: {yaml.safe_dump(of_book, default_flow_style=True).strip()}\n" if of_book else ""
    text = re.sub(r"^(story_by|pictures_by):.*$", rf"\1: {name} Press", text, flags=re.MULTILINE)
    record.write_text(text.replace("rights: own\n", f"rights: own\n{own}"), encoding="utf-8")
    (project / "content/mark.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0H9V9Z"/></svg>', encoding="utf-8"
    )
    (project / "content/series").mkdir()
    series = (PROJECT / "content/series/a-term-on-plover-quay.md").read_text("utf-8").split("---")[1]
    fields = yaml.safe_load(series) | {"title": "One book", "books": ["ferry-fare"]}
    fields |= {
        "licence": "As the page of the book says.",
        "contact": "Write to us.",
        "summary": "One.",
        "for_whom": "All.",
    }
    text = yaml.safe_dump(fields, allow_unicode=True)
    (project / "content/series/one-book.md").write_text(f"---\n{text}---\n\nOne book.\n", encoding="utf-8")
    slug = name.lower().replace(" ", "")
    settings = {
        "name": name, "description": "Maths from a book.", "publisher": f"{name} Press", "contact": f"post@{slug}.example",
        "licence": licence, "address": f"https://{slug}.example/", "identity": f"https://{slug}.example/",
        "colours": "slate", "letterforms": {"text": "abeezee", "child": "lexend"}, "spelling": "en-IE", "mark": "mark.svg",
        "print_sheets": name == SET_IN_TYPE,
        "home": {"title": f"Welcome to {name}", "summary": "Hello.", "words": "One.\n\nTwo.", "promises": ["private"]},
    }  # fmt: skip
    (project / "site_data/site.yaml").write_text(yaml.safe_dump(settings), encoding="utf-8")
    return project


def text_of(path: Path) -> str:
    """What a file says: a PDF's text and what it says of itself; of any other its letters."""
    if path.suffix != ".pdf":
        return path.read_bytes().decode("utf-8", "ignore")
    document = pypdfium2.PdfDocument(path)
    pages = [page.get_textpage().get_text_bounded() for page in document]
    return "\n".join([*document.get_metadata_dict().values(), *pages])


def set_from(reading: Reading, project: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What each sheet of a project would be set from, with whose it is."""
    copies = dict[str, str]()
    assert reading.collection
    monkeypatch.setattr("storymaths.publish.sheets.fill", lambda _, made: copies.update(made))
    monkeypatch.setattr("storymaths.publish.sheets.pages_of", lambda *_: 1)
    settings = reading.collection.reference.site
    sheets_of(Site(reading.collection, reading.activities, settings=settings), project, project / ".cache")
    return list(copies.values())


def packed(reading: Reading, site: Path) -> dict[str, bytes]:
    """The pack of the one series, which holds the site's own pages."""
    assert reading.collection
    series = reading.collection.series["one-book"]
    return dict(pack_files(reading.collection, series, lambda folder: copy_into(site, folder)))


def copy_into(site: Path, folder: Path) -> None:
    shutil.copytree(site, folder, dirs_exist_ok=True)


@pytest.mark.parametrize("name", COLLECTIONS)
def test_nothing_is_left_of_another_collection(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    project = a_collection(tmp_path / "project", name)
    site, pack = tmp_path / "site", tmp_path / "pack.zip"
    build = start_build(project)
    assert not build.reading.problems
    write_site(build, site)
    if name == SET_IN_TYPE:
        done = storymaths("pack", "one-book", "--out", str(pack), folder=project)
        assert done.returncode == 0, done.stdout + done.stderr
        with zipfile.ZipFile(pack) as zipped:
            zipped.extractall(tmp_path / "pack")
    else:
        for address, content in packed(build.reading, site).items():
            (tmp_path / "pack" / address).parent.mkdir(parents=True, exist_ok=True)
            (tmp_path / "pack" / address).write_bytes(content)
    said = {path: text_of(path) for folder in (site, tmp_path / "pack") for path in folder.rglob("*") if path.is_file()}
    assert {
        path.relative_to(tmp_path): found[0] for path, text in said.items() if (found := THEIRS.findall(text))
    } == {}
    licence = COLLECTIONS[name][2]
    sheets = [said[path] for path in said if path.suffix == ".pdf"] or set_from(build.reading, project, monkeypatch)
    assert len(sheets) > 10
    of_the_series = "Each book’s own licence" if COLLECTIONS[name][0]["kind"] == "each-book" else licence
    assert [
        sheet
        for sheet in sheets
        if f"{name} Press" not in sheet or not (licence in sheet or of_the_series in sheet) or THEIRS.search(sheet)
    ] == []
    book, credits_page = said[site / "books/ferry-fare/session-1.html"], said[site / "credits.html"]
    assert all(licence in text and f"{name} Press" in text for text in (book, credits_page))
    assert f"post@{name.lower().replace(' ', '')}.example" in said[site / "access.html"]
    assert all('lang="en-IE"' in text for path, text in said.items() if path.suffix == ".html")
    assert f"Welcome to {name}" in said[site / "index.html"]
    assert licence in said[tmp_path / "pack/LICENCE.txt"]
    assert f"{name} Press" in said[site / "open-data/catalogue.json"]
    assert ('"isAccessibleForFree":false' in book) == (COLLECTIONS[name][1] is PAID)


def test_the_program_is_under_the_licence_of_the_repository() -> None:
    assert (ROOT / "LICENSE").read_text("utf-8").startswith(_PROGRAM_LICENCE.read_text("utf-8").strip())


def test_a_site_that_says_little_of_itself_has_the_program_look() -> None:
    settings = SiteSettings()
    assert (settings.colours, settings.mark, settings.language) == ("harbour", None, "en-GB")


def test_the_doors_of_the_first_page_say_what_its_publisher_has_them_say() -> None:
    def front(**doors: object) -> str:
        settings = SiteSettings(front=FrontWords(doors=Doors.model_validate(doors)))
        return generated(Site(collection(), settings=settings))["index.md"]().html

    assert "I publish and plan" in front()
    other = front(teach={"name": "For my schools", "says": "Ideas by year."}, without=["plan"], houses=False)
    assert "For my schools" in other
    assert "Ideas by year." in other
    assert "I publish and plan" not in other
    assert 'class="house-top"' not in other
    assert 'class="houses' not in front(without=["teach", "home", "plan"])
