"""The bank holidays of the site's data, worked out again from the words of the law.

Sources: Banking and Financial Dealings Act 1971 (c. 80), section 1 and Schedule 1, paragraph 1: Easter Monday, the last
Monday in May, the last Monday in August, 26 December if it be not a Sunday, and 27 December in a year in which 25 or 26
December is a Sunday. Good Friday and Christmas Day by common law (House of Lords, 9 December 1971). 1 January, the first
Monday in May and substitutes by proclamation (London Gazette; that of 24 June 1998 appoints Monday 28 December 1998).
Easter is that of ``dateutil.easter``. The working out is held against the list the government published for 2017, 2018,
2019, 2021 and 2023 (Government Digital Service, bank-holidays.json): years without a jubilee or a moved day, with a
Christmas on a Saturday and two New Year's Days on a Sunday among them.
"""

from __future__ import annotations

import datetime

import pytest
from dateutil.easter import easter
from project import reference

PUBLISHED = {
    2017: "01-02 04-14 04-17 05-01 05-29 08-28 12-25 12-26",
    2018: "01-01 03-30 04-02 05-07 05-28 08-27 12-25 12-26",
    2019: "01-01 04-19 04-22 05-06 05-27 08-26 12-25 12-26",
    2021: "01-01 04-02 04-05 05-03 05-31 08-30 12-27 12-28",
    2023: "01-02 04-07 04-10 05-01 05-29 08-28 12-25 12-26",
}
DAY = datetime.timedelta(days=1)


def mondays(year: int, month: int) -> list[datetime.date]:
    days = (datetime.date(year, month, 1) + n * DAY for n in range(31))
    return [day for day in days if day.month == month and day.isoweekday() == 1]


def moved(days: list[datetime.date]) -> list[datetime.date]:
    """Each day, or where it is on a Saturday or Sunday the next weekday none of the others is on."""
    kept = [day for day in days if day.isoweekday() < 6]
    for day in (day for day in days if day.isoweekday() >= 6):
        kept.append(next(d for d in (day + n * DAY for n in range(9)) if d.isoweekday() < 6 and d not in kept))
    return kept


def worked_out(year: int) -> list[datetime.date]:
    sunday = easter(year)
    days = [sunday - 2 * DAY, sunday + DAY, mondays(year, 5)[0], mondays(year, 5)[-1], mondays(year, 8)[-1]]
    days += moved([datetime.date(year, 1, 1)])
    days += moved([datetime.date(year, 12, 25), datetime.date(year, 12, 26)])
    return sorted(days)


@pytest.mark.parametrize("year", PUBLISHED)
def test_the_working_out_gives_what_was_published(year: int) -> None:
    assert [f"{day:%m-%d}" for day in worked_out(year)] == PUBLISHED[year].split()


def test_every_year_of_the_data_is_what_the_law_gives() -> None:
    bank = reference().bank_holidays
    for year in range(bank.first_year, bank.last_year + 1):
        assert [day.date for day in bank.holidays if day.date.year == year] == worked_out(year)


def test_the_grounds_are_those_of_the_law() -> None:
    """26 December 2026 is a Saturday: that is the Act's own day, and the Monday is proclaimed; 27 December 2027 is the Act's."""
    for day in reference().bank_holidays.holidays:
        expected = "statute"
        if "Good Friday" in day.name or day.name == "Christmas Day":
            expected = "custom"
        elif "New Year" in day.name or "Early May" in day.name or (day.date.month, day.date.day) == (12, 28):
            expected = "proclamation"
        assert day.by == expected, day


def test_names_belong_to_their_days() -> None:
    for day in reference().bank_holidays.holidays:
        assert ("Monday" in day.name) <= (day.date.isoweekday() == 1)
        assert ("Friday" in day.name) <= (day.date.isoweekday() == 5)
        fixed = {"New Year": (1, 1), "Christmas": (12, 25), "Boxing": (12, 26)}
        for name, own in fixed.items():
            if name in day.name:
                assert ("substitute" in day.name) == ((day.date.month, day.date.day) != own)
