"""Makes the choice of a shelf smaller without losing an answer: books there is no way round, and those out of the race.

The reductions are the textbook ones of set covering (essential columns, row and column dominance), kept to those that
leave every tie in place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Choice:
    """Books that are all one to a shelf: they cover the same rows in the same minutes."""

    covers: int
    """A bit for each row, which is an objective still wanted."""
    minutes: int
    books: tuple[int, ...]


def reduced(rows: int, choices: Sequence[Choice]) -> tuple[list[Choice], int, list[Choice]]:
    """The choices every answer makes, the rows still to cover, and the choices among which to search.

    Every way to cover ``rows`` at the least cost is a way to cover what is left, together with the first list.
    """
    needed: list[Choice] = []
    left = _merged(rows, choices)
    while True:
        coverers = _coverers(rows, left)
        only = sorted({at.bit_length() - 1 for at in coverers.values() if at & (at - 1) == 0})
        if only:
            needed += [left[n] for n in only]
            for n in only:
                rows &= ~left[n].covers
            left = _merged(rows, [choice for n, choice in enumerate(left) if n not in only])
            continue
        implied = _implied(coverers)
        kept = [choice for choice in left if not _is_beaten(choice, left)]
        if not implied and len(kept) == len(left):
            return needed, rows, left
        rows &= ~implied
        left = _merged(rows, kept)


def _merged(rows: int, choices: Sequence[Choice]) -> list[Choice]:
    """The choices as ``rows`` sees them: those that cover none are gone, and like ones are one."""
    like: dict[tuple[int, int], list[int]] = {}
    for choice in choices:
        if choice.covers & rows:
            like.setdefault((choice.covers & rows, choice.minutes), []).extend(choice.books)
    return [Choice(covers, minutes, tuple(sorted(books))) for (covers, minutes), books in like.items()]


def _coverers(rows: int, choices: Sequence[Choice]) -> dict[int, int]:
    """For each row, as its bit, which choices cover it, a bit each."""
    found: dict[int, int] = {}
    for n, choice in enumerate(choices):
        covers = choice.covers & rows
        while covers:
            row = covers & -covers
            found[row] = found.get(row, 0) | 1 << n
            covers ^= row
    return found


def _implied(coverers: dict[int, int]) -> int:
    """Rows that are covered whenever another row is; of rows covered by the same choices all but the first."""
    implied = 0
    for row, at in coverers.items():
        for other, theirs in coverers.items():
            if other != row and not other & implied and theirs & at == theirs and (theirs != at or other < row):
                implied |= row
                break
    return implied


def _is_beaten(choice: Choice, choices: Sequence[Choice]) -> bool:
    """Whether another covers as much in strictly fewer minutes. In as many it may be in a tie, and stays."""
    return any(other.minutes < choice.minutes and choice.covers & other.covers == choice.covers for other in choices)
