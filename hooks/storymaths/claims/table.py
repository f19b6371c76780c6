"""The classes of claim."""

from __future__ import annotations

from . import (
    angles,
    calendar,
    clock,
    coins,
    comparing,
    counting,
    factors,
    fractions_told,
    in_words,
    named_numbers,
    ordering,
    parity,
    place_value,
    rounding,
    shapes,
    sharing,
    signed,
    units,
    whole_and_parts,
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
    angles.CLASS,
    units.CLASS,
    calendar.CLASS,
    coins.CLASS,
    clock.CLASS,
    whole_and_parts.CLASS,
    in_words.CLASS,
    factors.CLASS,
    signed.CLASS,
    named_numbers.CLASS,
)
