"""The words of a page gathered into one string, with what is not a pupil's reading blanked out."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from ..model.prose import Loc, Passage, Prose

# Keys whose values are names, codes or directions to the adult rather than words of the lesson.
NOT_PROSE = frozenset(
    "kind status book item risk picture id isbn licence contact version rights rights_note objectives revisits "
    "concepts themes materials things models alone theme plural".split()
)
BODY: Loc = ("[body]",)
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
    gathered = _Gathered()
    gathered.take(raw, (), None)
    front = _SEPARATOR.join(gathered.texts)
    if any(mark in front for mark in _MARKS):
        front = _NOT_READ.sub(_blank, front)
    gathered.note(BODY, body, None)
    return Prose(_SEPARATOR.join((front, _NOT_READ.sub(_blank, body))), gathered.passages)


class _Gathered:
    """Texts found one after another, and where each starts in what they are joined to."""

    def __init__(self) -> None:
        self.texts: list[str] = []
        self.passages: list[Passage] = []
        self._at = 0

    def note(self, loc: Loc, text: str, year: int | None) -> None:
        """Adds a text."""
        self.passages.append(Passage(self._at, loc, year))
        self.texts.append(text)
        self._at += len(text) + len(_SEPARATOR)

    def take(self, value: Any, loc: Loc, year: int | None) -> None:
        """Adds every text in a value."""
        if value.__class__ is str:
            self.note(loc, value, year)
        elif value.__class__ is dict:
            for key, inner in value.items():
                if key not in NOT_PROSE:
                    self.take(inner, (*loc, key), _year_of(key) if loc == ("bends",) else year)
        elif value.__class__ is list:
            for index, inner in enumerate(value):
                self.take(inner, (*loc, index), year)


def _year_of(key: Any) -> int | None:
    return 0 if key == "Reception" else key if isinstance(key, int) else None
