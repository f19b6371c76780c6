"""What an author names in a text instead of typing it, such as ``[[ram.mass]]``: found, printed, and led back to its place.

A name is ``[[who.fact]]``, several of them added or taken away, or ``[[activity: what]]``; after a colon stands how it is
printed. YAML would read the brackets as lists, so they are hidden from it, sign for sign, and places stay as they are.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from .body import Table

_FACT = r"[A-Za-z][\w-]*\.[A-Za-z]\w*"
NAME = re.compile(rf"\[\[((?:{_FACT}(?: [+−-] {_FACT})*(?:: [A-Za-z ]+)?|(?:[\w-]+/)?[A-Za-z][\w-]*: [A-Za-z ]+))\]\]")
LEFT = re.compile(r"\[\[([^\[\]\n]*)\]\](?!\()")
"""Whatever stands in such brackets and was not printed."""
NOT_WORKED_OUT = "could not be worked out, so it prints nothing."
NO_CAST = "This page is of no book, so there is no cast to name."
_HIDDEN = str.maketrans("[]:", "\ue0f1\ue0f2\ue0f3")
_SHOWN = str.maketrans("\ue0f1\ue0f2\ue0f3", "[]:")


@dataclass(frozen=True)
class Prints:
    """What the names of a page print, by the words between their brackets."""

    words: Mapping[str, str] = field(default_factory=dict)
    tables: Mapping[str, Table] = field(default_factory=dict)
    """What stands in the place of a name that has a paragraph to itself."""
    wrong: Mapping[str, tuple[str, str]] = field(default_factory=dict)
    """Why a name prints nothing, and what mends it."""

    def text(self, written: str) -> str:
        """A text with its names printed; what prints nothing stays as it is written."""
        if "[[" not in written:
            return written
        return NAME.sub(lambda match: self.words.get(match[1], match[0]), written)

    def body(self, written: str) -> str:
        """Markdown with its names printed, line for line; a name that is printed as a table is left for its reader."""
        return "\n".join(
            line if line.strip().removeprefix("[[").removesuffix("]]") in self.tables else self.text(line)
            for line in written.split("\n")
        )

    def value(self, written: Any) -> Any:
        """A value of YAML with its names printed: a number where a name that prints one is the whole of it."""
        if isinstance(written, str):
            text = self.text(written)
            return int(text) if text != written and NAME.fullmatch(written) and text.isdecimal() else text
        if isinstance(written, dict):
            return {key: self.value(inner) for key, inner in written.items()}
        return [self.value(inner) for inner in written] if isinstance(written, list) else written

    def position(self, written: str, at: int) -> int:
        """Where in a text as it is written something stands that stands at ``at`` when it is printed."""
        moved = 0
        for match in NAME.finditer(written):
            words = self.words.get(match[1], match[0])
            start = match.start() + moved
            if at < start:
                break
            if at < start + len(words):
                return match.start()
            moved += len(words) - len(match[0])
        return at - moved


PRINTS_NOTHING = Prints()


def hide(text: str) -> str:
    """A text of which YAML sees no bracket or colon of a name."""
    return NAME.sub(lambda match: match[0].translate(_HIDDEN), text) if "[[" in text else text


def reveal(text: str) -> str:
    """What was hidden, as it is written."""
    return text.translate(_SHOWN)


def names_in(text: str) -> Iterator[str]:
    """The words between the brackets of each name."""
    return (match[1] for match in NAME.finditer(text))
