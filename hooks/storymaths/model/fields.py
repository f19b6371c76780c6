"""Kinds of value shared by every schema: years, page ranges, whole sentences, names used as keys."""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from enum import Enum
from typing import Annotated, Any, NamedTuple

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, Field, PlainValidator, StringConstraints

RECEPTION = 0
YEARS = range(RECEPTION, 7)


class Strict(BaseModel):
    """A schema that refuses unknown keys and never changes once made."""

    # Schemas are made when first needed: a command that never meets a kind of page does not pay for it.
    model_config = ConfigDict(extra="forbid", frozen=True, defer_build=True)


def year_name(year: int) -> str:
    """The words a school uses: ``Reception`` for 0, else ``Year 3``."""
    return "Reception" if year == RECEPTION else f"Year {year}"


def _year(value: Any) -> Any:
    if value == "Reception":
        return RECEPTION
    if isinstance(value, bool) or not isinstance(value, int) or value == RECEPTION:
        raise ValueError("a year is Reception, 1, 2, 3, 4, 5 or 6")
    return value


def _in_schooling(year: int) -> int:
    if year not in YEARS:
        raise ValueError("a year is Reception, 1, 2, 3, 4, 5 or 6")
    return year


Year = Annotated[int, BeforeValidator(_year), AfterValidator(_in_schooling)]
"""A school year in England: 0 stands for Reception, 1 to 6 for Years 1 to 6."""


class Pages(tuple[int, ...]):
    """First and last page of a stretch of a book, both read. ``4`` is pages 4 to 4."""

    __slots__ = ()

    @property
    def first(self) -> int:
        """The page the stretch starts on."""
        return self[0]

    @property
    def last(self) -> int:
        """The page the stretch ends on."""
        return self[1]

    def __contains__(self, page: object) -> bool:
        return isinstance(page, int) and self[0] <= page <= self[1]

    def __str__(self) -> str:
        return f"page {self[0]}" if self[0] == self[1] else f"pages {self[0]} to {self[1]}"


def _pages(value: Any) -> Pages:
    problem = ValueError("pages are written 4, or 4-7 for pages 4 to 7")
    if isinstance(value, Pages):
        return value
    if isinstance(value, bool) or not isinstance(value, (int, str)):
        raise problem
    ends = str(value).replace("–", "-").split("-")
    if len(ends) > 2 or not all(end.strip().isdecimal() for end in ends):
        raise problem
    first, last = int(ends[0]), int(ends[-1])
    if first < 1 or last < first:
        raise ValueError("pages start at 1 and the second number is not smaller than the first")
    return Pages((first, last))


PageRange = Annotated[Pages, PlainValidator(_pages)]


class Audience(Enum):
    """Whom the words of a field are for. What has none is a name, a code or a number."""

    PUPILS = "pupils"
    ADULTS = "adults"


_Words = StringConstraints(min_length=1, strip_whitespace=True, strict=True)
Text = Annotated[str, _Words, Audience.PUPILS]
"""Words of the lesson: may hold Markdown; never empty. Their numbers, signs and sums are held to the pupils' year."""
AdultText = Annotated[str, _Words, Audience.ADULTS]
"""Words for adults alone, such as what to get ready: may hold Markdown; never empty."""
FileName = Annotated[str, _Words]
"""The name of a file beside the page."""

ID = r"^[a-z0-9]+(-[a-z0-9]+)*$"
"""The form of the next, which messages put into words."""
Id = Annotated[str, StringConstraints(pattern=ID, strict=True)]
"""A name used as a key and in addresses: small letters, digits and single hyphens."""

LISTED_ID = r"^[A-Za-z0-9][A-Za-z0-9' -]*$"
"""The form of the next: words as people write them, so that they are told which name is the nearest."""
ListedId = Annotated[str, StringConstraints(pattern=LISTED_ID, strict=True)]
"""An id of a list in ``site_data/``. That it is there, and so is of that form, its list's own rule says, with the nearest."""


_DAY = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)


def _day(value: Any) -> datetime.date:
    if isinstance(value, datetime.date) and not isinstance(value, datetime.datetime):
        return value
    try:
        if isinstance(value, str) and _DAY.fullmatch(value):
            return datetime.date.fromisoformat(value)
    except ValueError:  # such as 2027-02-30
        pass
    raise ValueError("a date is written year-month-day, such as 2027-01-11, and is on the calendar")


Day = Annotated[datetime.date, PlainValidator(_day)]
"""A day of the calendar, without a time."""

Count = Annotated[int, Field(ge=1, strict=True)]
Minutes = Annotated[int, Field(ge=1, le=240, strict=True)]
Codes = Mapping[str, tuple[str, ...]]
"""Objective codes by framework, as written: ``{england-content-domain: [2C4]}``."""


class Claim(NamedTuple):
    """An objective a session names, and which parts of it."""

    code: str
    parts: tuple[str, ...] = ()
    """Ids of parts, or ``all``; empty where none is named."""


def _claim(value: object) -> Claim:
    if isinstance(value, str):
        return Claim(value)
    if isinstance(value, Claim):
        return value
    if isinstance(value, dict) and len(value) == 1:
        ((code, parts),) = value.items()
        listed = [parts] if isinstance(parts, str) else parts
        if isinstance(code, str) and isinstance(listed, list) and listed and all(isinstance(p, str) for p in listed):
            return Claim(code, tuple(listed))
    raise ValueError("an objective is written 2C4, or 2N1: [tens, tens-back] to say which parts of it")


Claims = Mapping[str, tuple[Annotated[Claim, PlainValidator(_claim)], ...]]
"""Objectives by framework, with their parts: ``{england-content-domain: [2C4, 2N1: [tens, tens-back]]}``."""
