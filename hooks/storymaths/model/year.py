"""What each school year meets: how large its numbers, which symbols, units, fractions and tables."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Annotated

from pydantic import Field, PrivateAttr

from .fields import Count, Strict, Text, Year
from .practice import Practice


@dataclass(frozen=True, slots=True)
class Met:
    """Signs, units, denominators and charts met by the end of a year."""

    signs: frozenset[str] = frozenset()
    units: frozenset[str] = frozenset()
    denominators: frozenset[int] = frozenset()
    charts: frozenset[str] = frozenset()


class AtChoice(Strict):
    """What a year does not meet of itself, and yet an author may choose to bring into it."""

    signs: tuple[str, ...] = ()
    clock_minutes: Annotated[int, Field(ge=1, le=60, strict=True)] | None = None


class YearLimits(Strict):
    """The reach of one year. ``*_new`` lists what is first met then; earlier years' carry on."""

    year: Year
    ages: Annotated[str, Field(pattern=r"^\d{1,2}-\d{1,2}$")]
    key_stage: Text
    source: Text
    largest_number: Count
    """The largest number counted, read or compared."""
    counted_to: Count | None = None
    """How far children count on aloud and back, where that is further than the numbers they read and compare."""
    largest_calculated: Count
    """The largest number in an addition or subtraction."""
    below_zero: bool
    decimal_places: Annotated[int, Field(ge=0, le=6, strict=True)]
    tables: tuple[Count, ...]
    """Multiplication tables known by the end of the year, earlier ones included."""
    symbols_new: tuple[str, ...]
    units_new: tuple[str, ...]
    denominators_new: tuple[Count, ...]
    """Denominators of the fractions first named this year; empty when none."""

    fractions_added_to: Count | None = None
    """What fractions that are added or taken away from come to at most; None without such a limit."""
    charts_new: tuple[str, ...]
    clock: Text
    clock_minutes: Annotated[int, Field(ge=1, le=60, strict=True)]
    """To how many minutes a clock is read: 60 for o'clock alone."""
    says: Text
    writes: bool = True
    """Whether children of the year write; where they do not, the author of a bend may still choose that they do."""
    at_choice: AtChoice = AtChoice()
    longest_together: Count | None = None
    """Minutes a session takes at most; None without such a limit."""
    sets_out: bool = False
    """Whether a session has things set out for the week round it."""
    _met: Met = PrivateAttr(default_factory=Met)
    _practice: Practice | None = PrivateAttr(default=None)

    def knows(self, sign: str) -> bool:
        """Whether a sign is met by the end of the year; ``≠`` is met with ``=``."""
        return {"≠": "="}.get(sign, sign) in self._met.signs

    def measures_in(self, unit: str) -> bool:
        """Whether a unit is met by the end of the year."""
        return unit in self._met.units

    def cuts_into(self, parts: int) -> bool:
        """Whether fractions of so many equal parts are named by the end of the year."""
        return parts in self._met.denominators

    def meets_part_of(self, number: Fraction) -> bool:
        """Whether its part of a whole is met: as a decimal of few enough places, or as a fraction that has a name."""
        below = number.denominator
        return below == 1 or self.cuts_into(below) or (number * 10**self.decimal_places).denominator == 1

    def meets(self, number: Fraction) -> bool:
        """Whether such a number is met by the end of the year: its size, its part of a whole, and one below nought."""
        within = self.largest_number >= number >= (-self.largest_number if self.below_zero else 0)
        return within and self.meets_part_of(number)

    def draws(self, chart: str) -> bool:
        """Whether a sort of chart is met by the end of the year."""
        return chart in self._met.charts

    @property
    def furthest_counted(self) -> int:
        """The last number that is counted to."""
        return max(self.largest_number, self.counted_to or 0)

    @property
    def met(self) -> Met:
        """All that is met by the end of the year, earlier years' included."""
        return self._met

    @property
    def practice(self) -> Practice:
        """The numbers, times and coins that activities of the year are made of."""
        assert self._practice is not None, "years come from site_data/ with their practice"
        return self._practice

    def held_to(self, largest: int | None, signs: tuple[str, ...], clock_minutes: int | None) -> YearLimits:
        """The year with no number beyond ``largest``, and with what an author chose of that which is at choice."""
        most = self.largest_number if largest is None else largest
        least, finest = self.at_choice.clock_minutes, self.clock_minutes
        if least is not None and clock_minutes is not None:
            finest = min(finest, max(least, clock_minutes))
        year = self.model_copy(
            update={
                "largest_number": min(most, self.largest_number),
                "counted_to": self.counted_to if largest is None else None,
                "largest_calculated": min(most, self.largest_calculated),
                "clock_minutes": finest,
            }
        )
        year._met = replace(self._met, signs=self._met.signs | (set(signs) & set(self.at_choice.signs)))
        return year

    def before(self, unmet: tuple[str, ...]) -> YearLimits:
        """The year while some of its signs are still to come."""
        year = self.model_copy()
        year._met = replace(self._met, signs=self._met.signs - set(unmet))
        return year

    def with_what_came_before(self, earlier: Met, practice: Practice) -> YearLimits:
        """The year with all that the earlier ones met, and what it practises."""
        year = self.model_copy()
        year._met = Met(
            earlier.signs | set(self.symbols_new),
            earlier.units | set(self.units_new),
            earlier.denominators | set(self.denominators_new),
            earlier.charts | set(self.charts_new),
        )
        year._practice = practice
        return year
