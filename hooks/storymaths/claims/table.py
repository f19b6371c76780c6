"""The classes of claim."""

from __future__ import annotations

from . import (
    angles,
    calendar,
    clock,
    clock_hands,
    coins,
    counting,
    enumerations,
    factors,
    missing_numbers,
    named_numbers,
    parity,
    phrases_told,
    place_value,
    shapes,
    shared_lists,
    units,
)

CLASSES = (
    parity.CLASS,
    counting.CLASS,
    place_value.CLASS,
    shared_lists.CLASS,
    shapes.CLASS,
    angles.CLASS,
    units.CLASS,
    calendar.CLASS,
    coins.CLASS,
    clock.CLASS,
    clock_hands.CLASS,
    missing_numbers.CLASS,
    factors.CLASS,
    named_numbers.CLASS,
    enumerations.CLASS,
    phrases_told.CLASS,
)
