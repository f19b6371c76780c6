"""Sheets already made, kept by their content: what has not changed is never set again.

Where there is much to set, a second process takes half of it. It is a plain Python started for the purpose: a
copy of this one would inherit the typesetter's threads half alive.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterable, Mapping
from contextlib import suppress
from pathlib import Path

from ..edits.in_place import move_in_place
from ..render.sheets.typesetting import pages_in, set_in_type

WORTH_A_SECOND_PROCESS = 60
"""Sheets to set: below this, starting a process takes longer than it saves."""
_IN_USE = 86_400
"""Seconds, a day, after which nobody is using a sheet any more."""
_PACKAGE = Path(__file__).parents[2]
_CHILD = f"from {__name__} import take_a_share; take_a_share()"


def fill(folder: Path, copies: Mapping[str, str], second_process: bool = True) -> None:
    """Sets every sheet of ``copies``, by content key, that the folder does not hold."""
    folder.mkdir(parents=True, exist_ok=True)
    missing = {key: copy for key, copy in copies.items() if not holds(folder, key)}
    for key in copies.keys() - missing.keys():
        for file in (pdf_path(folder, key), png_path(folder, key)):
            with suppress(OSError):  # where nothing can be written, nothing is forgotten either
                os.utime(file)  # so that no other process forgets it meanwhile
    if second_process and len(missing) >= WORTH_A_SECOND_PROCESS:
        # By turns from the longest on, so that both have about the same to do.
        keys = sorted(missing, key=lambda key: -len(missing[key]))
        child = _start({"folder": str(folder), "copies": {key: missing[key] for key in keys[1::2]}})
        _set_all(folder, {key: missing[key] for key in keys[::2]})
        child.wait()
        # Whatever the child did not get done is done here, and says here what is wrong.
        missing = {key: copy for key, copy in missing.items() if not holds(folder, key)}
    _set_all(folder, missing)


def pdf_path(folder: Path, key: str) -> Path:
    """Where a sheet's PDF is kept."""
    return folder / f"{key}.pdf"


def png_path(folder: Path, key: str) -> Path:
    """Where the picture of its first page is kept."""
    return folder / f"{key}.png"


def pages_of(folder: Path, key: str) -> int:
    """How many pages a kept sheet has."""
    return pages_in(pdf_path(folder, key).read_bytes())


def forget_all_but(folder: Path, keys: Iterable[str]) -> None:
    """Takes out what no sheet uses any more, nor has lately: another build, or a server, may be using it just now."""
    kept, lately = set(keys), time.time() - _IN_USE
    for file in folder.iterdir():
        if file.stem.partition(".")[0] not in kept and file.lstat().st_mtime < lately:
            file.unlink(missing_ok=True)


def take_a_share() -> None:
    """The second process: sets what it reads from its input."""
    asked = json.load(sys.stdin)
    _set_all(Path(asked["folder"]), asked["copies"])


def _start(asked: Mapping[str, object]) -> subprocess.Popen[bytes]:
    path = os.pathsep.join([str(_PACKAGE), *filter(None, [os.environ.get("PYTHONPATH")])])
    child = subprocess.Popen(
        [sys.executable, "-c", _CHILD],
        stdin=subprocess.PIPE,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        env={**os.environ, "PYTHONPATH": path},
    )
    try:
        if child.stdin:
            with child.stdin as given:
                given.write(json.dumps(asked).encode())
    except BrokenPipeError:
        pass  # it ended at once; its share is done here
    return child


def _set_all(folder: Path, copies: Mapping[str, str]) -> None:
    for key, copy in copies.items():
        printed = set_in_type(copy)
        keep(png_path(folder, key), printed.png)
        keep(pdf_path(folder, key), printed.pdf)


def holds(folder: Path, key: str) -> bool:
    """Whether a sheet is kept."""
    return pdf_path(folder, key).is_file() and png_path(folder, key).is_file()


def keep(file: Path, content: bytes) -> None:
    """Written beside and moved into place, so that a build cut short leaves no half sheet."""
    part = file.with_name(f"{file.name}.{os.getpid()}")
    part.write_bytes(content)
    move_in_place(part, file)
