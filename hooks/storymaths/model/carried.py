"""Where the things are that the program carries besides its code: theme, scripts, reference data, and its frame."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Literal

Carried = Literal["theme", "scripts", "site_data", "site_build.py", "mkdocs.yml"]
_PACKAGE = Path(str(files("storymaths")))
_IN_THE_REPOSITORY = {"site_data": _PACKAGE.parents[1], "mkdocs.yml": _PACKAGE.parents[1]}
"""All else stands beside the package there."""


def carried(name: Carried) -> Path:
    """Its place: inside the package where that was installed, else in the repository the program is run from."""
    inside = _PACKAGE / "carried" / name
    return inside if inside.exists() else _IN_THE_REPOSITORY.get(name, _PACKAGE.parent) / name
