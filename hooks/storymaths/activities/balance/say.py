"""Balances in words: what is asked, each way, how one knows that these are all, and the likely error."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from ...model.activity import LikelyError
from ..saying import capital, listed
from .beam import Beam
from .say_none import explain_none
from .tasks import BalanceTask, LevelTeams, OppositeTask, PlayerTask, StartTask, Team, TeamsTask

_MOST_LISTED = 8


def ask_for(task: BalanceTask, beam: Beam) -> str:
    """What is asked."""
    named = task.fact.replace("_", " ").replace("-", " ")
    same = f"the same number of {beam.unit}" if beam.unit and not beam.measure else f"the same {named}"
    left, _ = beam.settled_teams
    match task:
        case StartTask():
            return _ask_to_level(task, beam)
        case OppositeTask():
            everybody = " Everybody must be used." if task.teams == "all" else ""
            one = "one side" if task.teams == "any" else "one of two teams"
            who = f"Who goes opposite, so that both sides have {same}?"
            return f"{_name(left)} {_is(left)} on {one}. {who}{everybody} Find every way."
        case TeamsTask() | PlayerTask():
            some = f" {capital(left[0].name)} must be in one of them." if left else ""
            if task.teams == "all":
                return f"Put everybody into two teams with {same}.{some} Find every way."
            size = "teams" if task.teams == "any" else f"teams of {task.teams}" if task.teams != 1 else "characters"
            rest = " Not everybody has to join in." if task.teams == "any" else ""
            return f"Make two {size} with {same}.{rest}{some} Find every way."


def _ask_to_level(task: StartTask, beam: Beam) -> str:
    left, right = beam.settled_teams
    opposite = f"{listed([one.name for one in right])} {_is(right)} on the right" if right else "nobody is on the right"
    uneven = f"{_add(left, beam)} ≠ {_add(right, beam)}" if right else "only one side has anybody"
    less = "the lighter side" if task.fact == "mass" else "the side that has less"
    side = less if task.joining == "lighter" else "either side"
    who = f"Everybody else must join {side}. Can they" if task.teams == "all" else f"Who can join {side} to"
    start = f"{_name(left)} {_is(left)} on the left and {opposite}. It is not level: {uneven}."
    return f"{start} {who} make it level? Find every way."


def say_teams(way: LevelTeams) -> str:
    """Such as ``gull + crab = puffin``."""
    return f"{add_names(way.left)} = {add_names(way.right)}"


def explain(task: BalanceTask, way: LevelTeams, beam: Beam) -> str:
    """Why the two are level, and who joined where there was a start."""
    line = f"{_add(way.left, beam)} = {_add(way.right, beam)}"
    if len(way.left) > 1 and len(way.right) > 1:
        line += f", because both sides come to {beam.amount(way.total)}"
    if isinstance(task, StartTask):
        before = beam.settled_teams
        joined = [
            f"{listed([one.name for one in team if one not in there])} on the {side}"
            for team, there, side in ((way.left, before[0], "left"), (way.right, before[1], "right"))
            if len(team) > len(there)
        ]
        line += f"; joined by {listed(joined)}"
    return f"{line}."


def explain_all(task: BalanceTask, beam: Beam, ways: Sequence[LevelTeams]) -> str:
    """How one knows that these are all, or why there is none."""
    if not ways:
        return explain_none(task, beam)
    count = "There is one way" if len(ways) == 1 else f"There are {len(ways)} ways"
    left, right = map(beam.total, beam.settled_teams)
    if left and not beam.may_join_both:
        return (
            f"{count}. Whoever joins must come to {beam.amount(abs(left - right))}; go through the others, the largest "
            "first, and no other choice of them does."
        )
    totals = sorted({way.total for way in ways})
    there = listed([beam.amount(total) for total in totals])
    if len(totals) > _MOST_LISTED:
        there = f"{len(totals)} totals, from {beam.amount(totals[0])} to {beam.amount(totals[-1])}"
    return (
        f"{count}. List every team by its total, from the smallest. Two teams that may play, with nobody in both, "
        f"have the same total only at {there}."
    )


def find_error(beam: Beam) -> LikelyError | None:
    """Matching the number of characters rather than what they are worth."""
    for size in (2, 1, 3):
        for left in combinations(beam.characters, size):
            for right in combinations([one for one in beam.characters if one not in left], size):
                if beam.total(left) != beam.total(right):
                    does = "Counts the characters on each side instead of adding what they are worth."
                    sides = f"{add_names(left)} against {add_names(right)}, {size} on each side"
                    return LikelyError(does, f"{sides}: {_say_unequal(left, right, beam)}.")
    return None


def _say_unequal(left: Team, right: Team, beam: Beam) -> str:
    line = f"{_add(left, beam)} ≠ {_add(right, beam)}"
    if len(left) == 1:
        return line
    return f"{line}, because {beam.amount(beam.total(left))} is not {beam.amount(beam.total(right))}"


def find_words(task: BalanceTask) -> Iterator[str]:
    """The words of the word bank that the task is asked in; a balance is what the drawing shows."""
    yield "balance"
    if not isinstance(task, StartTask):
        yield "same"
    elif task.fact == "mass" and task.joining == "lighter":
        yield "lighter"


def add_names(team: Team) -> str:
    """Such as ``gull + crab``."""
    return " + ".join(one.name for one in team)


def _add(team: Team, beam: Beam) -> str:
    unit = f" {beam.measure}" if beam.measure else ""
    return " + ".join(f"{beam.worth(one):,}{unit}" for one in team)


def _name(team: Team) -> str:
    return capital(listed([one.name for one in team]))


def _is(team: Team) -> str:
    return "is" if len(team) == 1 else "are"
