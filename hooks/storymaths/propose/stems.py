"""Sentences to finish, from what the activities have: a line of sums in words, or the sentence of their kind."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from ..edits.edit import AddItem
from ..expression.number import NUMBER
from .draft import Draft
from .proposal import Proposal

_GAP = "___"
_TO_WRITE = "Write a sentence with ___ for the children to finish."
"""The words of the starter, which `check` asks her to replace."""
_SIGN = re.compile(r" ?([+−×÷=<>≠]) ?")


def propose_stems(draft: Draft) -> Iterator[Proposal]:
    """Up to three sentences, where there is none."""
    if "stem_sentences" not in draft.made_up and not draft.lacks("stem_sentences"):
        return
    known = draft.reference.proposals
    found: dict[str, str] = {}
    for activity in draft.activities:
        worked = activity.worked
        if worked.kind is None or worked.fields is None or worked.solution is None:
            continue
        kind, task = worked.kind.name, worked.fields.task_name
        usual = known.stems.get(kind, {}).get(task, ())
        first = worked.solution.answers[:1]
        for stem in usual or filter(None, (_in_words(answer.worked, known.signs) for answer in first)):
            found.setdefault(stem, worked.fields.title)
    if not found:
        reason = "A session has one, and none of its activities gives any."
        yield Proposal("stem_sentences", AddItem(("stem_sentences",), _TO_WRITE), reason)
    for stem, title in list(found.items())[: known.most_stems]:
        yield Proposal("stem_sentences", AddItem(("stem_sentences",), stem), f"It says what “{title}” finds.")


def _in_words(worked: str, says: Mapping[str, str]) -> str:
    """The first sum of a line that shows why, with gaps for its numbers and words for its signs."""
    sentence = re.split(r"[.;:](?:\s|$)|, (?:because|so) ", worked)[0]
    if not re.search(r"[=<>≠]", sentence) or re.search(r"[A-Za-z]", sentence):
        return ""
    gapped = re.sub(NUMBER, _GAP, sentence)
    return " ".join(_SIGN.sub(lambda sign: f" {says[sign[1]]} ", gapped).split()) + "."
