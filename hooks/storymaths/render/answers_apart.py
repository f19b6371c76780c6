"""Folded answers gathered on a page of their own, for print only: a fold does not open on paper."""

from __future__ import annotations

import re
from html import escape

_LANDMARK = re.compile(
    r'<(h[2-4])\b[^>]*>(.*?)</\1>|<div class="(version[^"]*)"|<details class="answers?"[^>]*>(.*?)</details>', re.DOTALL
)
_SUMMARY = re.compile(r"<summary>.*?</summary>", re.DOTALL)
_ID = re.compile(r'\s(?:id|aria-labelledby)="[^"]*"')


def answers_apart(html: str, title: str) -> str:
    """The answers of a page under the headings they stand beneath; empty when it has none.

    Screens hide the section, and print hides the folds it repeats. Of an activity's versions for several years only
    the page's own is printed, and so are only its answers. Names that may stand once on a page are left out.
    """
    answers: list[str] = []
    heading, printed = "", True
    for found in _LANDMARK.finditer(html):
        if found.group(1):
            heading, printed = found.group(2), True
        elif found.group(3):
            printed = "own" in found.group(3).split()
        elif printed:
            told = _SUMMARY.sub("", found.group(4), count=1)
            answers.append(_ID.sub("", f"<li><h3>{heading}</h3>{told}</li>"))
    if not answers:
        return ""
    return (
        '<section class="answers-apart" aria-label="Answers" data-pagefind-ignore>'
        f"<h2>Answers: {escape(title, quote=False)}</h2>"
        f"<ol>{''.join(answers)}</ol></section>"
    )
