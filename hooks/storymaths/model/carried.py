"""Where the things are that the program carries besides its code: theme, scripts and reference data."""

from __future__ import annotations

from importlib.resources import files
from pathlib import Path
from typing import Literal

Carried = Literal["theme", "scripts", "site_data"]
_PACKAGE = Path(str(files("storymaths")))


def carried(name: Carried) -> Path:
    """Its place: inside the package where that was installed, else in the repository the program is run from."""
    inside = _PACKAGE / "carried" / name
    beside = _PACKAGE.parents[1] if name == "site_data" else _PACKAGE.parent
    return inside if inside.exists() else beside / name
