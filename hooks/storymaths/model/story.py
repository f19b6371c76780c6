"""The story of a picture book, page by page."""

from __future__ import annotations

from typing import Literal

from .dates import Dated
from .fields import Id, Text
from .session import Status


class Story(Dated):
    """The story itself, where the rights allow: one ``## Page n`` heading a page."""

    kind: Literal["story"]
    status: Status = "ready"
    book: Id
    title: Text
    summary: Text | None = None
