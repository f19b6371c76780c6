"""Publishing where there are no links: into a plain folder, file by file, and as zips of what changed."""

from __future__ import annotations

import errno
import json
import os
import shutil
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from project import ROOT
from storymaths.commands import publish as publish_command
from storymaths.commands.program import main
from storymaths.release.change_zip import TO_DELETE, record_beside, zip_changes, zip_numbered
from storymaths.release.on_disk import readable_by_all
from storymaths.release.plain_folder import RECORD, in_order, publish_to_folder
from storymaths.release.publishing import Outcome
from storymaths.release.refused import Refused
from storymaths.release.releases import Releases

from .tiny_site import asked, pages_of, published

FEW = 4
COLLECTION = ROOT / "tests/collections/made-with-0.2.0"


@pytest.fixture
def dest(tmp_path: Path) -> Path:
    (tmp_path / "locks").mkdir()
    (tmp_path / "a place for é").mkdir()
    return tmp_path / "a place for é" / "lessons"


def put(dest: Path, version: str, pages: int = FEW) -> Outcome:
    return publish_to_folder(dest, asked(pages_of(version, pages)), dest.parents[1] / "locks")


def files_in(folder: Path) -> dict[str, str]:
    found = sorted(path for path in folder.rglob("*") if path.is_file() and path.name != RECORD)
    return {path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8") for path in found}


def as_built(folder: Path, version: str, pages: int = FEW) -> dict[str, str]:
    folder.mkdir()
    pages_of(version, pages)(folder)
    return files_in(folder)


def test_a_folder_is_filled_and_only_what_changed_is_written_again(dest: Path, tmp_path: Path) -> None:
    first = put(dest, "one")
    assert (first.changes.new, first.changes.changed, list(first.problems)) == (FEW + 1, 0, [])
    before = {path: path.stat().st_mtime_ns for path in dest.rglob("*.html")}
    again = put(dest, "one")
    assert (again.changes.new, again.changes.changed, again.changes.gone) == (0, 0, 0)
    assert {path: path.stat().st_mtime_ns for path in dest.rglob("*.html")} == before
    assert put(dest, "two").changes.changed == FEW + 1
    assert files_in(dest) == as_built(tmp_path / "built", "two")
    assert [path.name for path in dest.parent.iterdir()] == ["lessons"]


def test_a_page_that_vanished_is_told_of_and_then_taken_out(dest: Path) -> None:
    put(dest, "one")
    assert {problem.rule for problem in put(dest, "one", FEW - 1).problems} == {"page-vanished"}
    assert len(files_in(dest)) == FEW + 1
    record = dest / RECORD
    told = json.loads(record.read_text(encoding="utf-8"))
    (dest / "old").mkdir()
    (dest / "old/sheet.pdf").write_text("of an earlier publishing", encoding="utf-8")
    (dest / "notes.txt").write_text("mine", encoding="utf-8")
    outside = dest.parent / "mine.txt"
    outside.write_text("mine", encoding="utf-8")
    record.write_text(json.dumps({**told, "old/sheet.pdf": "", "../mine.txt": ""}), encoding="utf-8")
    put(dest, "two")
    assert not (dest / "old").exists()
    assert (dest / "notes.txt").read_text(encoding="utf-8") == outside.read_text(encoding="utf-8") == "mine"


def test_pages_come_after_what_they_need_and_the_front_page_last() -> None:
    new, changed = ("b.html", "a.css"), ("index.html", "c.html", "d.js")
    assert in_order(new, changed) == ["a.css", "d.js", "b.html", "c.html", "index.html"]


def moves(monkeypatch: pytest.MonkeyPatch, fail_at: int) -> list[str]:
    """Notes each file put in place, and stops at one of them."""
    seen: list[str] = []
    real = Path.replace

    def replace(self: Path, target: Any) -> Path:
        seen.append(Path(target).name)
        if len(seen) == fail_at:
            raise OSError(errno.EIO, "the stick was pulled out")
        return real(self, target)

    monkeypatch.setattr(Path, "replace", replace)
    return seen


@pytest.mark.parametrize("fail_at", range(1, FEW + 4))
def test_an_interrupted_publishing_is_finished_by_the_next(
    dest: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fail_at: int
) -> None:
    one, two = as_built(tmp_path / "one", "one"), as_built(tmp_path / "two", "two")
    put(dest, "one")
    with monkeypatch.context() as patched:
        moves(patched, fail_at)
        with pytest.raises(OSError, match="pulled out"):
            put(dest, "two")
    assert all(text in (one[name], two[name]) for name, text in files_in(dest).items()), "no page is half written"
    put(dest, "two")
    assert files_in(dest) == two


def test_a_first_publishing_that_was_interrupted_is_known_for_one(dest: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for fail_at in (1, 2):
        with monkeypatch.context() as patched:
            moves(patched, fail_at)
            with pytest.raises(OSError, match="pulled out"):
                put(dest, "one")
    put(dest, "one")
    assert len(files_in(dest)) == FEW + 1


def test_what_somebody_else_put_there_is_left_alone(dest: Path) -> None:
    dest.mkdir()
    (dest / "index.html").write_text("mine", encoding="utf-8")
    with pytest.raises(Refused, match="did not make it"):
        put(dest, "one")
    (dest / RECORD).write_text("{}", encoding="utf-8")
    with pytest.raises(Refused, match="did not put it there"):
        put(dest, "one")
    assert files_in(dest) == {"index.html": "mine"}


def no_link(*_: object, **__: object) -> None:
    raise OSError(errno.EPERM, "Operation not permitted")


def test_where_there_are_no_links_it_is_said_before_anything_is_built(
    dest: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "symlink", no_link)
    with pytest.raises(Refused, match="--as folder"):
        published(dest, "one", FEW)
    assert list(dest.parent.iterdir()) == []
    put(dest, "one")


@pytest.fixture
def _shut() -> Iterator[None]:
    before = os.umask(0o077)
    yield
    os.umask(before)


@pytest.mark.usefixtures("_shut")
def test_a_server_may_read_what_is_published_whatever_the_umask(dest: Path) -> None:
    with readable_by_all():
        put(dest, "one")
        published(dest.with_name("served"), "one", FEW)
    served = Releases(dest.with_name("served"))
    assert served.current is not None
    for folder in (dest, served.folder, served.path_of(served.current)):
        site = [path for path in (folder, *folder.rglob("*")) if path.suffix != ".json"]
        shut = [path.name for path in site if path.stat().st_mode & 0o004 == 0]
        assert shut == []
        assert all(path.stat().st_mode & 0o001 for path in site if path.is_dir())


def unpack(folder: Path, zipped: Path) -> None:
    """As somebody who uploads does: over what is there, and then what is listed is deleted."""
    with zipfile.ZipFile(zipped) as opened:
        opened.extractall(folder)
    listed = folder / TO_DELETE
    if listed.exists():
        for address in listed.read_text(encoding="utf-8").splitlines():
            (folder / address).unlink()
        listed.unlink()


def test_zips_unpacked_one_after_the_other_are_the_site(dest: Path, tmp_path: Path) -> None:
    name, space = dest.with_name("lessons.zip"), tmp_path / "space"

    def extra(version: str, gone: bool) -> Any:
        def build(folder: Path) -> None:
            pages_of(version, FEW)(folder)
            (folder / "same.txt").write_text("as before", encoding="utf-8")
            if not gone:
                (folder / "old.txt").write_text("for a while", encoding="utf-8")

        return build

    for number, build in enumerate((extra("one", False), extra("two", True)), start=1):
        outcome = zip_changes(name, asked(build), tmp_path / "locks")
        assert outcome.release == number
        unpack(space, zip_numbered(name, number))
    with zipfile.ZipFile(zip_numbered(name, 2)) as opened:
        assert "same.txt" not in opened.namelist()
        assert opened.read(TO_DELETE).split() == [b"old.txt"]
    (tmp_path / "built").mkdir()
    extra("two", True)(tmp_path / "built")
    assert files_in(space) == files_in(tmp_path / "built")
    assert zip_changes(name, asked(extra("two", True)), tmp_path / "locks").release is None
    assert not zip_numbered(name, 3).exists()


def test_a_zip_that_was_made_and_not_noted_is_taken_up_by_the_next_run(dest: Path, tmp_path: Path) -> None:
    """As after a run that is ended between the two."""
    name = dest.with_name("lessons.zip")
    zip_changes(name, asked(pages_of("one", FEW)), tmp_path / "locks")
    record_beside(name).unlink()
    assert zip_changes(name, asked(pages_of("one", FEW)), tmp_path / "locks").release == 1
    assert record_beside(name).is_file()


def test_a_name_taken_by_another_file_is_left_alone(dest: Path, tmp_path: Path) -> None:
    name = dest.with_name("lessons.zip")
    zip_numbered(name, 1).write_text("mine", encoding="utf-8")
    with pytest.raises(Refused, match="left alone"):
        zip_changes(name, asked(pages_of("one", FEW)), tmp_path / "locks")
    assert zip_numbered(name, 1).read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(
    ("way", "name", "says"), [("folder", "lessons", "a plain folder"), ("zip", "lessons.zip", "lessons-1.zip")]
)
def test_the_command_publishes_either_way_and_says_what_came_of_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], way: str, name: str, says: str
) -> None:
    collection = shutil.copytree(COLLECTION, tmp_path / "mine")
    monkeypatch.chdir(collection)
    monkeypatch.setattr(publish_command, "_request", lambda *_: asked(pages_of("one", FEW)))
    assert main(["publish", str(tmp_path / name), "--as", way, "--dry-run"]) == 0
    assert "A rehearsal: 5 pages" in capsys.readouterr().out
    assert main(["publish", str(tmp_path / name), "--as", way]) == 0
    told = capsys.readouterr().out
    assert says in told
    assert "5 new, 0 changed, 0 gone" in told
    assert main(["publish", str(tmp_path / name), "--as", way, "--back"]) == 2
    assert main(["publish", str(collection / "content" / name), "--as", way]) == 2
    (collection / "content/books/six-buoys-for-tamsin/home-1.md").write_text("broken", encoding="utf-8")
    assert main(["publish", str(tmp_path / name), "--as", way]) == 1
    assert "Nothing was published." in capsys.readouterr().out
