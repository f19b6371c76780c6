"""A school's own holidays, line by line: what is read, and where what cannot be read stands."""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.check.holiday_unreadable import problems_in
from storymaths.model.holiday import Holiday
from storymaths.parse.holiday_lines import read_holidays

FEB = datetime.date(2027, 2, 15)


def test_days_stretches_names_and_notes_are_read() -> None:
    text = "\ufeff# Our year\r\n2027-02-15..2027-02-19 Half term\r\n\n \t2027-02-22\tTraining day \n2027-03-01\r# 2027-03-02"
    read, unread = read_holidays(text)
    assert unread == ()
    assert read == (
        Holiday(FEB, datetime.date(2027, 2, 19), "Half term"),
        Holiday(datetime.date(2027, 2, 22), datetime.date(2027, 2, 22), "Training day"),
        Holiday(datetime.date(2027, 3, 1), datetime.date(2027, 3, 1), "No school"),
    )


@pytest.mark.parametrize(
    "line",
    [
        *("15/02/2027 - 19/02/2027 half term", "15/2/27-19/2/27 half term", "15.02.2027 to 19.02.2027, half term"),
        *("Mon 15 Feb 2027 – Fri 19 Feb 2027: half term", "15 to 19 February 2027 half term", "15/02 - 19/02/2027 half term"),
        *("15th Feb until 19th of Feb 2027 half term", "2027-02-15 .. 2027-02-19 half term", "2027-02-15 to 19/02/2027 half term"),
    ],
)  # fmt: skip
def test_days_are_read_as_people_write_them(line: str) -> None:
    assert read_holidays(line) == ((Holiday(FEB, datetime.date(2027, 2, 19), "half term"),), ())


def test_a_stretch_over_new_year_and_a_day_with_a_name_after_a_dash() -> None:
    read, _ = read_holidays("28 Dec - 3 Jan 2027\n15/02/2027 - Training day")
    assert read == (
        Holiday(datetime.date(2026, 12, 28), datetime.date(2027, 1, 3), "No school"),
        Holiday(FEB, FEB, "Training day"),
    )


@pytest.mark.parametrize(
    ("line", "column", "why"),
    [
        ("Half term", 1, '"Half" is not a day'),
        ("  30/2/27 Half term", 3, '"30/2/27" is not a day of the calendar'),
        ("15 Feb Half term", 1, '"15 Feb" does not say its year'),
        ("Tuesday 15 February 2027", 1, "Monday 15 February 2027 is not a Tuesday"),
        ("15/02/2027 - 31/02/2027", 14, '"31/02/2027" is not a day of the calendar'),
        ("2027-02-30 Oh", 1, '"2027-02-30" is not a day of the calendar'),
        ("2027-13-01", 1, "is not a day of the calendar"),
        ("1927-02-15", 1, "is not in the years 2000 to 2099"),
        ("2027-02-15..soon Half term", 13, '"soon" is not a day'),
        ("2027-02-15.. Half term", 14, '"Half" is not a day'),
        (
            "2027-02-19..2027-02-15 Half term",
            1,
            "It ends on Monday 15 February 2027, before it starts on Friday 19 February 2027",
        ),
        ("2027-02-15..2028-02-16 Long", 1, "It is 367 days long"),
        ("٢٠٢٧-02-15", 1, "is not a day written"),
    ],
)
def test_a_line_that_cannot_be_read_says_where_and_why(line: str, column: int, why: str) -> None:
    read, unread = read_holidays(f"2027-01-04 Training day\n{line}\n")
    assert len(read) == 1
    (problem,) = problems_in("days.txt", unread)
    assert (str(problem.place), problem.rule) == (f"days.txt:2:{column}", "holiday-unreadable")
    assert why in problem.message
    assert "15/02/2027 - 19/02/2027" in problem.fix


def test_every_line_that_cannot_be_read_is_told() -> None:
    _, unread = read_holidays("a\n2027-02-15\nb\n\nc")
    assert [line.line for line in unread] == [1, 3, 5]


@given(st.text())
@settings(deadline=None)
def test_any_text_is_read_or_refused_line_by_line(text: str) -> None:
    read, unread = read_holidays(text)
    assert all(holiday.first <= holiday.last for holiday in read)
    assert all(line.line >= 1 and line.column >= 1 and line.why for line in unread)


@given(st.dates(datetime.date(2000, 1, 1), datetime.date(2099, 1, 1)), st.integers(0, 300))
@settings(deadline=None)
def test_what_is_written_is_read(first: datetime.date, more: int) -> None:
    last = first + datetime.timedelta(more)
    assert read_holidays(f"{first}..{last} Away")[0] == (Holiday(first, last, "Away"),)
