"""A page's file as the desk reads it: front matter and text apart, whatever is wrong with either."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from ..activities.kind import ActivityFields, Kind
from ..activities.table import KINDS
from ..model.page_fields import PageFields
from ..model.page_schemas import SCHEMAS
from ..parse.document import FENCE
from ..parse.yaml_text import BrokenYaml, load
from .control import Control, controls_of
from .sections import Part, SectionParts, sections_of
from .shape import Shape, group_of

FRONT = "front"
"""What the ids of the boxes of front matter begin with; those of activities begin with ``activity-`` and a number."""


@dataclass(frozen=True)
class PageText:
    """The text of a page's file."""

    text: str

    @cached_property
    def _plain(self) -> str:
        return self.text.removeprefix("\ufeff").replace("\r\n", "\n")

    @cached_property
    def front(self) -> str | None:
        """The front matter; None where the file does not open with any."""
        found = FENCE.match(self._plain)
        return found[1] if found else None

    @cached_property
    def body(self) -> str:
        """What stands under the front matter."""
        found = FENCE.match(self._plain)
        return self._plain[found.end() :] if found else self._plain

    @property
    def body_line(self) -> int:
        """The line of the file that the body starts on."""
        return self._plain.count("\n", 0, len(self._plain) - len(self.body)) + 1

    @cached_property
    def raw(self) -> Mapping[str, Any] | None:
        """The data of the front matter; None where it cannot be read."""
        return read_data(self.front) if self.front is not None else None

    @cached_property
    def schema(self) -> type[PageFields] | None:
        """The schema of its kind; None where there is no such kind."""
        return SCHEMAS.get(str(self.raw.get("kind"))) if self.raw is not None else None

    @cached_property
    def controls(self) -> tuple[Control, ...]:
        """The form of its front matter; empty where it cannot be read."""
        if self.raw is None or self.schema is None:
            return ()
        return controls_of(group_of(self.schema), self.raw, FRONT)

    @cached_property
    def sections(self) -> list[SectionParts]:
        """Its text by sections."""
        return sections_of(self.body)

    @property
    def activities(self) -> Mapping[int, Part]:
        """Its activities by number."""
        return {one.number: one for section in self.sections for one in section.parts if one.number is not None}


def read_data(text: str) -> Mapping[str, Any] | None:
    """The data of a YAML text; None where it is not a set of fields."""
    try:
        raw, _ = load(text)
    except BrokenYaml:
        return None
    return raw if isinstance(raw, dict) else None


@dataclass(frozen=True)
class ActivityForm:
    """An activity as a form."""

    part: Part

    @property
    def id(self) -> str:
        """What the ids of its boxes begin with."""
        return f"activity-{self.part.number}"

    @cached_property
    def raw(self) -> Mapping[str, Any] | None:
        """Its data; None where it cannot be read."""
        return read_data(self.part.text)

    @cached_property
    def kind(self) -> Kind[Any] | None:
        """Its kind; None where there is no such."""
        return KINDS.get(str(self.raw.get("kind"))) if self.raw is not None else None

    @cached_property
    def task(self) -> type[ActivityFields] | None:
        """The task its data are of."""
        return self.kind.schema_for(self.raw) if self.kind and self.raw is not None else None

    @cached_property
    def shape(self) -> Shape | None:
        """What is asked for."""
        return group_of(self.task) if self.task else None

    @cached_property
    def controls(self) -> tuple[Control, ...]:
        """Its boxes; the kind is chosen apart."""
        if self.shape is None or self.raw is None:
            return ()
        return tuple(one for one in controls_of(self.shape, self.raw, self.id) if one.loc != ("kind",))
