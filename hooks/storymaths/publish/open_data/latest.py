"""The day the collection last changed, as its own pages and data say it."""

from __future__ import annotations

import datetime

from ...model.collection import Collection


def latest(collection: Collection) -> datetime.date | None:
    """The newest day any page was published or changed; None when no page says."""
    days = [page.fields.updated for page in collection.documents if page.fields.updated]
    return max(days, default=None)


def midnight(day: datetime.date) -> str:
    """A day as a moment, the way RFC 3339 writes one: content knows days, some formats ask for moments."""
    return f"{day.isoformat()}T00:00:00Z"
