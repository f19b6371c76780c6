"""Where a project is: the nearest folder, from here upward, that holds ``content`` and ``site_data``."""

from __future__ import annotations

from pathlib import Path


def find_root(start: Path) -> Path | None:
    """The project's root at or above ``start``, or None."""
    for folder in (start.resolve(), *start.resolve().parents):
        if (folder / "content").is_dir() and (folder / "site_data").is_dir():
            return folder
    return None
