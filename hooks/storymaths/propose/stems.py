"""Sentences to finish, from what the activities have: those of their kind, or one of their lines in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..edits.edit import AddItem, SetValue
from ..expression.number import read_number
from ..model.activity import Line
from ..parse.starter_words import starter_words
from .draft import Draft
from .proposal import Proposal

_GAP = "___"
_FIELD = "stem_sentences"


def propose_stems(draft: Draft) -> Iterator[Proposal]:
    """A few sentences, where there is none but that of the starter, which the first takes the place of."""
    there = draft.raw.get(_FIELD) or []
    unwritten = isinstance(there, list) and len(there) == 1 and there[0] in starter_words("session")
    if not (unwritten or draft.lacks(_FIELD)):
        return
    found = _find_stems(draft)
    for at, (stem, title) in enumerate(list(found.items())[: draft.reference.proposals.most_stems]):
        edit = SetValue((_FIELD, 0), stem) if unwritten and not at else AddItem((_FIELD,), stem)
        yield Proposal(_FIELD, edit, f"It says what “{title}” finds.")


def _find_stems(draft: Draft) -> Mapping[str, str]:
    """Each sentence, and the title of the first activity that gives it."""
    known = draft.reference.proposals
    found: dict[str, str] = {}
    for activity in draft.activities:
        worked = activity.worked
        if worked.kind is None or worked.fields is None or worked.solution is None:
            continue
        usual = known.stems.get(worked.kind.name, {}).get(worked.fields.task_name, ())
        lines = worked.solution.task.lines[:1]
        for stem in usual or filter(None, (_in_words(line, known.signs) for line in lines)):
            found.setdefault(stem, worked.fields.title)
    return found


def _in_words(line: Line, says: Mapping[str, str]) -> str:
    """A line of numbers and signs, with gaps for its numbers and words for its signs; empty for any other line."""
    parts = str(line).split()
    if not any(part in says for part in parts):
        return ""
    if not all(part in says or part == _GAP or read_number(part) is not None for part in parts):
        return ""
    return " ".join(says.get(part, _GAP) for part in parts) + "."
