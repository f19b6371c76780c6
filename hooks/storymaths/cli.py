"""The ``storymaths`` command: check, start a file, explain a rule, list words; activities, plans and packs it passes on."""

from __future__ import annotations

import argparse
import datetime
import io
import os
import sys
from collections.abc import Sequence
from pathlib import Path

from . import cli_pack, cli_plan
from .check.suggestion import did_you_mean
from .model.collection import Collection
from .model.fields import RECEPTION, YEARS, year_name
from .model.rule import Rule
from .model.session import Session
from .pipeline import read_and_check
from .project import find_root
from .terminal import FORMATS, ProgressLine, as_text

FAILED, MISUSED = 1, 2
_STOPPED = 130
"""What a shell says of a program that was stopped with Ctrl and C."""


def run() -> None:
    """The command as a program. It leaves at once: taking apart all that was read would cost a tenth of the time."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")  # an old terminal has no “ or …
    try:
        code = main()
        sys.stdout.flush()
    except BrokenPipeError:  # whoever reads has read enough
        os._exit(FAILED)
    except KeyboardInterrupt:
        print("\nStopped.", file=sys.stderr)
        code = _STOPPED
    sys.stderr.flush()
    os._exit(code)


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs the command; the exit code is 0 when all is well, 1 on problems, 2 when it is misused."""
    given = sys.argv[1:] if arguments is None else arguments
    options = _parser("new" in given).parse_args(given)
    if options.command == "explain":
        return _explain(options.rule)
    if options.command == "verify":
        return cli_pack.verify(options)
    root = find_root(Path.cwd())
    if root is None:
        print("No project here: there is no mkdocs.yml beside a content folder, here or above.", file=sys.stderr)
        return MISUSED
    if options.command == "check":
        return _check(root, options.paths, options.format)
    if options.command == "new":
        return _new(root, options)
    if options.command in ("solve", "tune"):
        from .cli_activities import run  # noqa: PLC0415 - sixteen kinds take a quarter of a second to load

        return run(root, options)
    if options.command == "plan":
        return cli_plan.run(root, options)
    if options.command == "pack":
        return cli_pack.run(root, options)
    if options.command == "publish":
        from .cli_publish import run as run_publish  # noqa: PLC0415 - what packs and tries a site is needed by it alone

        return run_publish(root, options)
    return _words(root)


def _parser(starts: bool) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="storymaths", description="Maths lessons taught from picture books.")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    check = commands.add_parser("check", help="check every page, or the pages named, without building the site")
    check.add_argument(
        "paths", nargs="*", type=Path, metavar="PATH", help="a page or folder to report on (default: all)"
    )
    check.add_argument("--format", choices=FORMATS, default="text", help="how to report (default: text)")
    new = commands.add_parser("new", help="start a book, session, home activity or series; never overwrites")
    if starts:
        _add_kinds(new)
    explain = commands.add_parser("explain", help="why a rule exists, its source, and an example")
    explain.add_argument("rule", nargs="?", help="a rule's name as reports print it (default: list them all)")
    commands.add_parser("words", help="list where each word is taught")
    solve = commands.add_parser("solve", help="work out one activity: every answer, and the years it fits")
    solve.add_argument("--format", choices=("text", "json"), default="text", help="how to print (default: text)")
    tune = commands.add_parser("tune", help="propose numbers with which an activity comes out")
    tune.add_argument("--year", type=_year, required=True, metavar="N", help="Reception, or a year from 1 to 6")
    tune.add_argument(
        "--answers", type=_range, default=(1, 12), metavar="MIN..MAX", help="how many answers (default: 1..12)"
    )
    publish = commands.add_parser("publish", help="put the site in place in one step, or the last one back")
    publish.add_argument("dest", type=Path, metavar="DEST", help="where the site is to be seen: a link publish makes")
    publish.add_argument("--back", action="store_true", help="show the edition before; asked again, undo that")
    publish.add_argument("--dry-run", action="store_true", help="do everything but publish")
    publish.add_argument("--wait", action="store_true", help="wait while another publish to DEST is running")
    for command in (solve, tune):
        command.add_argument("file", metavar="FILE", help="a file with the activity's YAML, or - for standard input")
        command.add_argument("--book", metavar="SLUG", help="the book its cast is from, by folder name")
    cli_plan.add_parser(commands)
    cli_pack.add_parsers(commands)
    return parser


def _add_kinds(new: argparse.ArgumentParser) -> None:
    from .starters import starters  # noqa: PLC0415 - what draws pages of every kind takes long to load

    kinds = new.add_subparsers(dest="kind", required=True, metavar="KIND")
    for name, (words, starter) in starters().items():
        kind = kinds.add_parser(name, help=f"start a {words}")
        kind.set_defaults(starter=starter, book="")
        if starter.for_book:
            kind.add_argument("book", help="the book's folder name in content/books")
        kind.add_argument("title", help="its title, in quotes")


def _year(text: str) -> int:
    if text == "Reception":
        return RECEPTION
    if text.isdecimal() and int(text) in YEARS and int(text) != RECEPTION:
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} is not Reception, 1, 2, 3, 4, 5 or 6")


def _range(text: str) -> tuple[int, int]:
    few, _, many = text.partition("..")
    if few.isdecimal() and (many or few).isdecimal() and int(few) <= int(many or few):
        return int(few), int(many or few)
    raise argparse.ArgumentTypeError(f"{text} is not a number of answers such as 3, or 1..6")


def _check(root: Path, paths: Sequence[Path], form: str) -> int:
    for path in paths:
        if not path.exists():
            print(f"There is no {path}.", file=sys.stderr)
            return MISUSED
    progress = ProgressLine()
    reading = read_and_check(root, progress)
    progress.clear()
    wanted = [path.resolve() for path in paths]
    problems = [
        problem
        for problem in reading.problems
        if not wanted or any((root / problem.place.path).resolve().is_relative_to(path) for path in wanted)
    ]
    if problems or form == "json":
        print(FORMATS[form](problems))
    if form == "text":
        pages = len(reading.collection.documents) + len(reading.collection.unread) if reading.collection else 0
        print(_summary(len(problems), pages))
    return FAILED if problems else 0


def _summary(problems: int, pages: int) -> str:
    found = "No problems" if problems == 0 else "1 problem" if problems == 1 else f"{problems} problems"
    return f"{found} in {pages} pages." if pages else f"{found}."


def _new(root: Path, options: argparse.Namespace) -> int:
    from . import starters  # noqa: PLC0415 - as above

    try:
        today = datetime.date.today().isoformat()
        written = starters.start(root, options.starter, options.title, today, options.book)
    except starters.AlreadyThere as error:
        print(f"{error.args[0]} is already there. Nothing was written.", file=sys.stderr)
        return FAILED
    except starters.NoSuchBook as error:
        known = [path.parent.name for path in (root / "content" / "books").glob("*/index.md")]
        print(f'There is no book "{error}" in content/books.{did_you_mean(str(error), known)}', file=sys.stderr)
        return FAILED
    for path in written:
        print(f"Wrote {path.relative_to(root)}")
    print("It is a draft: it shows under `mkdocs serve` and is left out of a build until status: draft is taken out.")
    return 0


def _explain(name: str | None) -> int:
    from .activities.rules import every_rule  # noqa: PLC0415 - a check, which is run most, needs neither
    from .release.trial import RULES as RELEASE_RULES  # noqa: PLC0415

    known = every_rule() | {rule.name: rule for rule in RELEASE_RULES}
    if name is None:
        for rule in known.values():
            print(f"{rule.name}\n  {rule.says}")
        return 0
    if name not in known:
        print(f'There is no rule "{name}".{did_you_mean(name, known)}', file=sys.stderr)
        return MISUSED
    print(explanation(known[name]))
    return 0


def explanation(rule: Rule) -> str:
    """A rule told in full."""
    return (
        f"{rule.name}\n\n  {rule.says}\n\n  Why:     {rule.why}\n  Source:  {rule.source}\n"
        f"  Wrong:   {rule.wrong}\n  Right:   {rule.right}"
    )


def _words(root: Path) -> int:
    reading = read_and_check(root)
    if reading.collection is None:
        print(as_text(reading.problems))
        return FAILED
    print(words_taught(reading.collection))
    return 0


def words_taught(collection: Collection) -> str:
    """Each word of the word bank, its year, and the sessions that teach it."""
    taught: dict[str, list[str]] = {}
    for page in collection.of_kind(Session):
        for word in page.fields.words.new:
            taught.setdefault(word, []).append(f"{page.fields.book}, session {page.fields.number}")
    lines = []
    for entry in sorted(collection.reference.words.values(), key=lambda entry: (entry.year, entry.word.lower())):
        where = "; ".join(taught.get(entry.word, ())) or ("everyday talk" if entry.everyday else "not yet taught")
        lines.append(f"{entry.word:<24} {year_name(entry.year):<10} {where}")
    return "\n".join(lines)
