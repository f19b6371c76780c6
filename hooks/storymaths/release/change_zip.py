"""A zip that brings a web space from the last publishing to this one: what is new or changed, and what to delete there.

``lessons-1.zip`` holds the whole site, ``lessons-2.zip`` what changed after it, and so on; each is uploaded once, in
that order. Beside them ``lessons.json`` says what the last one brought the space to.
"""

from __future__ import annotations

import filecmp
import hashlib
import json
import zipfile
from dataclasses import asdict, dataclass, field
from pathlib import Path

from pydantic import TypeAdapter, ValidationError

from .built_pages import BuiltSite
from .lock import hold_lock
from .plain_folder import build_aside, count, in_order, move_in
from .publishing import Outcome, Request
from .refused import Refused
from .trial import try_out

TO_DELETE = "DELETE-THESE.txt"
_WHEN = (1980, 1, 1, 0, 0, 0)
"""The same bytes for the same files: the earliest time a zip can tell."""


@dataclass(frozen=True, slots=True)
class Uploaded:
    """What the zips so far brought the web space to."""

    number: int = 0
    """Of the last of them."""
    sums: dict[str, str] = field(default_factory=dict)
    """SHA-256 of every file."""
    pages: dict[str, str] = field(default_factory=dict)
    """The title of each page."""


def zip_changes(dest: Path, request: Request, locks: Path, *, rehearse: bool = False) -> Outcome:
    """Makes the next zip of ``dest``, such as ``lessons.zip``; its number is the release. Raises ``Refused``, ``OSError``.

    Where nothing changed, and in a rehearsal, none is made.
    """
    if not dest.name or not dest.parent.is_dir():
        raise Refused(f"There is no folder {dest.parent} to write in: make it first.")
    with hold_lock(locks, request.wait, request.waiting), build_aside(request) as site:
        last = _read(record_beside(dest))
        problems = try_out(site, request.limits, last.pages, request.today)
        sums = {a: hashlib.sha256((site.folder / a).read_bytes()).hexdigest() for a in site.files}
        new = sums.keys() - last.sums.keys()
        changed = {address for address in sums.keys() - new if sums[address] != last.sums[address]}
        gone = sorted(last.sums.keys() - sums.keys())
        made = bool(new or changed or gone) and not problems and not rehearse
        packed = 0
        if made:
            zipped = zip_numbered(dest, last.number + 1)
            move_in(zipped, lambda part: _write_zip(part, site, in_order(new, changed), gone, zipped))
            uploaded = json.dumps(asdict(Uploaded(last.number + 1, sums, site.titles())), ensure_ascii=False)
            move_in(record_beside(dest), lambda part: part.write_text(uploaded, encoding="utf-8", newline="\n"))
            packed = zipped.stat().st_size
        size = sum(site.files.values())
        release = last.number + 1 if made else None
        return Outcome(problems, len(site.titles()), size, packed, count(new, changed, gone), release)


def zip_numbered(dest: Path, number: int) -> Path:
    """The file of a zip by its number."""
    return dest.with_name(f"{dest.stem}-{number}.zip")


def record_beside(dest: Path) -> Path:
    """Where it is said what the web space holds."""
    return dest.with_suffix(".json")


def _read(file: Path) -> Uploaded:
    if not file.exists():
        return Uploaded()
    try:
        return TypeAdapter(Uploaded).validate_json(file.read_bytes())
    except (OSError, ValidationError):
        raise Refused(
            f"{file} cannot be read, and says what the web space holds. Put it back, or take it away for a zip of the whole site."
        ) from None


def _write_zip(part: Path, site: BuiltSite, wanted: list[str], gone: list[str], place: Path) -> None:
    """Writes it beside its ``place``. Raises ``Refused`` where another stands there: the very same is of a run that was ended."""
    with zipfile.ZipFile(part, "w", zipfile.ZIP_DEFLATED) as zipped:
        for address in wanted:
            zipped.writestr(_entry(address), (site.folder / address).read_bytes())
        if gone:
            zipped.writestr(_entry(TO_DELETE), "".join(f"{address}\r\n" for address in gone))
    if place.exists() and not filecmp.cmp(part, place, shallow=False):
        raise Refused(f"{place} is there already, so it is left alone: take it away, or name another zip.")


def _entry(name: str) -> zipfile.ZipInfo:
    entry = zipfile.ZipInfo(name, _WHEN)
    entry.compress_type = zipfile.ZIP_DEFLATED
    entry.external_attr = 0o644 << 16
    return entry
