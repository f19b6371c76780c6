"""Made-up lessons and askings for the tests of a plan."""

from __future__ import annotations

import datetime
from collections.abc import Sequence

from hypothesis import strategies as st
from storymaths.model.holiday import Holiday
from storymaths.weeks.lessons import Lesson, SeriesRun, Step
from storymaths.weeks.school_days import Asked

MONDAY = datetime.date(2027, 1, 11)


def a_lesson(number: int = 1, book: str = "boats", minutes: Sequence[int] = (10, 20, 15), title: str = "") -> Lesson:
    steps = tuple(Step(f"Step {n}", long) for n, long in enumerate(minutes, start=1))
    source = f"books/{book}/session-{number}.md"
    return Lesson(book, f"The {book}", number, title or f"{book} {number}", "pages 1 to 4", steps, source)


def a_run(*lessons: Lesson) -> SeriesRun:
    return SeriesRun("a-run", "A run", "1.0", datetime.date(2026, 11, 25), lessons)


def asked(start: datetime.date = MONDAY, minutes: int = 60, days: str = "0123", **more: object) -> Asked:
    return Asked(start, minutes, frozenset(map(int, days)), **more)  # type: ignore[arg-type]


starts = st.dates(datetime.date(2026, 6, 1), datetime.date(2028, 12, 31))
some_minutes = st.integers(20, 60)
"""Of a day: never less than the longest step of a made-up lesson."""


@st.composite
def runs(draw: st.DrawFn, most_books: int = 4, most_lessons: int = 5) -> SeriesRun:
    """A series of some books of some lessons, steps of 1 to 20 minutes."""
    lessons = []
    for book in range(draw(st.integers(1, most_books))):
        for number in range(1, draw(st.integers(1, most_lessons)) + 1):
            lessons.append(a_lesson(number, f"book-{book}", draw(st.lists(st.integers(1, 20), min_size=1, max_size=6))))
    return a_run(*lessons)


@st.composite
def askings(draw: st.DrawFn) -> Asked:
    """What some school may ask: any first day, days, minutes and holidays."""
    start = draw(starts)
    holidays = []
    for _ in range(draw(st.integers(0, 4))):
        first = start + datetime.timedelta(draw(st.integers(-5, 60)))
        holidays.append(
            Holiday(first, first + datetime.timedelta(draw(st.integers(0, 12))), draw(st.sampled_from("ABC")))
        )
    days = draw(st.frozensets(st.integers(0, 4), min_size=1))
    return Asked(
        start, draw(some_minutes), days, tuple(holidays), None, draw(st.booleans()), draw(st.sampled_from(["", "Oak"]))
    )
