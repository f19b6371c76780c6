"""Minutes that add up: of the session from its steps, of steps without any from what is left."""

from __future__ import annotations

from collections.abc import Iterator

from ..edits.edit import SetValue
from ..model.body import Fence, Paragraph, words_of_runs
from .draft import Draft
from .proposal import Proposal


def propose_minutes(draft: Draft) -> Iterator[Proposal]:
    """The minutes of the session, or of steps that have none; where she has all and they differ, that is told."""
    listed = draft.raw.get("steps")
    steps = [step for step in listed if isinstance(step, dict)] if isinstance(listed, list) else []
    given = [step.get("minutes") for step in steps]
    known = [minutes for minutes in given if isinstance(minutes, int)]
    whole = draft.raw.get("minutes")
    if steps and len(known) == len(steps):
        if not isinstance(whole, int):
            yield Proposal("minutes", SetValue(("minutes",), sum(known)), f"The steps come to {sum(known)} minutes.")
        elif whole != sum(known):
            yield Proposal("minutes", None, f"The steps come to {sum(known)} minutes; the session says {whole}.")
    elif steps and isinstance(whole, int):
        yield from _of_steps(
            draft, [at for at, minutes in enumerate(given) if not isinstance(minutes, int)], whole - sum(known)
        )


def _of_steps(draft: Draft, lacking: list[int], left: int) -> Iterator[Proposal]:
    least = draft.reference.proposals.steps.least
    if left < least * len(lacking):
        yield Proposal("steps", None, f"{left} minutes are left for {len(lacking)} steps.")
        return
    weights = [_weight(draft, at) for at in lacking]
    spare = left - least * len(lacking)
    minutes = [least + spare * weight // sum(weights) for weight in weights]
    minutes[weights.index(max(weights))] += left - sum(minutes)
    for at, one in zip(lacking, minutes, strict=True):
        reason = f"{left} minutes are left for the steps without any, shared out by how much is said and done in each."
        yield Proposal("steps", SetValue(("steps", at, "minutes"), one), reason)


def _weight(draft: Draft, at: int) -> int:
    """How much there is in the section of a step, in words."""
    sections = draft.page.content.sections
    if at >= len(sections):
        return 1
    blocks = sections[at].blocks
    words = sum(len(words_of_runs(block.runs).split()) for block in blocks if isinstance(block, Paragraph))
    activities = sum(isinstance(block, Fence) and block.is_activity for block in blocks)
    said = " ".join(words_of_runs(block.runs) for block in blocks if isinstance(block, Paragraph)).lower()
    stops = sum(len(reading.stops) for reading in draft.fields.reads) if "read page" in said and at <= 1 else 0
    usual = draft.reference.proposals.steps
    return max(1, words) + usual.activity * activities + usual.stop * stops
