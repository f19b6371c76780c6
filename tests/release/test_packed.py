"""Packed files: what they unpack to, which are made, and that the same file packs into the same bytes.

Unpacked by Python's ``gzip`` (RFC 1952) and by ``brotli`` (RFC 7932).
"""

from __future__ import annotations

import gzip
from pathlib import Path

import brotli  # type: ignore[import-untyped]
from storymaths.release.packed import pack

WORDS = b"Level at last, and the lamp is lit. " * 50


def packed_in(folder: Path, files: dict[str, bytes]) -> dict[str, bytes]:
    for name, data in files.items():
        (folder / name).write_bytes(data)
    pack(folder)
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def test_text_is_packed_both_ways_and_unpacks_to_itself(tmp_path: Path) -> None:
    made = packed_in(tmp_path, {"a.html": WORDS, "b.svg": WORDS})
    for name in ("a.html", "b.svg"):
        assert gzip.decompress(made[f"{name}.gz"]) == WORDS
        assert brotli.decompress(made[f"{name}.br"]) == WORDS
        assert len(made[f"{name}.br"]) < len(made[f"{name}.gz"]) < len(WORDS)


def test_only_text_and_only_where_it_is_smaller(tmp_path: Path) -> None:
    made = packed_in(tmp_path, {"a.pdf": WORDS, "a.woff2": WORDS, "a.png": WORDS, "tiny.js": b"1", "empty.css": b""})
    assert set(made) == {"a.pdf", "a.woff2", "a.png", "tiny.js", "empty.css"}


def test_a_packed_file_of_something_else_does_not_stay(tmp_path: Path) -> None:
    made = packed_in(tmp_path, {"sitemap.xml": b"x", "sitemap.xml.gz": gzip.compress(b"old")})
    assert set(made) == {"sitemap.xml"}


def test_the_same_bytes_twice(tmp_path: Path) -> None:
    (tmp_path / "one").mkdir()
    (tmp_path / "two").mkdir()
    assert packed_in(tmp_path / "one", {"a.html": WORDS}) == packed_in(tmp_path / "two", {"a.html": WORDS})


def test_what_has_not_changed_is_taken_from_the_edition_before(tmp_path: Path) -> None:
    (tmp_path / "one").mkdir()
    (tmp_path / "two").mkdir()
    made = packed_in(tmp_path / "one", {"a.html": WORDS, "b.html": WORDS})
    (tmp_path / "two" / "a.html").write_bytes(WORDS)
    (tmp_path / "two" / "b.html").write_bytes(WORDS + b"New.")
    pack(tmp_path / "two", tmp_path / "one")
    assert (tmp_path / "two" / "a.html.br").read_bytes() == made["a.html.br"]
    assert brotli.decompress((tmp_path / "two" / "b.html.br").read_bytes()) == WORDS + b"New."


def test_what_the_site_weighs_packed(tmp_path: Path) -> None:
    (tmp_path / "a.html").write_bytes(WORDS)
    (tmp_path / "a.pdf").write_bytes(b"x" * 100)
    assert pack(tmp_path) == 100 + (tmp_path / "a.html.br").stat().st_size
