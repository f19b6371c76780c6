"""Quotation marks that open and close, for straight ones as they are typed."""

from __future__ import annotations

import re

_OPENS = re.compile(r"(^|[\s(\[“‘–—])([\"'])")


def curl(text: str, before: str = "") -> str:
    """A text with curled quotation marks; ``before`` is the sign that stands before it, if any does."""
    if '"' not in text and "'" not in text:
        return text
    text = _OPENS.sub(_open, before + text)[len(before) :]
    return text.replace('"', "”").replace("'", "’")


def _open(match: re.Match[str]) -> str:
    return match[1] + ("“" if match[2] == '"' else "‘")
