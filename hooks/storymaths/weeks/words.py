"""What a plan says of itself in sentences, and how it names what is taught.

``theme/look/weeks-words.js`` says the same on the reader's device.
"""

from __future__ import annotations

from .lessons import Part
from .plan import Plan
from .school_days import in_words


def counted(number: int, one: str, several: str = "") -> str:
    """A number of things: 1 day, 2 days."""
    return f"{number} {one if number == 1 else several or one + 's'}"


def name_of(part: Part) -> str:
    """What is taught: the title, and which part of it."""
    return part.lesson.title + (f" (part {part.number} of {part.of})" if part.of > 1 else "")


def steps_in_words(part: Part) -> str:
    """The steps of a part and their minutes."""
    return "; ".join(f"{step.name}, {counted(step.minutes, 'minute')}" for step in part.steps)


def sentences(plan: Plan, dated: bool = True) -> list[str]:
    """How long the plan is, where weekends fall, what is left free, what is split, and what it does not know."""
    taught = plan.taught
    if not taught:
        return ["There is nothing to teach: the series has no sessions."]
    lessons = len({part.lesson for _, part in taught})
    length = f"{counted(lessons, 'session')} on {counted(len(taught), 'day')}"
    ends = f"from {in_words(taught[0][0])} to {in_words(taught[-1][0])}"
    over = f"over {counted(plan.week(taught[-1][0]), 'week')}"
    said = [f"{length}, {ends if dated else over}."]
    said += [f"“{title}” has {counted(weekends, 'weekend')} in it." for title, weekends in plan.cut()]
    if not plan.cut():
        said.append("No book is cut by a weekend.")
    if plan.free:
        are = "is" if len(plan.free) == 1 else "are"
        said.append(f"{counted(len(plan.free), 'day')} {are} left free, so that weekends cut books less.")
    split = len({part.lesson for _, part in taught if part.of > 1})
    if split:
        are = "is" if split == 1 else "are"
        minutes = counted(plan.asked.minutes, "minute")
        said.append(f"{counted(split, 'session')} {are} longer than {minutes} and split at the end of a step.")
    if dated:
        said += _unknown(plan)
    return said


def _unknown(plan: Plan) -> list[str]:
    known = plan.asked.known
    if known is None or (known[0] <= plan.taught[0][0].year and plan.taught[-1][0].year <= known[1]):
        return []
    return [f"Bank holidays are known here from {known[0]} to {known[1]}: add those of other years to your own days."]
