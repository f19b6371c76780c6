"""An input of any sort, made from a seed and a number alone, so that each can be made again."""

from __future__ import annotations

import random
from collections.abc import Callable, Mapping

from .files import make_drawing, make_tree
from .inputs import Input, make_activity, make_page, make_site_data

MAKERS: Mapping[str, Callable[[random.Random], Input]] = {
    "page": make_page, "activity": make_activity, "site data": make_site_data, "drawing": make_drawing, "tree": make_tree,
}  # fmt: skip
SHARES: Mapping[str, int] = {"page": 40, "activity": 45, "site data": 1, "drawing": 12, "tree": 2}
"""Of a hundred inputs."""


def make_input(seed: int, number: int, of: str = "") -> Input:
    """An input, of a sort or of any."""
    chance = random.Random(f"{seed} {number}")
    sort = of or chance.choices(list(SHARES), list(SHARES.values()))[0]
    return MAKERS[sort](chance)
