"""``storymaths verify``: what is changed, missing or added is found, and so is what could harm whoever unpacks it."""

from __future__ import annotations

import io
import random
import stat
import struct
import subprocess
import warnings
import zipfile
from pathlib import Path

import pytest
from command import storymaths, storymaths_as_a_program
from hypothesis import given
from hypothesis import strategies as st
from packed import SERIES, VERSION, made
from storymaths.publish.pack import limits, manifest
from storymaths.publish.pack import verify as verifying
from storymaths.publish.pack.verify import NotWhole, verify
from storymaths.publish.pack.zip_file import size_of, write_zip

FILES = {"START-HERE.html": b"<h1>Start</h1>" * 50, "pages/index.html": b"<p>One</p>", "pages/look/site.css": b"p{}"}


def with_manifest(files: dict[str, bytes]) -> dict[str, bytes]:
    return {**files, manifest.NAME: manifest.compose("a-series", "1.0", files)}


def zip_bytes(files: dict[str, bytes]) -> bytes:
    out = io.BytesIO()
    write_zip(files, out)
    return out.getvalue()


WHOLE = zip_bytes(with_manifest(FILES))


def faults(content: bytes, folder: Path) -> list[str]:
    file = folder / "pack.zip"
    file.write_bytes(content)
    try:
        verify(file)
    except NotWhole as error:
        return list(error.faults)
    return []


def test_a_pack_of_a_series_is_whole() -> None:
    found = verify(made()[0])
    assert (found.series, found.version) == (SERIES, VERSION)


def test_a_small_pack_is_whole_and_as_large_as_was_said(tmp_path: Path) -> None:
    assert faults(WHOLE, tmp_path) == []
    assert size_of(with_manifest(FILES)) == len(WHOLE)
    accents = with_manifest({"pages/é – 🚢.html": b"x"})
    assert size_of(accents) == len(zip_bytes(accents))


def test_changed_missing_and_added_files_are_each_named(tmp_path: Path) -> None:
    files = with_manifest(FILES)
    files["pages/index.html"] = b"<p>Two</p>"
    del files["pages/look/site.css"]
    files["pages/extra.html"] = b"x"
    assert faults(zip_bytes(files), tmp_path) == [
        "Missing: pages/look/site.css",
        "Added: pages/extra.html",
        "Changed: pages/index.html",
    ]


@pytest.mark.parametrize("change", ["changed", "missing", "added"])
def test_the_command_says_what_is_wrong_with_a_pack(change: str, tmp_path: Path) -> None:
    with zipfile.ZipFile(made()[0]) as zipped:
        files = {name: zipped.read(name) for name in zipped.namelist()}
    page = "pages/books/cliff-house-lift/session-2.html"
    if change == "changed":
        files[page] = files[page].replace(b"Camel", b"Monkey", 1)
    elif change == "missing":
        del files[page]
    else:
        page = "pages/books/cliff-house-lift/session-9.html"
        files[page] = b""
    (tmp_path / "pack.zip").write_bytes(zip_bytes(files))
    done = storymaths("verify", str(tmp_path / "pack.zip"), folder=tmp_path)
    assert (done.returncode, done.stderr) == (1, "")
    assert done.stdout == f"{tmp_path / 'pack.zip'} is not whole:\n  {change.capitalize()}: {page}\n"


def test_the_command_says_that_a_pack_is_whole_wherever_it_is_run(tmp_path: Path) -> None:
    done = storymaths_as_a_program("verify", str(made()[0]), folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert f"is whole: {SERIES} {VERSION}, " in done.stdout
    assert storymaths("verify", str(tmp_path / "none.zip"), folder=tmp_path).returncode == 2
    assert storymaths("verify", str(tmp_path), folder=tmp_path).returncode == 2


def test_a_pack_packed_again_by_another_program_is_as_good(tmp_path: Path) -> None:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as zipped:
        for name, content in reversed(with_manifest(FILES).items()):
            zipped.writestr(name, content)
    assert faults(out.getvalue(), tmp_path) == []


def test_what_stands_between_the_files_of_a_pack_is_found(tmp_path: Path) -> None:
    start = WHOLE.index(b"PK\x01\x02")
    (offset,) = struct.unpack_from("<L", WHOLE, len(WHOLE) - 6)
    assert offset == start
    later = bytearray(WHOLE[:start] + b"x" * 1000 + WHOLE[start:])
    struct.pack_into("<L", later, len(later) - 6, start + 1000)
    assert faults(bytes(later), tmp_path) == ["It holds more than the files it lists: something stands between them."]


@pytest.mark.parametrize("name", ["pages/evil.exe", "pages/START.LNK", "show.hta", "pages/a.b.ScR"])
def test_a_program_is_refused_though_the_manifest_knows_it(name: str, tmp_path: Path) -> None:
    assert faults(zip_bytes(with_manifest({**FILES, name: b"MZ"})), tmp_path) == [
        f"{name} would be run by whoever opens it."
    ]


def entry(name: str, mode: int = 0, content: bytes = b"x", method: int = zipfile.ZIP_STORED) -> bytes:
    """A whole pack with one entry more, made by hand; its manifest knows it."""
    out = io.BytesIO()
    files = with_manifest({**FILES, name: content})
    with zipfile.ZipFile(out, "w") as zipped, warnings.catch_warnings():
        warnings.simplefilter("ignore")  # Python warns of names used twice
        for each, inside in with_manifest(FILES).items():
            zipped.writestr(each, files[each] if each == manifest.NAME else inside)
        made_up = zipfile.ZipInfo("placeholder")
        made_up.filename = name  # as it is given, whatever this system makes of it
        made_up.external_attr = mode << 16
        zipped.writestr(made_up, content, method)
    return out.getvalue()


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("../outside.html", "has a name that climbs out of the folder"),
        ("pages/../../outside.html", "has a name that climbs out of the folder"),
        ("/etc/motd", "has a name that begins at the root of the disk"),
        ("C:/windows/x", "has signs in its name that no pack uses"),
        ("pages\\..\\x", "has signs in its name that no pack uses"),
        ("pages/\x1b[2Jx", "has signs in its name that no pack uses"),
        ("pages/\u202egnp.exe", "has signs in its name that no pack uses"),
        ("pages//x", "has a name with an empty or unfinished part"),
        ("./pages/x", "has a name with an empty or unfinished part"),
        ("pages/x.", "has a name with an empty or unfinished part"),
        ("pages/folder/", "is a folder"),
        ("pages/con.html", "has a name that some systems keep for a device"),
        ("pages/" + "x" * 300, "has too long a name"),
        ("pages/INDEX.html", "is in it more than once"),
        ("pages/index.html", "is in it more than once"),
    ],
)
def test_names_that_lead_elsewhere_are_refused(name: str, says: str, tmp_path: Path) -> None:
    found = faults(entry(name), tmp_path)
    assert len(found) == 1
    assert says in found[0]
    assert all(sign.isprintable() for sign in found[0]), "what is printed cannot move the cursor"


def test_accents_written_two_ways_are_one_name(tmp_path: Path) -> None:
    files = with_manifest({**FILES, "pages/caf\u00e9.html": b"1", "pages/cafe\u0301.html": b"2"})
    (found,) = faults(zip_bytes(files), tmp_path)
    assert "more than once" in found


@pytest.mark.parametrize(
    ("mode", "says"),
    [
        (stat.S_IFLNK | 0o777, "is a link to another file"),
        (stat.S_IFIFO | 0o644, "is not a plain file"),
        (stat.S_IFCHR, "is not a plain file"),
    ],
)
def test_links_and_devices_are_refused(mode: int, says: str, tmp_path: Path) -> None:
    (found,) = faults(entry("pages/link.html", mode, b"/etc/passwd"), tmp_path)
    assert says in found


def test_what_is_packed_in_other_ways_or_locked_is_refused(tmp_path: Path) -> None:
    (found,) = faults(entry("pages/x.html", method=zipfile.ZIP_BZIP2), tmp_path)
    assert "is packed in a way no pack is" in found
    locked = bytearray(WHOLE)
    for sign in (b"PK\x01\x02",):
        locked[WHOLE.index(sign) + 8] |= 1
    assert any("is locked with a password" in fault for fault in faults(bytes(locked), tmp_path))


def test_what_unpacks_to_more_than_a_pack_holds_is_refused_unread(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    bomb = entry("pages/bomb.txt", content=bytes(limits.LARGEST_FILE + 1), method=zipfile.ZIP_DEFLATED)
    assert len(bomb) < 1_000_000
    monkeypatch.setattr(verifying, "_sum", None)
    monkeypatch.setattr(verifying, "_manifest", None)
    (found,) = faults(bomb, tmp_path)
    assert "would be larger than a file of a pack can be" in found
    monkeypatch.setattr(verifying, "LARGEST_PACK", len(WHOLE))
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as zipped:
        for n in range(3):
            zipped.writestr(f"pages/{n}.txt", bytes(len(WHOLE)))
    assert faults(out.getvalue(), tmp_path) == ["Unpacked, it would be larger than a pack can be."]


def test_a_file_that_unpacks_to_more_than_it_says_is_damaged(tmp_path: Path) -> None:
    """The size of one file is made smaller in both places where a zip says it."""
    content = bytearray(entry("pages/more.txt", content=bytes(5000), method=zipfile.ZIP_DEFLATED))
    size = struct.pack("<L", 5000)
    while (at := content.find(size)) >= 0:
        content[at : at + 4] = struct.pack("<L", 10)
    found = faults(bytes(content), tmp_path)
    assert found
    assert "Damaged: pages/more.txt" in found


def test_lists_too_long_to_read_are_refused_unread(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(verifying, "MOST_FILES", 3)
    (found,) = faults(WHOLE, tmp_path)
    assert "It lists more files than a pack can hold" in found
    end = bytearray(WHOLE)
    end[-12:-8] = struct.pack("<I", 9_000_000)
    monkeypatch.setattr(verifying, "MOST_FILES", 1000)
    (found,) = faults(bytes(end), tmp_path)
    assert "It lists more files than a pack can hold" in found


@pytest.mark.parametrize("content", [b"", b"PK", b"hello" * 100, WHOLE[:-1], WHOLE[:100], WHOLE + b"more"])
def test_what_is_no_zip_or_is_cut_short_is_said_to_be(content: bytes, tmp_path: Path) -> None:
    (found,) = faults(content, tmp_path)
    assert found.startswith(("It does not end as a pack does", "It is not a zip that can be read"))


def test_something_in_front_of_a_pack_is_found(tmp_path: Path) -> None:
    (found,) = faults(b"#!/bin/sh\n" + WHOLE, tmp_path)
    assert "something is in front of it" in found
    assert faults(WHOLE[40:], tmp_path)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (b"", "does not begin as one does"),
        (b"\xff\xfe", "it is not text"),
        (b"# storymaths pack 1\n", "does not begin as one does"),
        (b"# storymaths pack 1\n# series a 1.0\nnot a sum  x\n", "its line 3 cannot be read"),
        (b"# storymaths pack 1\n# series a 1.0\n" + (b"0" * 64 + b"  x\n") * 2, "its line 4 cannot be read"),
    ],
)
def test_a_manifest_that_is_not_one_is_said_to_be(text: bytes, says: str, tmp_path: Path) -> None:
    (found,) = faults(zip_bytes({**FILES, manifest.NAME: text}), tmp_path)
    assert says in found


def test_a_zip_without_a_manifest_is_no_pack(tmp_path: Path) -> None:
    (found,) = faults(zip_bytes(FILES), tmp_path)
    assert "It has no MANIFEST" in found


def test_a_name_that_is_cut_short_by_a_sign_is_refused(tmp_path: Path) -> None:
    content = bytearray(WHOLE)
    content[WHOLE.rindex(b"pages/index.html")] = 0
    (found,) = faults(bytes(content), tmp_path)
    assert "has signs in its name that no pack uses" in found


@given(st.lists(st.tuples(st.integers(0, len(WHOLE) - 1), st.integers(0, 255)), min_size=1, max_size=8))
def test_bytes_changed_anywhere_never_stop_the_check(
    tmp_path_factory: pytest.TempPathFactory, changes: list[tuple[int, int]]
) -> None:
    content = bytearray(WHOLE)
    for at, byte in changes:
        content[at] = byte
    found = faults(bytes(content), tmp_path_factory.getbasetemp())
    if not found:  # then every file is as it was
        with zipfile.ZipFile(io.BytesIO(bytes(content))) as zipped:
            assert {name: zipped.read(name) for name in zipped.namelist()} == with_manifest(FILES)


def test_a_byte_changed_in_any_file_is_found(tmp_path: Path) -> None:
    chance = random.Random(7)
    for name, inside in FILES.items():
        start = WHOLE.index(inside)
        at = start + chance.randrange(len(inside))
        content = bytearray(WHOLE)
        content[at] ^= 1
        assert faults(bytes(content), tmp_path) == [f"Damaged: {name}"]


def test_many_faults_are_counted_and_not_all_printed(tmp_path: Path) -> None:
    files = with_manifest({f"pages/{n}.html": b"" for n in range(50)})
    (tmp_path / "pack.zip").write_bytes(zip_bytes({manifest.NAME: files[manifest.NAME]}))
    done: subprocess.CompletedProcess[str] = storymaths("verify", str(tmp_path / "pack.zip"), folder=tmp_path)
    assert done.returncode == 1
    assert done.stdout.endswith("  and 30 more\n")


def test_a_second_name_beside_the_first_is_refused(tmp_path: Path) -> None:
    # Info-ZIP unpacks such a file under the name of field 0x7075.
    whole = bytearray(entry("pages/a.html"))
    other = struct.pack("<BI", 1, 0) + b"../evil.html"
    beside = struct.pack("<HH", 0x7075, len(other)) + other
    at = whole.index(b"PK\x01\x02", whole.index(b"pages/a.html"))
    names = [at]
    while (at := whole.find(b"PK\x01\x02", at + 4)) >= 0:
        names.append(at)
    at = next(place for place in names if whole[place + 46 :].startswith(b"pages/a.html"))
    whole[at + 30 : at + 32] = struct.pack("<H", len(beside))
    name_ends = at + 46 + len(b"pages/a.html")
    whole[name_ends:name_ends] = beside
    end = whole.rindex(b"PK\x05\x06")
    (listed,) = struct.unpack_from("<I", whole, end + 12)
    struct.pack_into("<I", whole, end + 12, listed + len(beside))
    (found,) = faults(bytes(whole), tmp_path)
    assert "second name" in found


def test_a_name_that_is_a_file_and_a_folder_is_refused(tmp_path: Path) -> None:
    (found,) = faults(entry("pages"), tmp_path)
    assert "a file and a folder at once" in found


def test_a_program_is_refused(tmp_path: Path) -> None:
    (found,) = faults(entry("pages/x.html", stat.S_IFREG | 0o4755), tmp_path)
    assert "marked as a program" in found


def test_a_list_of_files_that_is_elsewhere_is_refused_unread(tmp_path: Path) -> None:
    end = WHOLE.rindex(b"PK\x05\x06")
    locator = struct.pack("<4sIQI", b"PK\x06\x07", 0, 0, 1)
    (found,) = faults(WHOLE[:end] + locator + WHOLE[end:], tmp_path)
    assert "somewhere else" in found
