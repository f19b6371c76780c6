"""“Did you mean …?”: the nearest known name to one that is not known."""

from __future__ import annotations

import difflib
from collections.abc import Iterable


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """A sentence to add to a message, with a space before it; empty when nothing is near."""
    by_lower = {candidate.lower(): candidate for candidate in known}
    near = difflib.get_close_matches(name.lower(), by_lower, n=1, cutoff=0.6)
    return f' Did you mean "{by_lower[near[0]]}"?' if near else ""
