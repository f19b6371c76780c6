"""A form of words that is made ready when it is first looked for: most pages need few, and each takes milliseconds."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cached_property


class Form:
    """A pattern, and how it is looked for."""

    def __init__(self, pattern: str) -> None:
        self._pattern = pattern

    @cached_property
    def _ready(self) -> re.Pattern[str]:
        return re.compile(self._pattern)

    def finditer(self, text: str, start: int = 0, end: int | None = None) -> Iterator[re.Match[str]]:
        """Every place where it stands between two places."""
        return self._ready.finditer(text, start, len(text) if end is None else end)

    def match(self, text: str, start: int = 0) -> re.Match[str] | None:
        """The form at a place."""
        return self._ready.match(text, start)

    def search(self, text: str, start: int = 0, end: int | None = None) -> re.Match[str] | None:
        """The first place where it stands between two places."""
        return self._ready.search(text, start, len(text) if end is None else end)

    def sub(self, by: str, text: str) -> str:
        """The text with something else wherever it stands."""
        return self._ready.sub(by, text)

    def fullmatch(self, text: str) -> re.Match[str] | None:
        """The form as the whole of a text."""
        return self._ready.fullmatch(text)

    def pairs(self, text: str) -> list[tuple[str, str]]:
        """The words of the form's two groups at every place where it stands; none is no words."""
        return [(match[1] or "", match[2] or "") for match in self.finditer(text)]
