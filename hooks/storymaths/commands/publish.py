"""The command ``publish``: the site checked, built aside, tried, and put in place in one step; and back again."""

from __future__ import annotations

import argparse
import datetime
import errno
import signal
import sys
from collections.abc import Callable
from functools import partial
from pathlib import Path
from types import FrameType

from ..pipeline import Reading, read_and_check
from ..release.build_aside import BuildFailed, build_aside
from ..release.editions import Editions
from ..release.publishing import Asked, Outcome, go_back, publish, rehearse
from ..release.refused import Refused
from .command import FAILED, Command, Misused, in_project
from .terminal import as_text, count_problems, in_megabytes

_NO_ROOM = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
_NOT_BUILT_FROM = ("content", "site_data", "hooks")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Where to, and how."""
    parser.add_argument("dest", type=Path, metavar="DEST", help="where the site is to be seen: a link publish makes")
    parser.add_argument("--back", action="store_true", help="show the edition before; asked again, undo that")
    parser.add_argument("--dry-run", action="store_true", help="do everything but publish")
    parser.add_argument("--wait", action="store_true", help="wait while another publish to DEST is running")


def run(root: Path, options: argparse.Namespace) -> int:
    """Publishes, rehearses or goes back; 0 when it is done, 1 when something is wrong. Raises ``Misused``."""
    signal.signal(signal.SIGTERM, _end)
    try:
        editions = Editions(options.dest)
        before = editions.current
        try:
            return _back(editions, options) if options.back else _publish(root, editions, options)
        except KeyboardInterrupt:
            print(f"\nStopped. {_left(editions, before)}", file=sys.stderr)
        except BuildFailed as failed:
            print(f"The site could not be built:\n{failed}\n{_left(editions, before)}", file=sys.stderr)
        except OSError as error:
            print(f"{_failed(editions, error)} {_left(editions, before)}", file=sys.stderr)
        return FAILED
    except Refused as refused:
        raise Misused(str(refused)) from None


def _failed(editions: Editions, error: OSError) -> str:
    if error.errno in _NO_ROOM:
        return f"There is no room left on the disk to publish {editions.dest}."
    where = f" ({error.filename})" if error.filename else ""
    return f"Publishing {editions.dest} failed: {error.strerror}{where}."


def _left(editions: Editions, before: int | None) -> str:
    """What is shown after a run that did not end well: one may be stopped while it tidies up."""
    if editions.current == before:
        return _as_it_was(editions)
    return f"The site is published all the same: edition {editions.current} is shown. Only tidying up was left undone."


def _publish(root: Path, editions: Editions, options: argparse.Namespace) -> int:
    real = editions.dest.parent.resolve() / editions.dest.name
    for name in _NOT_BUILT_FROM:
        if real.is_relative_to((root / name).resolve()):
            raise Refused(f"{editions.dest} is inside {name}/, which the site is made from: publish somewhere else.")
    reading = read_and_check(root)
    if reading.problems or reading.collection is None:
        print(f"{as_text(reading.problems)}\n{count_problems(len(reading.problems))}. {_as_it_was(editions)}")
        return FAILED
    asked = _asked(root, reading, options)
    outcome = rehearse(editions, asked) if options.dry_run else publish(editions, asked)
    if outcome.problems:
        print(
            f"{as_text(outcome.problems)}\n{count_problems(len(outcome.problems))} in the finished site. {_as_it_was(editions)}"
        )
        return FAILED
    print(_told(editions, outcome))
    return 0


def _asked(root: Path, reading: Reading, options: argparse.Namespace) -> Asked:
    assert reading.collection is not None
    build: Callable[[Path], None] = partial(build_aside, root)
    limits = reading.collection.reference.limits.published
    return Asked(build, limits, reading.collection.files, datetime.date.today(), options.wait, _waiting)


def _back(editions: Editions, options: argparse.Namespace) -> int:
    if options.dry_run:
        last = editions.last
        print(f"Edition {last} would be shown." if last else "There is no earlier edition to go back to.")
        return 0 if last else FAILED
    number = go_back(editions, options.wait, _waiting)
    print(f"{editions.dest} shows edition {number} again. The same command once more undoes this.")
    return 0


def _told(editions: Editions, outcome: Outcome) -> str:
    changes = outcome.changes
    what = f"{outcome.pages} pages, {in_megabytes(outcome.size)}: {changes.new} new, {changes.changed} changed, {changes.gone} gone."
    if outcome.edition is None:
        return f"A rehearsal: {what} Nothing was published."
    kept = " The one before is kept: --back shows it again." if editions.last is not None else ""
    return f"Published {editions.dest}, edition {outcome.edition}: {what} Packed, {in_megabytes(outcome.packed)}.{kept}"


def _as_it_was(editions: Editions) -> str:
    shown = editions.current is not None
    return f"Nothing was published; {'the site is as it was' if shown else 'there is no site there yet'}."


def _waiting() -> None:
    print("Another publish to this place is running; waiting for it …", file=sys.stderr, flush=True)


def _end(signal_number: int, frame: FrameType | None) -> None:
    # As an exception it passes through what puts things away; a plain end would leave that to the next run.
    raise SystemExit(128 + signal_number)


COMMAND = Command(add_arguments, in_project(run))
