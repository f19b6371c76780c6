"""When a page was first published and how it has changed since. Dates come from the content, never from the clock."""

from __future__ import annotations

import datetime

from .fields import AdultText, Day, Strict


class PageChange(Strict):
    """One change of a page a reader would want to know of, in plain words."""

    date: Day
    """The day of the change, year first."""
    what: AdultText
    """What a reader finds changed, in a sentence."""


class Dated(Strict):
    """What every written page may say of its own history; a page that says nothing has no dates."""

    published: Day | None = None
    """The day the page first stands on the site, year first. Without it the page shows no date."""
    changed: tuple[PageChange, ...] = ()
    """Changes worth telling a reader of, the newest last."""

    @property
    def updated(self) -> datetime.date | None:
        """The day of the last change, or of publishing when there was none."""
        return self.changed[-1].date if self.changed else self.published
