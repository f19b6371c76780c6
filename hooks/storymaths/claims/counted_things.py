"""What a book's record says there is so many of: the ninety-six stairs, all four beds, counted the same on every page.

It reads a number of two or more before the things of the record, with two words between them at most. It leaves some of
them (three of the beds, the first two, two more), so many in each, what is made or tried with others (draw five beds),
what is supposed, denied or a child's, what makes a task easier or harder, and bends. Source: the book's own record.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property

from ..model.book import Counted
from ..model.prose import Prose
from .form import Form
from .number_words import NUMBER_IN_WORDS, number_in_words
from .sentences import Sentences, leaves_open

_BEFORE = Form(
    rf"(?<![\w£−/.,:+×÷=-])(?:(?P<ahead>[a-z’']+)[ *_]+)?(?P<count>\d+|(?<![\w-]){NUMBER_IN_WORDS})"
    r"(?P<between>(?: [*_]*(?!(?:and|or|of|to|in|on|at|by|from|as|with|for|the|an?|is|are|was|were|has|have|had|into|more|"
    r"fewer|less|other|extra|such|than|then|each|half|times)\b)[a-z’'-]+){0,2}) [*_]*$"
)
_PART = frozenset("of first last next another other every step page but half each times".split())
"""Words before a number that make it another thing than all there are."""
_EACH = Form(r"(?:s’|’)? (?:each|apiece|fewer|less|more|at a time|at once|(?:in|on|to|for|from|by) (?:each|every|a))\b")
_INVENTS = Form(
    r"\b(?:draws?|drawing|makes?|making|builds?|puts?|uses?|using|try|tries|lays?|cuts?|folds?|takes?|gives?|writes?|another day"
    r"|next time|imagine|choose|chooses|invent|invents|begin|start with)\b"
)
_OTHERS = frozenset(("easier", "harder", "if_easy", "if_hard"))
"""Fields with tasks in other numbers."""
_KNOWN = frozenset("the all these those both his her their our its same".split())
"""Words before a number of things that are known."""
_REACH = 60


class CountedThings:
    """The things a book's record counts, as sentences speak of them."""

    def __init__(self, counted: Sequence[Counted]) -> None:
        self._counts: Mapping[str, frozenset[int]] = {each.things.lower(): each.counts for each in counted}

    @cached_property
    def _words(self) -> frozenset[str]:
        return frozenset(things.split()[-1] for things in self._counts)

    def find(self, prose: Prose, sentences: Sentences) -> Iterator[tuple[int, int, str]]:
        """Each number of things that is none of the record's: where it starts and ends, and what the book counts."""
        if self._words.isdisjoint(prose.words):
            return
        for things, counts in self._counts.items():
            for at in _places(things, prose.lowered):
                ahead = prose.lowered[max(0, at - _REACH) : at].replace("\n", " ")
                match = _BEFORE.search(ahead)
                if match is None or match["ahead"] in _PART or _EACH.match(prose.lowered, at + len(things)):
                    continue
                start = at - len(ahead) + match.start("count")
                if _worth(match["count"]) not in counts | {0, 1} and _is_told(
                    prose, sentences, (start, at + len(things)), known=match["ahead"] in _KNOWN
                ):
                    yield start, at + len(things), f"the book counts {_either(counts)} {things}"


def _is_told(prose: Prose, sentences: Sentences, span: tuple[int, int], *, known: bool) -> bool:
    """Whether what stands there is told or asked of the story's own things; ``known`` ones are not made or tried."""
    start, end = span
    begins, sentence = sentences.sentence(sentences.number_at(start))
    told, rest = sentence[: end - begins], sentence[end - begins :].rstrip("\"”’')* ?")
    if prose.part_at(start).year is not None or leaves_open(told) or leaves_open(rest, after=True):
        return False
    if not known and (_INVENTS.search(told) or not _OTHERS.isdisjoint(prose.passage_at(start).loc)):
        return False
    return "counts" not in prose.passage_at(start).loc and sentences.is_meant(start, end)


def _places(things: str, lowered: str) -> Iterator[int]:
    at, long = lowered.find(things), len(things)
    while at >= 0:
        if not (lowered[at - 1 : at].isalnum() or lowered[at + long : at + long + 1].isalnum()):
            yield at
        at = lowered.find(things, at + long)


def _either(counts: frozenset[int]) -> str:
    *most, last = map(str, sorted(counts))
    return f"{', '.join(most)} or {last}" if most else last


def _worth(text: str) -> int:
    return int(text) if text.isdigit() else number_in_words(text)
