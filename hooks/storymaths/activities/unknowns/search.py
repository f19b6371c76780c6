"""Every choice of numbers that makes all lines true: unknown after unknown, each line tried as soon as it can be."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...expression.gapped import GappedSentence, NotASentence, read_gapped, sentences_of
from ..kind import Unsolvable
from ..number_sentence.gap_filling import MOST_TRIED, is_filled_truly
from .tasks import Numbers, UnknownsTask

_GAP = "___"


@dataclass(frozen=True, slots=True)
class Line:
    """A line with a gap wherever an unknown stands, and which stands in each."""

    text: str
    sentence: GappedSentence
    names: tuple[str, ...]

    def gaps(self, numbers: Numbers) -> list[int]:
        """What stands in its gaps."""
        return [numbers[name] for name in self.names]


def read_lines(task: UnknownsTask) -> list[Line]:
    """Raises ``Unsolvable`` for a line that cannot be read, and for an unknown that stands in none."""
    lines = [_read(text, at, task.unknowns) for at, text in enumerate(task.lines)]
    for index, name in enumerate(task.unknowns):
        if not any(name in line.names for line in lines):
            raise Unsolvable(("unknowns", index), f'"{name}" stands in none of the lines.', "leave it out, or use it.")
    stranger = next((name for name in task.wanted if name not in task.unknowns), None)
    if stranger:
        message = f'"{stranger}" is asked for, and is none of the unknowns.'
        raise Unsolvable(("wanted",), message, f"use some of {', '.join(task.unknowns)}.")
    return lines


def _read(text: str, at: int, unknowns: Sequence[str]) -> Line:
    any_of = "|".join(sorted(unknowns, key=len, reverse=True))
    times = re.sub(rf"(?<=\d)[ ]?(?=(?:{any_of})\b)", " × ", text)  # 3t is 3 × t
    name = re.compile(rf"\b(?:{any_of})\b")
    try:
        tokens = read_gapped(name.sub(_GAP, times), {})
        [sentence] = list(sentences_of(tokens, ()))
    except (NotASentence, ValueError) as error:
        said = str(error).replace("one of the cast", "one of the unknowns")
        why = said if isinstance(error, NotASentence) else "a sign is missing"
        message = f'"{text[:60]}" cannot be read as a number sentence: {why}.'
        fix = f"write it like 3 × {unknowns[0]} = 96; other words than the unknowns cannot stand in it."
        raise Unsolvable(("lines", at), message, fix, "activity-broken") from None
    names = tuple(name.findall(times))
    if len(names) != len(sentence.gaps):
        message = f'"{text[:60]}" has a gap in it, and every unknown here has a name.'
        raise Unsolvable(("lines", at), message, f"write one of {', '.join(unknowns)} in its place.", "activity-broken")
    return Line(text.strip().replace("-", "−"), sentence, names)


def find_all(task: UnknownsTask, lines: Sequence[Line]) -> Iterator[Numbers]:
    """Every way, the first unknown rising, then the second. Raises ``Unsolvable`` where too much would be tried."""
    allowed = task.gaps
    if isinstance(allowed, str):
        raise Unsolvable(
            ("gaps",), "No cast stands in the gaps here.", "write a range such as 0-100.", "activity-broken"
        )
    order = _in_order(task.unknowns, lines)
    tried = [0]

    def go_on(numbers: dict[str, int]) -> Iterator[Numbers]:
        if len(numbers) == len(order):
            yield {name: numbers[name] for name in task.unknowns}
            return
        name = order[len(numbers)]
        now = [line for line in lines if name in line.names and set(line.names) <= {*numbers, name}]
        for number in allowed:
            tried[0] += 1
            if tried[0] > MOST_TRIED:
                message = "There are more numbers to try than can be looked at."
                raise Unsolvable(("gaps",), message, "allow fewer numbers, such as gaps: 0-20.")
            there = {**numbers, name: number}
            if all(is_filled_truly(line.sentence, line.gaps(there)) for line in now):
                yield from go_on(there)

    yield from sorted(go_on({}), key=lambda numbers: [numbers[name] for name in task.unknowns])


def _in_order(unknowns: Sequence[str], lines: Sequence[Line]) -> list[str]:
    """The unknowns so that lines can be tried early: those of the line with the fewest that are still open first."""
    order: list[str] = []
    while len(order) < len(unknowns):
        waiting = [[name for name in unknowns if name in line.names and name not in order] for line in lines]
        order += next(names for names in sorted(waiting, key=len) if names)
    return order
