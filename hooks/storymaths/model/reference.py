"""All that ``site_data/`` holds, checked and ready to look things up in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from hashlib import sha256
from typing import Annotated

from pydantic import Field

from .asked import Asked
from .concept import Area, Concept, Strand, Theme, Word
from .fields import Count, Strict
from .holiday import BankHolidays
from .imprint import Imprint
from .known_facts import KnownFacts
from .locator import Locator
from .material import Caution, Material
from .money import Currency
from .moved import Moved
from .objective import Framework, Objective
from .old_plans import OldPlanWords
from .practised_by import PractisedBy
from .problem import Place
from .proposing import Proposing
from .prose_words import ProseWords
from .site_settings import SiteSettings
from .task_years import TaskYears
from .year import Met, YearLimits


class ActivityCaps(Strict):
    """The most an activity may ask of the machine."""

    characters: Count
    number: Count
    answers: Count
    cells: Count
    pieces: Count
    tries: Count
    version_steps: Count


class FileLimits(Strict):
    """The most a file may hold."""

    page_bytes: Count
    picture_bytes: Count
    paragraph_characters: Count
    brackets: Count
    nested: Count
    book_pages: Count


class PublishedLimits(Strict):
    """The most the finished site may weigh."""

    page_bytes: Count
    file_bytes: Count
    site_bytes: Count


class ShelfCaps(Strict):
    """The most a search for the shortest shelf may ask of the machine, and what a page shows of it."""

    tries: Count
    """Steps before it is given up; the page then says so."""
    ways: Count
    """Ways as short as each other before it says only that there are more."""
    shown: Count
    """Ways a page writes out."""


class Limits(Strict):
    """Numbers the checks need that are a matter of choice."""

    quoted_words: Annotated[int, Field(ge=0, le=1000, strict=True)]
    home_reading_grade: Annotated[float, Field(ge=0, le=12)]
    home_reading_slack: Annotated[float, Field(ge=0, le=5)]
    home_reading_words: Count
    stick_characters: Count
    class_size: Annotated[int, Field(ge=1, le=100, strict=True)]
    activity: ActivityCaps
    files: FileLimits
    published: PublishedLimits
    shelf: ShelfCaps


@dataclass(frozen=True)
class Reference:
    """The standing knowledge of the site, by key."""

    frameworks: Mapping[str, Framework]
    years: Mapping[int, YearLimits]
    tasks: TaskYears
    practised_by: PractisedBy
    strands: Mapping[str, Strand]
    concepts: Mapping[str, Concept]
    themes: Mapping[str, Theme]
    areas: Mapping[str, Area]
    words: Mapping[str, Word]
    asked: Asked
    materials: Mapping[str, Material]
    cautions: Mapping[str, Caution]
    bank_holidays: BankHolidays
    limits: Limits
    old_plans: OldPlanWords
    imprint: Imprint
    site: SiteSettings
    money: Currency
    facts: KnownFacts
    prose: ProseWords
    proposals: Proposing
    moved: Mapping[str, Moved]
    """Pages that are no longer where they were, by their old source."""
    moved_places: Mapping[str, Place]
    """Where each of them stands in ``site_data/moved.yaml``."""
    objectives: Mapping[tuple[str, str], Objective]
    """Every objective by framework and code."""
    locators: Mapping[str, Locator] = field(repr=False)
    """Finds where a value stands, by its file in ``site_data/``."""

    @cached_property
    def fingerprint(self) -> str:
        """Equal for two readings of ``site_data/`` that hold the same, and for no others."""
        # What a year practises hangs on it privately, where its own form does not show it.
        practice = [year.practice for year in self.years.values()]
        return sha256(repr((self, practice)).encode()).hexdigest()

    @cached_property
    def objectives_of(self) -> Mapping[tuple[str, int], tuple[Objective, ...]]:
        """The objectives of each framework and year, in the framework's order; pairs without any are left out."""
        found: dict[tuple[str, int], list[Objective]] = {}
        for framework in self.frameworks.values():
            for objective in framework.objectives:
                found.setdefault((framework.id, objective.year), []).append(objective)
        return {pair: tuple(objectives) for pair, objectives in found.items()}

    @cached_property
    def material_names(self) -> frozenset[str]:
        """Every way a material is written, in small letters."""
        return frozenset(
            name.lower()
            for material in self.materials.values()
            for name in (material.name, material.plural, *material.also)
        )

    def _met_by(self, year: int) -> Met:
        """What is met by the end of a year; nothing before the first."""
        return self.years[year].met if year in self.years else Met()

    def symbols_by(self, year: int) -> frozenset[str]:
        """Every symbol met by the end of ``year``."""
        return self._met_by(year).signs

    def units_by(self, year: int) -> frozenset[str]:
        """Every unit met by the end of ``year``."""
        return self._met_by(year).units

    def denominators_by(self, year: int) -> frozenset[int]:
        """Every denominator met by the end of ``year``."""
        return self._met_by(year).denominators
