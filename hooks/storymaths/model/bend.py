"""How a page bends to another year: which of its activities are done there, with which numbers, and what they are held to."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Literal, get_args

from pydantic import Field, PlainValidator

from .fields import Claims, Count, Strict, Text
from .picked import CastId

Serves = Literal["same", "find", "left out"]
"""An activity serves a year as it is, with numbers the program finds, or not at all."""
_SERVES: tuple[Serves, ...] = get_args(Serves)
Choice = Serves | Mapping[str, Any]
"""The same, or what is pinned: fields of the activity as they are in that year."""
Clock = Literal["o'clock", "half past", "quarter past", "five minutes", "one minute"]
CLOCKS: Mapping[str, int] = dict(zip(get_args(Clock), (60, 30, 15, 5, 1), strict=True))
"""To how many minutes a clock is read, by the finest time that is told."""


def _choice(value: object) -> Choice:
    if isinstance(value, Mapping) and value:
        return value
    for serves in _SERVES:
        if value == serves:
            return serves
    raise ValueError("it should be same, find, left out, or what it has in that year, such as {whole: 5}")


def _clock(value: Any) -> int:
    minutes = CLOCKS.get(value.replace("’", "'")) if isinstance(value, str) else None
    if minutes is None:
        raise ValueError(f"it should be one of: {', '.join(CLOCKS)}")
    return minutes


def _signs(value: Any) -> tuple[str, ...]:
    if value == "none":
        return ()
    if isinstance(value, list) and value and all(isinstance(sign, str) and sign for sign in value):
        return tuple("−" if sign in ("-", "–") else sign for sign in value)
    raise ValueError('it should be none, or a list of signs such as ["+", "="]')


class YearBend(Strict):
    """What of a page's activities is done in another year. Every field but ``activities`` is a promise.

    What children meet in that year's versions is held to the promises, and pages print them; what is not promised is
    held to the year alone.
    """

    activities: Mapping[str, Annotated[Choice, PlainValidator(_choice, json_schema_input_type=Choice)]] = Field(
        default_factory=dict
    )
    """By the id or title of each activity: same, find (numbers are found), left out, or the fields it has in that
    year. One that is not named is not done.
    """
    up_to: Count | None = None
    """A promise that no number is larger."""
    signs: (
        Annotated[tuple[str, ...], PlainValidator(_signs, json_schema_input_type=Literal["none"] | tuple[str, ...])]
        | None
    ) = None
    """A promise that no other signs are read or written, or none."""
    units: tuple[str, ...] | None = None
    """A promise that no other units are met."""
    clock: Annotated[int, PlainValidator(_clock, json_schema_input_type=Clock)] | None = None
    """A promise that no finer time is told: o'clock, half past, quarter past, five minutes or one minute."""
    cast: tuple[CastId, ...] | None = None
    """A promise that no other characters take part."""
    written: bool | None = None
    """A promise that children write, or with false that they do not."""


class Bend(YearBend):
    """What changes when the year below or above is taught from the same pages, and why."""

    objectives: Claims = Field(default_factory=dict)
    """What is taught of that year."""
    numbers: Text
    """Which numbers that year works with."""
    recording: Text
    """What that year draws, lays or writes."""
    question: Text
    """The question for that year."""
    why: Text
    """Why it is done so."""
