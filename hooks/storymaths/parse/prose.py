"""The words of a page gathered into one string, with what is not a pupil's reading blanked out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from ..model.prose import BODY, Loc, Passage, Prose

# Keys whose values are names, codes or directions to the adult rather than words of the lesson.
NOT_PROSE = frozenset(
    "kind status book item risk picture id isbn licence contact version rights rights_note objectives revisits "
    "concepts themes materials things models alone theme plural changed".split()
)
_SEPARATOR = "\n\n"
_MARKS = ("](", "<", "`", "{")
_NOT_READ = re.compile(
    r"^(?P<fence>```|~~~).*?^(?P=fence)[^\n]*$"  # fenced data
    r"|<!--.*?-->|</?[A-Za-z][^>\n]*>"  # raw HTML
    r"|\]\([^)\n]*\)"  # where a link goes
    r"|`[^`\n]+`"  # code
    r"|\{[.#:][^}\n]*\}"  # attributes
    r"|^[ ]*\d+\.(?=[ ])",  # list numbers
    re.MULTILINE | re.DOTALL,
)


def _blank(match: re.Match[str]) -> str:
    # Same length, so that positions hold.
    return re.sub(r"[^\n]", " ", match.group())


def gather(raw: Mapping[str, Any], body: str) -> Prose:
    """All prose of a document: every text of its front matter, then its body."""
    texts: list[str] = []
    _take(raw, texts)
    front = _SEPARATOR.join(texts)
    if any(mark in front for mark in _MARKS):
        front = _NOT_READ.sub(_blank, front)
    # Which text stands where is seldom asked: a clean page never pays for it.
    return Prose(_SEPARATOR.join((front, _NOT_READ.sub(_blank, body))), lambda: _passages(raw))


def _take(value: Any, texts: list[str]) -> None:
    if value.__class__ is str:
        texts.append(value)
    elif value.__class__ is dict:
        for key, inner in value.items():
            if key not in NOT_PROSE:
                _take(inner, texts)
    elif value.__class__ is list:
        for inner in value:
            _take(inner, texts)


def _passages(raw: Mapping[str, Any]) -> list[Passage]:
    """Where each text starts in what they are joined to, in the order ``_take`` finds them, and then the body."""
    found: list[Passage] = []
    at = _pass(raw, (), None, 0, found)
    found.append(Passage(max(at, len(_SEPARATOR)), BODY, None))
    return found


def _pass(value: Any, loc: Loc, year: int | None, at: int, found: list[Passage]) -> int:
    """Notes the texts of a value that starts at ``at``, and gives where the next one starts."""
    if value.__class__ is str:
        found.append(Passage(at, loc, year))
        return at + len(value) + len(_SEPARATOR)
    if value.__class__ is dict:
        for key, inner in value.items():
            if key not in NOT_PROSE:
                at = _pass(inner, (*loc, key), _year_of(key) if loc == ("bends",) else year, at, found)
    elif value.__class__ is list:
        for index, inner in enumerate(value):
            at = _pass(inner, (*loc, index), year, at, found)
    return at


def _year_of(key: Any) -> int | None:
    return 0 if key == "Reception" else key if isinstance(key, int) else None
