"""The frozen collection that the tests read, as a project of its own; and copies of it to plant faults in.

It stands in ``tests/collections/``: content, who publishes it, and the site around it. All else is the program's own.
What is said of the demonstration in ``content/`` is tested in ``tests/demonstration/``, and nowhere else.
"""

from __future__ import annotations

import shutil
from functools import lru_cache
from pathlib import Path

from run_folder import made_once
from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import PageActivities, PageActivity, activities_of, work_out_pages
from storymaths.activities.work_out import WorkedOut
from storymaths.check.rules import check_parts, check_whole
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.page_fields import PageFields
from storymaths.model.problem import Problem
from storymaths.model.reference import Reference
from storymaths.parse.collection import read_collection, read_page
from storymaths.parse.drawing import faults_in_picture
from storymaths.parse.reference import read_reference

ROOT = Path(__file__).parent.parent
"""Of this repository."""
FROZEN = ROOT / "tests" / "collections" / "plover-quay"
"""What is the frozen collection's own."""


def copy_of_project(folder: Path) -> Path:
    """The frozen collection as a project that can be checked, built and changed, in a folder that may not be there yet."""
    shutil.copytree(FROZEN / "content", folder / "content")
    shutil.copytree(ROOT / "site_data", folder / "site_data")
    shutil.copytree(FROZEN / "site_data", folder / "site_data", dirs_exist_ok=True)
    (folder / "hooks").symlink_to(ROOT / "hooks")  # what Python has compiled there is used again
    for name in ("mkdocs.yml", "pyproject.toml", "LICENSE"):
        shutil.copy(ROOT / name, folder)
    return folder


PROJECT = made_once("project", copy_of_project)
"""The frozen collection as a project, for reading and building; whoever changes something takes a copy."""
_SOLVED = Memory[WorkedOut]()


@lru_cache(maxsize=1)
def reference() -> Reference:
    """The program's reference data."""
    return read_reference(PROJECT)


@lru_cache(maxsize=1)
def collection() -> Collection:
    """The frozen collection."""
    return read_collection(PROJECT, reference())


@lru_cache(maxsize=1)
def all_activities() -> PageActivities:
    """Every activity of the frozen collection, worked out."""
    return work_out_pages(collection(), _SOLVED)


def activities_on(page: Document[PageFields]) -> tuple[PageActivity, ...]:
    """Those of a page, or of a page made up beside the frozen collection's: each is solved once, however often it is asked for."""
    return activities_of(page, collection(), _SOLVED)


def text_of(path: str) -> str:
    """A content file as it is, by its path from ``content/``."""
    return (PROJECT / "content" / path).read_text(encoding="utf-8")


def problems_with(changed: dict[str, str], removed: tuple[str, ...] = ()) -> list[Problem]:
    """The problems of the whole content when some files hold other text, are new, or are gone.

    As under ``serve``, only the parts that changed are checked again; that it comes to the same is held in
    ``check/test_planted_faults.py``.
    """
    whole, before = collection_with(changed, removed), collection().parts
    same = {name for name, part in whole.parts.items() if name in before and part.is_same(before[name])}
    paths = {page.path for name in same for page in (*whole.parts[name].documents, *whole.parts[name].unread)}
    again = check_parts(whole.only(name for name in whole.parts if name not in same))
    return sorted({*check_whole(whole), *again, *(one for one in _of_its_parts() if one.place.path in paths)})


@lru_cache(maxsize=1)
def _of_its_parts() -> list[Problem]:
    """What is wrong within the parts of the frozen collection as it is: nothing, or a test says so."""
    return list(check_parts(collection()))


def collection_with(changed: dict[str, str], removed: tuple[str, ...] = ()) -> Collection:
    """The whole content with some files that hold other text, are new, or are gone."""
    whole = collection()
    gone = {f"content/{path}" for path in (*changed, *removed)}
    pages = [page for page in whole.documents if page.path not in gone]
    unread = [page for page in whole.unread if page.path not in gone]
    faults = [fault for fault in whole.faults if fault.place.path not in gone]
    for path, text in changed.items():
        if not path.endswith(".md"):
            faults += faults_in_picture(f"content/{path}", text.encode())
            continue
        page = read_page(f"content/{path}", text.encode(), whole.reference.limits.files)
        if isinstance(page, Document):
            pages.append(page)
        else:
            unread.append(page)
    files = (whole.files - {f"content/{path}" for path in removed}) | {f"content/{path}" for path in changed}
    pages.sort(key=lambda page: page.path)
    return Collection(tuple(pages), tuple(unread), files, whole.reference, tuple(faults))
