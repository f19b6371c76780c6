"""Places in a row as they are written: 1st, 2nd, 3rd."""

from __future__ import annotations


def ordinal(place: int) -> str:
    """``1st``, ``12th``, ``1,203rd``."""
    ending = "th" if place % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")
    return f"{place:,}{ending}"
