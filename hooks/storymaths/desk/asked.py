"""What may be asked at the desk: each change that a form offers, as it is sent, and nothing else."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, TypeAdapter

from ..model.fields import Strict

Step = Annotated[str, Field(max_length=200, strict=True)] | Annotated[int, Field(ge=0, strict=True)]


class InForm(Strict):
    """Of a value: in which form it stands, and where in it."""

    activity: Annotated[int, Field(ge=0)] | None = None
    """The number of the activity; none for front matter."""
    loc: Annotated[tuple[Step, ...], Field(min_length=1, max_length=16)]


class Type(InForm):
    """What was typed or chosen; an empty box takes a field out that the page can do without."""

    do: Literal["type"]
    text: Annotated[str, Field(max_length=100_000)]


class Turn(InForm):
    """Another sort for a value that may be of several, by its number; none takes the field out."""

    do: Literal["turn"]
    sort: Annotated[int, Field(ge=0)] | None = None


class Add(InForm):
    """One more item of a list, or with a key of a mapping; with a text, that is in it."""

    do: Literal["add"]
    key: str | None = None
    text: str | None = None


class Remove(InForm):
    """An item, or a field, taken out."""

    do: Literal["remove"]


class Move(InForm):
    """An item of a list, put in another place of it."""

    do: Literal["move"]
    to: int


class Write(Strict):
    """The words of a part of a section."""

    do: Literal["write"]
    section: int
    part: int
    text: Annotated[str, Field(max_length=100_000)]


class WriteActivity(Strict):
    """The whole data of an activity, typed as it stands in the file; or another kind and task for it."""

    do: Literal["write-activity"]
    activity: int
    text: Annotated[str, Field(max_length=20_000)] = ""
    kind: str = ""
    task: str = ""


class BeginActivity(Strict):
    """An activity of a kind and task behind a part of a section."""

    do: Literal["begin-activity"]
    section: int
    part: int
    kind: str
    task: str = ""


class PutActivity(Strict):
    """An activity whose data are given, at the end of a section."""

    do: Literal["put-activity"]
    section: int
    text: Annotated[str, Field(max_length=20_000)]


class RemoveActivity(Strict):
    """An activity taken out of its section."""

    do: Literal["remove-activity"]
    section: int
    part: int


class Section(Strict):
    """A section added, taken out, moved or given another name."""

    do: Literal["add-section", "remove-section", "move-section", "rename-section"]
    section: int = 0
    name: Annotated[str, Field(max_length=200)] = ""
    to: int = 0


Asked = (
    Type | Turn | Add | Remove | Move | Write | WriteActivity | BeginActivity | PutActivity | RemoveActivity | Section
)
ASKED: TypeAdapter[Asked] = TypeAdapter(Annotated[Asked, Field(discriminator="do")])
