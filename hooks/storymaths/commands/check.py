"""The command ``check``: every problem of the content, as text, JSON or annotations."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..model.program_version import VERSION, is_newer
from ..reading import read_and_check
from .command import FAILED, Command, Misused, in_project
from .terminal import FORMATS, ProgressLine, count_problems, count_warnings


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which pages, and how to report."""
    parser.add_argument(
        "paths", nargs="*", type=Path, metavar="PATH", help="a page or folder to report on (default: all)"
    )
    parser.add_argument(
        "--unread", action="store_true", help="list instead what stands between numbers and was not worked out, and why"
    )
    parser.add_argument("--format", choices=FORMATS, default="text", help="how to report (default: text)")


def run(root: Path, options: argparse.Namespace) -> int:
    """Reports; 0 when there are no problems, and be there warnings, 1 when there are some. Raises ``Misused``."""
    for path in options.paths:
        if not path.exists():
            raise Misused(f"There is no {path}.")
    progress = ProgressLine()
    reading = read_and_check(root, progress)
    progress.clear()
    wanted = [path.resolve() for path in options.paths]

    def is_wanted(path: str) -> bool:
        return not wanted or any((root / path).resolve().is_relative_to(part) for part in wanted)

    if options.unread and reading.collection:
        from .unread import list_unread  # noqa: PLC0415 - the kinds take half a second to load

        for path, line in list_unread(reading):
            if is_wanted(path):
                print(line)
        return 0
    problems = [problem for problem in reading.problems if is_wanted(problem.place.path)]
    warnings = [warning for warning in reading.warnings if is_wanted(warning.place.path)]
    if problems or warnings or options.format == "json":
        print(FORMATS[options.format](problems, warnings))
    if options.format == "text":
        pages = len(reading.collection.documents) + len(reading.collection.unread) if reading.collection else 0
        print(_summary(len(problems), len(warnings), pages))
        last = reading.collection.reference.site.checked_with if reading.collection else VERSION
        if is_newer(last, VERSION):
            print(
                f"It was last checked with version {last} of the program, and this is {VERSION}: install a newer one."
            )
        if problems and _has_changed(root):
            print("The collection was made with an earlier version. What this one rewrites: storymaths upgrade")
    return FAILED if problems else 0


def _has_changed(root: Path) -> bool:
    from ..upgrade.changes import changes_since  # noqa: PLC0415 - asked only where there are problems
    from ..upgrade.plan import last_checked  # noqa: PLC0415 - as above

    return bool(changes_since(last_checked(root)))


def _summary(problems: int, warnings: int, pages: int) -> str:
    found = count_problems(problems) if problems else "No problems"
    found += f", {count_warnings(warnings)}" if warnings else ""
    return f"{found} in {pages} page{'s' if pages != 1 else ''}." if pages else f"{found}."


COMMAND = Command(add_arguments, in_project(run))
