"""``MANIFEST``: what is in a pack, with the SHA-256 of each file.

Its lines are those that ``sha256sum --check`` reads too, under a few that begin with ``#`` and say whose pack it is.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping
from dataclasses import dataclass

NAME = "MANIFEST"
LARGEST = 4_000_000
_OPENING = "# storymaths pack 1"
_SERIES = re.compile(r"# series ([a-z0-9-]+) (\d+\.\d+)")
_LINE = re.compile(r"([0-9a-f]{64})  (.+)")


class NoManifest(ValueError):
    """Text that is not the manifest of a pack; the reason is the message."""


@dataclass(frozen=True, slots=True)
class Manifest:
    """Whose pack it is, and the SHA-256 of each file but the manifest's own, by name."""

    series: str
    version: str
    sums: Mapping[str, str]


def sum_of(content: bytes) -> str:
    """The SHA-256 of a file, in hexadecimal."""
    return hashlib.sha256(content).hexdigest()


def compose(series: str, version: str, files: Mapping[str, bytes]) -> bytes:
    """The manifest of some files, in the order of their names."""
    lines = [
        _OPENING,
        f"# series {series} {version}",
        "# Check it with: storymaths verify, or sha256sum --check MANIFEST",
    ]
    lines += [f"{sum_of(files[name])}  {name}" for name in sorted(files)]
    return "".join(f"{line}\n" for line in lines).encode("utf-8")


def read(content: bytes) -> Manifest:
    """A manifest as it was written. Raises ``NoManifest``."""
    try:
        lines = content.decode("utf-8").split("\n")
    except UnicodeDecodeError:
        raise NoManifest("it is not text") from None
    said = _SERIES.fullmatch(lines[1]) if len(lines) > 1 else None
    if lines[0] != _OPENING or said is None:
        raise NoManifest("it does not begin as one does")
    sums: dict[str, str] = {}
    for number, line in enumerate(lines[2:], start=3):
        if not line or line.startswith("#"):
            continue
        match = _LINE.fullmatch(line)
        if match is None or match.group(2) in sums:
            raise NoManifest(f"its line {number} cannot be read")
        sums[match.group(2)] = match.group(1)
    return Manifest(said.group(1), said.group(2), sums)
