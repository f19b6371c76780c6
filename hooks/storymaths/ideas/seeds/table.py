"""The table of seeds: how each kind of activity is filled from a book. Every kind is in it."""

from __future__ import annotations

from collections.abc import Mapping

from . import (
    always_sometimes_never,
    angle,
    balance,
    bonds,
    chart,
    clock,
    compare,
    coordinates,
    fraction,
    measure,
    money,
    nearest,
    number_sentence,
    order,
    position,
    sequence,
    shape,
    share,
    sort,
    unknowns,
)
from .seed import Seed

SEEDS: Mapping[str, Seed] = {
    "balance": balance.SEED,
    "compare": compare.SEED,
    "nearest": nearest.SEED,
    "order": order.SEED,
    "sort": sort.SEED,
    "number-sentence": number_sentence.SEED,
    "unknowns": unknowns.SEED,
    "bonds": bonds.SEED,
    "sequence": sequence.SEED,
    "share": share.SEED,
    "fraction": fraction.SEED,
    "money": money.SEED,
    "clock": clock.SEED,
    "measure": measure.SEED,
    "chart": chart.SEED,
    "position": position.SEED,
    "coordinates": coordinates.SEED,
    "angle": angle.SEED,
    "shape": shape.SEED,
    "always-sometimes-never": always_sometimes_never.SEED,
}
"""Each by the name of its kind."""
