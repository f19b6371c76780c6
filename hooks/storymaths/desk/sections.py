"""The text of a page as the desk shows it: each section in turn, its words in boxes and its activities in forms."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ..model.body import Fence
from ..parse.body import read_body


@dataclass(frozen=True, slots=True)
class Part:
    """Some words of a section, or an activity; its lines are counted from 0 in the text, and the last is past its end."""

    first: int
    last: int
    text: str
    """Without the blank lines around it; of an activity, its data."""
    number: int | None = None
    """Of an activity, the first of the page being 0."""


@dataclass(frozen=True, slots=True)
class SectionParts:
    """A section: its name, empty for what stands above the first, and its parts in their order."""

    name: str
    parts: tuple[Part, ...]
    first: int
    last: int


def sections_of(body: str) -> list[SectionParts]:
    """The sections of the text under the front matter."""
    read, lines = read_body(body), body.split("\n")
    headings = [section.heading for section in read.sections]
    starts = [(0, 0, ""), *((at.line - 1, at.line, at.words) for at in headings), (len(lines), 0, "")]
    fences = list(enumerate(read.activities))
    return [
        SectionParts(name, tuple(_parts(lines, fences, inside, last, bool(name))), first, last)
        for (first, inside, name), (last, _, _) in pairwise(starts)
    ]


def _parts(
    lines: Sequence[str], fences: Sequence[tuple[int, Fence]], first: int, last: int, named: bool
) -> Iterator[Part]:
    """The parts between two lines. There is always a box before and after an activity, to write in."""
    at = first
    for number, fence in fences:
        if not first <= fence.line - 1 < last or fence.column != 1:  # one within a list stays among its words
            continue
        yield _words(lines, at, fence.line - 1)
        end = fence.line + fence.text.count("\n") + fence.closed
        yield Part(fence.line - 1, end, fence.text, number)
        at = end
    yield _words(lines, at, last)


def _words(lines: Sequence[str], first: int, last: int) -> Part:
    return Part(first, last, "\n".join(lines[first:last]).strip("\n"))


def with_words(body: str, section: int, part: int, words: str) -> tuple[str, str]:
    """The name of a section, and its text with one of its parts replaced; a part without words goes."""
    chosen, lines = sections_of(body)[section], body.split("\n")
    texts = ["\n".join(lines[one.first : one.last]).strip("\n") for one in chosen.parts]
    texts[part] = words.replace("\r\n", "\n").strip("\n")
    return chosen.name, "\n\n".join(text for text in texts if text.strip())


def with_activity(body: str, section: int, part: int, data: str) -> tuple[str, str]:
    """The same with an activity put behind one of its parts."""
    chosen, lines = sections_of(body)[section], body.split("\n")
    texts = ["\n".join(lines[one.first : one.last]).strip("\n") for one in chosen.parts]
    texts.insert(part + 1, f"```maths\n{data.rstrip()}\n```")
    return chosen.name, "\n\n".join(text for text in texts if text.strip())
