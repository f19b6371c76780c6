"""A page that is no longer where it was: renamed, or taken out of use."""

from __future__ import annotations

import datetime
from typing import Annotated

from pydantic import Field, StringConstraints, model_validator

from .fields import Strict, Text

SOURCE = r"^[a-z0-9-]+(/[a-z0-9-]+)*\.md$"
"""The form of the next, which messages put into words."""
Source = Annotated[str, StringConstraints(pattern=SOURCE, strict=True)]
"""A page as its file is named inside ``content/``: ``books/lift/session-1.md``."""


class Moved(Strict):
    """Where a page was, since when it is not, and where its readers are led.

    One that was renamed gives ``to``, and readers are taken there. One that was retired says why in a line, and gives
    in ``see`` the page that may serve instead.
    """

    was: Source = Field(alias="from")
    since: datetime.date
    to: Source | None = None
    retired: Text | None = None
    see: Source | None = None

    @model_validator(mode="after")
    def _one_way_or_the_other(self) -> Moved:
        renamed = self.to is not None and self.retired is None and self.see is None
        retired = self.to is None and self.retired is not None and self.see is not None
        if not (renamed or retired):
            raise ValueError("a page that moved has either to: or both retired: and see:")
        return self

    @property
    def leads_to(self) -> str:
        """The page its readers are led to."""
        return self.to or self.see or ""
