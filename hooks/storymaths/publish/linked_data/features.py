"""Which accessibility features a page has, in the words of the W3C group's vocabulary, read off the page itself.

Source of the words: *Schema.org Accessibility Properties for Discoverability Vocabulary*, W3C Accessibility
Discoverability Vocabulary for Schema.org Community Group. Only what is true of the page, and tested, is claimed.
"""

from __future__ import annotations

import re

EVERY_PAGE = ("structuralNavigation", "displayTransformability", "unlocked")
"""Headings go down a step at a time; sizes and colours follow the reader's own; nothing is locked."""
_PICTURE_WITH_WORDS = re.compile(r'<img [^>]*\balt="[^"]')
_FIGURE_WITH_WORDS = '<div class="activity-figure" role="img"'
_MATHS_WITH_WORDS = ('<span class="sum"', '<span class="sum long"')


def features(html: str) -> list[str]:
    """The features of a page by its HTML; pictures without words for them are refused before it comes to this."""
    found = list(EVERY_PAGE)
    if _FIGURE_WITH_WORDS in html or _PICTURE_WITH_WORDS.search(html):
        found.append("alternativeText")
    if any(sign in html for sign in _MATHS_WITH_WORDS):
        found.append("describedMath")
    return found
