"""Content written to do harm: each is a problem of its file, in words, and a page of it drawn all the same runs nothing.

How long each takes is for ``tests/bench/bench_hostile.py`` to say.
"""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
import yaml
from project import collection as whole
from project import problems_with, reference, text_of
from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import check_activities, work_out_pages
from storymaths.activities.work_out import WorkedOut
from storymaths.check.rules import check_all
from storymaths.commands.terminal import as_annotations, as_json, as_text
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.page_fields import PageFields
from storymaths.model.problem import Problem
from storymaths.parse.collection import ContentReader
from storymaths.parse.document import parse_document
from storymaths.publish.page_kinds.table import kind_of
from storymaths.release.built_pages import read_built
from storymaths.render.site import Site

from .hostile import Hostile, every_case, small_content

CASES = list(every_case())
SOLVED = Memory[WorkedOut]()
"""Activities that nobody touched are worked out once for all."""
SCRIPT = "<script>alert(1)</script>"
ONE_OF_EACH = [
    "books/cliff-house-lift/index.md", "books/cliff-house-lift/story.md", "books/cliff-house-lift/session-2.md",
    "books/cliff-house-lift/home-1.md", "series/a-term-on-plover-quay.md", "about-the-quay.md",
]  # fmt: skip


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, ContentReader]:
    """A folder for each case in turn, and what keeps the pages of it that no case touches."""
    root = tmp_path_factory.mktemp("hostile")
    return root, ContentReader(root)


def read(content: ContentReader) -> tuple[Site, list[Problem]]:
    collection = content.read(reference())
    activities = work_out_pages(collection, SOLVED)
    return Site(collection, activities), sorted({*check_all(collection), *check_activities(activities)})


def dangers_in(page: Document[PageFields], site: Site, folder: Path) -> list[str]:
    """What could run on a page drawn with its problems, as an author sees it under serve."""
    folder.mkdir()
    (folder / "page.html").write_text(kind_of(page).draw(site, page).html, encoding="utf-8")
    drawn = read_built(folder).pages["page.html"]
    return drawn.dangers  # a picture from elsewhere is stopped by the policy: tests/browser/test_policy.py


def test_there_are_more_than_fifty() -> None:
    assert len({case.name for case in CASES}) > 50


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.name)
def test_each_is_a_problem_of_its_file_and_nothing_runs(
    tmp_path: Path, small: tuple[Path, ContentReader], case: Hostile
) -> None:
    root, content = small
    shutil.rmtree(root / "content", ignore_errors=True)
    case.put(small_content(root) / "content" / case.path)
    site, problems = read(content)
    its_own = [problem for problem in problems if problem.place.path == f"content/{case.path}"]
    assert case.rule in {problem.rule for problem in its_own}, [str(problem) for problem in problems]
    for problem in its_own:
        assert problem.place.line >= 1
        assert problem.place.column >= 1
        assert problem.fix
        assert len(problem.message) < 1000
    for form in (as_text, as_json, as_annotations):
        assert "\x1b" not in form(problems)
        form(problems).encode()
    page = next((page for page in site.collection.documents if page.path == f"content/{case.path}"), None)
    if page is not None:
        assert dangers_in(page, site, tmp_path / "drawn") == []


def places_of_texts(path: str) -> list[tuple[int, int]]:
    """Where each text of a page's front matter starts and ends in its file."""
    text = text_of(path)
    front = text[4 : text.index("\n---", 4) + 1]
    found: list[tuple[int, int]] = []

    def walk(node: yaml.Node) -> None:
        if isinstance(node, yaml.MappingNode):
            for _, value in node.value:
                walk(value)
        elif isinstance(node, yaml.SequenceNode):
            for value in node.value:
                walk(value)
        elif node.tag == "tag:yaml.org,2002:str":
            found.append((node.start_mark.index + 4, node.end_mark.index + 4))

    node = yaml.compose(front, Loader=yaml.CSafeLoader)
    assert node is not None
    walk(node)
    return found


def with_scripts(path: str, places: list[tuple[int, int]]) -> str:
    text = text_of(path)
    for start, end in reversed(places):
        # A block of text ends where the next line begins; that line end is kept.
        text = f'{text[:start]}"{SCRIPT}"{chr(10) if text[start:end].endswith(chr(10)) else ""}{text[end:]}'
    return text


@pytest.mark.parametrize("path", ONE_OF_EACH)
def test_a_script_in_any_field_is_a_problem_on_its_line_and_never_runs(path: str, tmp_path: Path) -> None:
    free, refused = [], 0
    for place in places_of_texts(path):
        page = parse_document(f"content/{path}", with_scripts(path, [place]))
        line = text_of(path).count("\n", 0, place[0]) + 1
        if isinstance(page, Document):
            free.append(place)
        else:
            assert line in {fault.place.line for fault in page.faults}, f"{path}:{line}"
            refused += 1
    assert free
    assert refused
    text = with_scripts(path, free)
    lines = {number for number, line in enumerate(text.splitlines(), 1) if SCRIPT in line}
    problems = problems_with({path: text})
    told = {p.place.line for p in problems if p.rule == "html-not-on-list" and p.place.path == f"content/{path}"}
    assert told == lines
    page = parse_document(f"content/{path}", text)
    assert isinstance(page, Document)
    others = tuple(other for other in whole().documents if other.path != page.path)
    collection = Collection((*others, page), (), whole().files, whole().reference)
    site = Site(collection, work_out_pages(collection, SOLVED))
    assert dangers_in(page, site, tmp_path / "drawn") == []
