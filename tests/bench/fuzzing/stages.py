"""An input put through everything the program does with it: read, checked, and what passes drawn, printed, screened and packed."""

from __future__ import annotations

import atexit
import re
import shutil
import tempfile
from collections.abc import Iterator
from copy import copy
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path
from typing import Any

from project import PROJECT, collection, reference
from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import PageActivities
from storymaths.activities.work_out import WorkedOut
from storymaths.model.address import screen_page
from storymaths.model.collection import Collection
from storymaths.model.document import Document, Unread
from storymaths.model.page_fields import PageFields
from storymaths.model.problem import Problem
from storymaths.model.session import Session
from storymaths.model.site_settings import SiteSettings
from storymaths.model.stand_ins import with_stand_ins
from storymaths.parse.collection import ContentReader, read_page
from storymaths.parse.drawing import faults_in_picture
from storymaths.parse.reference import ReferenceBroken, read_reference
from storymaths.publish.head_metadata import HeadMetadata
from storymaths.publish.open_data.files import open_data
from storymaths.publish.pack.only_series import only_series
from storymaths.publish.pack.page_links import page_for_usb, targets_of
from storymaths.publish.page_frame import Drawn, PageFrame
from storymaths.publish.page_kinds.table import kind_of
from storymaths.reading import ProjectReader, Reading
from storymaths.render.screens.pages import draw_screen
from storymaths.render.sheets.of_page import book_sheets, home_sheets, session_sheets
from storymaths.render.sheets.pictures import for_paper
from storymaths.render.sheets.sheet_context import SheetContext
from storymaths.render.sheets.typesetting import copy_of, set_in_type
from storymaths.render.site import Site

from .inputs import SESSION, Input, hosts, page_texts
from .trees import grow_tree

PASSED, PROBLEMS = "passed", "problems"
_FAILED_INSIDE = re.compile(r"failed on this activity \((.*)\)|program stumbled here.*\((.*)\)")


class Stumbled(Exception):
    """A fault of the program that it has caught and told as a problem itself."""


@dataclass
class Stage:
    """How far an input has come: ``now`` is what is being done with it."""

    now: str = "read"


def run_through(given: Input, stage: Stage, in_type: bool = False) -> str:
    """Does everything with an input; ``PASSED`` or ``PROBLEMS``. Whatever is raised is a fault of the program.

    With ``in_type`` its sheets are set, and not only made ready to be.
    """
    if given.of == "drawing":
        return _drawing(given, stage)
    if given.of == "tree":
        return _tree(given, stage)
    if given.of == "site data":
        return _site_data(given, stage, in_type)
    page = read_page(f"content/{given.path}", given.text.encode("utf-8", "replace"), reference().limits.files)
    around = _around(given.path)
    stage.now = "check"
    return _checked_and_drawn(around.with_page(page), around.known, page.path, stage, in_type)


def _checked_and_drawn(reading: Reading, known: frozenset[str], path: str, stage: Stage, in_type: bool) -> str:
    whole, activities = reading.collection, reading.activities
    assert whole is not None
    for problem in reading.problems:
        if stumbled := _FAILED_INSIDE.search(problem.message):
            raise Stumbled(stumbled[1] or stumbled[2])
        assert problem.place.line >= 1, problem
    stage.now = "draw as served"
    served = _site(with_stand_ins(whole), activities)
    shown = next((one for one in served.collection.documents if one.path == path), None)
    if shown:
        _drawn(served, shown, serving=True)
    if any(_known_by(problem) not in known for problem in reading.problems):
        return PROBLEMS
    page = next(one for one in whole.documents if one.path == path)
    site = _site(whole, activities)
    stage.now = "draw as built"
    html = _drawn(site, page, serving=False)
    if isinstance(page.fields, Session):
        stage.now = "screen"
        html += draw_screen(site, page).html  # type: ignore[arg-type]
        assert screen_page(page.source)
    stage.now = "open data"
    open_data(site)
    stage.now = "sheets"
    _sheets(site, page, stage, in_type)
    stage.now = "pack"
    here = page.source.replace(".md", ".html")
    page_for_usb(html, here, set(targets_of(html, here)))
    for series in whole.series:
        only_series(whole, series)
    return PASSED


def _drawn(site: Site, page: Document[PageFields], serving: bool) -> str:
    rendered = kind_of(page).draw(site, page)
    if not serving:
        HeadMetadata(site).element(page, rendered)
    html = _frame(serving).put_around(Drawn(rendered, "", False, "", "A publisher", site.terms(page.source)))
    assert html.encode("utf-8")
    return html


@lru_cache(maxsize=2)
def _frame(serving: bool) -> PageFrame:
    return PageFrame(SiteSettings(), serving)


def _sheets(site: Site, page: Document[Any], stage: Stage, in_type: bool) -> None:
    sheets = SheetContext(site.collection, site.activities_of, lambda _: None)
    match page.fields.kind:
        case "session":
            made = session_sheets(sheets, page)
        case "home":
            made = home_sheets(sheets, page)
        case "book" | "story":
            book = site.collection.book_of(page)
            made = book_sheets(sheets, book, book.fields.title) if book else []
        case _:
            made = []
    copies = [copy_of(sheet) for sheet in made]
    if in_type:
        stage.now = "sheets set in type"
        for copy in copies:
            set_in_type(copy)


def _site(whole: Collection, activities: PageActivities) -> Site:
    site = Site(whole, activities, _EXAMPLES)
    vars(site)["words"] = _usual_site().words  # hangs on no page; making it anew takes longer than all the rest
    return site


_EXAMPLES: Memory[WorkedOut] = Memory()


@lru_cache(maxsize=1)
def _usual_site() -> Site:
    return Site(collection())


def _known_by(problem: Problem) -> str:
    return f"{problem.place.path} {problem.rule} {problem.message}"


class _Reader(ProjectReader):
    """Reads what it is given, and no folder; as under serve, what has not changed since is not checked again."""

    def look(self, whole: Collection) -> Reading:
        """What is found in a collection."""
        printed = self._printed(whole)
        assert isinstance(printed, Collection)
        return self._check(printed)


@dataclass(frozen=True)
class _Around:
    """The pages a page cannot be without, its own left out, and the problems there are however well it is written."""

    near: Collection
    reader: _Reader
    known: frozenset[str]

    def with_page(self, page: Document[PageFields] | Unread) -> Reading:
        """What is found with one more page among them; the next page is looked at as if this one had never been."""
        return copy(self.reader).look(_with(self.near, page))


def _with(near: Collection, page: Document[PageFields] | Unread) -> Collection:
    if isinstance(page, Unread):
        return replace(near, unread=(page,))
    return replace(near, documents=tuple(sorted((*near.documents, page), key=lambda one: one.path)))


@lru_cache(maxsize=64)
def _around(path: str) -> _Around:
    whole = collection()
    folder = path.rpartition("/")[0]
    book = f"content/{folder}/" if folder.startswith("books/") else None
    wanted = ("index.md", "story.md")
    pages = tuple(
        page
        for page in whole.documents
        if page.path != f"content/{path}"
        and (page.path.startswith(book) and (page.path.endswith(wanted) or path.endswith(wanted)) if book else True)
    )
    near, reader = replace(whole, documents=pages, unread=()), _Reader(PROJECT)
    texts = [texts[path] for texts in (hosts(), page_texts()) if path in texts]
    own = [read_page(f"content/{path}", text.encode(), whole.reference.limits.files) for text in texts]
    ways = [near, *(_with(near, page) for page in own)]
    found = {problem for pages in ways for problem in reader.look(pages).problems}
    return _Around(near, reader, frozenset(map(_known_by, found)))


def _drawing(given: Input, stage: Stage) -> str:
    faults = faults_in_picture(f"content/{given.path}", given.text.encode("utf-8", "replace"))
    stage.now = "sheets"
    assert (for_paper(given.text) is None) == bool(faults) or "\0" in given.text or "\ufeff" in given.text
    return PROBLEMS if faults else PASSED


def _tree(given: Input, stage: Stage) -> str:
    root, files, reader = _ground()
    shutil.rmtree(root / "content", ignore_errors=True)
    grow_tree(given.text, root)
    whole = files.read(reference())
    stage.now = "check"
    reading = reader.look(whole)
    stage.now = "draw as served"
    served = _site(with_stand_ins(whole), reading.activities)
    for page in _few(served.collection):
        _drawn(served, page, serving=True)
    for name in whole.files:
        assert (root / name).is_file() or reading.problems
    return PROBLEMS if reading.problems else PASSED


@lru_cache(maxsize=1)
def _ground() -> tuple[Path, ContentReader, _Reader]:
    """A folder in which one tree after another is grown, and what reads it: what stays as it was is not read again."""
    root = Path(tempfile.mkdtemp())
    atexit.register(shutil.rmtree, root, ignore_errors=True)
    (root / "site_data").symlink_to(PROJECT / "site_data")
    return root, ContentReader(root), _Reader(root)


def _few(whole: Collection) -> Iterator[Document[PageFields]]:
    yield from whole.documents[:2]


def _site_data(given: Input, stage: Stage, in_type: bool) -> str:
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder)
        for path in (PROJECT / "site_data").rglob("*.yaml"):
            name = path.relative_to(PROJECT / "site_data")
            (root / "site_data" / name).parent.mkdir(parents=True, exist_ok=True)
            (root / "site_data" / name).symlink_to(path)
        (root / "site_data" / given.path).unlink()
        (root / "site_data" / given.path).write_text(given.text, encoding="utf-8")
        try:
            data = read_reference(root)
        except ReferenceBroken:
            return PROBLEMS
    around = _around(SESSION)
    page = next(one for one in collection().documents if one.path == f"content/{SESSION}")
    stage.now = "check"
    reading = _Reader(PROJECT).look(replace(_with(around.near, page), reference=data))
    return _checked_and_drawn(reading, around.known, page.path, stage, in_type)
