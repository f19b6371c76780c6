"""Kills every command that writes, over and over: what it writes is there whole, or as it was before.

``python tests/bench/try_kills_of_commands.py [KILLS] [COMMAND…]`` (default 100, of all) kills each that many times, by SIGKILL,
of a small project: half at random moments of their run, half as they begin to write. ``commands_killed.py`` lists them.
``try_desk.py`` kills the desk; ``serve`` writes nothing but what it keeps; all other commands write nothing. It ends with 1 if
anything was lost or half.
"""

from __future__ import annotations

import os
import random
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Sequence
from contextlib import suppress
from itertools import count
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.commands_killed import TRIES, Tried, run
from bench.many_sessions import make_project
from bench.try_kills import ENVIRONMENT, killed
from storymaths.release.plain_folder import PART

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

OLD_PLAN = """\
# A trip on the ferry

Year 2. 40 minutes.

## Objective

Add and take away within 20.

## Starter

Count the passengers on the landing, and again when three are gone. (10 minutes)

## Main

In pairs, with cubes: how many ways can nine passengers sit on two decks? (20 minutes)

## Plenary

Which way is the best for the captain, and why? (10 minutes)
"""


def make_one(folder: Path) -> Path:
    """A small project with a series, and an old plan beside it."""
    project = folder / "project"
    make_project(project, 1)
    (project / "content/series").mkdir()
    (project / "content/series/a-short-run.md").write_text(SERIES, encoding="utf-8")
    (folder / "An old plan.md").write_text(OLD_PLAN, encoding="utf-8")
    return project


def try_one(name: str, tried: Tried, project: Path, kills: int) -> bool:
    """Kills a command many times; whether all was right each time, and after a run to its end."""
    tried.before(0)
    took = run(tried.command, project)
    chance, seen, wrong, running = random.Random(20270111), Counter[str](), 0, 0
    longest = took * 1.3
    for number in count():
        if running == kills or number == 2 * kills:
            break
        tried.before(number)
        if tried.watched and number // 2 % 2:
            running += killed_as_it_writes(tried.command, project, tried.watched, chance.uniform(0, 0.01))
        elif killed(tried.command, project, chance.uniform(0.02, longest)):
            running, longest = running + 1, longest * 1.03
        else:
            longest *= 0.8  # the machine has less to do than it had
        found = what_is_found(tried)
        seen[found] += 1
        if not tried.right(found):
            wrong += 1
            print(f"{name}, kill {number}: {found[:200]}", flush=True)
    tried.before(0)
    run(tried.command, project)
    wrong += not tried.right(what_is_found(tried))
    asides = (path.name for path in project.parent.rglob("*"))
    left = [each for each in asides if "being-made" in each or each.endswith((".last", ".part", PART))]
    print(
        f"{name}: {took:.1f} s; {running} of {number} killed while it ran, {len(seen)} states seen, {wrong} not whole; left: {left}",
        flush=True,
    )
    return not wrong


def killed_as_it_writes(command: Sequence[str], project: Path, watched: Path, after: float) -> bool:
    """Kills a command so many seconds after the first change in a folder; whether it was still running."""
    before = looks_of(watched)
    child = subprocess.Popen(command, cwd=project, env=ENVIRONMENT, stdout=subprocess.DEVNULL)
    while child.poll() is None and looks_of(watched) == before:
        time.sleep(0.0003)
    time.sleep(after)
    was_running = child.poll() is None
    child.kill()
    child.wait()
    return was_running


def looks_of(folder: Path) -> list[tuple[str, int, int]]:
    """The names, sizes and times of what is in a folder; nothing where there is none."""
    seen = []
    with suppress(OSError):  # gone between two looks
        seen = sorted((each.name, each.stat().st_size, each.stat().st_mtime_ns) for each in os.scandir(folder))
    return seen


def what_is_found(tried: Tried) -> str:
    """What there is; what cannot be read is not whole."""
    try:
        return tried.found()
    except Exception as error:
        return f"cannot be read: {error}"


def main() -> int:
    """0 if nothing was lost."""
    kills, results = int(sys.argv[1]) if len(sys.argv) > 1 else 100, []
    for name in sys.argv[2:] or TRIES:
        with tempfile.TemporaryDirectory() as made:
            project = make_one(Path(made))
            results.append(try_one(name, TRIES[name](project), project, kills))
    print("Whole every time." if all(results) else "NOT WHOLE.")
    return 0 if all(results) else 1


if __name__ == "__main__":
    sys.exit(main())
