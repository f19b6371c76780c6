"""Whether a pack is whole: nothing changed, missing or added, and nothing in it that could harm whoever opens it."""

from __future__ import annotations

import hashlib
import os
import stat
import struct
import zipfile
import zlib
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import IO

from . import manifest
from .limits import LARGEST_FILE, LARGEST_PACK, MOST_FILES, fault_of_name, make_printable, same_place
from .manifest import Manifest, NoManifest

_BROKEN = (
    zipfile.BadZipFile, zipfile.LargeZipFile, zlib.error, struct.error, EOFError, OSError, ValueError, RuntimeError,
    OverflowError,
)  # fmt: skip
"""What reading a zip that is not whole may raise; ValueError takes in names that are not text."""
_END = struct.Struct("<4s4H2LH")
"""The record a zip ends with (APPNOTE.TXT 6.3, section 4.3.16)."""
_END_SIGN = b"PK\x05\x06"
_LARGEST_LIST = 8_000_000
"""Bytes of the list of files: what is read before anything can be checked."""
_LENGTHS, _HEAD_SIZE, _LISTED_SIZE = struct.Struct("<HH"), 30, 46
"""What stands before each file, ending with the lengths of its name and extras, and in the list: APPNOTE, 4.3.7, 4.3.12."""
_SUM_BEHIND, _SUM_SIGN, _SUM_SIZE, _UTF8 = 8, b"PK\x07\x08", 12, 1 << 11
"""Of a file whose sum stands behind it: APPNOTE, 4.3.9; and of a name that is UTF-8: 4.4.4."""
_AT_A_TIME = 1 << 16
_ENCRYPTED = 1
_RUNS = 0o7111
_OTHER_NAME = 0x7075
"""A name in Unicode, which some programs unpack a file under: APPNOTE of the zip format, 4.6.9."""
_LOCATOR_SIGN, _LOCATOR_SIZE = b"PK\x06\x07", 20
"""Of a second end record, for zips of more than four gigabytes: APPNOTE, 4.3.15."""


class NotWhole(Exception):
    """A pack that is not as it was made: every fault found, each a sentence."""

    def __init__(self, faults: Sequence[str]) -> None:
        super().__init__("\n".join(faults))
        self.faults = tuple(faults)


def verify(path: Path) -> Manifest:
    """The manifest of a pack that is whole. Raises ``NotWhole``, and ``OSError`` where there is no such file."""
    with path.open("rb") as file:
        _check_end(file)
        try:
            with zipfile.ZipFile(file) as zipped:
                return _check(zipped, file)
        except _BROKEN as error:
            raise NotWhole(["It is not a zip that can be read: it was cut short or damaged."]) from error


def _check_end(file: IO[bytes]) -> None:
    """Looks at the end of the file, so that no list of files is read that is too long to be a pack's."""
    size = os.fstat(file.fileno()).st_size
    if size > LARGEST_PACK:
        raise NotWhole(["It is larger than a pack can be."])
    file.seek(max(0, size - _END.size - _LOCATOR_SIZE))
    before, end = file.read(min(_LOCATOR_SIZE, max(0, size - _END.size))), file.read(_END.size)
    if len(end) < _END.size or not end.startswith(_END_SIGN):
        raise NotWhole(["It does not end as a pack does: it is no zip, was cut short, or has something added."])
    *_, files, listed, _, _ = _END.unpack(end)
    if before.startswith(_LOCATOR_SIGN):  # of a second list, which no pack is large enough to need
        raise NotWhole(["It does not end as a pack does: it says that its list of files is somewhere else."])
    if files > MOST_FILES or listed > _LARGEST_LIST:
        raise NotWhole([f"It lists more files than a pack can hold, which is {MOST_FILES}."])


def _check(zipped: zipfile.ZipFile, file: IO[bytes]) -> Manifest:
    entries = zipped.infolist()
    if faults := list(_faults_of_entries(entries)):
        raise NotWhole(faults)
    if min((entry.header_offset for entry in entries), default=0):
        raise NotWhole(["It does not begin as a pack does: something is in front of it."])
    if not _is_without_gaps(zipped, entries, file):
        raise NotWhole(["It holds more than the files it lists: something stands between them."])
    listed = _manifest(zipped)
    there = {entry.filename: entry for entry in entries if entry.filename != manifest.NAME}
    faults = [f"Missing: {make_printable(name)}" for name in sorted(listed.sums.keys() - there.keys())]
    faults += [f"Added: {make_printable(name)}" for name in sorted(there.keys() - listed.sums.keys())]
    for name in sorted(there.keys() & listed.sums.keys()):
        found = _sum(zipped, there[name])
        if found is None:
            faults.append(f"Damaged: {make_printable(name)}")
        elif found != listed.sums[name]:
            faults.append(f"Changed: {make_printable(name)}")
    if faults:
        raise NotWhole(faults)
    return listed


def _is_without_gaps(zipped: zipfile.ZipFile, entries: Sequence[zipfile.ZipInfo], file: IO[bytes]) -> bool:
    """Whether each file begins where the one before it ends, and the list of them after the last."""
    at = 0
    for entry in sorted(entries, key=lambda one: one.header_offset):
        if entry.header_offset != at:
            return False
        file.seek(at + _HEAD_SIZE - _LENGTHS.size)
        at += _HEAD_SIZE + sum(_LENGTHS.unpack(file.read(_LENGTHS.size))) + entry.compress_size
        if entry.flag_bits & _SUM_BEHIND:
            file.seek(at)
            at += _SUM_SIZE + len(_SUM_SIGN) * (file.read(len(_SUM_SIGN)) == _SUM_SIGN)
    listed = sum(_LISTED_SIZE + len(entry.extra) + len(entry.comment) for entry in entries)
    names = sum(len(entry.orig_filename.encode("utf-8" if entry.flag_bits & _UTF8 else "cp437")) for entry in entries)
    file.seek(0, os.SEEK_END)
    return at == zipped.start_dir and file.tell() == at + listed + names + _END.size


def _faults_of_entries(entries: Sequence[zipfile.ZipInfo]) -> Iterator[str]:
    """What is wrong with the list of files, before any of them is unpacked."""
    if len(entries) > MOST_FILES:
        yield f"It holds {len(entries)} files; a pack holds at most {MOST_FILES}."
    if sum(entry.file_size for entry in entries) > LARGEST_PACK:
        yield "Unpacked, it would be larger than a pack can be."
    seen: set[str] = set()
    for entry in entries:
        fault = _fault_of_entry(entry)
        if fault is None and same_place(entry.filename) in seen:
            fault = "is in it more than once, or under names some systems take for one"
        seen.add(same_place(entry.filename))
        if fault is not None:
            yield f"{make_printable(entry.orig_filename)} {fault}."
    folders = {
        same_place(name[:at]) for name in (e.filename for e in entries) for at, sign in enumerate(name) if sign == "/"
    }
    for entry in entries:
        if same_place(entry.filename) in folders:
            yield f"{make_printable(entry.orig_filename)} is a file and a folder at once."


def _fault_of_entry(entry: zipfile.ZipInfo) -> str | None:
    kind = stat.S_IFMT(entry.external_attr >> 16)
    if entry.orig_filename.endswith("/"):
        return "is a folder, and a pack lists only files"
    if kind not in (0, stat.S_IFREG):
        return "is a link to another file" if kind == stat.S_IFLNK else "is not a plain file"
    if _OTHER_NAME in _extras(entry.extra):
        return "has a second name beside its own"
    if (entry.external_attr >> 16) & _RUNS:
        return "is marked as a program"
    if entry.flag_bits & _ENCRYPTED:
        return "is locked with a password"
    if entry.compress_type not in (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED):
        return "is packed in a way no pack is"
    if entry.file_size > LARGEST_FILE:
        return "would be larger than a file of a pack can be"
    return fault_of_name(entry.orig_filename)


def _extras(extra: bytes) -> set[int]:
    """What sorts of things are written beside an entry's name."""
    found, at = set(), 0
    while at + 4 <= len(extra):
        sort, size = struct.unpack_from("<HH", extra, at)
        found.add(sort)
        at += 4 + size
    return found


def _manifest(zipped: zipfile.ZipFile) -> Manifest:
    try:
        entry = zipped.getinfo(manifest.NAME)
    except KeyError:
        raise NotWhole([f"It has no {manifest.NAME}, so it is not a pack or is not a whole one."]) from None
    try:
        if entry.file_size > manifest.LARGEST:
            raise NoManifest("it is too long")
        return manifest.read(zipped.read(entry))
    except NoManifest as error:
        raise NotWhole([f"Its {manifest.NAME} is not that of a pack: {error}."]) from None


def _sum(zipped: zipfile.ZipFile, entry: zipfile.ZipInfo) -> str | None:
    """The SHA-256 of what is unpacked; None where it cannot be, or is more than it was said to be."""
    digest, left = hashlib.sha256(), entry.file_size
    try:
        with zipped.open(entry) as opened:
            while content := opened.read(_AT_A_TIME):
                left -= len(content)
                if left < 0:
                    return None
                digest.update(content)
    except _BROKEN:
        return None
    return digest.hexdigest() if left == 0 else None
