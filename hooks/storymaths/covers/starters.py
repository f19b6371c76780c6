"""What a series takes up again: short questions from the sessions one, three and seven before, with other numbers.

They come from the activities, whose answers are worked out anew. The questions that sessions end on are prose, whose
numbers cannot be changed safely: one is asked again as it was where a session has no activity to take up.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterator, Sequence
from dataclasses import dataclass, replace

from ..activities.alike import numbers_in
from ..activities.on_pages import PageActivity
from ..activities.worked import AnyWorked, Worked
from ..model.activity import Answer, Solution, Task
from ..model.demands import Demands
from ..model.reference import Reference
from ..model.session import ExitQuestion
from .practised import practised_in
from .taught import Key, SessionPage

BACK = (1, 3, 7)
"""How many sessions before: soon, after some days, and after a week or two, since what is called to mind at growing
distances lasts (common practice, no source)."""
_ENOUGH_LINES = 2
_POINTS = re.compile(
    r"\bhere (?:is|are)\b(?! (?:two|three) digits)|\bthis (?:one|line|shape|picture)\b|\bon the wall\b"
    r"|(?:^|[.:!?] )(?:hold (?:up|out)|face|be|stand|say it) (?:a|the|your|to)\b",
    re.IGNORECASE,
)
"""In a question: it asks about what stands in the room, or is answered by what a child does."""

ActivitiesOf = Callable[[SessionPage], Sequence[PageActivity]]


@dataclass(frozen=True, slots=True)
class TakenUp:
    """A question taken up again."""

    page: SessionPage
    """Where it was first met."""
    before: int
    """How many sessions ago."""
    title: str
    worked: AnyWorked
    anew: bool
    """Whether its numbers are others than the lesson's."""

    @property
    def solution(self) -> Solution:
        """It with its answers, cut to a few lines."""
        return in_short(self.worked.solution)


@dataclass(frozen=True, slots=True)
class AskedAgain:
    """The question that a session ended on, asked again as it was."""

    page: SessionPage
    before: int
    """How many sessions ago."""

    @property
    def solution(self) -> Solution:
        """The question and what its author says of the answer."""
        ended = self.page.fields.exit_question
        return Solution(Task(ended.ask), (Answer(ended.answer, "", None),), Demands(), 0)


@dataclass(frozen=True, slots=True)
class EndQuestion:
    """A question for the end of a series, and the objective it is asked for."""

    key: Key
    page: SessionPage
    solution: Solution


def starter_of(sessions: Sequence[SessionPage], place: int, activities_of: ActivitiesOf) -> list[TakenUp]:
    """What the session at a place of a series begins with, the nearest first; nothing for the first session."""
    found = []
    for turn, before in enumerate(BACK):
        if before <= place:
            taken = _taken_up(sessions[place - before], before, turn, activities_of)
            found += [taken] if taken else []
    return found


def asked_again(sessions: Sequence[SessionPage], place: int, taken: Sequence[TakenUp]) -> list[AskedAgain]:
    """The last questions of the sessions of which nothing else is taken up, but for those that point at something."""
    before = [one for one in BACK if one <= place and one not in {found.before for found in taken}]
    found = [AskedAgain(sessions[place - one], one) for one in before]
    return [one for one in found if not _points(one.page.fields.exit_question)]


def _points(ended: ExitQuestion) -> bool:
    return ended.picture is not None or bool(_POINTS.search(ended.ask))


def _taken_up(page: SessionPage, before: int, turn: int, activities_of: ActivitiesOf) -> TakenUp | None:
    """An activity with other numbers, another for each turn; where a session has none, one as it was."""
    every = [one.worked for one in activities_of(page) if one.worked.done and not one.worked.problems]
    anew = [one for one in every if one.other_sets]
    chosen = (anew or every)[turn % len(anew or every)] if every else None
    if chosen is None or chosen.done is None or not chosen.done.solution.answers:
        return None
    done, others = chosen.done, chosen.other_sets
    if not others:
        return TakenUp(page, before, done.fields.title, done, anew=False) if _is_short(done.solution) else None
    other = others[turn % len(others)]
    worked = Worked(done.kind, other.fields, other.context, other.solution, {})
    return TakenUp(page, before, done.fields.title, worked, anew=True)


def _is_short(solution: Solution) -> bool:
    task = in_short(solution).task
    return not (task.figures or task.table or task.characters) and len(task.lines) <= 2 * _ENOUGH_LINES


def in_short(solution: Solution) -> Solution:
    """The first lines of a task whose lines have an answer each; any other as it is."""
    task, answers = solution.task, solution.answers
    if len(task.lines) != len(answers) or task.figures or task.table or task.characters:
        return solution
    if not all(
        set(numbers_in(str(line))) <= set(numbers_in(one.says)) for line, one in zip(task.lines, answers, strict=True)
    ):
        return solution
    shorter = replace(task, lines=task.lines[:_ENOUGH_LINES])
    return replace(solution, task=shorter, answers=answers[:_ENOUGH_LINES], note="")


def end_questions(
    sessions: Sequence[SessionPage], activities_of: ActivitiesOf, reference: Reference
) -> list[EndQuestion]:
    """A question for each of some objectives, at most one from a session, with the last of an activity's sets of numbers."""
    found: dict[Key, EndQuestion] = {}
    for page in sessions:
        for activity in activities_of(page):
            done, others = activity.worked.done, activity.worked.other_sets
            if done is None or activity.worked.problems or not done.solution.answers:
                continue
            solution = in_short(others[-1].solution if others else done.solution)
            key = next((key for key in _asked_for(activity, page, solution, reference) if key not in found), None)
            if key and (others or _is_short(solution)):
                found[key] = EndQuestion(key, page, solution)
                break  # one of each session is enough
        else:
            ended, key = page.fields.exit_question, next(_taught_by_law(page, reference, found), None)
            if key and not _points(ended):
                found[key] = EndQuestion(key, page, AskedAgain(page, 0).solution)
    return list(found.values())


def _taught_by_law(page: SessionPage, reference: Reference, but: Collection[Key]) -> Iterator[Key]:
    """The objectives asked for by law that a session teaches, as it names them, but for some."""
    for framework, claims in page.fields.objectives.items():
        if reference.frameworks[framework].rests_on_law:
            yield from (key for claim in claims if (key := (framework, claim.code)) not in but)


def _asked_for(activity: PageActivity, page: SessionPage, solution: Solution, reference: Reference) -> Iterator[Key]:
    """The objectives asked for by law that its session teaches and that it touches, the surest first."""
    taught = list(_taught_by_law(page, reference, ()))
    sure = {(one.framework, one.objective.code) for one in practised_in(activity.worked, reference)}
    if certain := [key for key in taught if key in sure]:
        yield from certain
        return  # what it surely practises is what it is asked for
    words = " ".join((solution.task.ask, *map(str, solution.task.lines), *(one.says for one in solution.answers)))
    for key in taught:
        # Most sentences have =, whatever they are of.
        traces = [trace for part in reference.objectives[key].parts for trace in part.trace if trace != "="]
        if any(re.search(rf"(?<!\w){re.escape(trace)}(?!\w)", words, re.IGNORECASE) for trace in traces):
            yield key
    yield from taught[:1]  # a session names first what it is for before all
