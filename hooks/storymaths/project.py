"""Where a project is: the nearest folder, from here upward, that holds ``mkdocs.yml`` and ``content``."""

from __future__ import annotations

from pathlib import Path


def find_root(start: Path) -> Path | None:
    """The project's root at or above ``start``, or None."""
    for folder in (start.resolve(), *start.resolve().parents):
        if (folder / "mkdocs.yml").is_file() and (folder / "content").is_dir():
            return folder
    return None
