"""The slips that activities think likely, as misconceptions with what to try left to the author."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..edits.edit import AddItem
from .draft import Draft
from .proposal import Proposal

_OF_LINE = re.compile(r"^Line \d+\. ")
_TRY = "Say what to try at once."
"""The words of the starter, which `check` asks her to replace."""


def propose_misconceptions(draft: Draft) -> Iterator[Proposal]:
    """One for each slip, where there is no misconception yet."""
    if "misconceptions" not in draft.made_up and not draft.lacks("misconceptions"):
        return
    told = set[str]()
    for activity in draft.activities:
        solution, fields = activity.worked.solution, activity.worked.fields
        if solution is None or fields is None or (slip := solution.likely_error) is None or slip.does in told:
            continue
        told.add(slip.does)
        does = _OF_LINE.sub("", slip.does)
        shows = f"The child {does[:1].lower()}{does[1:]}"
        says = f"{slip.gives[:1].upper()}{slip.gives[1:].rstrip('.')}."
        value = {"says": says, "shows": shows, "try": _TRY}
        yield Proposal(
            "misconceptions", AddItem(("misconceptions",), value), f"It is the likely slip in “{fields.title}”."
        )
