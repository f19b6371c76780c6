"""How hard a text is to read: the Flesch–Kincaid grade."""

from __future__ import annotations

import re

_SENTENCE_END = re.compile(r"[.!?]+(?:[\"”’')\]]*)(?:\s+|$)|\n{2,}")
_WORD = re.compile(r"[A-Za-z]+(?:[’'-][A-Za-z]+)*")
_VOWELS = re.compile(r"[aeiouy]+")
_SILENT_END = re.compile(r"(?:[^laeiouy]e|[^aeiouydt]ed|[^aeiouycgszx]es)$")
_MARKS = re.compile(r"^[#>*+\-\s|]+|[*_`#>|]|\]\([^)]*\)|\{[^}]*\}", re.MULTILINE)


def reading_grade(text: str) -> float | None:
    """The Flesch–Kincaid grade of a text in Markdown; None if it holds no words.

    Source: J. P. Kincaid and others, *Derivation of New Readability Formulas*, US Navy Research Branch
    Report 8-75 (1975): 0.39 × words per sentence + 11.8 × syllables per word − 15.59. Syllables are
    counted by rule, so a grade may differ by about one from tools with a dictionary.
    """
    plain = _MARKS.sub(" ", text)
    words = _WORD.findall(plain)
    if not words:
        return None
    sentences = sum(1 for part in _SENTENCE_END.split(plain) if _WORD.search(part))
    return 0.39 * len(words) / sentences + 11.8 * sum(map(syllables, words)) / len(words) - 15.59


def count_words(text: str) -> int:
    """How many words a text in Markdown has."""
    return len(_WORD.findall(_MARKS.sub(" ", text)))


def syllables(word: str) -> int:
    """About how many syllables a word has; at least one. A hyphened word is the sum of its parts."""
    return sum(_syllables(part) for part in re.split(r"[-’']", word.lower()) if len(part) > 1) or 1


def _syllables(part: str) -> int:
    count = len(_VOWELS.findall(part))
    if count > 1 and _SILENT_END.search(part):
        count -= 1
    count += len(re.findall(r"i[ao](?!n)|[^t]ia|eo|ua[^r]|uou", part)) if len(part) > 4 else 0
    return max(count, 1)
