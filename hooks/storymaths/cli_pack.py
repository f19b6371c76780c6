"""The commands ``pack``, which makes one file of a series for a school, and ``verify``, which checks one."""

from __future__ import annotations

import argparse
import os
import shutil
import stat
import sys
import tempfile
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from .named_series import Misused, Wanted, series_named

FAILED, MISUSED = 1, 2
_SHOWN = 20
_ROOM_TO_SPARE = 1_000_000
_LONGEST_NAME = 200
"""Bytes: 255 is what disks take, and a part stands beside it for a moment under a longer name."""


def add_parsers(commands: Any) -> None:
    """Adds the commands to those of the program."""
    pack = commands.add_parser("pack", help="make one file with all of a series, to open without a server")
    pack.add_argument("series", metavar="SERIES", help="the name of its file in content/series, without .md")
    pack.add_argument("--out", type=Path, metavar="FILE", help="(default: SERIES-VERSION.zip, here)")
    pack.add_argument("--dry-run", action="store_true", help="say how large it would be, and make nothing")
    verify = commands.add_parser(
        "verify", help="check a pack: nothing changed, missing or added, nothing that can harm"
    )
    verify.add_argument("pack", type=Path, metavar="PACK", help="the file of the pack")


def run(root: Path, options: argparse.Namespace) -> int:
    """Runs ``pack``; 0 when all is well, 1 when it cannot be made, 2 when it is misused."""
    try:
        wanted = series_named(root, options.series)
        series = wanted.series.fields
        out = _place_for(options.out, f"{_name(wanted)}-{series.version}.zip", _name(wanted))
        print(f"Building the pages of {series.title} …", flush=True)
        files = _files(root, wanted)
        print(_said(files), flush=True)
        if not options.dry_run:
            _write(files, out, _name(wanted))
            print(f"Wrote {out}")
    except Misused as error:
        print(error, file=sys.stderr)
        return error.code
    return 0


def _name(wanted: Wanted) -> str:
    return wanted.series.path.rpartition("/")[2].removesuffix(".md")


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
    from .publish.pack.verify import NotWhole, verify  # noqa: PLC0415 - loaded by the command that needs it

    try:
        return verify(path).series
    except (NotWhole, OSError):
        return None


def _files(root: Path, wanted: Wanted) -> Mapping[str, bytes]:
    from .publish.pack.build_pages import BuildFailed  # noqa: PLC0415 - templates take a while to load
    from .publish.pack.make import pack_files  # noqa: PLC0415

    try:
        return pack_files(root, wanted.collection, wanted.series)
    except BuildFailed as error:
        raise Misused(f"The pages could not be built: {error}", FAILED) from None
    except OSError as error:
        raise Misused(f"The pages could not be put together: {error.strerror}.", FAILED) from None
    except UnicodeDecodeError:
        raise Misused("LICENSE is not UTF-8 text, and it goes into the pack.", FAILED) from None


def _said(files: Mapping[str, bytes]) -> str:
    from .publish.pack.zip_file import size_of  # noqa: PLC0415

    return f"{len(files)} files, {in_megabytes(size_of(files))}."


def in_megabytes(size: int) -> str:
    """A size as people read it; a megabyte is a million bytes."""
    return f"{size / 1_000_000:.1f} MB"


def _write(files: Mapping[str, bytes], out: Path, series: str) -> None:
    """Writes beside its place, checks what was written, and moves it there in one step."""
    from .publish.pack.verify import NotWhole, verify  # noqa: PLC0415
    from .publish.pack.zip_file import size_of, write_zip  # noqa: PLC0415

    if shutil.disk_usage(out.parent).free < size_of(files) + _ROOM_TO_SPARE:
        raise Misused(f"There is not room for it in {out.parent}. Nothing was written.", FAILED)
    part = None
    try:
        with tempfile.NamedTemporaryFile(dir=out.parent, prefix=f".{out.name}.", suffix=".part", delete=False) as file:
            part = Path(file.name)
            write_zip(files, file)
            file.flush()
            os.fsync(file.fileno())
        verify(part)
        part.chmod(0o644)
        # What is there may have come while the pages were built.
        part.replace(_place_for(out, "", series))
    except NotWhole as error:
        raise Misused(f"It would not be a pack that can be checked:\n{error}", FAILED) from None
    except OSError as error:
        raise Misused(f"{out} could not be written: {error.strerror}. What was there is as it was.", FAILED) from None
    finally:
        if part is not None:
            part.unlink(missing_ok=True)


def verify(options: argparse.Namespace) -> int:
    """Runs ``verify``; 0 for a pack that is whole, 1 for one that is not, 2 where there is none."""
    from .publish.pack.verify import NotWhole  # noqa: PLC0415
    from .publish.pack.verify import verify as check  # noqa: PLC0415

    try:
        size = options.pack.stat().st_size
        found = check(options.pack)
    except NotWhole as error:
        print(f"{options.pack} is not whole:")
        for fault in error.faults[:_SHOWN]:
            print(f"  {fault}")
        if len(error.faults) > _SHOWN:
            print(f"  and {len(error.faults) - _SHOWN} more")
        return FAILED
    except OSError as error:
        print(f"{options.pack} cannot be opened: {error.strerror or 'it is not a plain file'}.", file=sys.stderr)
        return MISUSED
    print(
        f"{options.pack} is whole: {found.series} {found.version}, {len(found.sums) + 1} files, {in_megabytes(size)}."
    )
    return 0
