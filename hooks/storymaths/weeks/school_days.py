"""What a school asks of a plan: its first day, its weekdays, and the days it is away."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from ..model.holiday import Holiday, number_of

WEEKDAYS = ("mon", "tue", "wed", "thu", "fri")
USUAL_DAYS = frozenset({0, 1, 2, 3})
"""Monday to Thursday: four sessions a week are common practice, no source."""
DAY_NAMES = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday")


@dataclass(frozen=True, slots=True)
class Asked:
    """What a school asks of a plan."""

    start: datetime.date
    minutes: int
    """The most minutes a day has."""
    days: frozenset[int] = USUAL_DAYS
    """Weekdays by number, 0 for Monday to 4 for Friday; at least one."""
    holidays: tuple[Holiday, ...] = ()
    """Where two fall on one day the first counts."""
    known: tuple[int, int] | None = None
    """The first and last year whose bank holidays are among the holidays; None where none are."""
    waits: bool = True
    """Whether days may be left free so that weekends cut books less; else every school day is used from the first on."""
    of_class: str = ""
    """Whose plan it is, where somebody plans for more than one class."""

    def as_data(self) -> dict[str, object]:
        """The asking as the scripts take it: ``Asked`` in ``hooks/scripts/weeks/plan.js``."""
        return {
            "start": number_of(self.start),
            "minutes": self.minutes,
            "days": sorted(self.days),
            "holidays": [
                {"first": number_of(away.first), "last": number_of(away.last), "name": away.name}
                for away in self.holidays
            ],
            "known": self.known,
            "waits": self.waits,
            "ofClass": self.of_class,
        }
