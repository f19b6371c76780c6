"""The slips that activities think likely, as misconceptions: a child's words, and what to try, are left to the author."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..edits.edit import AddItem
from .draft import Draft
from .proposal import Proposal

_OF_LINE = re.compile(r"^Line \d+\. ")
_SAYS, _SHOWS, _TRY = "Write the wrong idea in a child's words.", "Say what it shows.", "Say what to try at once."
"""The words of the starter, which `check` asks her to replace."""


def propose_misconceptions(draft: Draft) -> Iterator[Proposal]:
    """One for each slip, where there is no misconception yet; where no activity has a slip, one to be written."""
    if "misconceptions" not in draft.made_up and not draft.lacks("misconceptions"):
        return
    slips: dict[str, str] = {}
    for activity in draft.activities:
        solution, fields = activity.worked.solution, activity.worked.fields
        if solution is not None and fields is not None and (slip := solution.likely_error) is not None:
            does = _OF_LINE.sub("", slip.does)
            shows = f"The child {does[:1].lower()}{does[1:]}"
            slips.setdefault(shows, f"It is the likely slip in “{fields.title}”, and gives: {slip.gives}")
    for shows, reason in (
        slips or {_SHOWS: "A session has one, and none of its activities has a likely slip."}
    ).items():
        yield Proposal(
            "misconceptions", AddItem(("misconceptions",), {"says": _SAYS, "shows": shows, "try": _TRY}), reason
        )
