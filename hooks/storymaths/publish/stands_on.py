"""What the program stands on, read from what is installed: each package with its version and licence, and their notices."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from importlib.metadata import Distribution, PackageNotFoundError, distribution
from pathlib import Path

from ..model.site_settings import Letterforms
from .fonts import package_of

PROGRAM = "storymaths"
NOTICES = "look/licences.txt"
"""Where the notices of what is served stand, from the site's root."""
_OWN_LICENCE = Path(__file__).parent / "pack" / "program_licence.txt"
_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*")
_SPDX = {
    "MIT License": "MIT",
    "Apache Software License": "Apache-2.0",
    "ISC License (ISCL)": "ISC",
    "Python Software Foundation License": "PSF-2.0",
    "Mozilla Public License 2.0 (MPL 2.0)": "MPL-2.0",
}
"""Classifiers of packages that say one licence, by its SPDX identifier (https://spdx.org/licenses/)."""
_PAGEFIND = "Copyright 2022 CloudCannon"
"""As its makers publish it: its wheel brings no notice along."""


@dataclass(frozen=True, slots=True)
class Package:
    """A package as it is installed."""

    name: str
    version: str
    licence: str
    """An SPDX expression if the package has one, else its own words."""
    spdx: bool
    needs: tuple[str, ...]
    """The packages it needs, of those installed."""


@lru_cache(maxsize=1)
def packages() -> tuple[Package, ...]:
    """The program and every package it needs, by name; the program first. Empty where it is not installed as a package."""
    found: dict[str, Package] = {}
    waiting = [PROGRAM]
    while waiting:
        name = waiting.pop()
        installed = None if name in found else _installed(name)
        if installed is not None:
            found[name] = _package(name, installed)
            waiting += found[name].needs
    return tuple(sorted(found.values(), key=lambda one: (one.name != PROGRAM, one.name)))


def needed_directly() -> tuple[Package, ...]:
    """The packages that the program itself asks for."""
    direct = {name for one in packages() if one.name == PROGRAM for name in one.needs}
    return tuple(one for one in packages() if one.name in direct)


def notices(faces: Letterforms) -> str:
    """The licences of all that is served with the pages, for those who hand it on."""
    own = _OWN_LICENCE.read_text("utf-8").strip()
    parts = [
        ("The scripts and styles of these pages, which come with the program that made them, storymaths", own),
        ("The text search, Pagefind (MIT), in pagefind/", re.sub(r"Copyright \(c\).*", _PAGEFIND, own, count=1)),
    ]
    for package in sorted({package_of(faces.text), package_of(faces.child)}):
        face = package.removeprefix("fontpkg-").capitalize()
        changed = "cut down to the signs that are printed, and under another name"
        parts.append(
            (f"Letterforms made from {face} (OFL-1.1), in fonts/ and in print sheets: {changed}", _text_of(package))
        )
    return "\n\n".join(f"{title}\n{'=' * 72}\n{text}" for title, text in parts) + "\n"


def plain_name(name: str) -> str:
    """A package's name as indexes compare it (https://packaging.python.org/en/latest/specifications/name-normalization/)."""
    return re.sub(r"[-_.]+", "-", name).lower()


def _installed(name: str) -> Distribution | None:
    try:
        return distribution(name)
    except PackageNotFoundError:
        return None


def _package(name: str, installed: Distribution) -> Package:
    licence, spdx = _licence(installed)
    needs = (need for need in _needs(installed) if _installed(need) is not None)
    return Package(name, installed.version, licence, spdx, tuple(sorted(set(needs))))


def _needs(installed: Distribution) -> Iterator[str]:
    """Those it always needs: what an extra brings is asked for by name where it is wanted."""
    for line in installed.requires or ():
        name = _NAME.match(line)
        if name and "extra ==" not in line:
            yield plain_name(name.group())


def _licence(installed: Distribution) -> tuple[str, bool]:
    about = installed.metadata
    for expression in about.get_all("License-Expression", []):
        return expression, True
    classifiers = [one.rpartition(" :: ")[2] for one in about.get_all("Classifier", []) if one.startswith("License ::")]
    said = [*classifiers, *(one.strip() for one in about.get_all("License", []))]
    for words in said:
        if words in _SPDX or words in _SPDX.values():
            return _SPDX.get(words, words), True
    return next((words.splitlines()[0] for words in said if words), "it does not say"), False


def _text_of(package: str) -> str:
    """The licence that a package brings along."""
    for file in distribution(package).files or ():
        if re.fullmatch(r"(.*/)?(LICEN[CS]E|OFL)(\.\w+)?", str(file)):
            return file.read_text(encoding="utf-8").strip()
    raise RuntimeError(f"the package {package} brings no licence along: install storymaths again")
