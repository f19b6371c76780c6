"""What a drawing may hold, as ``site_data/drawings.yaml`` lists it."""

from __future__ import annotations

from collections.abc import Mapping

from .fields import Strict


class DrawingLimits(Strict):
    """The most a drawing may ask of a browser and of a printer."""

    nested: int
    chained: int
    pieces: int
    layers: int
    filter_steps: int
    number: float
    characters: int
    tries: int
    style: int
    entity: int
    filter_size: float
    dashes: int


class DrawingList(Strict):
    """Elements, attributes, properties and values of SVG that are served; and those refused, with words for an author."""

    elements: Mapping[str, frozenset[str]]
    refused_elements: Mapping[str, str]
    refused_languages: Mapping[str, str]
    properties: Mapping[str, frozenset[str]]
    """Each with the elements that its ``url(#…)`` may refer to."""
    inherited: frozenset[str]
    moving: tuple[str, ...]
    functions: frozenset[str]
    units: frozenset[str]
    loading: frozenset[str]
    selectors: frozenset[str]
    limits: DrawingLimits

    def moves(self, name: str) -> bool:
        """Whether a property, with or without a browser's own prefix, moves what it stands on."""
        plain = name.removeprefix("-webkit-").removeprefix("-moz-").removeprefix("-ms-").removeprefix("-o-")
        return any(plain == moving or plain.startswith(f"{moving}-") for moving in self.moving)
