"""The school pack as a publisher makes it: what is in it, what leads where, the same bytes twice, nothing overwritten."""

from __future__ import annotations

import hashlib
import re
import shutil
import stat
import subprocess
import zipfile
from collections.abc import Iterator
from dataclasses import replace
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from built import copy_that_was_built
from command import reading_again
from packed import SERIES, VERSION, made, pack, unpacked
from project import PROJECT, collection, copy_of_project
from storymaths.commands import pack as pack_command
from storymaths.commands.program import main
from storymaths.commands.terminal import in_megabytes
from storymaths.publish.pack.contents import PAGES, select_pages
from storymaths.publish.pack.page_links import page_for_usb, targets_of
from storymaths.publish.pack.verify import verify

BOOKS = ("cliff-house-lift", "twenty-lamps")


@pytest.fixture(autouse=True)
def _reading_again() -> Iterator[None]:
    with reading_again():
        yield


def names() -> set[str]:
    return {path.relative_to(unpacked()).as_posix() for path in unpacked().rglob("*") if path.is_file()}


class Addresses(HTMLParser):
    """Every address a page names, and every id on it."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.named: list[tuple[str, str]] = []
        self.ids: set[str] = set()
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        only_said = tag == "link" and dict(attrs).get("rel") in ("canonical", "alternate")
        for name, value in attrs:
            if name == "id" and value:
                self.ids.add(value)
            if not only_said and name in ("href", "src", "action", "data-catalogue") and value:
                self.named.append((tag, value))


def pages() -> dict[Path, Addresses]:
    return {path: Addresses(path.read_text(encoding="utf-8")) for path in sorted(unpacked().rglob("*.html"))}


def test_it_holds_all_of_the_series_and_nothing_of_other_books() -> None:
    there = names()
    assert {"START-HERE.html", "LICENCE.txt", "MANIFEST", f"{PAGES}find.html", f"{PAGES}series/{SERIES}.html"} <= there
    for page in collection().documents:
        book = getattr(page.fields, "book", "") or (page.path.split("/")[2] if page.fields.kind == "book" else "")
        address = PAGES + page.path.removeprefix("content/").replace(".md", ".html")
        if book:
            assert (address in there) == (book in BOOKS), address
    assert not [name for name in there if "ferry-fare" in name]
    assert f"{PAGES}books/cliff-house-lift/all-sheets.pdf" in there
    assert f"{PAGES}books/cliff-house-lift/session-2-plan.pdf" in there


def test_only_ideas_the_series_uses_have_a_page() -> None:
    there = names()
    assert f"{PAGES}concepts/equality.html" in there
    assert f"{PAGES}concepts/roman-numerals.html" not in there
    assert f"{PAGES}objectives/england-content-domain/2c4.html" in there
    assert f"{PAGES}objectives/england-content-domain/index.html" in there
    assert len([name for name in there if name.startswith(f"{PAGES}objectives/")]) < 90


def test_the_finder_knows_only_what_is_packed() -> None:
    """By what stands in any data file and script: the id and the title of the book left out."""
    title = collection().books["ferry-fare"].fields.title
    for name in names():
        if name.endswith((".js", ".json", ".csv", ".xml")):
            text = (unpacked() / name).read_text(encoding="utf-8")
            assert "ferry-fare" not in text, name
            assert title not in text, name


def test_every_link_leads_to_something_in_the_pack() -> None:
    found, broken = pages(), []
    for path, page in found.items():
        for tag, address in page.named:
            parts = urlsplit(address)
            if parts.scheme or parts.netloc:
                assert tag == "a", f"{path} would fetch {address}"
                continue
            target = (path.parent / unquote(parts.path)).resolve() if parts.path else path
            if not target.is_relative_to(unpacked().resolve()) or not target.is_file():
                if not (tag == "div" and "pagefind" in address):
                    broken.append(f"{path.relative_to(unpacked())}: {address}")
            elif parts.fragment and target in found and parts.fragment not in found[target].ids:
                broken.append(f"{path.relative_to(unpacked())}: no #{parts.fragment} on {target.name}")
    assert broken == []


def test_words_of_links_that_led_out_of_the_pack_are_still_there() -> None:
    listed = (unpacked() / PAGES / "concepts/index.html").read_text(encoding="utf-8")
    assert "Roman numerals" in listed
    assert "roman-numerals.html" not in listed


def test_the_manifest_lists_every_file_with_its_sum() -> None:
    lines = (unpacked() / "MANIFEST").read_text(encoding="utf-8").splitlines()
    sums = dict(reversed(line.split("  ", 1)) for line in lines if not line.startswith("#"))
    assert set(sums) == names() - {"MANIFEST"}
    for name, sum_ in sums.items():
        assert hashlib.sha256((unpacked() / name).read_bytes()).hexdigest() == sum_, name


@pytest.mark.skipif(shutil.which("sha256sum") is None, reason="no sha256sum here")
def test_sha256sum_reads_the_manifest_too() -> None:
    done = subprocess.run(["sha256sum", "--check", "--strict", "--quiet", "MANIFEST"], cwd=unpacked(), check=False)
    assert done.returncode == 0


def test_the_first_page_says_what_to_open() -> None:
    first = (unpacked() / "START-HERE.html").read_text(encoding="utf-8")
    assert first.count("<h1>") == 1
    for address in (f"series/{SERIES}.html", "find.html", "books/cliff-house-lift/session-1.html"):
        assert f'href="{PAGES}{address}"' in first
    for page in sorted(
        name for name in names() if re.fullmatch(r"pages/books/.*screen[^/]*\.html|.*coverage.*\.csv", name)
    ):
        assert f'href="{page}"' in first, page


def test_the_licence_is_the_series_and_the_projects() -> None:
    words = (unpacked() / "LICENCE.txt").read_text(encoding="utf-8")
    assert f"A term on Plover Quay, version {VERSION}" in words
    assert "Creative Commons Attribution 4.0" in words
    notices = (unpacked() / PAGES / "look/licences.txt").read_text(encoding="utf-8")
    assert "SIL OPEN FONT LICENSE" in notices, "letterforms are handed on"


def test_its_size_is_said_before_it_is_made_and_is_so() -> None:
    file, said = made()
    lines = said.splitlines()
    assert lines[1] == f"{len(names())} files, {in_megabytes(file.stat().st_size)}."
    assert lines[2].startswith("Wrote ")


def test_entries_tell_nothing_of_where_and_when_it_was_made() -> None:
    with zipfile.ZipFile(made()[0]) as zipped:
        entries = zipped.infolist()
    assert entries[0].filename == "START-HERE.html"
    assert {entry.date_time for entry in entries} == {(1980, 1, 1, 0, 0, 0)}
    assert {(entry.create_system, entry.external_attr >> 16, entry.compress_type) for entry in entries} == {
        (3, stat.S_IFREG | 0o644, zipfile.ZIP_STORED)
    }


def test_the_same_bytes_from_another_folder(tmp_path: Path) -> None:
    project = copy_that_was_built(tmp_path / "elsewhere")
    whole = made()[0].read_bytes()
    kept = len(list((project / ".cache" / "sheets").iterdir()))
    other = tmp_path / "other.zip"
    done = pack(project, other, seed="77")
    assert done.returncode == 0, done.stdout + done.stderr
    assert other.read_bytes() == whole
    assert len(list((project / ".cache" / "sheets").iterdir())) == kept, (
        "sheets of other books are kept for the whole site"
    )
    assert str(tmp_path).encode() not in other.read_bytes()


def test_an_earlier_version_is_replaced_and_anything_else_left_alone(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(PROJECT)
    monkeypatch.setattr(pack_command, "_files", lambda root, wanted: files)
    with zipfile.ZipFile(made()[0]) as zipped:
        files = {name: zipped.read(name) for name in zipped.namelist()}
    earlier = tmp_path / "pack.zip"
    shutil.copy(made()[0], earlier)
    before = earlier.stat().st_mtime_ns
    assert main(["pack", SERIES, "--out", str(earlier)]) == 1
    assert "To make the same version again, add --again." in capsys.readouterr().err
    assert earlier.stat().st_mtime_ns == before
    assert main(["pack", SERIES, "--out", str(earlier), "--again"]) == 0
    with monkeypatch.context() as older:
        older.setattr(pack_command, "verify", lambda path: replace(verify(path), version="0.9"))
        assert main(["pack", SERIES, "--out", str(earlier)]) == 0
    assert main(["pack", SERIES, "--out", str(tmp_path)]) == 0
    assert verify(tmp_path / f"{SERIES}-{VERSION}.zip").series == SERIES
    for name, content in {"letter.zip": b"my own", "changed.zip": made()[0].read_bytes()[:-30]}.items():
        (tmp_path / name).write_bytes(content)
        assert main(["pack", SERIES, "--out", str(tmp_path / name)]) == 1
        assert (tmp_path / name).read_bytes() == content
    (tmp_path / "link.zip").symlink_to(earlier)
    assert main(["pack", SERIES, "--out", str(tmp_path / "link.zip")]) == 1
    assert main(["pack", SERIES, "--out", str(tmp_path / "nowhere" / "pack.zip")]) == 2
    assert main(["pack", SERIES, "--out", str(tmp_path / "dry.zip"), "--dry-run"]) == 0
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        f"{SERIES}-{VERSION}.zip", "changed.zip", "letter.zip", "link.zip", "pack.zip",
    ]  # fmt: skip


def test_no_room_and_no_right_to_write_are_said_in_words(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(PROJECT)
    monkeypatch.setattr(pack_command, "_files", lambda root, wanted: {"MANIFEST": b"not one"})
    assert main(["pack", SERIES, "--out", str(tmp_path / "pack.zip")]) == 1
    assert "It would not be a pack that can be checked" in capsys.readouterr().err
    monkeypatch.setattr(shutil, "disk_usage", lambda path: shutil._ntuple_diskusage(9, 9, 0))
    assert main(["pack", SERIES, "--out", str(tmp_path / "pack.zip")]) == 1
    assert "There is not room for it" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_series_that_is_a_draft_or_has_problems_is_not_packed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    project = copy_of_project(tmp_path / "project")
    monkeypatch.chdir(project)
    page = project / "content" / "series" / f"{SERIES}.md"
    text = page.read_text(encoding="utf-8")
    page.write_text(text.replace("kind: series\n", "kind: series\nstatus: draft\n"), encoding="utf-8")
    assert main(["pack", SERIES]) == 2
    assert "is a draft" in capsys.readouterr().err
    page.write_text(text.replace("year: 2", "yeer: 2"), encoding="utf-8")
    assert main(["pack", SERIES]) == 1
    said = capsys.readouterr()
    assert "field-unknown" in said.err
    assert "mend them first" in said.err
    assert list(project.glob("*.zip")) == []


HERE = "books/lift/session-1.html"


@pytest.mark.parametrize(
    ("link", "kept"),
    [
        ('<a href="session-2.html">two</a>', '<a href="session-2.html">two</a>'),
        ('<a href="../other/index.html#top">other</a>', "<span>other</span>"),
        (
            '<a class="concept" id="c" href="../other/index.html"><svg/>it</a>',
            '<span class="concept" id="c"><svg/>it</span>',
        ),
        ('<a class="button" href="gone.html">go</a>', "<span>go</span>"),
        ('<a href="#here">here</a>', '<a href="#here">here</a>'),
        ('<a href="https://example.org/">out</a>', '<a href="https://example.org/">out</a>'),
        ('<a href="mailto:a@b.example">mail</a>', '<a href="mailto:a@b.example">mail</a>'),
        ('<a title="a > b" href="gone.html?q=1">q</a>', "<span>q</span>"),
        ("<a name='x'>x</a>", "<a name='x'>x</a>"),
        ('<abbr href="gone.html">x</abbr>', '<abbr href="gone.html">x</abbr>'),
        ('<link rel="preload" href="../../fonts/text.woff2" as="font">', ""),
        ('<link rel="stylesheet" href="../../look/site.css">', '<link rel="stylesheet" href="../../look/site.css">'),
    ],
)
def test_links_of_a_page(link: str, kept: str) -> None:
    assert page_for_usb(link, HERE, {"books/lift/session-2.html"}) == kept


def test_targets_are_told_from_the_root_of_the_site() -> None:
    html = '<a href="../../concepts/equality.html#x">e</a> <a href="story.html">s</a> <a href="#a">a</a>'
    assert list(targets_of(html, HERE)) == ["concepts/equality.html", "books/lift/story.html"]


def test_what_is_packed_is_told_by_address_alone(tmp_path: Path) -> None:
    site = {
        "index.html": "", "404.html": "", "sitemap.xml": "", "sitemap.xml.gz": "", "pagefind/pagefind.js": "", ".secret": "",
        "books/index.html": '<a href="../concepts/mass.html">m</a>', "look/site.css.br": "", "look/site.css": "",
        "books/lift/session-1.html": '<a href="../../concepts/equality.html">e</a>', "books/lift/session-1-screen.html": "",
        "series/a-term-coverage.csv": "", "concepts/equality.html": "", "concepts/mass.html": "", "concepts/index.html": "",
        "objectives/f/index.html": "", "objectives/f/2c4.html": "", "books/lift/screens/one.html": "",
    }  # fmt: skip
    for name, content in site.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text(content, encoding="utf-8")
    left = {"404.html", "sitemap.xml", "sitemap.xml.gz", "pagefind/pagefind.js", ".secret", "look/site.css.br"}
    assert set(select_pages(tmp_path)) == set(site) - left - {"concepts/mass.html", "objectives/f/2c4.html"}
