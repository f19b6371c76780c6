"""All that ``site_data/`` holds, checked and ready to look things up in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from .concept import Concept, Strand, Theme, Word
from .fields import Strict
from .material import Caution, Material
from .objective import Framework, Objective
from .year import YearLimits


class ActivityCaps(Strict):
    """The most an activity may ask of the machine."""

    players: int
    number: int
    answers: int
    cells: int
    tries: int


class Limits(Strict):
    """Numbers the checks need that are a matter of choice."""

    quoted_words: int
    home_reading_grade: float
    home_reading_slack: float
    class_size: int
    activity: ActivityCaps


@dataclass(frozen=True)
class Reference:
    """The standing knowledge of the site, by key."""

    frameworks: Mapping[str, Framework]
    years: Mapping[int, YearLimits]
    strands: Mapping[str, Strand]
    concepts: Mapping[str, Concept]
    themes: Mapping[str, Theme]
    words: Mapping[str, Word]
    materials: Mapping[str, Material]
    cautions: Mapping[str, Caution]
    limits: Limits
    objectives: Mapping[tuple[str, str], Objective]
    """Every objective by framework and code."""

    @cached_property
    def material_names(self) -> frozenset[str]:
        """Every way a material is written, in small letters."""
        return frozenset(
            name.lower()
            for material in self.materials.values()
            for name in (material.name, material.plural, *material.also)
        )

    def symbols_by(self, year: int) -> frozenset[str]:
        """Every symbol met by the end of ``year``."""
        return frozenset(s for y, limits in self.years.items() if y <= year for s in limits.symbols_new)

    def units_by(self, year: int) -> frozenset[str]:
        """Every unit met by the end of ``year``."""
        return frozenset(u for y, limits in self.years.items() if y <= year for u in limits.units_new)

    def denominators_by(self, year: int) -> frozenset[int]:
        """Every denominator met by the end of ``year``."""
        return frozenset(d for y, limits in self.years.items() if y <= year for d in limits.denominators_new)
