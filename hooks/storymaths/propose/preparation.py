"""How long it takes to get a session ready for a class: what is to be fetched, counted out, printed, cut and written on."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..edits.edit import SetSection
from ..model.body import Paragraph, words_of_runs
from ..model.material import PRINTED
from ..model.session import Needed
from .draft import Draft
from .proposal import Proposal
from .things import things_of

_SAID = re.compile(r"\b(\d+) minutes\b")
_TO_FIVE = 5
_SELDOM_COUNTED = 2
"""A thing of which each has fewer than so many is given out, and not counted out."""


def propose_preparation(draft: Draft) -> Iterator[Proposal]:
    """A paragraph that says how long, where none does; where she says another time by far, that is told."""
    minutes = minutes_to_prepare(draft)
    opening = " ".join(words_of_runs(b.runs) for b in draft.page.content.opening if isinstance(b, Paragraph))
    if "materials" not in draft.raw and not opening and not draft.activities:
        return  # hardly begun
    said = _SAID.search(opening)
    children = draft.reference.limits.class_size
    if said is None:
        text = "".join(draft.page.body.partition("\n## ")[0]).strip()
        lead = f"**Before the lesson.** *For {children}, about {minutes} minutes.*"
        text = (
            text.replace("**Before the lesson.**", lead, 1) if "**Before the lesson.**" in text else f"{lead}\n\n{text}"
        )
        reason = f"What is to be fetched, counted out, printed, cut and written on takes about {minutes} minutes."
        yield Proposal("preparation", SetSection("", text.strip()), reason)
    elif not minutes / 2 <= int(said[1]) <= minutes * 2:
        reason = f"Getting ready is worked out as {minutes} minutes for {children}; the text says {said[1]}."
        yield Proposal("preparation", None, reason)


def minutes_to_prepare(draft: Draft) -> int:
    """To the next five minutes, for a class of the usual size."""
    seconds = draft.reference.proposals.getting_ready
    needed = draft.fields.materials or [one for one, _ in things_of(draft)]
    children, group = draft.reference.limits.class_size, draft.fields.group_size
    opening = " ".join(words_of_runs(b.runs) for b in draft.page.content.opening if isinstance(b, Paragraph)).lower()
    made_before = {one.item for session in draft.earlier for one in session.materials}
    whole = 0
    for one in needed:
        whole += seconds.fetch
        if one.item in made_before:
            continue
        pieces = one.for_class(children, group)
        if one.item in PRINTED:
            whole += seconds.print * pieces
        elif one.count >= _SELDOM_COUNTED:
            whole += seconds.count_out * pieces
        name = _last_word(draft, one)
        if name in opening:
            whole += seconds.cut * pieces * bool(re.search(rf"\bcut\b[^.]*{re.escape(name)}", opening))
            whole += seconds.label * pieces * bool(re.search(rf"\bwrite\b[^.]*{re.escape(name)}", opening))
    return max(_TO_FIVE, -(-whole // (60 * _TO_FIVE)) * _TO_FIVE)


def _last_word(draft: Draft, needed: Needed) -> str:
    material = draft.reference.materials.get(needed.item)
    return material.name.rpartition(" ")[2].lower() if material else needed.item
