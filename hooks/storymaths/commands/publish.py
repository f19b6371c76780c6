"""The command ``publish``: the site checked, built aside, tried, and put in place: on a server, in a folder or in a zip."""

from __future__ import annotations

import argparse
import datetime
import errno
import os
import signal
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from types import FrameType

from ..build import Build
from ..pipeline import write_site
from ..publish.text_index import IndexFailed
from ..reading import Reading, read_and_check
from ..release.change_zip import TO_DELETE, zip_changes, zip_numbered
from ..release.on_disk import readable_by_all
from ..release.plain_folder import publish_to_folder
from ..release.publishing import Outcome, Request, go_back, publish, rehearse
from ..release.refused import Refused
from ..release.releases import Releases
from .command import FAILED, Command, Misused, in_project
from .terminal import as_text, count_problems, in_megabytes

_NO_ROOM = (errno.ENOSPC, errno.EDQUOT, errno.EFBIG)
_NOT_BUILT_FROM = ("content", "site_data", "hooks")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Where to, and how."""
    parser.add_argument("dest", type=Path, metavar="DEST", help="where the site is to be seen, or the name of the zip")
    parser.add_argument(
        "--as",
        dest="way",
        choices=("server", "folder", "zip"),
        default="server",
        help="server: DEST is a link that publish makes, replaced in one step (default); folder: a plain folder, for web "
        "space, a shared drive or a memory stick; zip: DEST-1.zip and so on, to upload what changed since the last",
    )
    parser.add_argument("--back", action="store_true", help="show the release before; asked again, undo that")
    parser.add_argument("--dry-run", action="store_true", help="do everything but publish")
    parser.add_argument("--wait", action="store_true", help="wait while another publish to DEST is running")


def run(root: Path, options: argparse.Namespace) -> int:
    """Publishes, rehearses or goes back; 0 when it is done, 1 when something is wrong. Raises ``Misused``."""
    signal.signal(signal.SIGTERM, _end)
    try:
        with readable_by_all():
            return _on_server(root, options) if options.way == "server" else _elsewhere(root, options)
    except Refused as refused:
        raise Misused(str(refused)) from None


def _on_server(root: Path, options: argparse.Namespace) -> int:
    releases = Releases(options.dest)
    before = releases.current
    with _failures(releases.dest, lambda: _say_what_is_shown(releases, before)) as failed:
        if options.back:
            return _back(releases, options)
        act = partial(rehearse if options.dry_run else publish, releases)
        return _publish(root, options, act, lambda: _say_nothing_changed(releases), partial(_summarise, releases))
    return failed


def _elsewhere(root: Path, options: argparse.Namespace) -> int:
    if options.back:
        raise Refused("Only a site on a server keeps the release before, to go back to.")
    dest, kept = Path(os.path.abspath(options.dest)), root / ".cache"
    act = publish_to_folder if options.way == "folder" else zip_changes
    with _failures(dest, lambda: "The same command once more finishes it.") as failed:
        kept.mkdir(exist_ok=True)
        return _publish(
            root,
            options,
            lambda request: act(dest, request, kept, rehearse=options.dry_run),
            lambda: "Nothing was published.",
            partial(_summarise_folder if options.way == "folder" else _summarise_zip, dest, options.dry_run),
        )
    return failed


@contextmanager
def _failures(dest: Path, how_it_stands: Callable[[], str]) -> Iterator[int]:
    """Says of a run that did not end well how, and how it stands with the site; what it leaves with comes after."""
    try:
        yield FAILED
    except KeyboardInterrupt:
        print(f"\nStopped. {how_it_stands()}", file=sys.stderr)
    except IndexFailed as failed:
        print(f"The site could not be built:\n{failed}\n{how_it_stands()}", file=sys.stderr)
    except OSError as error:
        print(f"{_describe_failure(dest, error)} {how_it_stands()}", file=sys.stderr)


def _describe_failure(dest: Path, error: OSError) -> str:
    if error.errno in _NO_ROOM:
        return f"There is no room left on the disk to publish {dest}."
    where = f" ({error.filename})" if error.filename else ""
    return f"Publishing {dest} failed: {error.strerror}{where}."


def _say_what_is_shown(releases: Releases, before: int | None) -> str:
    """What is shown after a run that did not end well: one may be stopped while it tidies up."""
    if releases.current == before:
        return _say_nothing_changed(releases)
    return f"The site is published all the same: release {releases.current} is shown. Only tidying up was left undone."


def _publish(
    root: Path,
    options: argparse.Namespace,
    act: Callable[[Request], Outcome],
    nothing: Callable[[], str],
    summarise: Callable[[Outcome], str],
) -> int:
    """Checks, and publishes by ``act``; ``nothing`` says that nothing came of it, ``summarise`` what did."""
    dest = Path(os.path.abspath(options.dest))
    for name in _NOT_BUILT_FROM:
        if (dest.parent.resolve() / dest.name).is_relative_to((root / name).resolve()):
            raise Refused(f"{dest} is inside {name}/, which the site is made from: publish somewhere else.")
    reading = read_and_check(root)
    if reading.problems or reading.collection is None:
        print(f"{as_text(reading.problems)}\n{count_problems(len(reading.problems))}. {nothing()}")
        return FAILED
    outcome = act(_request(root, reading, options))
    if outcome.problems:
        print(f"{as_text(outcome.problems)}\n{count_problems(len(outcome.problems))} in the finished site. {nothing()}")
        return FAILED
    print(summarise(outcome))
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


def _describe(outcome: Outcome) -> str:
    changes = outcome.changes
    return f"{outcome.pages} pages, {in_megabytes(outcome.size)}: {changes.new} new, {changes.changed} changed, {changes.gone} gone."


def _summarise_folder(dest: Path, rehearsed: bool, outcome: Outcome) -> str:
    if rehearsed:
        return f"A rehearsal: {_describe(outcome)} Nothing was published."
    return f"Published {dest}, a plain folder: {_describe(outcome)}"


def _summarise_zip(dest: Path, rehearsed: bool, outcome: Outcome) -> str:
    if outcome.release is None:
        return f"{'A rehearsal' if rehearsed else 'Nothing has changed'}: {_describe(outcome)} No zip was made."
    made = zip_numbered(dest, outcome.release)
    how = f"Unpack it over what is there, after the zips before it; where it holds {TO_DELETE}, delete there what that lists."
    if outcome.release == 1:
        how = "Unpack it on the web space."
    return f"Made {made}, {in_megabytes(outcome.packed)}: {_describe(outcome)}\n{how}"


def _summarise(releases: Releases, outcome: Outcome) -> str:
    what = _describe(outcome)
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
