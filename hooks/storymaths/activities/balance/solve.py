"""Balances worked out: every way of setting two teams level, and what it demands."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...model.activity import Answer, Context, Figure, Line, Shown, Solution, Task
from ...model.demands import Demands, amounts, operation
from ...model.figures.measures import Balance, OnPan, Tilt
from ..kind import Unsolvable
from ..saying import listed
from ..sentences import Sentence, as_line, cards_for
from . import say
from .beam import Beam, set_up
from .tasks import BalanceTask, LevelTeams, OppositeTask, StartTask, Team

_MOST_DRAWN = 6


def solve(task: BalanceTask, context: Context) -> Solution[LevelTeams]:
    """Every way, the smallest total first, then the fewest characters, then as the cast is listed."""
    beam = set_up(task, context)
    ways = beam.level_teams()
    if len(ways) > context.caps.answers:
        raise Unsolvable(
            ("teams",),
            f"There are {len(ways):,} ways of making these teams, more than anybody could list.",
            "choose fewer characters, or fix how many are on a side.",
            "activity-too-many-answers",
        )
    return Solution(
        task=Task(
            ask=say.ask_for(task, beam),
            characters=context.characters,
            shows=tuple(Shown(beam.amount(mass), Fraction(mass)) for mass in beam.question.masses),
            lines=(_line_for(task, beam),),
            figures=(_draw(beam, *beam.settled_teams, _tilt_before(task, beam)),),
        ),
        answers=tuple(Answer(say.say_teams(way), say.explain(task, way, beam), way) for way in ways),
        demands=_demands(task, beam, ways),
        steps=max((len(way.left) + len(way.right) - 2 for way in ways), default=0) + 1,
        note=say.explain_all(task, beam, ways),
        likely_error=say.find_error(task, beam),
        answer_figures=tuple(_draw(beam, way.left, way.right, "level") for way in ways[:_MOST_DRAWN]),
        cards=cards_for(
            beam.question.masses, [_frame(task, beam), *(_sides(len(way.left), len(way.right)) for way in ways)]
        ),
    )


def _line_for(task: BalanceTask, beam: Beam) -> Line:
    """A frame to write an answer into."""
    if isinstance(task, OppositeTask):
        return Line((f"{say.add_names(beam.settled_teams[0])} = ", ""))
    return as_line(_frame(task, beam))


def _frame(task: BalanceTask, beam: Beam) -> Sentence:
    """The gaps and signs of a number sentence of the sort that is asked for."""
    if isinstance(task, OppositeTask):
        return _sides(len(beam.settled_teams[0]), 1)
    return _sides(task.teams, task.teams) if isinstance(task.teams, int) else _sides(1, 1)


def _sides(left: int, right: int) -> Sentence:
    return (None, *("+", None) * (left - 1), "=", None, *("+", None) * (right - 1))


def _demands(task: BalanceTask, beam: Beam, ways: Sequence[LevelTeams]) -> Demands:
    """All cards are read; the totals of the answers, and of who is settled, are worked out."""
    teams = [*beam.settled_teams, *(team for way in ways for team in (way.left, way.right))]
    added = dict.fromkeys(operation("+", *map(beam.worth, team), beam.total(team)) for team in teams if len(team) > 1)
    uneven = isinstance(task, StartTask) and bool(task.start.right)
    signs = {"=", *(one for one in _frame(task, beam) if isinstance(one, str)), *("+" for _ in added)}
    return Demands(
        amounts=amounts(beam.question.masses, beam.measure),
        operations=tuple(added),
        signs=frozenset(signs | {"≠"} if uneven else signs),
        words=tuple(say.find_words(task)),
    )


def _tilt_before(task: BalanceTask, beam: Beam) -> Tilt:
    """How the beam hangs before anybody joins; where a side is to be filled the drawing does not give the answer away."""
    if not isinstance(task, StartTask):
        return "level"
    left, right = map(beam.total, beam.settled_teams)
    return "left" if left > right else "right"


def _draw(beam: Beam, left: Team, right: Team, tilt: Tilt) -> Figure:
    sides = [tuple(OnPan(one.name, beam.amount(beam.worth(one))) for one in team) for team in (left, right)]
    on = [listed([f"{name}, {amount}" for name, amount in side]) or "nobody yet" for side in sides]
    hangs = "The two sides are level" if tilt == "level" else f"The {tilt} side is lower"
    alt = f"A balance. On the left: {on[0]}. On the right: {on[1]}. {hangs}."
    return Figure(Balance(sides[0], sides[1], tilt), alt)
