"""Number sentences in running text: found among the words, read whole or left alone, and worked out exactly."""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from operator import attrgetter

from ..expression.grammar import Reader, Unreadable
from ..expression.number import exact
from ..expression.number_words import ONES, PART_OF, TENS
from ..expression.signs import PROSE
from ..expression.spoken import TWICE, read_spoken
from ..expression.tokens import Token, read_tokens
from ..expression.tree import quantity_of
from ..expression.truth import Verdict, judge
from ..model.prose import VULGAR
from ..model.quantity import Quantity
from .excuses import excuse
from .sentence_runs import Run, runs_of

_VALUE = (
    rf"[\s|(£−–-]*(?:[\d{''.join(VULGAR)}]|"
    rf"(?:an? |)(?:{'|'.join(sorted({*ONES, *TENS, *PART_OF, *TWICE, 'hundred', 'thousand', 'million', 'dozen'}))})\b)"
)
_WORD = rf"(?:is|are|makes?|leaves|gives|equals|comes to|same as|equal to|worth|equal)(?=\s{_VALUE})"
_RELATED = tuple(re.compile(pattern) for pattern in (rf"[=≠<>≤≥≈](?={_VALUE})", f" {_WORD}", f"\n{_WORD}"))
"""Where a relation stands before a number: looking only there is several times faster, and fastest for one letter."""
_ENDS = re.compile(r"\n\n|\u2028|(?<=[^\s+−×÷=≠<>≤≥≈][.!?])[\"”’')\]}*]*(?=\s)")
"""Where a sentence ends: at its mark, at the end of its paragraph, or at the end of a line that is broken on purpose."""
_WRONG_MARK = re.compile(r"\[([^\]\n]+)\]\{wrong\}")
_SIDE = r"\d+(?: [+−×] \d+)*"
_PLAIN = re.compile(
    rf"(?:(?<=[:;,.(“\"] )|(?<=[(“\"])|(?<=[Ss]o )|(?<=rite )|^){_SIDE}(?: = {_SIDE})+(?=[.,;:)”\"](?!\d)|$)"
)
"""A sum that is plainly whole: most are, and need no closer reading if they hold."""
_NEAR = 6


@dataclass(frozen=True, slots=True)
class NumberSentence:
    """A number sentence in a text: its words, where they start, and whether it is marked as a mistake."""

    text: str
    """As it stands there, each space or line end one space."""
    start: int
    marked_wrong: bool = False
    left_over: int | None = None
    tokens: tuple[Token, ...] = field(default=(), compare=False, repr=False)
    """Its pieces."""
    verdict: Verdict = field(default=Verdict(None), compare=False)
    """Whether it holds."""


@dataclass(frozen=True, slots=True)
class Unread:
    """A stretch of text with a relation between numbers that was left alone, and why, in a few words."""

    text: str
    start: int
    why: str


def find_number_sentences(text: str) -> tuple[NumberSentence, ...]:
    """The number sentences of a text that can be read whole; those with gaps or names are passed over."""
    return _read(text)[0]


def find_unread(text: str) -> tuple[Unread, ...]:
    """The stretches of a text with a relation between numbers that nobody has judged."""
    found, unread = _read(text)
    unclear = [Unread(s.text, s.start, s.verdict.why) for s in found if s.verdict.holds is None]
    return tuple(sorted((*unclear, *unread), key=lambda stretch: stretch.start))


@lru_cache(maxsize=8192)  # several rules read each page, one rule after another
def _read(text: str) -> tuple[tuple[NumberSentence, ...], tuple[Unread, ...]]:
    marked = [(mark.start(1), mark.end(1)) for mark in _WRONG_MARK.finditer(text)] if "{wrong}" in text else []
    found, unread = list[NumberSentence](), list[Unread]()
    for low, high, related in _stretches(text):
        words = text[low:high]
        if plain := _plain(words, low, related):
            found += plain
            continue
        tokens = read_spoken(words)
        runs = tuple(runs_of(words, tokens))
        for run in runs:
            if not run.why:
                start = low + run.tokens[0].start
                is_marked = any(a <= start < b for a, b in marked)
                found.append(_sentence(words, tokens, run, low, is_marked))
        unread += _unread(words, tokens, runs, low)
    return tuple(found), tuple(unread)


def _plain(words: str, low: int, related: Sequence[int]) -> list[NumberSentence]:
    """The number sentences of a stretch where each of its relations stands in a plain one that holds; else none."""
    found = []
    for plain in _PLAIN.finditer(words) if "÷" not in words else ():
        tokens = tuple(read_tokens(words, PROSE, start=plain.start(), end=plain.end()))
        found.append(NumberSentence(plain[0], low + plain.start(), False, None, tokens, judge(tokens)))
    covered = sum(one.start <= at < one.start + len(one.text) for one in found for at in related)
    all_hold = covered == len(related) and all(one.verdict.holds for one in found)
    return found if all_hold and "{" not in words else []


def _stretches(text: str) -> Iterator[tuple[int, int, list[int]]]:
    """Where sentences in which a number may follow a relation start and end, and where their relations stand."""
    end = 0
    spans = sorted(related.span() for pattern in _RELATED for related in pattern.finditer(text))
    starts = [low for low, _ in spans]
    for low, high in spans:
        if low >= end:
            block = text.rfind("\n\n", end, low)
            start = max(end, block + 2 if block >= 0 else end)
            for further in _ENDS.finditer(text, start, low + 1):
                start = further.end()
            after = _ENDS.search(text, high)
            end = after.end() if after else len(text)
            yield start, end, starts[bisect_left(starts, low) : bisect_left(starts, end)]


def _sentence(words: str, tokens: tuple[Token, ...], run: Run, low: int, is_marked: bool) -> NumberSentence:
    verdict = judge(run.tokens, run.left_over)
    start, end = run.tokens[0].start, run.tokens[-1].end
    if verdict.holds is False and not is_marked and (why := excuse(words, tokens, run)):
        verdict = Verdict(None, why)
    shown = " ".join(words[start:end].split())
    return NumberSentence(shown, low + start, is_marked, run.left_over, run.tokens, verdict)


def _unread(words: str, tokens: tuple[Token, ...], runs: tuple[Run, ...], low: int) -> Iterator[Unread]:
    """Each relation with numbers on both sides that no sentence took in."""
    last = -1
    for at, token in enumerate(tokens):
        if token.kind != "relation" or token.start < last:
            continue
        near = range(max(0, at - _NEAR), min(len(tokens), at + _NEAR))
        before = [place for place in near if place < at and tokens[place].kind == "number"]
        after = [place for place in near if place > at and tokens[place].kind == "number"]
        place = bisect_right(runs, at, key=attrgetter("first")) - 1
        run = runs[place] if place >= 0 and runs[place].first < at < runs[place].last else None
        if not before or not after or (run and not run.why):
            continue
        first, end = _whole_of(run, tokens) if run else (before[0], after[0])
        start, last = tokens[first].start, tokens[end].end
        why = run.why if run else _why(tokens[first : end + 1])
        yield Unread(" ".join(words[start:last].split()), low + start, why)


def _whole_of(run: Run, tokens: tuple[Token, ...]) -> tuple[int, int]:
    """The first and last piece of a run with the signs beside it, and what these join it to."""
    first, last = run.first, run.last
    while first and "sign" in (tokens[first].kind, tokens[first - 1].kind):
        first -= 1
    while last + 1 < len(tokens) and "sign" in (tokens[last].kind, tokens[last + 1].kind):
        last += 1
    return first, last


def _why(tokens: Sequence[Token]) -> str:
    """Why some pieces with a relation among them are in no run."""
    if any(token.kind in ("gap", "sign-gap", "digits") for token in tokens):
        return "it has a gap to fill"
    if any(token.kind == "other" and token.text[-1].isdigit() for token in tokens):
        return "it tells a time of day"
    word = next((token.text for token in tokens if token.kind == "word"), "")
    return f'"{word}" is no number' if word else "it cannot be read as a sum"


def marked_mistakes(text: str) -> Iterator[tuple[str, int]]:
    """What stands in ``[…]{wrong}`` marks, and where."""
    if "{wrong}" in text:
        for mark in _WRONG_MARK.finditer(text):
            yield mark.group(1), mark.start(1)


def is_true(sentence: NumberSentence) -> bool | None:
    """Whether it holds, exactly; None where it is not known what it says, or whether it says it."""
    return sentence.verdict.holds


def value_of(text: str) -> Quantity:
    """The worth of one side, such as ``3 × (2 + 4)``. Raises ``ValueError`` if it is not one."""
    reader = Reader(tuple(read_tokens(text, PROSE)))
    try:
        side = reader.sum()
        reader.end()
    except Unreadable as error:
        if error.amiss == "broken":
            raise ZeroDivisionError(text) from None
        raise ValueError(f"{text} is not a sum") from None
    return quantity_of(side)


__all__ = [
    "VULGAR", "NumberSentence", "Unread", "exact", "find_number_sentences", "find_unread", "is_true", "marked_mistakes",
    "value_of",
]  # fmt: skip
