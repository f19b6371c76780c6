"""Every way to level a load with weights from a given set, on one pan or on both."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import product

Pans = tuple[tuple[int, ...], tuple[int, ...]]
"""The weights against the load, and those beside it; each the largest first."""
MOST_TRIED = 60_000


def count_placings(weights: Mapping[int, int], both: bool) -> int:
    """How many ways there are to put the weights on the pans, right or wrong."""
    tried = 1
    for count in weights.values():
        tried *= (count + 1) * (count + 2) // 2 if both else count + 1
    return tried


def levelled(loads: Sequence[int], weights: Mapping[int, int], both: bool) -> list[list[Pans]]:
    """Every way to level each load: fewest weights first, then the largest weights first.

    ``weights`` is how many there are of each; with ``both``, weights may stand beside the load as well.
    """
    ways: dict[int, list[Pans]] = {load: [] for load in loads}
    for pans in _placings(sorted(weights, reverse=True), weights, both):
        load = sum(pans[0]) - sum(pans[1])
        if load in ways:
            ways[load].append(pans)
    return [sorted(ways[load], key=_simplest) for load in loads]


def reached(most: int, weights: Mapping[int, int], both: bool) -> dict[int, Pans]:
    """Every load up to ``most`` that can be levelled, smallest first, each with its simplest way."""
    best: dict[int, Pans] = {}
    for pans in _placings(sorted(weights, reverse=True), weights, both):
        load = sum(pans[0]) - sum(pans[1])
        if 0 < load <= most and (load not in best or _simplest(pans) < _simplest(best[load])):
            best[load] = pans
    return dict(sorted(best.items()))


def _simplest(pans: Pans) -> tuple[int, int, Sequence[int], Sequence[int]]:
    against, beside = pans
    return len(against) + len(beside), len(beside), [-worth for worth in against], [-worth for worth in beside]


def _placings(worths: Sequence[int], weights: Mapping[int, int], both: bool) -> Iterator[Pans]:
    """Every way to share some of the weights between the two pans."""
    each = [
        [(a, b) for a in range(weights[worth] + 1) for b in range(weights[worth] + 1 - a if both else 1)]
        for worth in worths
    ]
    for counts in product(*each):
        against = tuple(worth for worth, (a, _) in zip(worths, counts, strict=True) for _ in range(a))
        beside = tuple(worth for worth, (_, b) in zip(worths, counts, strict=True) for _ in range(b))
        yield against, beside
