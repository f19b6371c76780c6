"""Marks the first time each word of the word bank stands on a page, and leads to what it means."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from ..model.address import slug
from ..model.concept import Word
from ..model.prose import words_of

# What must not be touched: whole elements, or a tag.
_KEPT = re.compile(
    r'<(ul|p|dl|table|section) class="(?:objectives|facts|glance-facts|covers|to-print|usual-care)[^>]*>.*?</\1>|'
    r'<span class="sum.*?</span>|'
    r"<(a|h[1-6]|button|summary|dfn|code|svg|script|style|th|legend|label|nav)\b.*?</\2>|<[^>]*>",
    re.DOTALL,
)
_FIRST_WORD = re.compile(r"[a-z]+")


@dataclass(frozen=True)
class WordFinder:
    """Finds the words of a word bank in running text, in any of their forms, the longest form first."""

    by_form: Mapping[str, Word | None]
    """None for a phrase of everyday talk, of which no word is meant."""
    by_first: Mapping[str, Sequence[str]]
    """Forms by their first run of letters: most pages hold few of those, so few forms need looking for."""

    @classmethod
    def of(cls, words: Iterable[Word]) -> WordFinder:
        """A finder for some words; everyday and ambiguous words are left alone."""
        meant = [word for word in words if not (word.everyday or word.ambiguous)]
        by_form: dict[str, Word | None] = {phrase.lower(): None for word in meant for phrase in word.not_in}
        by_form |= {form.lower(): word for word in meant for form in (word.word, *word.also)}
        by_first: dict[str, list[str]] = {}
        for form in by_form:
            first = _FIRST_WORD.search(form)
            by_first.setdefault(first.group() if first else form, []).append(form)
        return cls(by_form, by_first)

    def mark(self, html: str) -> tuple[str, list[Word]]:
        """The HTML with links on the first use of each word, and the words found, in order."""
        # What must not be touched as blanks, letter for letter.
        text = _KEPT.sub(lambda kept: " " * len(kept[0]), html).lower().replace("\n", " ")
        if len(text) != len(html):  # a rare capital that grows when made small
            return html, []
        found: dict[str, Word] = {}
        parts, end, present = [], 0, words_of(text)
        for start, form in self._uses(text, present):
            word = self.by_form[form]
            if word and word.word not in found and word.is_meant_among(present):
                found[word.word] = word
                shown = html[start : start + len(form)]
                parts += [html[end:start], f'<a class="word" href="#word-{slug(word.word)}">{shown}</a>']
                end = start + len(form)
        return "".join((*parts, html[end:])), list(found.values())

    def _uses(self, text: str, present: frozenset[str]) -> Iterator[tuple[int, str]]:
        """Where forms stand, in order; at one place the longest, others left out."""
        plain = text.encode("ascii", "replace")  # byte for letter, and several times as fast to look through
        forms = (form for first in present & self.by_first.keys() for form in self.by_first[first])
        uses = sorted(
            (at, -len(form), form) for form in forms for at in _places(form.encode("ascii", "replace"), plain)
        )
        free = 0
        for at, length, form in uses:
            if at >= free:
                yield at, form
                free = at - length


def _places(form: bytes, text: bytes) -> Iterator[int]:
    """Where a form stands as whole words."""
    at = text.find(form)
    while at >= 0:
        end = at + len(form)
        if not (text[at - 1 : at].isalnum() or text[end : end + 1].isalnum()):
            yield at
        at = text.find(form, end)
