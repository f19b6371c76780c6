"""What keeps a file from being read as a page: bytes that are no text, and text too big or too tangled to work on.

Markdown's cost grows with the square of some things, so each is bounded: what is refused here is never converted.
The bounds stand in ``site_data/limits.yaml``, some five times what any page of lessons needs.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Any

from ..model.document import Document, Fault, Loc
from ..model.page_fields import PageFields
from ..model.problem import Place
from ..model.reference import FileLimits
from .letters import misleading

_TANGLES = {"[": "square brackets", "]": "square brackets", "<": "signs of <"}
_MARK = r"[ \t]*(?:>|[-*+][ \t]|\d+[.)][ \t])"
_GAP = re.compile(r"\n(?:[ \t]*\n)+")
_MOST_DIGITS = 40
_DIGITS_NEAR = re.compile("[0-9,.]{4}")
_DIGITS = re.compile(rf"[0-9][0-9,.]{{{_MOST_DIGITS}}}")
_ACTIVITY = re.compile(r"[ ]*(?:`{3,}|~{3,})[ ]*maths\b")
_SPACES_A_LEVEL = 4


def page_text(path: str, data: bytes, limits: FileLimits) -> str | list[Fault]:
    """The text of a page, or why it cannot be used, each fault with its place."""
    if len(data) > limits.page_bytes:
        return [too_large(path, len(data), limits.page_bytes)]
    try:
        text = data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8", "replace").removeprefix("\ufeff").replace("\r\n", "\n")
        return [Fault("file", Place.of(path, before, len(before)), "", "a byte here is not plain UTF-8 text")]
    return list(_tangles(path, text, limits)) or text


def nested_in_fields(page: Document[PageFields], limits: FileLimits) -> Iterator[Fault]:
    """A text of the front matter with lists inside lists: there they need not begin a line of the file."""
    nested = _nested(limits.nested)
    if nested.search("\n" + "\n".join(page.reader.front)):
        found = next((loc for loc, text in page.texts if nested.search(f"\n{text}")), ())
        yield Fault("file", page.place(*found), "", _too_deep(limits))


def faults_in_fields(page: Document[PageFields], limits: FileLimits) -> Iterator[Fault]:
    """Texts of the front matter that run on for too long, or spell out by ``\\u`` a sign that misleads."""
    for loc, text in page.texts:
        if len(text) > limits.paragraph_characters:
            yield Fault("file", page.place(*loc), "", too_long(limits))
        yield from (Fault("letter", page.place(*loc), "", detail) for _, detail in misleading(text))


def page_numbers_too_large(page: Document[PageFields], limits: FileLimits) -> Iterator[Fault]:
    """Pages that no picture book has: what is made for each page of a book is made for all of these."""
    for loc, value in _named(page.raw, ()):
        last = str(value).replace("–", "-").rpartition("-")[2].strip()
        if last.isdecimal() and int(last) > limits.book_pages:
            detail = f"it names page {int(last):,} of a book, and {limits.book_pages:,} is the last there may be"
            yield Fault("file", page.place(*loc), "", detail)


def _named(value: Any, loc: Loc) -> Iterator[tuple[Loc, Any]]:
    """Everything after a ``page:`` or ``pages:``, and where it stands."""
    for key, inner in value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ():
        if key in ("page", "pages"):
            yield (*loc, key), inner
        elif isinstance(inner, (dict, list)):
            yield from _named(inner, (*loc, key))


def too_large(path: str, size: int, most: int) -> Fault:
    """A file above its limit."""
    return Fault("file", Place(path), "", f"it is {size:,} bytes long, and {most:,} is the most for a file of its sort")


def too_long(limits: FileLimits) -> str:
    """What is wrong with a text, in front matter or body, that runs on without a break."""
    return f"this text runs on for more than {limits.paragraph_characters:,} characters without a break"


def _too_deep(limits: FileLimits) -> str:
    return f"lists or quotations stand inside each other more than {limits.nested} deep"


def _tangles(path: str, text: str, limits: FileLimits) -> Iterator[Fault]:
    for sign, name in _TANGLES.items():
        if text.count(sign) > limits.brackets:
            at = [match.start() for match in re.finditer(re.escape(sign), text)][limits.brackets]
            yield Fault("file", Place.of(path, text, at), "", f"it has more than {limits.brackets:,} {name}")
    # A number as long as that covers four of these places in a row; looking there first is many times faster.
    if _DIGITS_NEAR.search(text[:: _MOST_DIGITS // 4]) and (digits := _DIGITS.search(text)):
        detail = f"it holds a number of more than {_MOST_DIGITS} digits"
        yield Fault("file", Place.of(path, text, digits.start()), "", detail)
    for at in _long_paragraphs(text, limits.paragraph_characters):
        yield Fault("file", Place.of(path, text, at), "", too_long(limits))
    nested = _nested(limits.nested).search(text)
    if nested:
        yield Fault("file", Place.of(path, text, nested.start() + 1), "", _too_deep(limits))


def _long_paragraphs(text: str, most: int) -> Iterator[int]:
    """Where paragraphs of the body longer than ``most`` start. An activity is data, with bounds of its own."""
    start = max(0, text.find("\n---", 3)) if text.startswith("---") else 0
    if len(text) - start <= most:
        return  # nearly all pages are
    for gap in (*_GAP.finditer(text, start), None):
        end = gap.start() if gap else len(text)
        if end - start > most and not _ACTIVITY.match(text, start):
            yield start
        start = gap.end() if gap else end


@lru_cache(maxsize=1)
def _nested(most: int) -> re.Pattern[str]:
    """Finds the line end above what is nested too deep: more marks in a row, or further in, than so many levels."""
    return re.compile(rf"\n(?:(?:{_MARK}){{{most + 1}}}|[ \t]{{{_SPACES_A_LEVEL * (most + 1)}}}{_MARK})")
