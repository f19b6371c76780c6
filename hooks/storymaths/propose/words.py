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
"""A word of everyday talk counts as one of the lesson where it stands so often."""


def propose_words(draft: Draft) -> Iterator[Proposal]:
    """Each word that stands in the lesson and in neither list.

    New is what she stresses, or what is of this year and of the session's concepts; again what is known and of them.
    """
    session = draft.fields
    here = {*session.words.new, *session.words.again}
    found, stressed = _words_in(draft), _words_stressed(draft)
    new = [word for word in found if word.word not in here and _is_new(draft, word, stressed)]
    for word in new:
        how = "is stressed in the text" if _is_stressed(word, stressed) else "stands in the lesson"
        reason = f"“{word.word}” {how}, and no session before it teaches it."
        yield Proposal("words.new", AddItem(("words", "new"), word.word), reason)
    known = [word for word, times in found.items() if word not in new and _is_known(draft, word, times)]
    for word in dict.fromkeys((*known, *_words_for_signs(draft))):
        if word.word not in here and word not in new:
            why = "an earlier session has it" if word.word in _words_taught(draft) else "it is known by then"
            reason = f"“{word.word}” stands in the lesson or is how a sign is read, and {why}."
            yield Proposal("words.again", AddItem(("words", "again"), word.word), reason)


def _words_taught(draft: Draft) -> frozenset[str]:
    return frozenset(word for one in draft.taught_before for word in (*one.words.new, *one.words.again))


def _is_new(draft: Draft, word: Word, stressed: frozenset[str]) -> bool:
    if word.everyday or word.year > draft.fields.year or word.word in _words_taught(draft):
        return False
    if _is_stressed(word, stressed):
        return True
    return not stressed and word.year == draft.fields.year and word.concept in draft.concepts


def _is_stressed(word: Word, stressed: frozenset[str]) -> bool:
    return not {word.word.lower(), *(form.lower() for form in word.also)}.isdisjoint(stressed)


def _is_known(draft: Draft, word: Word, times: int) -> bool:
    """Whether a word is known and of the session's concepts; beside a list of hers, an earlier session must have it."""
    if word.concept not in draft.concepts or word.year > draft.fields.year:
        return False
    if word.everyday:
        return times >= _TWICE and draft.is_open("words", "again")
    return word.word in _words_taught(draft) or (word.year < draft.fields.year and draft.is_open("words", "again"))


def _words_for_signs(draft: Draft) -> Iterator[Word]:
    """The words by which the signs of the lesson are read, where a session before has them."""
    signs = {sign for _, sign in draft.page.prose.signs}
    for sign, says in draft.reference.proposals.signs.items():
        for name in (says, says.removeprefix("is ")):
            if sign in signs and name in _words_taught(draft) and name in draft.reference.words:
                yield draft.reference.words[name]


def _words_in(draft: Draft) -> Counter[Word]:
    """The words of the bank that stand in the lesson, and how often; the longest form counts at a place."""
    words = draft.reference.words.values()
    forms: dict[str, Word | None] = {phrase.lower(): None for word in words for phrase in word.not_in}
    forms |= {form.lower(): word for word in words for form in (word.word, *word.also)}
    pattern = re.compile(rf"(?<![\w-])(?:{'|'.join(map(re.escape, sorted(forms, key=len, reverse=True)))})(?![\w-])")
    prose, found = draft.page.prose, Counter[Word]()
    for match in pattern.finditer(prose.lowered.replace("’", "'")):
        word = forms[match.group()]
        if word and prose.part_at(match.start()).year is None and word.is_meant_among(prose.words):
            found[word] += 1
    return found


def _words_stressed(draft: Draft) -> frozenset[str]:
    """The words that stand in bold or in italics in the body."""
    runs = (run for run in draft.page.content.runs if any(mark.name in ("strong", "emphasis") for mark in run.marks))
    return frozenset(run.text.strip(" .,:").lower() for run in runs)
