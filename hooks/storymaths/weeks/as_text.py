"""A plan as plain text, to read where it is asked for."""

from __future__ import annotations

from .lessons import SeriesRun
from .plan import Plan
from .rows import weeks_of
from .words import counted, name_of, sentences


def as_text(run: SeriesRun, plan: Plan) -> str:
    """The plan week by week, under what it says of itself."""
    lines = [title_of(run, plan), *sentences(plan)]
    wide = max((len(row.when) for _, rows in weeks_of(plan) for row in rows), default=0)
    for week, rows in weeks_of(plan):
        lines += ["", f"Week {week}"]
        for row in rows:
            said = row.why
            if row.part is not None:
                lesson = row.part.lesson
                said = (
                    f"{lesson.book_title} {lesson.number}: {name_of(row.part)}, {counted(row.part.minutes, 'minute')}"
                )
            lines.append(f"  {row.when:<{wide}}  {said}")
    return "\n".join(lines) + "\n"


def title_of(run: SeriesRun, plan: Plan) -> str:
    """The series and its version, and whose plan it is."""
    of_class = f": {plan.asked.of_class}" if plan.asked.of_class else ""
    return f"{run.title}, version {run.version}{of_class}"
