"""Values as plain data, for other programs: text, whole numbers, truth values, lists and mappings."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Protocol, runtime_checkable

Plain = str | int | bool | list["Plain"] | dict[str, "Plain"]


@runtime_checkable
class SaysItself(Protocol):
    """A value with a plain form of its own, such as a time of day."""

    def as_plain(self) -> Plain:
        """The value as plain data."""


def as_plain_mapping(value: object) -> dict[str, Plain]:
    """A value made of named parts; a part that is None is left out."""
    if isinstance(value, SaysItself):
        plain = value.as_plain()
        assert isinstance(plain, dict), "an answer is made of named parts"
        return plain
    if isinstance(value, Mapping):
        return {str(key): as_plain(part) for key, part in value.items() if part is not None}
    assert is_dataclass(value), f"{type(value).__name__} has no plain form"
    named = ((field.name, getattr(value, field.name)) for field in fields(value))
    return {name: as_plain(part) for name, part in named if part is not None}


def as_plain(value: object) -> Plain:
    """A value as plain data; a fraction is a whole number where it is one, else ``over/under`` in lowest terms."""
    if isinstance(value, (str, bool, int)):
        return value
    if isinstance(value, Fraction):
        return value.numerator if value.denominator == 1 else f"{value.numerator}/{value.denominator}"
    if isinstance(value, (list, tuple)):
        return [as_plain(part) for part in value]
    if isinstance(value, SaysItself):
        return value.as_plain()
    return as_plain_mapping(value)
