"""Which signs a session introduces, and which it uses as known."""

from __future__ import annotations

from collections.abc import Iterator

from ..check.adult_matters import joins_a_size
from ..edits.edit import AddItem
from .draft import Draft
from .proposal import Proposal

_NONE_TO_TEACH = frozenset("²³")


def propose_signs(draft: Draft) -> Iterator[Proposal]:
    """Each sign that stands in the lesson and in neither list."""
    symbols, year = draft.fields.symbols, draft.fields.year
    of_the_year = draft.reference.symbols_by(year) | {"≠"}
    known = draft.reference.symbols_by(year - 1) | {sign for one in draft.taught_before for sign in one.symbols.new}
    for sign in dict.fromkeys(_in_lesson(draft)):
        if sign in (*symbols.new, *symbols.again) or sign not in of_the_year:
            continue
        if sign in known:
            yield Proposal("symbols.again", AddItem(("symbols", "again"), sign), f"{sign} stands in it, and is known.")
        else:
            reason = f"{sign} stands in it, and no session before it introduces it."
            yield Proposal("symbols.new", AddItem(("symbols", "new"), sign), reason)


def _in_lesson(draft: Draft) -> Iterator[str]:
    prose = draft.page.prose
    for at, sign in prose.signs:
        if prose.part_at(at).year is None and sign not in _NONE_TO_TEACH and not joins_a_size(prose.text, at):
            yield sign
    for activity in draft.activities:
        if done := activity.worked.solution:
            yield from (sign for line in done.task.lines for sign in str(line) if sign in "+−×÷=<>≠")
