"""A site put into a plain folder, as ordinary web space, a shared drive or a memory stick has: no link, no second copy.

There is no one step that shows a whole folder, so the order makes up for it: new files first, then those that changed,
pages after what they need and the front page last of all, and what vanished is taken out at the end. A record in the
folder says which files are publish's own. It is written before the first of them is touched, so a publishing that was
interrupted is known for one, and the next one finishes it.
"""

from __future__ import annotations

import filecmp
import json
import shutil
import tempfile
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path

from pydantic import TypeAdapter, ValidationError

from ..edits.in_place import move_in_place
from ..publish.pack.limits import fault_of_name
from .built_pages import NOT_FOUND, BuiltSite, read_built
from .lock import hold_lock
from .on_disk import make_all_last
from .publishing import Outcome, Request
from .refused import Refused
from .trial import try_out
from .unchanged import Changes

RECORD = "published-by-storymaths.json"
PART = ".storymaths-part"
"""How the name of a file ends that is not in its place yet."""
_RECORDS = TypeAdapter(dict[str, str])


def publish_to_folder(dest: Path, request: Request, locks: Path, *, rehearse: bool = False) -> Outcome:
    """Publishes; a rehearsal does all but that. Raises ``Refused``, and ``OSError`` where the folder cannot be written.

    ``locks`` is a folder of the collection's own: all of ``dest`` is for readers.
    """
    _look(dest)
    with hold_lock(locks, request.wait, request.waiting), build_aside(request) as site:
        record = _look(dest)
        problems = try_out(site, request.limits, _pages(record), request.today)
        foreign = [address for address in site.files if address not in record and (dest / address).exists()]
        if foreign:
            raise Refused(f"{dest / foreign[0]} is there, and publish did not put it there, so it is left alone.")
        new = {address for address in site.files if not (dest / address).is_file()}
        changed = {a for a in site.files if a not in new and not filecmp.cmp(dest / a, site.folder / a, shallow=False)}
        gone = [address for address in record if address not in site.files and (dest / address).is_file()]
        if not problems and not rehearse:
            _put_all(site, dest, in_order(new, changed), gone, record)
        size = sum(site.files.values())
        return Outcome(problems, len(site.titles()), size, size, count(new, changed, gone), None)


def _put_all(site: BuiltSite, dest: Path, wanted: Iterable[str], gone: Iterable[str], record: dict[str, str]) -> None:
    own = {address: site.pages[address].title if address in site.pages else "" for address in site.files}
    dest.mkdir(exist_ok=True)
    _write_record(dest, {**record, **own})
    for part in dest.rglob(f"*{PART}"):
        part.unlink()
    for address in wanted:
        move_in(dest / address, partial(shutil.copyfile, site.folder / address))
    for address in gone:
        _take_out(dest, address)
    make_all_last()
    _write_record(dest, own)


@contextmanager
def build_aside(request: Request) -> Iterator[BuiltSite]:
    """The site, built and read in a folder of its own that goes afterwards."""
    with tempfile.TemporaryDirectory(prefix="storymaths-") as folder:
        request.build(Path(folder))
        yield read_built(Path(folder), request.written)


def in_order(new: Iterable[str], changed: Iterable[str]) -> list[str]:
    """The files as they are put in place: each page after what it needs, and the front page last."""
    ranks = [(address.endswith(".html"), rank, address) for rank, some in enumerate((new, changed)) for address in some]
    return [address for *_, address in sorted(ranks, key=lambda ranked: (ranked[2] == "index.html", ranked))]


def count(new: Iterable[str], changed: Iterable[str], gone: Iterable[str]) -> Changes:
    """How many pages they are."""
    return Changes(*(sum(a.endswith(".html") and a != NOT_FOUND for a in some) for some in (new, changed, gone)))


def _look(dest: Path) -> dict[str, str]:
    """Publish's own files in the folder, with the titles of pages. Raises ``Refused`` where the folder is not its own."""
    if not dest.parent.is_dir():
        raise Refused(f"There is no folder {dest.parent} to publish in: make it first.")
    if dest.is_symlink() or (dest.exists() and not dest.is_dir()):
        raise Refused(f"{dest} is not a plain folder. Name another place.")
    if not dest.is_dir() or {path.name for path in dest.iterdir()} <= {f"{RECORD}{PART}"}:
        return {}
    try:
        record = _RECORDS.validate_json((dest / RECORD).read_bytes())
        # Whoever changed the record cannot have files taken out that are elsewhere.
        return {address: title for address, title in record.items() if fault_of_name(address) is None}
    except (OSError, ValidationError):
        raise Refused(
            f"{dest} is a folder with files in it, and publish did not make it, so it is left alone. Name another place."
        ) from None


def _pages(record: dict[str, str]) -> dict[str, str]:
    return {address: title for address, title in record.items() if address.endswith(".html") and address != NOT_FOUND}


def _write_record(dest: Path, record: dict[str, str]) -> None:
    text = json.dumps(record, ensure_ascii=False, indent=0, sort_keys=True)
    move_in(dest / RECORD, lambda part: part.write_text(text, encoding="utf-8", newline="\n"))


def move_in(place: Path, write: Callable[[Path], object]) -> None:
    """A file written beside its place and moved there in one step: who looks finds the old one or the new."""
    place.parent.mkdir(parents=True, exist_ok=True)
    part = place.with_name(f"{place.name}{PART}")
    try:
        write(part)
        move_in_place(part, place)
    finally:
        part.unlink(missing_ok=True)


def _take_out(dest: Path, address: str) -> None:
    """A file, and each folder that is empty without it."""
    (dest / address).unlink()
    for folder in (dest / address).parents:
        if folder == dest or any(folder.iterdir()):
            break
        folder.rmdir()
