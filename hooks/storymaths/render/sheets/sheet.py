"""A print sheet as plain data: its parts, each set by a template of that name, and the pictures they show."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from typing import Any

from ..quotes import curl
from .paper import PaperUse


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of a sheet, from the top of a page."""

    layout: str
    """The template that sets it: a file of this name with ``.typ``."""
    data: Mapping[str, Any]
    """Text, numbers, truth values, lists and mappings only."""


@dataclass(frozen=True, slots=True)
class House:
    """Whose sheet it is: who publishes it, what may be done with it, and how the publisher's sheets are spelt and lettered."""

    publisher: str = ""
    licence: str = ""
    region: str = "GB"
    """The spelling's country, as ISO 3166 has it."""
    adult: str = "Lexend"
    child: str = "ABeeZee"


@dataclass(frozen=True, slots=True)
class SheetData:
    """Everything on a sheet, and what it is for."""

    what: str
    """Its name within the page it belongs to, and the end of its address: ``answers``."""
    title: str
    says: str
    """What it is, in a sentence for a teacher."""
    parts: tuple[Part, ...]
    use: PaperUse
    pictures: Mapping[str, str]
    """SVG by the name that parts know it by."""

    def told_how_often(self) -> tuple[Part, ...]:
        """The parts, each with how often it is to be printed, unless it says so already."""
        often = {"often": self.use.often()}
        return tuple(replace(part, data={**often, **part.data}) for part in self.parts)

    def as_json(self, house: House) -> str:
        """What the templates are given."""
        return json.dumps(
            {
                "title": curl(self.title),
                "house": asdict(house),
                "parts": [{"layout": part.layout, **_curled(part.data)} for part in self.told_how_often()],
                "pictures": self.pictures,
            },
            ensure_ascii=False,
            sort_keys=True,
            separators=(",", ":"),
        )


def _curled(value: Any) -> Any:
    """Whatever is printed with curled quotation marks, titles and names as well as running text."""
    if isinstance(value, str):
        return curl(value)
    if isinstance(value, Mapping):
        return {name: _curled(one) for name, one in value.items()}
    return [_curled(one) for one in value] if isinstance(value, (list, tuple)) else value
