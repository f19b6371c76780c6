"""The table of kinds: what may stand after ``kind:``."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

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
from .kind import Kind

# In the order guides list them: comparing, numbers, sharing, measures, handling data, space, reasoning.
_KINDS: tuple[Kind[Any], ...] = (
    balance.KIND,
    compare.KIND,
    nearest.KIND,
    order.KIND,
    sort.KIND,
    number_sentence.KIND,
    unknowns.KIND,
    bonds.KIND,
    sequence.KIND,
    share.KIND,
    fraction.KIND,
    money.KIND,
    clock.KIND,
    measure.KIND,
    chart.KIND,
    position.KIND,
    coordinates.KIND,
    angle.KIND,
    shape.KIND,
    always_sometimes_never.KIND,
)
KINDS: Mapping[str, Kind[Any]] = {kind.name: kind for kind in _KINDS}
"""Every kind by its name."""
