"""Lists of numbers in words and data, and one that is another of the same book but for one number.

It reads four numbers in figures or more with commas between them. It leaves lists that go up or down in one step, which
are counts, if all five or more but one inside do not; lists of another length; and what is asked, supposed, or a child's.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from ..model.book import Book
from ..model.prose import Prose
from .form import Form
from .sentences import Sentences

Numbers = tuple[int, ...]

_N = r"\d+(?![\w/%°-]|[.:]\d|,\d)"
_LIST = Form(rf"{_N}(?:(?:,? and |, ){_N}){{3,40}}(?! ?[+−×÷=<>≠|])")
_NO_LIST_AFTER = frozenset("£−/.,:+×÷=<>≠|-_")
"""Signs before a number that make it part of something else; looking back at them first would be many times as slow."""
_COUNT = 5
_THREE = Form(r"\d, \d+, \d")
_IN_DATA = Form(r"\[(?:\d+, ?){3,40}\d+\]")
_FIGURES = Form(r"\d+")


class Listed(NamedTuple):
    """A list in prose: where it starts, its words, and its numbers."""

    start: int
    words: str
    numbers: Numbers


def lists_in(prose: Prose) -> Iterator[Listed]:
    """The lists of the class's own numbers in a page's words."""
    if not _THREE.search(prose.text):
        return
    text = prose.text.replace("\n", " ")
    for match in _LIST.finditer(text):
        before = text[match.start() - 1 : match.start()]
        if not (before.isalnum() or before in _NO_LIST_AFTER) and prose.part_at(match.start()).year is None:
            yield Listed(match.start(), match.group(), _numbers(match.group()))


def is_stated(prose: Prose, listed: Listed) -> bool:
    """Whether a list is said plainly, and not asked, supposed or a child's."""
    return Sentences(prose).states(listed.start, listed.start + len(listed.words))


def lists_in_data(written: str) -> Iterator[Numbers]:
    """The lists of an activity, as its author wrote it."""
    return (_numbers(match.group()) for match in _IN_DATA.finditer(written))


def lists_of_cast(book: Book) -> Iterator[Numbers]:
    """What the cast has of each fact: as it is listed, and from either end."""
    for fact in book.facts:
        values = [character.facts.get(fact) for character in book.cast]
        have = [value for value in values if isinstance(value, int) and not isinstance(value, bool)]
        yield from (tuple(have), tuple(sorted(have)), tuple(sorted(have, reverse=True)))


def nearly(numbers: Numbers, others: Iterable[Numbers]) -> Numbers | None:
    """One of the other lists that it is but for one number; none for a list that keeps one step."""
    if _keeps_a_step(numbers):
        return None
    return next((other for other in others if _differ_once(numbers, other)), None)


def missed_step(numbers: Numbers) -> tuple[int, int] | None:
    """The one number inside a count of five or more that is off its step, and the one that keeps it; None where all keep it."""
    if len(numbers) < _COUNT:
        return None
    steps = [b - a for a, b in pairwise(numbers)]
    step = max(steps, key=steps.count)
    off = [at for at, each in enumerate(steps) if each != step]
    if step and len(off) == 2 and off[1] == off[0] + 1 and steps[off[0]] + steps[off[1]] == 2 * step:
        return numbers[off[1]], numbers[off[0]] + step
    return None


def _differ_once(one: Numbers, other: Numbers) -> bool:
    return len(one) == len(other) and sum(a != b for a, b in zip(one, other, strict=True)) == 1


def _keeps_a_step(numbers: Sequence[int]) -> bool:
    return len({b - a for a, b in pairwise(numbers)}) == 1


def _numbers(text: str) -> Numbers:
    return tuple(int(match.group()) for match in _FIGURES.finditer(text))
