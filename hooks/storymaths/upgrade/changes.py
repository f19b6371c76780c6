"""The table of what changed in the form of a collection's files, version by version."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, TypeAdapter

from ..model.fields import Strict
from ..model.program_version import ProgramVersion, is_newer
from ..parse.yaml_text import load

_TABLE = Path(__file__).with_name("changes.yaml")


class Renamed(Strict):
    """A field that has another name."""

    what: Literal["renamed"]
    since: ProgramVersion
    file: str = ""
    """The one file it is of, or none where it is of pages."""
    kinds: tuple[str, ...] = ()
    """The kinds of page it is of."""
    was: str
    """Its old name, after the keys it stands under, with dots between."""
    now: str


class Joined(Strict):
    """A file that has become part of another."""

    what: Literal["joined"]
    since: ProgramVersion
    was: str
    now: str


class Given(Strict):
    """A field that is needed now, and what was meant before it was."""

    what: Literal["given"]
    since: ProgramVersion
    file: str
    field: str
    value: str


class ToBends(Strict):
    """What an activity is in other years, which its page's bends say now."""

    what: Literal["to-bends"]
    since: ProgramVersion
    kinds: tuple[str, ...]


Change = Annotated[Renamed | Joined | Given | ToBends, Field(discriminator="what")]


def changes_since(version: str) -> Sequence[Change]:
    """What changed after a version, the oldest first."""
    rows, _ = load(_TABLE.read_text(encoding="utf-8"))
    table: tuple[Change, ...] = TypeAdapter(tuple[Change, ...]).validate_python(rows)
    return [change for change in table if is_newer(change.since, version)]
