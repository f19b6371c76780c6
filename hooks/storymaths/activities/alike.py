"""Other numbers for sentences: each as large and as round as the one it stands for, equals equal, every sum still true."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

NUMBER = re.compile(r"\d[\d,]*(?:\.\d+)?")
_SUMS = re.compile(r"[\d+−= ]+")
_TERM = re.compile(r"([+−]?) ?(\d+)")
_STEPS = 2_000
_ROUNDS = 24

Linear = Mapping[int, int]
"""How often each number counts in a sum that comes to nought."""


def numbers_in(text: str) -> list[int]:
    """The whole numbers written in a text, in order."""
    return [int(found) for found in NUMBER.findall(text.replace(",", "")) if "." not in found]


def as_large(number: int) -> Sequence[int]:
    """The numbers of its size and roundness: ones, teens, whole tens, and so on; nought stands for itself."""
    if number == 0:
        return (0,)
    if number < 10:
        return range(max(1, number // 2), 10)
    if 10 < number < 20:
        return range(11, 20)
    size = 10 ** (len(str(number)) - 1)
    step = next(10**zeros for zeros in range(len(str(number)), -1, -1) if number % 10**zeros == 0)
    found = [one for one in range(size, 10 * size, step) if one % (10 * step) or step == size]
    return [one for one in found if one > 20] if size == 10 and step == 1 else found


def are_alike(old: Sequence[int], new: Sequence[int]) -> bool:
    """Whether new numbers stand for old ones in the same places: as large, in the same order, equals equal."""
    if len(old) != len(new):
        return False
    stands_for = dict(zip(old, new, strict=True))
    if any(
        stands_for[before] != after or after not in as_large(before) for before, after in zip(old, new, strict=True)
    ):
        return False
    return all(stands_for[low] < stands_for[high] for low, high in pairwise(sorted(stands_for)))


def relabelled(numbers: Iterable[int], true_lines: Iterable[str]) -> Iterator[dict[int, int]]:
    """Other numbers by those they stand for; every line of sums among ``true_lines`` is true with them."""
    sums = [one for line in true_lines if (one := _as_linear(line))]
    every = sorted({*numbers, *(number for one in sums for number in one)}, reverse=True)
    for turn in range(1, _ROUNDS + 1):
        found = _Search(every, sums, turn).first()
        if found is not None and any(before != after for before, after in found.items()):
            yield found


def _as_linear(line: str) -> Linear | None:
    """``46 + 18 = 64`` as 46 and 18 once, 64 minus once; None for a line of anything but sums."""
    sides = line.split("=")
    if len(sides) != 2 or not _SUMS.fullmatch(line):
        return None
    counts: dict[int, int] = {}
    for side, way in zip(sides, (1, -1), strict=True):
        for sign, number in _TERM.findall(side.strip()):
            counts[int(number)] = counts.get(int(number), 0) + (-way if sign == "−" else way)
    return {number: count for number, count in counts.items() if count}


class _Search:
    """One look for numbers, from another place among the candidates each turn."""

    def __init__(self, every: Sequence[int], sums: Sequence[Linear], turn: int) -> None:
        self._every, self._sums, self._turn = every, sums, turn
        self._room = {number: as_large(number) for number in every}
        self._left = _STEPS

    def first(self) -> dict[int, int] | None:
        """The first that is found within the steps allowed."""
        return self._grow({})

    def _grow(self, found: dict[int, int]) -> dict[int, int] | None:
        todo = [number for number in self._every if number not in found]
        if not todo:
            return found
        for candidate in self._turned(todo[0]):
            self._left -= 1
            if self._left < 0:
                return None
            grown = self._settled({**found, todo[0]: candidate})
            if grown is not None and (whole := self._grow(grown)) is not None:
                return whole
        return None

    def _turned(self, number: int) -> Iterator[int]:
        room = self._room[number]
        start = self._turn * (7 + number) % len(room)
        yield from (room[(start + place) % len(room)] for place in range(len(room)))

    def _settled(self, found: dict[int, int]) -> dict[int, int] | None:
        """With all that follows from it; None where something cannot be."""
        again = True
        while again:
            again = False
            for one in self._sums:
                unknown = [number for number in one if number not in found]
                rest = sum(count * found[number] for number, count in one.items() if number in found)
                if len(unknown) > 1 or (not unknown and rest == 0):
                    continue
                if not unknown:
                    return None
                value, left = divmod(-rest, one[unknown[0]])
                if left or value not in self._room[unknown[0]]:
                    return None
                found, again = {**found, unknown[0]: value}, True
        rising = sorted(found)
        return found if all(found[low] < found[high] for low, high in pairwise(rising)) else None
