"""Kills every command that writes, over and over: what it writes is there whole, or as it was before.

``python tests/bench/try_kills_of_commands.py [KILLS] [COMMAND…]`` (default 100, of all) kills ``build`` (by the program, and by
MkDocs), ``new``, ``start``, ``plan`` and ``pack`` that many times each, by SIGKILL at random moments of a small project.
``tune`` and ``solve`` write nothing; ``publish`` has ``try_kills.py``. It ends with 1 if anything was lost or half.
"""

from __future__ import annotations

import random
import shutil
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.many_sessions import make_project
from bench.try_kills import ENVIRONMENT, killed, mark_of
from storymaths.publish.pack.verify import verify

PROGRAM = (sys.executable, "-m", "storymaths")
SERIES = """\
---
kind: series
title: A short run
year: 2
books: [book-0]
for_whom: Teachers of Year 2.
summary: One book, and what is taught from it.
licence: Ask before you copy it.
contact: Write to us.
version: "1.0"
changes:
  - {version: "1.0", date: 2026-09-07, what: [The first.]}
---

One book.
"""


@dataclass(frozen=True)
class Tried:
    """A command, what is done before each run of it, and what is found after: one of the states that are right."""

    command: Sequence[str]
    before: Callable[[int], object]
    found: Callable[[], str]
    right: frozenset[str]


def tree_of(folder: Path) -> str:
    """All that is in a folder, as one text; empty where there is none."""
    files = sorted(path for path in folder.rglob("*") if path.is_file())
    return "\n".join(f"{path.relative_to(folder)}:{path.read_text('utf-8', 'replace')}" for path in files)


def text_of(file: Path) -> str:
    """What is in a file; empty where there is none."""
    return file.read_text("utf-8", "replace") if file.exists() else ""


def run(command: Sequence[str], project: Path) -> float:
    """Runs a command to its end; its seconds."""
    started = time.perf_counter()
    subprocess.run(command, cwd=project, env=ENVIRONMENT, check=True, stdout=subprocess.DEVNULL)
    return time.perf_counter() - started


def build(project: Path, command: Sequence[str]) -> Tried:
    """The site in two versions by turns."""
    page = project / "content/books/book-0/home-1.md"
    text = page.read_text(encoding="utf-8")

    def before(number: int) -> None:
        page.write_text(f"{text}\nThis is version {'AB'[number % 2]}.\n", encoding="utf-8")

    right = set()
    for number in (0, 1):
        before(number)
        run(command, project)
        right.add(mark_of(project / "site"))
    return Tried(command, before, lambda: mark_of(project / "site"), frozenset(right))


def file_made(command: Sequence[str], project: Path, file: Path) -> Tried:
    """A file that is not there before."""
    run(command, project)
    return Tried(command, lambda _: file.unlink(missing_ok=True), lambda: text_of(file), frozenset(("", text_of(file))))


def start(project: Path) -> Tried:
    """A collection, whose one part that differs each time is the name it is known by."""
    folder = project / "started"
    command = (*PROGRAM, "start", str(folder), "--name", "N", "--publisher", "P", "--licence", "reserved")
    run(command, project)

    def found() -> str:
        return "\n".join(line for line in tree_of(folder).split("\n") if "urn:uuid" not in line)

    return Tried(command, lambda _: shutil.rmtree(folder, ignore_errors=True), found, frozenset(("", found())))


def pack(project: Path) -> Tried:
    """A pack, which must be whole where it is."""
    file = project / "pack.zip"

    def found() -> str:
        return verify(file).version if file.exists() else ""

    command = (*PROGRAM, "pack", "a-short-run", "--out", str(file))
    return Tried(command, lambda _: file.unlink(missing_ok=True), found, frozenset(("", "1.0")))


def try_one(name: str, tried: Tried, project: Path, kills: int) -> bool:
    """Kills a command many times; whether all was right each time, and after a run to its end."""
    tried.before(0)
    took = run(tried.command, project)
    chance, seen, wrong, running = random.Random(20270111), Counter[str](), 0, 0
    for number in range(kills):
        tried.before(number)
        running += killed(tried.command, project, chance.uniform(0.02, took * 1.3))
        try:
            found = tried.found()
        except Exception as error:  # what cannot be read is not whole
            found = str(error)
        seen[found] += 1
        wrong += found not in tried.right
    tried.before(0)
    run(tried.command, project)
    left = [
        path.name for path in project.rglob(".*") if "being-made" in path.name or path.name.endswith((".last", ".part"))
    ]
    print(
        f"{name}: {took:.1f} s; {running} of {kills} killed while it ran, {len(seen)} states seen, {wrong} not whole; left: {left}"
    )
    return not wrong


def main() -> int:
    """0 if nothing was lost."""
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    with tempfile.TemporaryDirectory() as made:
        project = Path(made) / "project"
        make_project(project, 1)
        (project / "content/series").mkdir()
        (project / "content/series/a-short-run.md").write_text(SERIES, encoding="utf-8")
        new, plan = project / "content/books/a-new-one/index.md", project / "plan.html"
        tries: Mapping[str, Callable[[], Tried]] = {
            "new": lambda: file_made((*PROGRAM, "new", "book", "A new one"), project, new),
            "start": lambda: start(project),
            "plan": lambda: file_made(
                (*PROGRAM, "plan", "a-short-run", "--start", "2027-01-11", "--out", str(plan)), project, plan
            ),
            "pack": lambda: pack(project),
            "build": lambda: build(project, (*PROGRAM, "build")),
            "mkdocs": lambda: build(project, (sys.executable, "-m", "mkdocs", "build", "-q")),
        }
        results = [
            try_one(name, make(), project, kills) for name, make in tries.items() if name in (sys.argv[2:] or tries)
        ]
    print("Whole every time." if all(results) else "NOT WHOLE.")
    return 0 if all(results) else 1


if __name__ == "__main__":
    sys.exit(main())
