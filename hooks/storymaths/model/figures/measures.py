"""Drawings of mass, length, capacity, temperature, time and money."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar, Literal, NamedTuple

Tilt = Literal["left", "right", "level"]
"""Which side of a balance is lower."""


class OnPan(NamedTuple):
    """What stands on a pan: a weight may have no name, and a load to be weighed no amount."""

    name: str
    amount: str


@dataclass(frozen=True, slots=True)
class Balance:
    """A beam with a pan at each end, level or with one side lower."""

    NAME: ClassVar = "balance"
    left: tuple[OnPan, ...]
    right: tuple[OnPan, ...]
    tilt: Tilt


@dataclass(frozen=True, slots=True)
class Weighing:
    """A level balance with weights on it, a load among them."""

    NAME: ClassVar = "weighing"
    left: tuple[OnPan, ...]
    right: tuple[OnPan, ...]


class Numbered(NamedTuple):
    """A mark of a scale, counted from 0, and the number written at it."""

    mark: int
    text: str


class Pointer(NamedTuple):
    """An arrow, and how far along the scale it stands, from 0 to 1."""

    name: str
    at: Fraction


@dataclass(frozen=True, slots=True)
class MeasureScale:
    """A ruler, a jug or a thermometer with arrows to be read."""

    NAME: ClassVar = "measure-scale"
    form: Literal["ruler", "jug", "thermometer"]
    parts: int
    labels: tuple[Numbered, ...]
    pointers: tuple[Pointer, ...]
    unit: str


@dataclass(frozen=True, slots=True)
class Hands:
    """The time on a clock face: ``hour`` is 0 to 11."""

    hour: int
    minute: int


@dataclass(frozen=True, slots=True)
class ClockFace:
    """A clock face; without hands when they are to be drawn."""

    NAME: ClassVar = "clock-face"
    label: str
    numerals: Literal["arabic", "roman"]
    hands: Hands | None


@dataclass(frozen=True, slots=True)
class ClockJumps:
    """Times along a line, in words, with how long it is from each to the next."""

    NAME: ClassVar = "clock-jumps"
    points: tuple[str, ...]
    jumps: tuple[str, ...]
    """One fewer than the points."""


class Coin(NamedTuple):
    """What is written on a coin or note."""

    text: str
    form: Literal["coin", "note"]


@dataclass(frozen=True, slots=True)
class Coins:
    """Coins and notes side by side."""

    NAME: ClassVar = "coins"
    coins: tuple[Coin, ...]
