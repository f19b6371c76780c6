"""The kinds of page named in a sentence."""

from __future__ import annotations

from collections.abc import Iterable


def listed(names: Iterable[str]) -> str:
    """Names with commas between them, and ``and`` before the last: ``book, session and home activity``."""
    *first, last = names
    return f"{', '.join(first)} and {last}" if first else last
