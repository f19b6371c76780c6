"""A project shown while it is written: pages as the build's, seen as they change, told when they cannot be, two at once."""

from __future__ import annotations

import re
import threading
from pathlib import Path

import pytest
from built import built_site, copy_that_was_built
from storymaths.live.project import LiveProject

SESSION = "books/cliff-house-lift/session-2"
FOR_ITS_AUTHOR = re.compile(rb'<p class="for-its-author">.*?</p>')
"""What serving adds to a page."""
SITE = "https://ploverquay.example/"


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> LiveProject:
    """A copy of the project, which a test leaves as it found it. Nothing works aside: sheets are made when asked for."""
    return LiveProject(copy_that_was_built(tmp_path_factory.mktemp("live") / "project"), SITE)


def source(project: LiveProject, address: str = f"{SESSION}.html") -> Path:
    return project.build.root / "content" / address.replace(".html", ".md")


def page(project: LiveProject, address: str = f"{SESSION}.html") -> str:
    found = project.page(address)
    assert found is not None
    return found.decode()


def test_pages_and_files_are_those_of_the_build_byte_for_byte(project: LiveProject) -> None:
    """One in ten of the generated pages, and every page and file of a book, which has sheets."""
    site = built_site()
    for book in project.build.reading.collection.books:  # type: ignore[union-attr]
        assert project.file(f"books/{book}/all-sheets.pdf") is not None
    names = sorted(path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())
    apart = [name for name in names if name.startswith("pagefind/") or name == "text-rows.json"]
    for number, name in enumerate(name for name in names if name not in apart):
        if name.startswith("series/"):
            continue  # its sheets, which its page lists, are made of all its books: by a build alone
        if number % 10 == 0 or name.startswith("books/cliff-house-lift/") or not name.endswith(".html"):
            live = project.page(name) if name.endswith(".html") and name != "404.html" else project.file(name)
            data = live.read_bytes() if isinstance(live, Path) else live.encode() if isinstance(live, str) else live
            assert data is not None
            assert FOR_ITS_AUTHOR.sub(b"", data) == (site / name).read_bytes(), name


def test_a_saved_page_is_seen_and_the_rest_is_not_drawn_again(project: LiveProject) -> None:
    number, mark = project.look(), project.mark("words.html")
    before = source(project).read_text(encoding="utf-8")
    source(project).write_text(before.replace("Ask for all six.", "Ask for every one of the six."), encoding="utf-8")
    assert "Ask for every one of the six." in page(project)
    assert project.changed_since(number) > number
    assert project.mark("words.html") == mark  # what it shows is as it was: no browser loads it again
    source(project).write_text(before, encoding="utf-8")
    assert "Ask for all six." in page(project)


def test_who_waits_is_told_of_a_change(project: LiveProject) -> None:
    number = project.look()
    told: list[int] = []
    waiting = threading.Thread(target=lambda: told.append(project.changed_since(number, 60)))
    waiting.start()
    before = source(project).read_text(encoding="utf-8")
    source(project).write_text(before + "\nOne more line.\n", encoding="utf-8")
    project.look()
    waiting.join(60)
    source(project).write_text(before, encoding="utf-8")
    assert told == [number + 1]
    assert project.changed_since(number + 1, 0) == number + 1


def test_a_slip_is_told_on_its_page_and_the_first_and_mending_is_enough(project: LiveProject) -> None:
    before = source(project).read_text(encoding="utf-8")
    source(project).write_text(before.replace("title: ", "title: Who is: ", 1), encoding="utf-8")
    assert "could not be read" in page(project)
    assert "could not be read" in page(project, "index.html")
    lists = project.build.root / "site_data" / "limits.yaml"
    kept = lists.read_text(encoding="utf-8")
    lists.write_text(kept + "\nnonsense: 1\n", encoding="utf-8")
    assert "is not a field here" in page(project, "books/index.html")
    assert project.file("look/site.css")
    assert project.file("finder-data.json") is None
    lists.write_text(kept, encoding="utf-8")
    source(project).write_text(before, encoding="utf-8")
    assert 'class="problems"' not in page(project) + page(project, "index.html")


def test_what_cannot_be_checked_is_told_once_and_is_no_change_each_time(
    project: LiveProject, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stumble(*_: object) -> None:
        raise ValueError("no such rule")

    before = source(project).read_text(encoding="utf-8")
    with monkeypatch.context() as patched:
        patched.setattr("storymaths.reading.check_whole", stumble)
        source(project).write_text(before + "\nOne more line.\n", encoding="utf-8")
        assert "no such rule" in page(project)
        assert project.look() == project.look()
    source(project).write_text(before, encoding="utf-8")
    assert "no such rule" not in page(project)


def test_a_changed_list_is_seen(project: LiveProject) -> None:
    words = project.build.root / "site_data" / "words.yaml"
    before = words.read_text(encoding="utf-8")
    words.write_text(before.replace("Worth the same.", "Worth exactly the same.", 1), encoding="utf-8")
    assert "Worth exactly the same." in page(project, "words.html")
    words.write_text(before, encoding="utf-8")
    assert "Worth exactly the same." not in page(project, "words.html")


def test_a_changed_picture_is_seen(project: LiveProject) -> None:
    picture = next(path for name, path in project.build.picture_files.items() if name.endswith(".svg"))
    mark, before = project.mark(f"{SESSION}.html"), picture.read_text(encoding="utf-8")
    picture.write_text(before.replace("</svg>", "<path d='M0 0'/></svg>"), encoding="utf-8")
    assert project.mark(f"{SESSION}.html") != mark
    picture.write_text(before, encoding="utf-8")
    project.look()


def test_two_at_once_get_what_one_would(project: LiveProject) -> None:
    addresses = [f"{SESSION}.html", "index.html", "words.html", "books/cliff-house-lift/index.html"]
    alone = [page(project, address) for address in addresses]
    before = source(project).read_text(encoding="utf-8")
    source(project).write_text(before + "\n", encoding="utf-8")  # so that all are drawn again
    found: dict[str, str] = {}
    threads = [
        threading.Thread(target=lambda at=address: found.update({at: page(project, at)})) for address in addresses
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert [found[address] for address in addresses] == alone
    source(project).write_text(before, encoding="utf-8")
    project.look()


def test_sheets_are_offered_once_they_are_made_and_kept_until_others_are(project: LiveProject) -> None:
    address = "books/cliff-house-lift/session-2-plan.pdf"
    assert project.file(address) is not None
    assert "session-2-plan.pdf" in page(project)
    before = source(project).read_text(encoding="utf-8")
    old = project.file(address)
    source(project).write_text(before.replace("Who is worth Camel?", "Who weighs what Camel weighs?"), encoding="utf-8")
    assert "session-2-plan.pdf" in page(project)  # while those of now are still to be made
    assert isinstance(old, Path)
    assert project.file(address) not in (None, old)
    source(project).write_text(before, encoding="utf-8")
    project.look()
    assert project.file("books/cliff-house-lift/no-such-sheet.pdf") is None


def test_there_is_nothing_at_other_addresses(project: LiveProject) -> None:
    for address in ("nowhere.html", "../site_data/site.yaml", "books/cliff-house-lift/session-2.md", "", "index"):
        assert project.page(address) is None
        assert project.file(address) is None
