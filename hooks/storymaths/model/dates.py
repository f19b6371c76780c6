"""When a page was first published and how it has changed since. Dates come from the content, never from the clock."""

from __future__ import annotations

import datetime

from .fields import AdultText, Day, Strict


class PageChange(Strict):
    """One change of a page a reader would want to know of, in plain words."""

    date: Day
    what: AdultText


class Dated(Strict):
    """What every written page may say of its own history; a page that says nothing has no dates."""

    published: Day | None = None
    changed: tuple[PageChange, ...] = ()
    """In the order of their dates, newest last."""

    @property
    def updated(self) -> datetime.date | None:
        """The day of the last change, or of publishing when there was none."""
        return self.changed[-1].date if self.changed else self.published
