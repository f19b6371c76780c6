"""A plain page of the collection, such as its first page or its credits."""

from __future__ import annotations

from typing import Literal

from .dates import Dated
from .fields import Text
from .session import Status


class Page(Dated):
    """A plain page: words only."""

    kind: Literal["page"]
    status: Status = "ready"
    title: Text
    summary: Text
