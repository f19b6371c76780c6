"""An activity of a page worked out as it stands in the file, whatever is wrong with the page around it."""

from __future__ import annotations

from collections.abc import Sequence
from posixpath import dirname

from ..activities.work_out import WorkedOut, work_out
from ..build import Build
from ..edits.edit import EditRefused
from ..model.address import CONTENT
from .page_text import PageText

_USUAL_YEAR = 2


def work_out_part(build: Build, source: str, text: PageText, number: int) -> WorkedOut:
    """The activity of a number, with the book as the collection was last read. Raises ``EditRefused``."""
    collection = build.reading.collection
    if collection is None:
        raise EditRefused("The data in site_data cannot be used; `storymaths check` says why.")
    path = f"{CONTENT}{source}"
    read = build.reading.activities.get(path, ())
    if number < len(read) and read[number].fence.text == text.activities[number].text:
        return read[number].worked
    raw = text.raw or {}
    record = collection.books.get(str(raw.get("book", "")))
    year = raw.get("year")
    return work_out(
        text.activities[number].text,
        path,
        1,
        record.fields if record else None,
        year if isinstance(year, int) and year in collection.reference.years else _USUAL_YEAR,
        collection.reference,
        folder=dirname(record.source) if record else "",
    )


def years_it_fits(build: Build, worked: WorkedOut) -> Sequence[int]:
    """The years within whose reach it is; none where it could not be worked out."""
    collection = build.reading.collection
    return worked.years_it_fits(collection.reference) if collection else ()
