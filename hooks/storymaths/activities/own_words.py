"""An author's own words for a task: kept in a version for another year, unless they name numbers that changed."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import TypeVar

from ..model.activity import Context
from .kind import ActivityFields

F = TypeVar("F", bound=ActivityFields)
_NUMBER = re.compile(
    r"\d|\b(?:eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand)\b",
    re.IGNORECASE,
)
"""Small numbers in words, as in "which three friends", say how the task is done and are kept."""


def without_stale_words(
    fields: F, context: Context, versions: Iterable[tuple[F, Context, str]]
) -> Iterator[tuple[F, Context, str]]:
    """The versions; one with other numbers asks in the kind's words where the author's would be untrue."""
    stale = bool(fields.ask and _NUMBER.search(fields.ask))
    for changed, there, why in versions:
        same = changed == fields and there.characters == context.characters
        yield (changed if same or not stale else changed.model_copy(update={"ask": None})), there, why
