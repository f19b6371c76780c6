"""New values for a fact of the cast that keep the story's order and suit a year."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, islice

from ..model.activity import Player, Scene
from ..model.year import YearLimits

_MOST_TRIED = 4000


def revalued(scene: Scene, fact: str, year: YearLimits) -> Iterator[tuple[Scene, str]]:
    """Scenes whose whole-number values of ``fact`` are remade for ``year``, best first, at most a few thousand.

    Whoever had more still has more, and equals stay equal. First the old values multiplied by a table
    of the year, then every rising choice of values, smallest first.
    """
    old = {player.id: player.facts[fact] for player in scene.players if isinstance(player.facts.get(fact), int)}
    if len(old) != len(scene.players) or not old:
        return
    levels = sorted({int(value) for value in old.values()})
    top = min(year.largest_calculated, year.largest_number, scene.caps.number)
    for factor in year.tables:
        if factor > 1 and levels[-1] * factor <= top:
            yield _with(scene, fact, {v: v * factor for v in levels}), f"Every {fact} is {factor} times as much."
    rising = combinations(range(1, min(top, 40) + 1), len(levels))
    for new in islice(rising, _MOST_TRIED):
        if list(new) != levels:
            yield _with(scene, fact, dict(zip(levels, new, strict=True))), f"Each {fact} is remade, in the same order."


def _with(scene: Scene, fact: str, new: dict[int, int]) -> Scene:
    def remade(player: Player) -> Player:
        return replace(player, facts={**player.facts, fact: new[int(player.facts[fact])]})

    return replace(scene, players=tuple(remade(player) for player in scene.players))
