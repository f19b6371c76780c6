"""Sums, sentences and rules as trees, and what a tree of numbers comes to, exactly."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from ..model.quantity import MEASURES, Quantity
from .number import Rational, whole_if_can
from .signs import COMPARE, OPERATE

Gives: TypeAlias = Literal["number", "truth", "text"]


@dataclass(frozen=True, slots=True)
class Number:
    """A number that is given, in base units where it has a unit."""

    value: Rational
    shown: str = ""
    """As it is written, without its unit."""
    unit: str = ""
    token: int = -1
    """Which token it is."""


@dataclass(frozen=True, slots=True)
class Gap:
    """A gap for a number or digit, the ``at``-th of its sentence; it counts ``worth`` times over."""

    at: int
    worth: Rational
    token: int
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Name:
    """A letter or a fact, and what kind of value it stands for."""

    name: str
    gives: Gives


@dataclass(frozen=True, slots=True)
class Words:
    """Words a fact is compared with."""

    text: str


@dataclass(frozen=True, slots=True)
class Operation:
    """Two parts and the sign between them; ``&`` puts the digits of one number together, ``/`` a fraction."""

    sign: str
    left: Node
    right: Node


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two values compared by = ≠ < > ≤ or ≥."""

    sign: str
    left: Node
    right: Node


@dataclass(frozen=True, slots=True)
class Call:
    """A named property or amount: ``odd(a)``, ``multiple(a, 5)``."""

    name: str
    parts: tuple[Node, ...]
    gives: Gives = "truth"


@dataclass(frozen=True, slots=True)
class Not:
    """What is so when ``inner`` is not."""

    inner: Node


@dataclass(frozen=True, slots=True)
class Join:
    """Two truths joined by ``and`` or ``or``."""

    word: str
    left: Node
    right: Node


Node: TypeAlias = Number | Gap | Name | Words | Operation | Comparison | Call | Not | Join
NOUGHT = Number(0, "0")
"""What a part is taken away from when nothing stands before its minus sign."""


def gives(node: Node) -> Gives:
    """What kind of value a tree comes to."""
    match node:
        case Name(gives=kind) | Call(gives=kind):
            return kind
        case Words():
            return "text"
        case Number() | Gap() | Operation():
            return "number"
        case _:
            return "truth"


def quantity_of(node: Node) -> Quantity:
    """What a sum of known amounts comes to.

    Raises ``UnlikeQuantities`` and ``ZeroDivisionError``; ``ValueError`` where something is not known.
    """
    match node:
        case Number(value=value, unit=unit):
            return Quantity(value, MEASURES[unit][0] if unit else "")
        case Operation(left=left, right=right) if left is NOUGHT:
            return Quantity(-1) * quantity_of(right)
        case Operation(sign=sign, left=left, right=right) if sign in OPERATE:
            total: Quantity = OPERATE[sign](quantity_of(left), quantity_of(right))
            return total
        case _:
            raise ValueError("not every part of it is a number that is known")


def holds_between(left: Quantity, relation: str, right: Quantity) -> bool:
    """Whether two amounts stand in a relation. Raises ``UnlikeQuantities``."""
    return COMPARE[relation](left.compare(right), 0)


def worth_of(node: Node, gaps: Sequence[Rational]) -> Rational | None:
    """What a side comes to with its gaps filled in, its amounts all of one kind; None where it divides by nought."""
    match node:
        case Number(value=value):
            return value
        case Gap(at=at, worth=worth):
            return worth * gaps[at]
        case Operation(sign=sign, left=left, right=right):
            one, other = worth_of(left, gaps), worth_of(right, gaps)
            return None if one is None or other is None else join(one, sign, other)
        case _:
            raise ValueError("not a sum of numbers and gaps")


def join(left: Rational, sign: str, right: Rational) -> Rational | None:
    """One operation, exactly; None for a division by nought."""
    if sign == "÷":
        return whole_if_can(Fraction(left) / right) if right else None
    joined: Rational = left + right if sign == "&" else OPERATE[sign](left, right)
    return joined


def holds(left: Rational, relation: str, right: Rational) -> bool:
    """Whether two worths stand in a relation."""
    return COMPARE[relation](left, right)


def fill_gap(node: Node, number: Number) -> Node:
    """A sum with a number in its gap. Raises ``ValueError`` where both have a unit."""
    match node:
        case Gap(worth=worth, unit=unit) if unit and number.unit:
            raise ValueError(f"{number.shown} {number.unit} {unit} is not an amount")
        case Gap(worth=worth, unit=unit):
            return Number(number.value * worth, number.shown, unit or number.unit)
        case Operation(sign=sign, left=left, right=right):
            above, below = left if left is NOUGHT else fill_gap(left, number), fill_gap(right, number)
            if sign == "/" and isinstance(above, Number) and isinstance(below, Number):
                return Number(Fraction(above.value) / below.value, f"{above.shown}/{below.shown}")
            return Operation(sign, above, below)
        case _:
            return node


def numbers_in(node: Node) -> Iterator[Number]:
    """The numbers that are written in a sum, from left to right."""
    if isinstance(node, Operation) and node.left is not NOUGHT:
        yield from numbers_in(node.left)
    if isinstance(node, Operation):
        yield from numbers_in(node.right)
    elif isinstance(node, Number):
        yield node


def units_in(*nodes: Node) -> tuple[str, ...]:
    """The units that are written in some sums, each once, in order."""
    return tuple(dict.fromkeys(number.unit for node in nodes for number in numbers_in(node) if number.unit))


def gaps_in(node: Node) -> frozenset[int]:
    """Which gaps stand in a part."""
    if isinstance(node, Operation):
        return gaps_in(node.left) | gaps_in(node.right)
    return frozenset({node.at}) if isinstance(node, Gap) else frozenset()


def operations_in(node: Node) -> int:
    """How many operations stand in a part; a number below nought, a fraction and the digits of a number are none."""
    if not isinstance(node, Operation):
        return 0
    here = node.sign not in "&/" and node.left is not NOUGHT
    return operations_in(node.left) + operations_in(node.right) + here
