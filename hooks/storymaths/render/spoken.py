"""Maths in the text of a page, shown as it is written and named for those who hear it.

``6 + 4 = 7 + 3`` is heard as "6 add 4 equals 7 add 3", ``3/4`` as "three quarters", a gap as "blank". Screen
readers differ in which signs they pass over in silence, and some take ``3/4`` for a date.
"""

from __future__ import annotations

import re
from html import escape, unescape

from ..expression.signs import AMOUNT
from .amounts_in_words import VULGARS, in_words

GAP_HTML = '<span class="gap" role="img" aria-label="blank"></span>'
"""A gap to fill, by itself."""

# Not the finder of number sentences that are checked: that one passes over gaps, which a listener needs most.
_TERM = rf"(?:\([ ]*)*(?:−[ ]?)?(?:\([ ]*)*(?:{AMOUNT}|_{{3,}})(?:[ ]*\))*"
_MATHS = re.compile(
    rf"(?<![\w.,/]){_TERM}(?:[ \n]*(?:[+−×÷=≠<>]|\bof\b)[ \n]*{_TERM})*(?:[ ]r[ ]\d+\b)?(?![\w/])|[≠−×÷<>]"
)
_WORTH_NAMING = re.compile(rf"[+−×÷=≠<>{VULGARS}]|\d/\d|_{{3}}")
_REFERENCE = re.compile(r"\d{4,}/\d+|\d+/(?!1000$)\d{4,}")
"""A number over a number that is no fraction: a regulation or a school year."""
_LONGEST_UNBROKEN = 24
"""Signs that still fit a phone's line, so that a sum is not cut in two."""
_GAP = re.compile(r"_{3,}")
_KEPT = re.compile(r"<(svg|script|style|code|option|title)\b.*?</\1>|<span[^>]*\brole=\"img\".*?</span>", re.DOTALL)
"""What must not be touched: no words for people in it, or a name already."""
_TEXT = re.compile(
    rf">(?:[^<&_/+−×÷=≠{VULGARS}]++|&(?![lg]t;)|_(?!__)|/(?!\d))*+(?:[+−×÷=≠{VULGARS}]|/\d|&[lg]t;|___)[^<]*"
)
"""Text with a sign in it, from the end of a tag on. Other text and tags are never caught: each call costs."""


def speak(html: str) -> str:
    """A page's HTML with each piece of maths in its text named. What has a name already is left alone."""
    html = ">" + html.replace(GAP_HTML, "___")
    parts, end = [], 0
    for kept in _KEPT.finditer(html):
        parts += [_TEXT.sub(_with_names, html[end : kept.start()]), kept.group()[:-1]]
        end = kept.end() - 1
    return "".join([*parts, _TEXT.sub(_with_names, html[end:])])[1:]


def _with_names(match: re.Match[str]) -> str:
    text, parts, end = unescape(match.group()[1:]), [">"], 0
    for found in _MATHS.finditer(text):
        if _WORTH_NAMING.search(found.group()) and not _REFERENCE.fullmatch(found.group()):
            parts += [escape(text[end : found.start()], quote=False), _named(found.group())]
            end = found.end()
    return "".join([*parts, escape(text[end:], quote=False)])


def _named(maths: str) -> str:
    if _GAP.fullmatch(maths):
        return GAP_HTML
    seen = _GAP.sub('<i class="gap"></i>', escape(maths, quote=False))
    kind = "sum long" if len(maths) > _LONGEST_UNBROKEN else "sum"
    return f'<span class="{kind}" role="img" aria-label="{in_words(maths)}">{seen}</span>'
