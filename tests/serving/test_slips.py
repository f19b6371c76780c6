"""Whatever an author gets wrong, every page is drawn while it is served and says what is wrong; mending is enough."""

from __future__ import annotations

import html
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import pytest
import yaml
from project import collection, copy_of_project, problems_with, reference, text_of
from storymaths.build import Build
from storymaths.check.echoes import without_echoes
from storymaths.check.rules import check_all
from storymaths.model.address import source_of
from storymaths.model.document import Unread
from storymaths.parse.collection import read_page
from storymaths.pipeline import start_build

PLAIN = "about-the-quay.md"
Slip = dict[str, str]
SLIPS: list[Slip]
TOLD: list[Slip]
SLIPS, TOLD = yaml.safe_load_all((Path(__file__).parent / "slips.yaml").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Build]:
    """A copy without a slip, with all it solved; to be given back as it was."""
    build = start_build(copy_of_project(tmp_path_factory.mktemp("serving") / "project"), serving=True)
    build.draw("activities.md")
    build.files()
    yield build
    mended = start_build(build.root, serving=True, before=build.memory)
    assert mended.reading.problems == ()
    assert 'class="problems"' not in mended.page("index.md")


@contextmanager
def made(slip: Slip, root: Path, kept: Path) -> Iterator[None]:
    """A slip in the project, mended at the end."""
    path = root / slip["path"]
    (shutil.copytree if path.is_dir() else shutil.copy)(path, kept / "as-it-was")
    if "to" in slip:
        path.rename(root / slip["to"])
    elif path.is_dir():
        shutil.rmtree(path)
    elif "new" not in slip:
        path.unlink()
    elif "old" not in slip:
        path.write_text(slip["new"], encoding="utf-8")
    else:
        text = path.read_text(encoding="utf-8")
        assert slip["old"] in text, f"the collection has changed: {slip['old']!r} is no longer in {slip['path']}"
        path.write_text(text.replace(slip["old"], slip["new"], 1), encoding="utf-8")
    yield
    if "to" in slip:
        (root / slip["to"]).unlink()
    (shutil.copytree if (kept / "as-it-was").is_dir() else shutil.copy)(kept / "as-it-was", path)


def name_of(slip: Slip) -> str:
    return f"{slip['path']} {slip.get('new', slip.get('to', '(gone)'))}"


def problems_on(page: str) -> str:
    return html.unescape(page.partition('class="problems"')[2].partition("</section>")[0])


def some_pages(build: Build, slip: Slip) -> Iterator[str]:
    """The first page, those that show what every page says, those near a slip and of its own; of the rest one in twenty."""
    own = slip.get("page", source_of(slip["path"]))
    folder = own.rpartition("/")[0]
    for number, source in enumerate(build.pages):
        near = source.startswith(f"{folder}/") if folder else "/" not in source
        if source in ("index.md", own) or (near and not source.startswith("activities")) or number % 20 == 0:
            yield source


@pytest.mark.parametrize("slip", SLIPS, ids=name_of)
def test_a_slip_is_said_on_its_page_and_on_the_first_and_no_page_is_lost(
    slip: Slip, whole: Build, tmp_path: Path
) -> None:
    with made(slip, whole.root, tmp_path):
        build = start_build(whole.root, serving=True, before=whole.memory)
        pages = {source: build.page(source) for source in some_pages(build, slip)}
        if (
            SLIPS.index(slip) % 4 == 0
        ):  # what stands beside the pages is made of all of them, whichever page has the slip
            build.files()
    assert slip["says"] in problems_on(pages[slip.get("page", source_of(slip["path"]))])
    assert len(build.reading.problems) == int(slip.get("problems", 1))
    told = problems_on(pages["index.md"])
    for problem in build.reading.problems:
        assert problem.message in told
        assert problem.fix in told
        assert str(problem.place) in told


@pytest.mark.parametrize("slip", TOLD, ids=name_of)
def test_a_slip_is_told_once_and_in_words(slip: Slip) -> None:
    source = source_of(slip["path"])
    text = text_of(source)
    assert slip["old"] in text
    changed = text.replace(slip["old"], slip["new"], 1)
    page = read_page(slip["path"], changed.encode(), reference().limits.files)
    alone = replace(collection(), documents=(), unread=(page,)) if isinstance(page, Unread) else None
    problems = without_echoes(check_all(alone) if alone else problems_with({source: changed}))
    assert len(problems) == int(slip.get("problems", 1))
    for problem in problems:
        assert slip["says"] in f"{problem.message} {problem.fix}"
        assert source_of(problem.place.path) == slip.get("page", source)


def test_a_page_that_the_program_cannot_draw_says_so(whole: Build, monkeypatch: pytest.MonkeyPatch) -> None:
    def stumble(*_: object) -> None:
        raise ValueError("no such shape")

    monkeypatch.setattr("storymaths.build.kind_of", stumble)
    build = start_build(whole.root, serving=True, before=whole.memory)
    assert "no such shape" in problems_on(build.page(PLAIN))
    assert "program-fault" in problems_on(build.page(PLAIN))
    with pytest.raises(ValueError, match="no such shape"):
        start_build(whole.root, before=whole.memory).page(PLAIN)


def test_what_stops_the_reading_is_said_on_every_page(whole: Build, monkeypatch: pytest.MonkeyPatch) -> None:
    def stumble(*_: object, **__: object) -> None:
        raise ValueError("no such rule")

    monkeypatch.setattr("storymaths.pipeline.read_and_check", stumble)
    build = start_build(whole.root, serving=True)
    assert "look/site.css" in build.files()
    for source in ("index.md", "books/cliff-house-lift/session-1.md"):
        assert "no such rule" in problems_on(build.page(source))


def test_the_first_page_leads_to_the_pages_with_problems(whole: Build, tmp_path: Path) -> None:
    with made(SLIPS[1], whole.root, tmp_path):
        build = start_build(whole.root, serving=True, before=whole.memory)
        assert f'href="{source_of(SLIPS[1]["path"]).replace(".md", ".html")}"' in problems_on(build.page("index.md"))
        assert 'href="../../index.html#problems-here"' in problems_on(build.page(source_of(SLIPS[1]["path"])))


def test_a_book_that_cannot_be_read_is_told_once(whole: Build, tmp_path: Path) -> None:
    slip = {"path": "content/books/cliff-house-lift/index.md", "old": "rights: own", "new": "rights: mine"}
    with made(slip, whole.root, tmp_path):
        problems = start_build(whole.root, serving=True, before=whole.memory).reading.problems
    assert [problem.rule for problem in problems] == ["field-mistyped"]
