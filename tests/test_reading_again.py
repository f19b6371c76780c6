"""A project read again: what has not changed is neither read, checked nor worked out, and what has is told as if read afresh."""

from __future__ import annotations

import gc
import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from project import copy_of_project
from storymaths.parse.collection import read_page
from storymaths.reading import ProjectReader, Reading, read_and_check
from yaml_files import read_yaml

LIFT = "content/books/cliff-house-lift"
PLANTED = read_yaml(Path(__file__).parent / "check" / "planted.yaml")


@pytest.fixture(scope="module")
def reader(tmp_path_factory: pytest.TempPathFactory) -> ProjectReader:
    """What has read a copy of the project once."""
    one = ProjectReader(copy_of_project(tmp_path_factory.mktemp("again") / "project"))
    assert one.read().problems == ()
    return one


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The pages that are read from now on."""
    names: list[str] = []

    def note(name: str, *rest: object) -> object:
        names.append(name)
        return read_page(name, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr("storymaths.parse.collection.read_page", note)
    return names


@pytest.fixture
def change(reader: ProjectReader) -> Iterator[object]:
    """Changes a file of the project; a test leaves all as it found it."""
    kept: dict[Path, bytes] = {}

    def replace(path: str, old: str, new: str) -> None:
        file = reader.root / path
        kept.setdefault(file, file.read_bytes())
        text = file.read_text(encoding="utf-8")
        assert old in text
        file.write_text(text.replace(old, new, 1), encoding="utf-8")

    yield replace
    for file, data in kept.items():
        file.write_bytes(data)
    assert reader.read().problems == ()


def test_where_nothing_changed_the_same_is_given(reader: ProjectReader, read: list[str]) -> None:
    assert reader.read() is reader.read()
    assert read == []


def test_only_the_page_that_changed_is_read_and_only_its_book_is_checked(reader, read, change, monkeypatch) -> None:  # type: ignore[no-untyped-def]
    before = reader.read()
    checked: list[str] = []
    monkeypatch.setattr(
        "storymaths.reading.check_parts", lambda some: checked.extend(page.path for page in some.documents) or ()
    )
    change(f"{LIFT}/session-2.md", "Ask for all six.", "Ask for every one of the six.")
    after = reader.read()
    assert read == [f"{LIFT}/session-2.md"]
    assert checked
    assert all(path.startswith(f"{LIFT}/") for path in checked)
    old, new = documents(before), documents(after)
    assert [path for path in new if new[path] != old[path]] == [f"{LIFT}/session-2.md"]


def documents(reading: Reading) -> dict[str, int]:
    assert reading.collection is not None
    return {page.path: id(page) for page in reading.collection.documents}


def test_an_activity_that_did_not_change_is_not_solved_again(reader, change, monkeypatch) -> None:  # type: ignore[no-untyped-def]
    def solve_again(asked: object) -> object:
        raise AssertionError(f"{asked} was solved again")

    monkeypatch.setattr("storymaths.activities.work_out._work_out", solve_again)
    change(f"{LIFT}/session-2.md", "Ask for all six.", "Ask for every one of the six.")
    assert reader.read().problems == ()


@pytest.mark.parametrize("planted", PLANTED[::9], ids=lambda planted: planted["rule"])
def test_a_slip_made_while_it_is_read_is_told_as_if_read_afresh(reader, change, planted) -> None:  # type: ignore[no-untyped-def]
    change(f"content/{planted['path']}", planted["old"], planted["new"])
    told = reader.read().problems
    assert planted["rule"] in {problem.rule for problem in told}
    assert told == read_and_check(reader.root).problems


def test_a_list_that_changes_is_read_and_all_is_held_to_it(reader, read, change) -> None:  # type: ignore[no-untyped-def]
    change("site_data/limits.yaml", "home_reading_grade: 5", "home_reading_grade: 0")
    told = reader.read().problems
    assert told == read_and_check(reader.root).problems
    assert told
    change("site_data/limits.yaml", "home_reading_grade:", "home_reading_grad:")
    assert reader.read().collection is None


def test_a_change_within_the_second_and_of_the_same_length_is_seen(reader, change) -> None:  # type: ignore[no-untyped-def]
    """A file's time may be coarser than a quick hand: FAT's is two seconds."""
    file = reader.root / LIFT / "session-2.md"
    when = file.stat().st_mtime_ns
    change(f"{LIFT}/session-2.md", "minutes: 50", "minutes: 55")
    os.utime(file, ns=(when, when))
    assert [problem.rule for problem in reader.read().problems] == ["minutes-do-not-add"]


def test_a_page_that_goes_and_comes_back(reader: ProjectReader) -> None:
    file, before = reader.root / LIFT / "session-2.md", reader.read()
    data = file.read_bytes()
    file.unlink()
    assert reader.read().problems == read_and_check(reader.root).problems != ()
    file.write_bytes(data)
    assert reader.read().problems == before.problems == ()


def test_a_folder_that_links_in_a_circle_is_told_and_not_followed(reader: ProjectReader) -> None:
    link = reader.root / "content/books/round"
    link.symlink_to("..")
    (problem,) = reader.read().problems
    assert problem.place.path == "content/books/round"
    assert "link to another place" in problem.message
    link.unlink()
    assert reader.read().problems == ()


def test_a_folder_that_is_gone_or_closed_is_told(reader: ProjectReader, monkeypatch: pytest.MonkeyPatch) -> None:
    content, aside = reader.root / "content", reader.root / "aside"
    content.rename(aside)
    assert [(p.place.path, "cannot be opened (no such file" in p.message) for p in reader.read().problems][:1] == [
        ("content", True)
    ]
    aside.rename(content)
    assert reader.read().problems == ()
    look = os.scandir

    def refuse(path: str) -> object:
        if str(path).endswith("cliff-house-lift"):
            raise PermissionError(13, "Permission denied", str(path))
        return look(path)

    monkeypatch.setattr(os, "scandir", refuse)
    told = [problem for problem in reader.read().problems if problem.place.path == LIFT]
    assert ["cannot be opened (permission denied)" in problem.message for problem in told] == [True]
    monkeypatch.undo()
    assert reader.read().problems == ()


def test_only_what_the_first_reading_made_is_kept_from_the_collector(reader, change) -> None:  # type: ignore[no-untyped-def]
    """Else whatever a save leaves behind stays for good: 28 MB each time."""
    change(f"{LIFT}/session-2.md", "minutes: 50", "minutes: 51")
    before = gc.get_freeze_count()
    reader.read()
    assert gc.get_freeze_count() <= before
