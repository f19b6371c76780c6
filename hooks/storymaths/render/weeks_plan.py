"""The plan of the weeks on the page of a series: as it is without a start, and the form a reader's device answers."""

from __future__ import annotations

import datetime

from ..model.document import Document
from ..model.series import Series
from ..weeks.lessons import run_of
from ..weeks.plan import Plan, plan_weeks
from ..weeks.school_days import DAY_NAMES, USUAL_DAYS, WEEKDAYS, Asked
from .site import Site

_SOME_MONDAY = datetime.date(2024, 1, 1)
"""A plan without dates is laid from a Monday; which one is not told."""


def draw_plan_of_weeks(site: Site, page: Document[Series], source: str) -> str:
    """The section of a series' page; empty where the series has no sessions."""
    run = run_of(site.collection, page)
    if not run.lessons:
        return ""
    plan = plan_weeks(run, Asked(_SOME_MONDAY, run.longest), dated=False)
    return site.draw(
        "weeks.html",
        source,
        run=run,
        table=draw_table(site, plan, source),
        sentences=plan.sentences,
        weekdays=[(WEEKDAYS[n], name, n in USUAL_DAYS) for n, name in enumerate(DAY_NAMES)],
        bank=site.collection.reference.bank_holidays,
    )


def draw_table(site: Site, plan: Plan, source: str, linked: bool = True) -> str:
    """A plan as a table, week by week."""
    return site.draw("weeks_table.html", source, weeks=plan.weeks, linked=linked)
