"""Standing facts that words on a page are held to: units, the calendar, shapes."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from typing import Annotated, Literal

from pydantic import Field

from .fields import Count, Strict, Text
from .phrases import Phrases

Names = Annotated[tuple[Text, ...], Field(min_length=1)]
FaceSort = Literal["squares", "rectangles", "triangles", "circles"]
Part = Literal["sides", "corners", "symmetry", "right_angles", "faces", "edges"]


class Makes(Strict):
    """How many of one unit make another; several counts where each may be said."""

    one: Text
    of: Text
    many: Annotated[tuple[Count, ...], Field(min_length=1)]


class KnownUnits(Strict):
    """Units by every way they are written, and how many of one make another."""

    source: Text
    names: Mapping[str, Names]
    makes: tuple[Makes, ...]

    @cached_property
    def by_name(self) -> Mapping[str, str]:
        """The unit of each way of writing one."""
        return {name: unit for unit, names in self.names.items() for name in names}

    @cached_property
    def counts(self) -> Mapping[tuple[str, str], tuple[int, ...]]:
        """How many of the second unit make one of the first."""
        return {(made.one, made.of): made.many for made in self.makes}


class Month(Strict):
    """A month, and how many days it may have."""

    name: Text
    days: Annotated[tuple[Count, ...], Field(min_length=1)]


class Calendar(Strict):
    """The days of the week and the months, in order, in small letters."""

    source: Text
    days: Names
    months: tuple[Month, ...]


class NamedShape(Strict):
    """What every shape of some names has."""

    names: Names
    has: Mapping[Part, int]
    """How many of each part, where it is the same for all of them."""


class SortedFaces(Strict):
    """How many flat faces of each sort the solids of some names may have."""

    names: Names
    has: Mapping[FaceSort, Annotated[tuple[int, ...], Field(min_length=1)]]


class KnownShapes(Strict):
    """Shapes by name, and how their parts are written."""

    source: Text
    parts: Mapping[Part, Names]
    named: tuple[NamedShape, ...]
    sorted_faces: tuple[SortedFaces, ...] = ()

    @cached_property
    def by_name(self) -> Mapping[str, Mapping[Part, int]]:
        """The counts of each name."""
        return {name: shape.has for shape in self.named for name in shape.names}

    @cached_property
    def faces_by_name(self) -> Mapping[str, Mapping[FaceSort, tuple[int, ...]]]:
        """How many faces of each sort a solid of each name may have."""
        return {name: faces.has for faces in self.sorted_faces for name in faces.names}

    @cached_property
    def by_part(self) -> Mapping[str, Part]:
        """The part of each way of writing one."""
        return {name: part for part, names in self.parts.items() for name in names}

    @cached_property
    def ends_of_names(self) -> frozenset[str]:
        """The last words of all names, one and many."""
        ends = {name.split()[-1] for name in self.by_name}
        return frozenset(f"{end}{ending}" for end in ends for ending in ("", "s", "es"))

    @cached_property
    def ends_of_parts(self) -> frozenset[str]:
        """The last words of all ways of writing a part."""
        return frozenset(name.split()[-1] for name in self.by_part)


class KnownFacts(Strict):
    """``site_data/facts.yaml``."""

    units: KnownUnits
    calendar: Calendar
    shapes: KnownShapes
    phrases: Phrases | None = None
    """Ways of saying what holds: ``site_data/phrases.yaml``."""
