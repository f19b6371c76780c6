"""A line of an author's words into HTML: emphasis, links, gaps to fill, mistakes made on purpose."""

from __future__ import annotations

import re
from html import escape

from markupsafe import Markup

from .body import markdown_to_html
from .spoken import GAP_HTML

_NEEDS_MARKDOWN = re.compile(r"[*`\[<&]|^\s*(?:[-+>#]|\d+\.)|\n")
_GAP = re.compile(r"_{3,}")
_MARKED_WRONG = re.compile(r"\[([^\]\n]*)\]\{wrong\}")
_PARAGRAPH = re.compile(r"\A<p>(.*)</p>\Z", re.DOTALL)


def plain(text: str) -> str:
    """The words of a line alone, for data: no tags, no Markdown, one space between words; a gap stays ``___``."""
    if not _NEEDS_MARKDOWN.search(text):
        return " ".join(text.split())
    return " ".join(Markup(_PARAGRAPH.sub(r"\1", markdown_to_html(text, ""))).striptags().split())


def inline(text: str, here: str = "") -> Markup:
    """One line or paragraph, without a paragraph's tags around it. ``here`` is the source it stands in."""
    if _NEEDS_MARKDOWN.search(text):
        html = markdown_to_html(text, here)
        match = _PARAGRAPH.match(html)
        if match and "<p>" not in match.group(1):
            html = match.group(1)
    else:
        # Most lines hold no Markdown at all; this is some forty times faster.
        html = escape(text, quote=False)
    return Markup(_GAP.sub(GAP_HTML, html))


def asked(text: str, here: str = "") -> Markup:
    """As ``inline``, for a class that is to find out for itself which number sentence is wrong: none is marked."""
    return inline(_MARKED_WRONG.sub(r"\1", text), here)
