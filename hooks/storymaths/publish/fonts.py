"""The letterforms of the site: two typefaces from their packages, cut down to the signs we print and kept so.

Whole, they weigh 140 kB over the wire; so cut, 30 kB.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path

_EDITION = "1"
"""Raised when the cutting changes, so that what was kept is cut afresh."""


@dataclass(frozen=True, slots=True)
class _Face:
    """A typeface: the package and file it comes in, and the name it goes by here."""

    package: str
    file: str
    name: str


_FACES: Mapping[str, _Face] = {
    "fonts/text.woff2": _Face("fontpkg_lexend", "Lexend[wght].ttf", "Storymaths Text"),
    "fonts/child.woff2": _Face("fontpkg_abeezee", "ABeeZee-Regular.ttf", "Storymaths Child"),
}


def letterforms(kept: Path) -> Mapping[str, bytes]:
    """Each font file's address from the site's root, and what is in it. What is cut once is kept in a folder."""
    return {address: _cut_once(face, kept) for address, face in _FACES.items()}


def _cut_once(face: _Face, kept: Path) -> bytes:
    whole = _file(face)
    mark = hashlib.sha256(f"{_EDITION} {face.name} ".encode() + whole.read_bytes()).hexdigest()[:20]
    held = kept / f"{mark}.woff2"
    if not held.is_file():
        from .font_subsetting import cut  # noqa: PLC0415 - half a second to load, and hardly ever needed

        made = cut(whole, face.name)
        kept.mkdir(parents=True, exist_ok=True)
        part = held.with_suffix(".part")
        part.write_bytes(made)
        part.replace(held)
    return held.read_bytes()


def _file(face: _Face) -> Path:
    spec = find_spec(face.package)
    if spec is None or spec.origin is None:
        raise RuntimeError(f"the package {face.package.replace('_', '-')} is not installed: run pip install -e . again")
    return Path(spec.origin).parent / "files" / face.file
