"""Marks the first time each word of the word bank stands on a page, and leads to what it means."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from ..model.address import slug
from ..model.concept import Word

# Text between tags, with whole elements that must not be touched taken in one bite.
_PIECE = re.compile(
    r'<(ul|p|dl) class="(?:objectives|facts|glance-facts)[^"]*">.*?</\1>|<span class="sum.*?</span>|'
    r"<(a|h1|h2|h3|h4|button|summary|dfn|code|svg|script|style|th|legend|label|nav)\b.*?</\2>|<[^>]*>|[^<]+",
    re.DOTALL,
)


@dataclass(frozen=True)
class WordFinder:
    """Finds the words of a word bank in running text, in any of their forms, longest first."""

    pattern: re.Pattern[str]
    by_form: Mapping[str, Word]

    @classmethod
    def of(cls, words: Iterable[Word]) -> WordFinder:
        """A finder for some words; everyday and ambiguous words are left alone."""
        by_form = {
            form.lower(): word
            for word in words
            if not (word.everyday or word.ambiguous)
            for form in (word.word, *word.also)
        }
        return cls(re.compile(rf"\b(?:{_by_opening(by_form)})\b", re.IGNORECASE), by_form)

    def mark(self, html: str) -> tuple[str, list[Word]]:
        """The HTML with links on the first use of each word, and the words found, in order."""
        found: dict[str, Word] = {}

        def link(match: re.Match[str]) -> str:
            word = self.by_form[match.group().lower()]
            if word.word in found:
                return match.group()
            found[word.word] = word
            return f'<a class="word" href="#word-{slug(word.word)}">{match.group()}</a>'

        def piece(match: re.Match[str]) -> str:
            text = match.group()
            return text if text[0] == "<" else self.pattern.sub(link, text)

        return _PIECE.sub(piece, html), list(found.values())


def _by_opening(forms: Iterable[str]) -> str:
    """A pattern for any of some forms, longest first. Sorted by their first letters it is ten times as fast."""
    endings: dict[str, list[str]] = {}
    for form in sorted(forms, key=len, reverse=True):
        endings.setdefault(form[:2], []).append(re.escape(form[2:]))
    return "|".join(f"{re.escape(opening)}(?:{'|'.join(rest)})" for opening, rest in endings.items())
