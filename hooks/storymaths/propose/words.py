"""Which words of the word bank a session brings in new, and which it uses as known."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from ..edits.edit import AddItem
from ..model.concept import Word
from .draft import Draft
from .proposal import Proposal

_TWICE = 2


def propose_words(draft: Draft) -> Iterator[Proposal]:
    """Each word that stands in the lesson and in neither list: new where its year is the session's and nobody taught it."""
    session = draft.fields
    taught = {word for one in draft.earlier for word in (*one.words.new, *one.words.again)}
    stressed = _stressed(draft)
    for word, times in _words_in(draft).items():
        name = word.word
        if name in (*session.words.new, *session.words.again) or word.year > session.year:
            continue
        if name not in taught and word.year == session.year and not word.everyday:
            reason = "It stands in the text, is of this year, and no session before it teaches it."
            yield Proposal("words.new", AddItem(("words", "new"), name), f"“{name}”: {reason}")
        elif (name in taught or name in stressed or word.concept in draft.concepts) and times >= _TWICE:
            why = "an earlier session has it" if name in taught else "it is of an earlier year"
            reason = f"“{name}” stands in the text, and {why}."
            yield Proposal("words.again", AddItem(("words", "again"), name), reason)


def _words_in(draft: Draft) -> Counter[Word]:
    """The words of the bank that stand in the lesson, and how often; the longest form counts at a place."""
    forms = {
        form.lower(): word for word in draft.reference.words.values() for form in (word.word, *word.also)
    }
    pattern = re.compile(
        rf"(?<![\w-])(?:{'|'.join(map(re.escape, sorted(forms, key=len, reverse=True)))})(?![\w-])"
    )
    prose, found = draft.page.prose, Counter[Word]()
    for match in pattern.finditer(prose.lowered.replace("’", "'")):
        if prose.part_at(match.start()).year is None:
            found[forms[match.group()]] += 1
    return found


def _stressed(draft: Draft) -> frozenset[str]:
    """The words that stand in bold or in italics in the body."""
    runs = (run for run in draft.page.content.runs if any(mark.name in ("strong", "emphasis") for mark in run.marks))
    return frozenset(run.text.strip(" .,:").lower() for run in runs)
