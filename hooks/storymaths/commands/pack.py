"""The command ``pack``: one file of a series for a school, made aside, checked, and put in its place."""

from __future__ import annotations

import argparse
import os
import secrets
import shutil
import stat
from collections.abc import Mapping
from functools import partial
from pathlib import Path

from ..build import Build
from ..edits.in_place import move_in_place
from ..model.problem import ProblemsFound
from ..pipeline import write_site
from ..publish.new_file import beside
from ..publish.pack.make import pack_files, series_id
from ..publish.pack.verify import NotWhole, verify
from ..publish.pack.zip_file import size_of, write_zip
from .command import FAILED, Command, Misused, in_project
from .named_series import Wanted, find_series
from .terminal import as_text, in_megabytes, say_why

_ROOM_TO_SPARE = 1_000_000
_LONGEST_NAME = 200
"""Bytes: 255 is what disks take, and a part stands beside it for a moment under a longer name."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which series, and where the pack goes."""
    parser.add_argument("series", metavar="SERIES", help="the name of its file in content/series, without .md")
    parser.add_argument("--out", type=Path, metavar="FILE", help="(default: SERIES-VERSION.zip, here)")
    parser.add_argument("--again", action="store_true", help="make a pack again that is there in the same version")
    parser.add_argument("--dry-run", action="store_true", help="say how large it would be, and make nothing")


def run(root: Path, options: argparse.Namespace) -> int:
    """Makes the pack, or only says how large it would be. Raises ``Misused``."""
    wanted = find_series(root, options.series)
    series, name = wanted.series.fields, series_id(wanted.series)
    out = _place_for(options.out, f"{name}-{series.version}.zip", name)
    if not (options.again or options.dry_run) and os.path.lexists(out) and verify(out).version == series.version:
        raise Misused(
            f"{out} is there already, and is version {series.version} as well: schools may have it. If something has changed, "
            f"give the series a new version: and say what under changes:. To make the same version again, add --again.",
            FAILED,
        )
    print(f"Building the pages of {series.title} …", flush=True)
    files = _files(root, wanted)
    print(f"{len(files)} files, {in_megabytes(size_of(files))}.", flush=True)
    if not options.dry_run:
        _write(files, out, name)
        print(f"Wrote {out}")
    return 0


def _place_for(out: Path | None, usual: str, series: str) -> Path:
    """Where the pack goes: never where anything but an earlier pack of the same series is."""
    # os.path answers no where a name is too long for the disk, or a folder may not be looked into.
    place = Path(usual) if out is None else out / usual if os.path.isdir(out) else out
    if not os.path.isdir(place.parent):
        raise Misused(f"There is no folder {place.parent}.")
    if not os.path.lexists(place):
        if len(os.fsencode(place.name)) > _LONGEST_NAME:
            raise Misused(f"{place.name[:40]}… is too long a name for a file.")
        return place
    if not stat.S_ISREG(place.lstat().st_mode) or _series_of(place) != series:
        raise Misused(
            f"{place} is there already and is not a pack of this series. Give another name with --out.", FAILED
        )
    return place


def _series_of(path: Path) -> str | None:
    """The series a file is a whole pack of; None where it is not one."""
    try:
        return verify(path).series
    except (NotWhole, OSError):
        return None


def _files(root: Path, wanted: Wanted) -> Mapping[str, bytes]:
    build = Build(root, wanted.reading, only_series=series_id(wanted.series))
    try:
        return pack_files(wanted.collection, wanted.series, partial(write_site, build))
    except ProblemsFound as found:
        raise Misused(f"{as_text(found.problems)}\nNothing was written.", FAILED) from None
    except OSError as error:
        raise Misused(f"The pages could not be put together: {say_why(error)}", FAILED) from None


def _write(files: Mapping[str, bytes], out: Path, series: str) -> None:
    """Writes beside its place, checks what was written, and moves it there in one step."""
    if shutil.disk_usage(out.parent).free < size_of(files) + _ROOM_TO_SPARE:
        raise Misused(f"There is not room for it in {out.parent}. Nothing was written.", FAILED)
    part = None
    try:
        part = beside(out, secrets.token_hex(4))
        with part.open("x+b") as file:
            write_zip(files, file)
            file.flush()
            os.fsync(file.fileno())
        verify(part)
        part.chmod(0o644)
        # What is there may have come while the pages were built.
        move_in_place(part, _place_for(out, "", series))
    except NotWhole as error:
        raise Misused(f"It would not be a pack that can be checked:\n{error}", FAILED) from None
    except OSError as error:
        raise Misused(f"{out} could not be written: {error.strerror}. What was there is as it was.", FAILED) from None
    finally:
        if part is not None:
            part.unlink(missing_ok=True)


COMMAND = Command(add_arguments, in_project(run))
