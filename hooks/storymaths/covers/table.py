"""Coverage as a table: the objectives of a framework and a year, each with its sessions; and what is left out."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

from ..model.objective import Framework, Objective, Part
from ..model.reference import Reference
from .taught import Coverage, How, Key, SessionPage


@dataclass(frozen=True, slots=True)
class Row:
    """An objective and the sessions that cover it."""

    key: Key
    objective: Objective
    how: How | None
    taught: Sequence[SessionPage]
    again: Sequence[SessionPage]
    bend: Sequence[SessionPage]
    missing: tuple[Part, ...]
    """Where it is taught in part: the parts that no session teaches."""


@dataclass(frozen=True)
class YearTable:
    """The objectives of one year in one framework."""

    framework: Framework
    year: int
    rows: tuple[Row, ...]

    @cached_property
    def counts(self) -> dict[How | None, int]:
        """How many objectives are covered in each way, each by its fullest; None for those that are not."""
        found: dict[How | None, int] = {"taught": 0, "part": 0, "again": 0, "bend": 0, None: 0}
        for row in self.rows:
            found[row.how] += 1
        return found

    def covered_as(self, how: How | None) -> tuple[Row, ...]:
        """The objectives covered in one way, each by its fullest."""
        return tuple(row for row in self.rows if row.how == how)

    @property
    def touched(self) -> int:
        """How many are not taught even in part, but taken up again or touched in a bend."""
        return self.counts["again"] + self.counts["bend"]

    @property
    def not_taught(self) -> tuple[Row, ...]:
        """The objectives no session teaches, not even in part."""
        return tuple(row for row in self.rows if row.how not in ("taught", "part"))

    @property
    def gaps(self) -> tuple[Row, ...]:
        """The objectives no session covers in any way."""
        return self.covered_as(None)

    @property
    def covered(self) -> tuple[Row, ...]:
        """The objectives some session covers in some way."""
        return tuple(row for row in self.rows if row.how is not None)

    @cached_property
    def strands(self) -> tuple[tuple[str, YearTable], ...]:
        """The table cut into strands, by name, in the framework's order."""
        return tuple(
            (name, YearTable(self.framework, self.year, rows))
            for strand, name in self.framework.strands.items()
            if (rows := tuple(row for row in self.rows if row.objective.strand == strand))
        )


def year_table(coverage: Coverage, reference: Reference, framework: Framework, year: int) -> YearTable:
    """The table of a framework and a year."""
    objectives = reference.objectives_of.get((framework.id, year), ())
    return YearTable(framework, year, tuple(_row(coverage, framework.id, objective) for objective in objectives))


def year_tables(coverage: Coverage, reference: Reference, years: Iterable[int]) -> list[YearTable]:
    """A table for each of ``years`` and each framework that has objectives then, the youngest year first."""
    return [
        year_table(coverage, reference, framework, year)
        for year in sorted(years)
        for framework in reference.frameworks.values()
        if (framework.id, year) in reference.objectives_of
    ]


def other_tables(coverage: Coverage, reference: Reference, years: Iterable[int]) -> list[YearTable]:
    """For all years but ``years``, tables of those objectives that are covered, empty ones left out."""
    covered = {*coverage.taught, *coverage.revisited, *coverage.bent}
    pairs = {(key[0], reference.objectives[key].year) for key in covered if key in reference.objectives}
    asked = {*years}
    return [
        YearTable(
            framework,
            year,
            tuple(_row(coverage, framework.id, o) for o in objectives if (framework.id, o.code) in covered),
        )
        for year in reference.years
        for framework in reference.frameworks.values()
        if year not in asked and (framework.id, year) in pairs
        for objectives in [reference.objectives_of[framework.id, year]]
    ]


def _row(coverage: Coverage, framework: str, objective: Objective) -> Row:
    key = (framework, objective.code)
    return Row(
        key,
        objective,
        coverage.how(key),
        coverage.taught.get(key, ()),
        coverage.revisited.get(key, ()),
        coverage.bent.get(key, ()),
        coverage.missing.get(key, ()),
    )
