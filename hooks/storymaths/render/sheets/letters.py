"""The typefaces of print sheets, straight from their packages, and what to do with a sign that neither has."""

from __future__ import annotations

import unicodedata
from functools import cache
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path

import typst

_PACKAGES = ("fontpkg_lexend", "fontpkg_abeezee")
_INSTEAD = {"→": "to", "←": "from", "✓": "yes", "✔": "yes", "✗": "no", "‐": "-", "‑": "-", "⁄": "/", "\u202f": "\u00a0"}
_UNKNOWN = "?"
_DRAWN_AS_NOTHING = {"\n", "\u200b", "\u00a0"}


@cache
def folders() -> tuple[Path, ...]:
    """Where the font files are."""
    found = []
    for package in _PACKAGES:
        spec = find_spec(package)
        if spec is None or spec.origin is None:
            raise RuntimeError(f"the package {package.replace('_', '-')} is not installed: install storymaths again")
        found.append(Path(spec.origin).parent / "files")
    return tuple(found)


@cache
def typefaces() -> typst.Fonts:
    """The faces as the typesetter takes them; those of the machine and of the typesetter itself are left out."""
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(folder) for folder in folders()]
    )


@cache
def edition() -> str:
    """Names the very font files in use: a new release makes new sheets."""
    return " ".join(
        f"{file.name} {file.stat().st_size}" for folder in folders() for file in sorted(folder.glob("*.ttf"))
    )


@cache
def _known() -> frozenset[str]:
    """Signs that one of the faces draws."""
    reader = import_module("fontTools.ttLib")  # slow to load, and not needed to set a sheet
    signs = set(_DRAWN_AS_NOTHING)
    for folder in folders():
        for file in folder.glob("*.ttf"):
            if "Italic" not in file.name:
                with reader.TTFont(file, lazy=True) as font:
                    signs |= {chr(code) for code in font.getBestCmap()}
    return frozenset(signs)


def printable(text: str) -> str:
    """The text with every sign that no face has replaced by its nearest, or by a question mark."""
    text = unicodedata.normalize("NFC", text)
    missing = set(text) - _known()
    for sign in missing:
        text = text.replace(sign, _nearest(sign))
    return text


def _nearest(sign: str) -> str:
    if sign in _INSTEAD:
        return _INSTEAD[sign]
    apart = [_INSTEAD.get(part, part) for part in unicodedata.normalize("NFKD", sign)]
    kept = "".join(part for part in apart if part in _known() and not unicodedata.combining(part))
    return kept or ("" if unicodedata.category(sign) in ("Cc", "Cf", "Mn", "Me") else _UNKNOWN)
