"""What a device needs to lay a series on the days of a school; fetched by the series' page when its form is answered."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from ..model.holiday import BankHolidays
from ..model.series import Series
from ..render.site import Site
from ..weeks.lessons import SeriesRun, run_of


def weeks_data(site: Site) -> Mapping[str, dict[str, Any]]:
    """The data of each series, by the name of its file: ``weeks/a-term-of-lamps``.

    A lesson is ``[book id, book title, number, title, what it reads, address, [step, minutes, step, minutes …]]``, and
    a bank holiday ``[day, name]``. ``changed`` is the day of the series' last change, as a calendar writes it.
    """
    bank = _bank(site.collection.reference.bank_holidays)
    runs = [run_of(site.collection, page) for page in site.collection.of_kind(Series)]
    return {f"weeks/{run.id}": {**_series(run), "bank": bank} for run in runs}


def _series(run: SeriesRun) -> dict[str, Any]:
    return {
        "id": run.id,
        "title": run.title,
        "version": run.version,
        "changed": f"{run.changed:%Y%m%d}",
        "lessons": [
            [
                lesson.book,
                lesson.book_title,
                lesson.number,
                lesson.title,
                lesson.reads,
                f"{lesson.source.removesuffix('.md')}.html",
                [value for step in lesson.steps for value in (step.name, step.minutes)],
            ]
            for lesson in run.lessons
        ],
    }


def _bank(bank: BankHolidays) -> dict[str, Any]:
    days = [[day.date.isoformat(), day.name] for day in bank.holidays]
    return {"known": [bank.first_year, bank.last_year], "days": days}
