"""What is true of every plan, whatever is asked; and a few plans worked out by hand."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from itertools import combinations, groupby, pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from project import collection
from storymaths.model.holiday import Holiday
from storymaths.model.series import Series
from storymaths.model.session import Session
from storymaths.weeks.lessons import Lesson, SeriesRun, run_of, sessions_of
from storymaths.weeks.plan import Part, Plan, plan_weeks
from storymaths.weeks.school_days import Asked

from .made_up import MONDAY, a_lesson, a_run, asked, askings, runs, some_minutes


def date(text: str) -> datetime.date:
    return datetime.date.fromisoformat(text)


def free(plan: Plan) -> list[datetime.date]:
    """Days left free so that books are cut less."""
    return [day.date for day in plan.days if day.part is None and day.holiday is None]


def is_away(wanted: Asked, day: datetime.date) -> bool:
    return any(holiday.first <= day <= holiday.last for holiday in wanted.holidays)


def parts_of(lesson: Lesson, minutes: int) -> list[Part]:
    """The parts of one lesson, found by laying it alone."""
    return [part for _, part in plan_weeks(a_run(lesson), asked(minutes=minutes)).taught]


def taught(plan: Plan) -> list[tuple[str, str]]:
    return [(day.isoformat(), f"{part.lesson.title}.{part.number}") for day, part in plan.taught]


@given(runs(), askings())
@settings(max_examples=150, deadline=None)
def test_every_session_is_taught_once_in_order_on_days_that_are_right(run: SeriesRun, wanted: Asked) -> None:
    plan = plan_weeks(run, wanted)
    days = [day for day, _ in plan.taught]
    assert all(one < other for one, other in pairwise(days)), "one lesson a day at most"
    assert [lesson for lesson, _ in groupby(part.lesson for _, part in plan.taught)] == list(run.lessons)
    for day, part in plan.taught:
        assert day >= wanted.start
        assert day.weekday() in wanted.days
        assert not is_away(wanted, day)
        assert part.minutes <= wanted.minutes
    for lesson, group in groupby((part for _, part in plan.taught), key=lambda part: part.lesson):
        parts = list(group)
        assert [part.number for part in parts] == list(range(1, len(parts) + 1))
        assert {part.of for part in parts} == {len(parts)}
        assert [step for part in parts for step in part.steps] == list(lesson.steps)


@given(runs(), askings())
@settings(max_examples=100, deadline=None)
def test_each_day_of_a_plan_is_taught_a_holiday_or_left_free(run: SeriesRun, wanted: Asked) -> None:
    plan = plan_weeks(run, wanted)
    ordinals = range(wanted.start.toordinal(), plan.taught[-1][0].toordinal() + 1)
    chosen = [day for day in map(datetime.date.fromordinal, ordinals) if day.weekday() in wanted.days]
    assert [day.date for day in plan.days] == chosen
    for day in plan.days:
        away = is_away(wanted, day.date)
        assert away == (day.holiday is not None)
        assert not (away and day.part)
    if not wanted.waits:
        assert free(plan) == []
    shown = plan.rows
    assert [row.part for row in shown if row.part] == [part for _, part in plan.taught]


@given(runs(most_books=2, most_lessons=3), askings())
@settings(max_examples=60, deadline=None)
def test_no_other_choice_of_first_days_has_fewer_weekends_in_books(run: SeriesRun, wanted: Asked) -> None:
    """By brute force over every pair of first days in the nine weeks on, holidays and all."""
    plan = plan_weeks(run, Asked(wanted.start, 60, wanted.days, wanted.holidays))
    days = [wanted.start + datetime.timedelta(n) for n in range(16 * 7)]
    school = [day for day in days if day.weekday() in wanted.days and not is_away(wanted, day)]
    books = [list(group) for _, group in groupby(run.lessons, key=lambda lesson: lesson.book)]
    counts = [sum(len(parts_of(lesson, 60)) for lesson in book) for book in books]
    least = min(
        weekends(school, counts, firsts)
        for firsts in combinations(range(len(school)), len(books))
        if fits(counts, firsts, school)
    )
    assert sum(number for _, number in plan.cut) == least


def fits(counts: Sequence[int], firsts: Sequence[int], school: Sequence[datetime.date]) -> bool:
    ends = [first + count for first, count in zip(firsts, counts, strict=True)]
    return all(end <= first for end, first in zip(ends, firsts[1:], strict=False)) and ends[-1] <= len(school)


def weekends(school: Sequence[datetime.date], counts: Sequence[int], firsts: Sequence[int]) -> int:
    """Sundays between the first and last day of each book."""
    found = 0
    for first, count in zip(firsts, counts, strict=True):
        between = range(school[first].toordinal(), school[first + count - 1].toordinal())
        found += sum(datetime.date.fromordinal(day).isoweekday() == 7 for day in between)
    return found


@given(st.lists(st.integers(1, 20), min_size=1, max_size=9), some_minutes)
@settings(deadline=None)
def test_a_lesson_is_split_into_as_few_days_as_can_be_and_those_about_as_long(minutes: list[int], day: int) -> None:
    parts = parts_of(a_lesson(minutes=minutes), day)
    best = min(
        (len(cuts) + 1, max(map(sum, pieces)), [-sum(piece) for piece in pieces])
        for many in range(len(minutes))
        for cuts in combinations(range(1, len(minutes)), many)
        if max(map(sum, pieces := [minutes[a:b] for a, b in pairwise((0, *cuts, len(minutes)))])) <= day
    )
    assert (len(parts), max(part.minutes for part in parts), [-part.minutes for part in parts]) == best


FOUR = [a_lesson(number, "boats") for number in range(1, 5)]
FOUR_MORE = [a_lesson(number, "lamps") for number in range(1, 5)]


def test_four_sessions_a_week_are_a_week_a_book() -> None:
    plan = plan_weeks(a_run(*FOUR, *FOUR_MORE), asked(MONDAY))
    assert taught(plan)[0] == ("2027-01-11", "boats 1.1")
    assert taught(plan)[3:5] == [("2027-01-14", "boats 4.1"), ("2027-01-18", "lamps 1.1")]
    assert (free(plan), plan.cut) == ([], ())


def test_a_start_on_wednesday_waits_for_monday_unless_every_day_is_wanted() -> None:
    plan = plan_weeks(a_run(*FOUR), asked(date("2027-01-13")))
    assert taught(plan)[0][0] == "2027-01-18"
    assert free(plan) == [date("2027-01-13"), date("2027-01-14")]
    at_once = plan_weeks(a_run(*FOUR), asked(date("2027-01-13"), waits=False))
    assert [day for day, _ in taught(at_once)] == ["2027-01-13", "2027-01-14", "2027-01-18", "2027-01-19"]
    assert at_once.cut == (("The boats", 1),)


def test_half_term_and_a_training_day_are_left_out_and_named() -> None:
    away = (
        Holiday(date("2027-02-15"), date("2027-02-19"), "Half term"),
        Holiday(date("2027-02-22"), date("2027-02-22"), "Training day"),
    )
    plan = plan_weeks(a_run(*FOUR), asked(date("2027-02-15"), days="01234", holidays=away))
    assert [(row.when, row.why) for row in plan.rows if row.why] == [
        ("Monday 15 February to Friday 19 February", "Half term"),
        ("Monday 22 February", "Training day"),
    ]
    assert [day for day, _ in taught(plan)] == [f"2027-02-{day}" for day in (23, 24, 25, 26)]


def test_a_cut_over_half_term_is_worse_than_one_over_a_weekend() -> None:
    away = (Holiday(date("2027-02-15"), date("2027-02-19"), "Half term"),)
    six = [a_lesson(number) for number in range(1, 7)]
    plan = plan_weeks(a_run(*six), asked(date("2027-02-08"), holidays=away))
    assert taught(plan)[0][0] == "2027-02-22"


def test_sentences_say_what_the_plan_is() -> None:
    long = [a_lesson(number, "boats", (20, 20, 20)) for number in range(1, 6)]
    plan = plan_weeks(a_run(*long), asked(date("2027-12-30"), minutes=40, days="0123", known=(2026, 2028)))
    assert list(plan.sentences) == [
        "5 sessions on 10 days, from Monday 3 January 2028 to Tuesday 18 January 2028.",
        "“The boats” has 2 weekends in it.",
        "1 day is left free, so that fewer books are split by a weekend.",
        "5 sessions are longer than 40 minutes and split at the end of a step.",
    ]
    later = plan_weeks(a_run(*FOUR), asked(date("2029-01-08"), known=(2026, 2028)))
    assert later.sentences[-1].startswith("Bank holidays are known here from 2026 to 2028")
    assert plan_weeks(a_run(*FOUR), asked(MONDAY), dated=False).sentences[0] == "4 sessions on 4 days, over 1 week."
    assert plan_weeks(a_run(), asked(MONDAY)).sentences == ("There is nothing to teach: the series has no sessions.",)


@pytest.mark.parametrize("series", collection().of_kind(Series), ids=lambda page: page.path)
def test_a_series_keeps_what_its_sessions_need(series: object) -> None:
    (page,) = [one for one in collection().of_kind(Series) if one is series]
    pages = {f"books/{doc.path.split('/', 2)[2]}": doc for doc in collection().of_kind(Session)}
    run = run_of(collection(), page)
    assert len(run.lessons) == len(sessions_of(collection(), page))
    seen: list[tuple[str, int]] = []
    for _, part in plan_weeks(run, asked(MONDAY, minutes=25)).taught:
        lesson: Lesson = part.lesson
        needs = pages[lesson.source].fields.needs
        assert all((lesson.book, number) in seen for number in needs)
        if part.number == part.of:
            seen.append((lesson.book, lesson.number))


def test_pages_read_are_told_as_people_say_them() -> None:
    told = {
        lesson.title: lesson.reads
        for page in collection().of_kind(Series)
        for lesson in run_of(collection(), page).lessons
    }
    assert told["Level or not level?"] == "pages 1 to 6"
    assert told["Rows of lamps"] == "page 4, pages 7 to 8 and page 9"


def test_a_series_of_one_lesson() -> None:
    assert taught(plan_weeks(a_run(a_lesson()), asked(MONDAY, days="4"))) == [("2027-01-15", "boats 1.1")]
