"""The whole story of a build: read, check, work out, draw, write."""

from __future__ import annotations

import shutil
from collections.abc import Sequence
from pathlib import Path

from .build import Build, Prints
from .check.program_fault import as_problem
from .model.address import CONTENT, html_of
from .model.problem import Problem
from .reading import ProjectReader, Reading


class ProblemsFound(Exception):
    """The content has problems, and nothing was built."""

    def __init__(self, problems: Sequence[Problem]) -> None:
        self.problems = problems
        super().__init__("\n".join(str(problem) for problem in problems))


def build_site(root: Path, out: Path) -> None:
    """Builds the site of the project at ``root`` into ``out``, which is new or empty. Raises ``ProblemsFound``."""
    build = start_build(root)
    if build.reading.problems:
        raise ProblemsFound(build.reading.problems)
    write_site(build, out)


def start_build(
    root: Path,
    *,
    serving: bool = False,
    address: str = "",
    reader: ProjectReader | None = None,
    offered: Prints | None = None,
) -> Build:
    """Reads, checks and works out a project: all of a build that comes before drawing.

    For the rest see ``Build``. What ``reader`` has read before, and has not changed, it does not read again.
    """
    reader = reader or ProjectReader(root)
    try:
        reading = reader.read()
    except Exception as error:
        if not serving:
            raise
        reading = Reading(None, (as_problem(error, CONTENT),))
    return Build(root, reading, serving, address=address, memory=reader.examples, offered=offered)


def write_site(build: Build, out: Path) -> None:
    """Draws every page and writes it, and the files beside the pages, into ``out``. Raises ``OSError``."""
    for source in build.pages:
        _write(out / html_of(source), build.page(source))
    for address, content in build.files().items():
        _write(out / address, content)
    build.finish(out)


def _write(file: Path, content: bytes | str | Path) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    if isinstance(content, Path):
        shutil.copyfile(content, file)
    else:
        file.write_bytes(content.encode() if isinstance(content, str) else content)
