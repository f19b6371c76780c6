"""This project's own content and data for tests, read once; and copies of it to plant faults in."""

from __future__ import annotations

import shutil
from functools import lru_cache
from pathlib import Path

from storymaths.check.rules import check_all
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.problem import Problem
from storymaths.model.reference import Reference
from storymaths.parse.collection import read_collection, read_page
from storymaths.parse.drawing import faults_in_picture
from storymaths.parse.reference import read_reference

ROOT = Path(__file__).parent.parent


@lru_cache(maxsize=1)
def reference() -> Reference:
    """The project's reference data."""
    return read_reference(ROOT)


@lru_cache(maxsize=1)
def collection() -> Collection:
    """The project's content."""
    return read_collection(ROOT, reference())


def text_of(path: str) -> str:
    """A content file as it is, by its path from ``content/``."""
    return (ROOT / "content" / path).read_text(encoding="utf-8")


def problems_with(changed: dict[str, str], removed: tuple[str, ...] = ()) -> list[Problem]:
    """The problems of the whole content when some files hold other text, are new, or are gone."""
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
    return check_all(Collection(tuple(pages), tuple(unread), files, whole.reference, tuple(faults)))


def copy_of_project(folder: Path) -> Path:
    """A copy of what a build reads, in an empty folder."""
    for name in ("content", "site_data", "hooks"):
        shutil.copytree(ROOT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
    for name in ("mkdocs.yml", "pyproject.toml"):
        shutil.copy(ROOT / name, folder / name)
    return folder
