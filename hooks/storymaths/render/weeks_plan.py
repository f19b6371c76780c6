"""The plan of the weeks on the page of a series: as it is without a start, and the form a reader's device answers."""

from __future__ import annotations

import datetime

from ..model.document import Document
from ..model.series import Series
from ..weeks.lessons import run_of
from ..weeks.plan import Plan, plan_weeks
from ..weeks.rows import weeks_of
from ..weeks.school_days import DAY_NAMES, USUAL_DAYS, WEEKDAYS, Asked
from ..weeks.words import name_of, sentences, steps_in_words
from .site import Site

_SOME_MONDAY = datetime.date(2024, 1, 1)
"""A plan without dates is laid from a Monday; which one is not told."""


def draw_plan_of_weeks(site: Site, page: Document[Series], source: str) -> str:
    """The section of a series' page; empty where the series has no sessions."""
    run = run_of(site.collection, page)
    if not run.lessons:
        return ""
    plan = plan_weeks(run.lessons, Asked(_SOME_MONDAY, run.longest))
    return site.draw(
        "weeks.html",
        source,
        run=run,
        table=draw_table(site, plan, source, dated=False),
        sentences=sentences(plan, dated=False),
        weekdays=[(WEEKDAYS[n], name, n in USUAL_DAYS) for n, name in enumerate(DAY_NAMES)],
        bank=site.collection.reference.bank_holidays,
    )


def draw_table(site: Site, plan: Plan, source: str, dated: bool = True, linked: bool = True) -> str:
    """A plan as a table, week by week."""
    weeks = weeks_of(plan, dated)
    values = {"weeks": weeks, "name_of": name_of, "steps_in_words": steps_in_words, "linked": linked}
    return site.draw("weeks_table.html", source, **values)
