"""What a task and its answers make a pupil meet, read off their own words: numbers, signs, units, vocabulary."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from fractions import Fraction
from functools import lru_cache

from ..model.activity import Answer, Demands, Task
from ..parse.number_sentence import exact, find_number_sentences

_WHOLE = r"(?:\d{1,3}(?:,\d{3})+|\d+)"
_NUMBER = re.compile(rf"(?<![\w.,/:])(?:£)?(−)?({_WHOLE} \d+/\d+|\d+/\d+|{_WHOLE}(?:\.\d+)?)(?![\d/:])")
_SIGN = re.compile(r"[+−=<>×÷≠£%²³]|°C|(?<=\d)p\b|(?<=\d)\.(?=\d)")
_UNIT = re.compile(
    r"(?<=\d)[ ]?(mm³|cm³|km³|cm²|m²|m³|mm|cm|km|kg|ml|litres?|m|g|l)(?![\w²³])|\b(hours?|minutes?|seconds|(?<=\d )second)\b"
)
_AS_LISTED = {"litre": "litres", "hour": "hours", "minute": "minutes", "second": "seconds"}


def demands_met(
    task: Task,
    answers: Sequence[Answer],
    vocabulary: Iterable[str] = (),
    tables: Iterable[int] = (),
) -> Demands:
    """What is met in the task and every answer. ``vocabulary`` are words to look for; ``tables`` are leaned on."""
    seen = [task.ask, *task.shows, *task.lines, *_cells(task)]
    told = seen + [text for answer in answers for text in (answer.says, answer.worked)]
    whole = "\n".join(told)
    lower = whole.lower()
    return Demands(
        numbers=tuple(sorted(set(_numbers(whole)))),
        calculated=tuple(sorted(set(_calculated(whole)))),
        symbols=frozenset(match.group() for match in _SIGN.finditer(whole)),
        units=frozenset(_AS_LISTED.get(unit, unit) for pair in _UNIT.findall(whole) if (unit := pair[0] or pair[1])),
        words=tuple(word for word in vocabulary if word in lower and _stands_alone(word, lower)),
        tables=frozenset(tables),
    )


def _cells(task: Task) -> list[str]:
    if task.table is None:
        return []
    return [*task.table.columns, *(cell for row in task.table.rows for cell in row)]


def _stands_alone(word: str, text: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(word)}(?!\w)", text) is not None


def _numbers(text: str) -> Iterable[Fraction]:
    for match in _NUMBER.finditer(text):
        yield from _worth(match.group(2), match.group(1) is not None)


# A search for a version reads the same few numbers thousands of times.
@lru_cache(maxsize=4096)
def _worth(written: str, below_zero: bool) -> tuple[Fraction, ...]:
    """What a number is worth, and the part it is of; nothing where it is worth nothing."""
    if re.search(r"/0+$", written):
        return ()  # an author's own words may hold anything
    worth = Fraction(exact(written)) * (-1 if below_zero else 1)
    over, line, under = written.rpartition(" ")[2].partition("/")
    if line and Fraction(int(over), int(under)).denominator != int(under):
        # 3/6 is worth a half, and yet the sixths are there to be understood.
        return worth, Fraction(1, int(under))
    return (worth,)


def _calculated(text: str) -> Iterable[Fraction]:
    for sentence in find_number_sentences(text):
        if "+" in sentence.text or "−" in sentence.text:
            yield from _numbers(sentence.text)
