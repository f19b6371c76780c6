"""The series a command is given by name, out of a project that has been read and has no problems."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from ..model.collection import Collection
from ..model.document import Document
from ..model.series import Series
from ..parse.suggestion import did_you_mean
from ..reading import Reading, read_and_check
from .command import FAILED, Misused
from .terminal import as_text, count_problems


@dataclass(frozen=True, slots=True)
class Wanted:
    """A series and what is published, drafts left out."""

    reading: Reading
    """Everything, drafts too."""
    collection: Collection
    series: Document[Series]


def find_series(root: Path, name: str) -> Wanted:
    """The series of a name, which may also be written as the path of its file. Raises ``Misused``."""
    reading = read_and_check(root)
    if reading.problems or reading.collection is None:
        number = count_problems(len(reading.problems))
        raise Misused(f"{as_text(reading.problems)}\n{number} in the content: mend them first.", FAILED)
    plain = name.replace("\\", "/").rstrip("/").rpartition("/")[2].removesuffix(".md").removesuffix(".html")
    series = reading.collection.series
    if plain not in series:
        known = ", ".join(sorted(series)) or "none yet"
        near = did_you_mean(plain, series) or f" Series here: {known}."
        raise Misused(f'There is no series "{name}" in content/series.{near}')
    if series[plain].fields.status == "draft":
        raise Misused(f"The series {plain} is a draft: take out its line status: draft first.")
    return Wanted(reading, reading.collection.without_drafts(), series[plain])
