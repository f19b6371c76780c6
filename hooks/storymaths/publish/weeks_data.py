"""What a device needs to lay a series on the days of a school; fetched by the series' page when its form is answered."""

from __future__ import annotations

from collections.abc import Mapping

from ..model.holiday import BankHolidays
from ..model.series import Series
from ..render.site import Site
from ..weeks.lessons import run_of


def weeks_data(site: Site) -> Mapping[str, dict[str, object]]:
    """The data of each series, by the name of its file: ``weeks/a-term-of-lamps``. A bank holiday is ``[day, name]``."""
    bank = _bank(site.collection.reference.bank_holidays)
    runs = [run_of(site.collection, page) for page in site.collection.of_kind(Series)]
    return {f"weeks/{run.id}": {**run.as_data(), "bank": bank} for run in runs}


def _bank(bank: BankHolidays) -> dict[str, object]:
    days = [[day.date.isoformat(), day.name] for day in bank.holidays]
    return {"known": [bank.first_year, bank.last_year], "days": days}
