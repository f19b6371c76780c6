"""“Did you mean …?”: the nearest known name to one that is not known."""

from __future__ import annotations

import difflib
from collections.abc import Iterable


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """A sentence to add to a message, with a space before it; empty when nothing is near."""
    near = nearest(name, known)
    return f' Did you mean "{near}"?' if near else ""


def nearest(name: str, known: Iterable[str]) -> str:
    """The known name that is nearest; empty when none is near. Capital letters make no difference."""
    by_lower = {candidate.lower(): candidate for candidate in known}
    near = difflib.get_close_matches(name.lower(), by_lower, n=1, cutoff=0.6)
    return by_lower[near[0]] if near else ""
