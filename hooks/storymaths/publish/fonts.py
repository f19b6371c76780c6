"""The letterforms of the site: two typefaces from their packages, cut down to the signs we print and kept so.

Whole, they weigh 140 kB over the wire; so cut, 20 kB, and accents, which few pages have, 11 kB more.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

from ..edits.in_place import move_in_place
from ..model.site_settings import Face, Letterforms

_EDITION = "3"
"""Raised when the cutting changes, so that what was kept is cut afresh."""
_ACCENTS = "-accents"


@dataclass(frozen=True, slots=True)
class _Font:
    """A typeface: the package and file it comes in."""

    package: str
    file: str


_FONTS: Mapping[Face, _Font] = {
    "lexend": _Font("fontpkg_lexend", "Lexend[wght].ttf"),
    "abeezee": _Font("fontpkg_abeezee", "ABeeZee-Regular.ttf"),
}


def package_of(face: Face) -> str:
    """The package a typeface comes in."""
    return _FONTS[face].package.replace("_", "-")


def letterforms(kept: Path, chosen: Letterforms = Letterforms()) -> Mapping[str, bytes]:  # noqa: B008 - frozen
    """Each font file's address from the site's root, and what is in it. What is cut once is kept in a folder."""
    faces = (("text", _FONTS[chosen.text], "Storymaths Text"), ("child", _FONTS[chosen.child], "Storymaths Child"))
    return {
        f"fonts/{face}{part}.woff2": _cut_once(font, name, part, kept)
        for face, font, name in faces
        for part in ("", _ACCENTS)
    }


def _cut_once(font: _Font, name: str, part: str, kept: Path) -> bytes:
    whole = _file(font)
    mark = hashlib.sha256(f"{_EDITION} {name}{part} ".encode() + whole.read_bytes()).hexdigest()[:20]
    held = kept / f"{mark}.woff2"
    if not held.is_file():
        from . import font_subsetting as cutting  # noqa: PLC0415 - half a second to load, and hardly ever needed

        made = cutting.cut(whole, name, cutting.ACCENTS if part else cutting.SIGNS)
        kept.mkdir(parents=True, exist_ok=True)
        begun = held.with_suffix(".part")
        begun.write_bytes(made)
        move_in_place(begun, held)
    return held.read_bytes()


def _file(font: _Font) -> Path:
    spec = find_spec(font.package)
    if spec is None or spec.origin is None:
        raise RuntimeError(f"the package {font.package.replace('_', '-')} is not installed: install storymaths again")
    return Path(spec.origin).parent / "files" / font.file
