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
from built import copy_that_was_built
from project import collection, problems_with, reference, text_of
from storymaths.activities.work_out import WorkedOut
from storymaths.build import Build
from storymaths.check.echoes import without_echoes
from storymaths.check.rules import check_all
from storymaths.model.address import source_of
from storymaths.model.document import Unread
from storymaths.model.problem import ProblemsFound
from storymaths.parse.collection import read_page
from storymaths.pipeline import start_build
from storymaths.reading import ProjectReader
from storymaths.render import activity
from storymaths.render.site import Site

PLAIN = "about-the-quay.md"
Slip = dict[str, str]
SLIPS: list[Slip]
TOLD: list[Slip]
SLIPS, TOLD = yaml.load_all((Path(__file__).parent / "slips.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader)


@pytest.fixture(scope="module")
def reader(tmp_path_factory: pytest.TempPathFactory) -> ProjectReader:
    """What reads a copy of the project, again and again."""
    return ProjectReader(copy_that_was_built(tmp_path_factory.mktemp("serving") / "project"))


@pytest.fixture(scope="module")
def whole(reader: ProjectReader) -> Iterator[Build]:
    """A copy without a slip, with all it solved; to be given back as it was."""
    build = start_build(reader.root, serving=True, reader=reader)
    build.draw("activities.md")
    build.files()
    yield build
    mended = start_build(build.root, serving=True, reader=reader, offered={})  # its sheets were made above
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


def is_looked_around(slip: Slip) -> bool:
    """Whether more is drawn than its own page and the first: every fourth, and each in a file that few slips are made in."""
    return SLIPS.index(slip) % 4 == 0 or sum(one["path"] == slip["path"] for one in SLIPS) < 5


def some_pages(build: Build, slip: Slip) -> Iterator[str]:
    """The first page and its own; of some slips those near it as well, and of the rest one in twenty."""
    own = slip.get("page", source_of(slip["path"]))
    folder = own.rpartition("/")[0]
    for number, source in enumerate(build.pages):
        near = source.startswith(f"{folder}/") if folder else "/" not in source
        more = (near and not source.startswith("activities")) or number % 20 == 0
        if source in ("index.md", own) or (more and is_looked_around(slip)):
            yield source


@pytest.mark.parametrize("slip", SLIPS, ids=name_of)
def test_a_slip_is_said_on_its_page_and_on_the_first_and_no_page_is_lost(
    slip: Slip, whole: Build, reader: ProjectReader, tmp_path: Path
) -> None:
    with made(slip, whole.root, tmp_path):
        build = start_build(whole.root, serving=True, reader=reader)
        pages = {source: build.page(source) for source in some_pages(build, slip)}
        if is_looked_around(slip):  # what stands beside the pages is made of all of them, whichever page has the slip
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


def test_a_page_that_the_program_cannot_draw_says_so(
    whole: Build, reader: ProjectReader, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stumble(*_: object) -> None:
        raise ValueError("no such shape")

    monkeypatch.setattr("storymaths.build.kind_of", stumble)
    build = start_build(whole.root, serving=True, reader=reader)
    assert "no such shape" in problems_on(build.page(PLAIN))
    assert "program-fault" in problems_on(build.page(PLAIN))
    with pytest.raises(ProblemsFound, match=rf"content/{PLAIN}:1:1  program-fault\n.*no such shape"):
        start_build(whole.root, reader=reader).page(PLAIN)


def test_what_cannot_be_drawn_of_an_activity_is_told_at_its_line(
    whole: Build, reader: ProjectReader, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = "books/cliff-house-lift/session-1.md"
    lines = (whole.root / "content" / page).read_text(encoding="utf-8").splitlines()
    line = lines.index("id: lightest") - 1  # its fence stands two lines above, and lines are counted from 1
    drawn = activity.draw_activity

    def stumble(site: Site, worked: WorkedOut, *rest: object) -> str:
        if worked.fields and worked.fields.id == "lightest":
            raise IndexError("tuple index out of range")
        return drawn(site, worked, *rest)  # type: ignore[arg-type]

    monkeypatch.setattr(activity, "draw_activity", stumble)
    with pytest.raises(ProblemsFound) as found:
        start_build(whole.root, reader=reader).page(page)
    (problem,) = found.value.problems
    assert str(problem.place) == f"content/{page}:{line}:1"


def test_what_stops_the_reading_is_said_on_every_page(
    whole: Build, reader: ProjectReader, monkeypatch: pytest.MonkeyPatch
) -> None:
    def stumble(*_: object, **__: object) -> None:
        raise ValueError("no such rule")

    monkeypatch.setattr("storymaths.reading.check_whole", stumble)
    build = start_build(whole.root, serving=True)
    assert "look/site.css" in build.files()
    for source in ("index.md", "books/cliff-house-lift/session-1.md"):
        assert "no such rule" in problems_on(build.page(source))


def test_the_first_page_leads_to_the_pages_with_problems(whole: Build, reader: ProjectReader, tmp_path: Path) -> None:
    with made(SLIPS[1], whole.root, tmp_path):
        build = start_build(whole.root, serving=True, reader=reader)
        assert f'href="{source_of(SLIPS[1]["path"]).replace(".md", ".html")}"' in problems_on(build.page("index.md"))
        assert 'href="../../index.html#problems-here"' in problems_on(build.page(source_of(SLIPS[1]["path"])))


def test_a_book_that_cannot_be_read_is_told_once(whole: Build, reader: ProjectReader, tmp_path: Path) -> None:
    slip = {"path": "content/books/cliff-house-lift/index.md", "old": "rights: own", "new": "rights: mine"}
    with made(slip, whole.root, tmp_path):
        problems = start_build(whole.root, serving=True, reader=reader).reading.problems
    assert [problem.rule for problem in problems] == ["field-mistyped"]
