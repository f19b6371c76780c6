"""A proposal: a change to a page, of which field, and why; or no change, where she has said otherwise."""

from __future__ import annotations

from dataclasses import dataclass

from ..edits.edit import Edit


@dataclass(frozen=True, slots=True)
class Proposal:
    """One value that is lacking. Where she has one that differs, ``edit`` is None and only the reason is told."""

    field: str
    """The field of the front matter, or ``preparation``."""
    edit: Edit | None
    reason: str
    """Why, in a short line."""
