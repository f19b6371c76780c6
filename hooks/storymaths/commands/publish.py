"""The command ``publish``: the site checked, built aside, tried, and put in place in one step; and back again."""

from __future__ import annotations

import argparse
import datetime
import errno
import signal
import sys
from functools import partial
from pathlib import Path
from types import FrameType

from ..build import Build
from ..model.problem import ProblemsFound
from ..pipeline import write_site
from ..publish.text_index import IndexFailed
from ..reading import Reading, read_and_check
from ..release.publishing import Outcome, Request, go_back, publish, rehearse
from ..release.refused import Refused
from ..release.releases import Releases
from .command import FAILED, Command, Misused, in_project
from .terminal import as_text, count_problems, in_megabytes

_NO_ROOM = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
_NOT_BUILT_FROM = ("content", "site_data", "hooks")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Where to, and how."""
    parser.add_argument("dest", type=Path, metavar="DEST", help="where the site is to be seen: a link publish makes")
    parser.add_argument("--back", action="store_true", help="show the release before; asked again, undo that")
    parser.add_argument("--dry-run", action="store_true", help="do everything but publish")
    parser.add_argument("--wait", action="store_true", help="wait while another publish to DEST is running")


def run(root: Path, options: argparse.Namespace) -> int:
    """Publishes, rehearses or goes back; 0 when it is done, 1 when something is wrong. Raises ``Misused``."""
    signal.signal(signal.SIGTERM, _end)
    try:
        releases = Releases(options.dest)
        before = releases.current
        try:
            return _back(releases, options) if options.back else _publish(root, releases, options)
        except KeyboardInterrupt:
            print(f"\nStopped. {_say_what_is_shown(releases, before)}", file=sys.stderr)
        except ProblemsFound as found:
            print(f"{as_text(found.problems)}\n{_say_what_is_shown(releases, before)}", file=sys.stderr)
        except IndexFailed as failed:
            print(f"The site could not be built:\n{failed}\n{_say_what_is_shown(releases, before)}", file=sys.stderr)
        except OSError as error:
            print(f"{_describe_failure(releases, error)} {_say_what_is_shown(releases, before)}", file=sys.stderr)
        return FAILED
    except Refused as refused:
        raise Misused(str(refused)) from None


def _describe_failure(releases: Releases, error: OSError) -> str:
    if error.errno in _NO_ROOM:
        return f"There is no room left on the disk to publish {releases.dest}."
    where = f" ({error.filename})" if error.filename else ""
    return f"Publishing {releases.dest} failed: {error.strerror}{where}."


def _say_what_is_shown(releases: Releases, before: int | None) -> str:
    """What is shown after a run that did not end well: one may be stopped while it tidies up."""
    if releases.current == before:
        return _say_nothing_changed(releases)
    return f"The site is published all the same: release {releases.current} is shown. Only tidying up was left undone."


def _publish(root: Path, releases: Releases, options: argparse.Namespace) -> int:
    real = releases.dest.parent.resolve() / releases.dest.name
    for name in _NOT_BUILT_FROM:
        if real.is_relative_to((root / name).resolve()):
            raise Refused(f"{releases.dest} is inside {name}/, which the site is made from: publish somewhere else.")
    reading = read_and_check(root)
    if reading.problems or reading.collection is None:
        print(f"{as_text(reading.problems)}\n{count_problems(len(reading.problems))}. {_say_nothing_changed(releases)}")
        return FAILED
    request = _request(root, reading, options)
    outcome = rehearse(releases, request) if options.dry_run else publish(releases, request)
    if outcome.problems:
        print(
            f"{as_text(outcome.problems)}\n{count_problems(len(outcome.problems))} in the finished site. {_say_nothing_changed(releases)}"
        )
        return FAILED
    print(_summarise(releases, outcome))
    return 0


def _request(root: Path, reading: Reading, options: argparse.Namespace) -> Request:
    assert reading.collection is not None
    build = partial(write_site, Build(root, reading))
    limits = reading.collection.reference.limits.published
    return Request(build, limits, reading.collection.files, datetime.date.today(), options.wait, _say_it_waits)


def _back(releases: Releases, options: argparse.Namespace) -> int:
    if options.dry_run:
        last = releases.last
        print(f"Release {last} would be shown." if last else "There is no earlier release to go back to.")
        return 0 if last else FAILED
    number = go_back(releases, options.wait, _say_it_waits)
    print(f"{releases.dest} shows release {number} again. The same command once more undoes this.")
    return 0


def _summarise(releases: Releases, outcome: Outcome) -> str:
    changes = outcome.changes
    what = f"{outcome.pages} pages, {in_megabytes(outcome.size)}: {changes.new} new, {changes.changed} changed, {changes.gone} gone."
    if outcome.release is None:
        return f"A rehearsal: {what} Nothing was published."
    kept = " The one before is kept: --back shows it again." if releases.last is not None else ""
    return f"Published {releases.dest}, release {outcome.release}: {what} Packed, {in_megabytes(outcome.packed)}.{kept}"


def _say_nothing_changed(releases: Releases) -> str:
    shown = releases.current is not None
    return f"Nothing was published; {'the site is as it was' if shown else 'there is no site there yet'}."


def _say_it_waits() -> None:
    print("Another publish to this place is running; waiting for it …", file=sys.stderr, flush=True)


def _end(signal_number: int, frame: FrameType | None) -> None:
    # As an exception it passes through what puts things away; a plain end would leave that to the next run.
    raise SystemExit(128 + signal_number)


COMMAND = Command(add_arguments, in_project(run))
