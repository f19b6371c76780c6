"""The command ``plan``: the sessions of a series on the days of a school, to read, to print, or for other programs."""

from __future__ import annotations

import argparse
import datetime
import re
import sys
from collections.abc import Callable
from pathlib import Path

from ..check.holiday_unreadable import problems_in as holiday_problems
from ..check.step_too_long import problems_in as step_problems
from ..model.holiday import Holiday
from ..model.problem import Problem
from ..parse.holiday_lines import day_of, read_holidays
from ..publish.new_file import write_new
from ..publish.weeks_page import draw_weeks_page
from ..render.site import Site
from ..weeks.as_text import as_text
from ..weeks.lessons import SeriesRun, run_of, sessions_of
from ..weeks.plan import Plan, plan_weeks
from ..weeks.school_days import DAY_NAMES, USUAL_DAYS, WEEKDAYS, Asked
from .command import FAILED, Command, Misused, in_project
from .named_series import Wanted, find_series
from .terminal import as_text as problems_as_text
from .terminal import say_why

_ENDINGS = {".html": "page", ".csv": "csv", ".ics": "ics", ".txt": "text"}
_LARGEST_FILE = 1_000_000


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which series, on which days, and where the plan goes."""
    parser.add_argument("series", metavar="SERIES", help="the name of its file in content/series, without .md")
    parser.add_argument("--start", type=_day, required=True, metavar="DAY", help="the first day, as 2027-01-11")
    usual = ",".join(WEEKDAYS[day] for day in sorted(USUAL_DAYS))
    parser.add_argument("--days", type=_days, default=USUAL_DAYS, metavar="DAYS", help=f"(default: {usual})")
    parser.add_argument(
        "--minutes", type=_minutes, metavar="N", help="most minutes a day (default: the longest session)"
    )
    parser.add_argument(
        "--holidays", metavar="FILE", help="the school's own, a line each: 2027-02-15..2027-02-19 Half term"
    )
    parser.add_argument("--no-bank-holidays", action="store_true", help="teach on the bank holidays of site_data too")
    parser.add_argument(
        "--no-free-days", action="store_true", help="use every day, though more books may then be split by a weekend"
    )
    parser.add_argument(
        "--class",
        dest="of_class",
        type=_class,
        default="",
        metavar="NAME",
        help="whose plan it is, if not the only one",
    )
    parser.add_argument("--format", choices=tuple(_ENDINGS.values()), help="(default: by the ending of --out, or text)")
    parser.add_argument("--out", type=_file, metavar="FILE", help="write it there; nothing is ever overwritten")


def _file(text: str) -> Path:
    """A file whose ending says what is written: a false ending would only show when somebody opens it."""
    file = Path(text)
    if file.suffix and file.suffix.lower() not in _ENDINGS:
        can = ", ".join(_ENDINGS)
        raise argparse.ArgumentTypeError(
            f"a plan cannot be written as {file.suffix}; the endings it can have are {can}"
        )
    return file


def _day(text: str) -> datetime.date:
    try:
        return day_of(text)
    except ValueError as error:
        raise argparse.ArgumentTypeError(str(error)) from None


def _days(text: str) -> frozenset[int]:
    names = [name.strip().lower() for name in text.split(",")]
    known = dict(zip(WEEKDAYS, range(len(WEEKDAYS)), strict=True)) | {d.lower(): n for n, d in enumerate(DAY_NAMES)}
    if wrong := [name for name in names if name not in known]:
        raise argparse.ArgumentTypeError(f'"{wrong[0]}" is not one of {", ".join(WEEKDAYS)}, with commas between')
    return frozenset(known[name] for name in names)


def _minutes(text: str) -> int:
    if text.isdecimal() and 1 <= int(text) <= 240:
        return int(text)
    raise argparse.ArgumentTypeError(f'"{text}" is not a whole number of minutes from 1 to 240')


def _class(text: str) -> str:
    try:
        text.encode("utf-8")
    except UnicodeEncodeError:
        raise argparse.ArgumentTypeError("the name of the class is not UTF-8 text") from None
    return re.sub(r"[ \t\r\n]+", " ", text).strip(" ")


def run(root: Path, options: argparse.Namespace) -> int:
    """Gives the plan; 1 on problems. Raises ``Misused``."""
    wanted = find_series(root, options.series)
    own, unread = _own_holidays(options.holidays)
    series = run_of(wanted.collection, wanted.series)
    minutes = options.minutes or series.longest
    problems = [*unread, *step_problems(sessions_of(wanted.collection, wanted.series), minutes)]
    if problems:
        print(problems_as_text(problems))
        return FAILED
    plan = plan_weeks(series, _build_request(wanted, options, minutes, own))
    if not series.lessons:
        raise Misused(f"{series.title} has no sessions to lay.", FAILED)
    return _give(_format_plan(root, wanted, series, plan, _format(options)), options.out)


def _own_holidays(file: str | None) -> tuple[tuple[Holiday, ...], list[Problem]]:
    if file is None:
        return (), []
    try:
        with Path(file).open("rb") as opened:
            read = opened.read(_LARGEST_FILE + 1)
        text = read.decode("utf-8")
    except (OSError, UnicodeDecodeError):
        raise Misused(f"{file} cannot be read as a text file.") from None
    if len(read) > _LARGEST_FILE:
        raise Misused(f"{file} is too large to be a list of holidays.")
    holidays, unread = read_holidays(text)
    return holidays, list(holiday_problems(file, unread))


def _build_request(wanted: Wanted, options: argparse.Namespace, minutes: int, own: tuple[Holiday, ...]) -> Asked:
    bank = wanted.collection.reference.bank_holidays
    kept, known = ((), None) if options.no_bank_holidays else (bank.as_holidays(), (bank.first_year, bank.last_year))
    waits = not options.no_free_days
    return Asked(options.start, minutes, options.days, (*own, *kept), known, waits, options.of_class)


def _format(options: argparse.Namespace) -> str:
    chosen: str = options.format or _ENDINGS.get(options.out.suffix.lower() if options.out else "", "text")
    return chosen


def _format_plan(root: Path, wanted: Wanted, series: SeriesRun, plan: Plan, form: str) -> bytes:
    formats: dict[str, Callable[[], bytes]] = {
        "csv": lambda: plan.csv.encode("utf-8"),
        "ics": lambda: plan.calendar.encode("utf-8"),
        "text": lambda: as_text(series, plan).encode("utf-8"),
        "page": lambda: _page(root, wanted, series, plan),
    }
    return formats[form]()


def _page(root: Path, wanted: Wanted, series: SeriesRun, plan: Plan) -> bytes:
    try:
        return draw_weeks_page(Site(wanted.collection), series, plan, root / ".cache" / "letterforms").encode("utf-8")
    except OSError as error:
        raise Misused(say_why(error), FAILED) from None


def _give(content: bytes, out: Path | None) -> int:
    if out is None:
        sys.stdout.flush()
        sys.stdout.buffer.write(content)
        sys.stdout.buffer.flush()
        return 0
    try:
        write_new(out, content)
    except FileExistsError:
        raise Misused(f"{out} is already there. Nothing was written.", FAILED) from None
    except OSError as error:
        raise Misused(f"{out} cannot be written: {error.strerror}.", FAILED) from None
    print(f"Wrote {out}")
    return 0


COMMAND = Command(add_arguments, in_project(run))
