"""What is to be got out and is not listed yet, with how many and for whom."""

from __future__ import annotations

from collections.abc import Iterator

from ..edits.edit import AddItem, Value
from .draft import Draft
from .proposal import Proposal
from .things import things_of


def propose_materials(draft: Draft) -> Iterator[Proposal]:
    """Each thing that the text, the activities or their sheets call for."""
    listed = {needed.item for needed in draft.fields.materials}
    for needed, reason in things_of(draft):
        if needed.item not in listed:
            value: dict[str, Value] = {"item": needed.item, "count": needed.count, "per": needed.per}
            yield Proposal("materials", AddItem(("materials",), value), f"{needed.item}: {reason}")
