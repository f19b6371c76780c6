"""The classes of claim."""

from __future__ import annotations

from . import (
    calendar,
    clock,
    coins,
    comparing,
    counting,
    fractions_told,
    ordering,
    parity,
    place_value,
    rounding,
    shapes,
    sharing,
    units,
)

CLASSES = (
    parity.CLASS,
    comparing.CLASS,
    ordering.CLASS,
    counting.CLASS,
    place_value.CLASS,
    rounding.CLASS,
    fractions_told.CLASS,
    sharing.CLASS,
    shapes.CLASS,
    units.CLASS,
    calendar.CLASS,
    coins.CLASS,
    clock.CLASS,
)
