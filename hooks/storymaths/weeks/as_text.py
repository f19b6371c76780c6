"""A plan as plain text, to read where it is asked for."""

from __future__ import annotations

from .lessons import SeriesRun
from .plan import Plan, Row


def as_text(run: SeriesRun, plan: Plan) -> str:
    """The plan week by week, under what it says of itself."""
    lines = [title_of(run, plan), *plan.sentences]
    wide = max((len(row.when) for row in plan.rows), default=0)
    for week, rows in plan.weeks:
        lines += ["", f"Week {week}", *(f"  {row.when:<{wide}}  {_what(row)}" for row in rows)]
    return "\n".join(lines) + "\n"


def _what(row: Row) -> str:
    if row.part is None:
        return row.why
    lesson, minutes = row.part.lesson, row.part.minutes
    return f"{lesson.book_title} {lesson.number}: {row.part.name}, {minutes} minute{'' if minutes == 1 else 's'}"


def title_of(run: SeriesRun, plan: Plan) -> str:
    """The series and its version, and whose plan it is."""
    of_class = f": {plan.asked.of_class}" if plan.asked.of_class else ""
    return f"{run.title}, version {run.version}{of_class}"
