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
            if task.teams == 1:
                one = f"{capital(left[0].name)} must be one of them. " if left else ""
                return f"Which two characters have {same}? {one}Find every way."
            size = "teams" if task.teams == "any" else f"teams of {task.teams}"
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
        need = beam.amount(abs(left - right))
        return f"{count}. Whoever joins must make {need}. Try the others, the largest first: no other choice makes it."
    totals = sorted({way.total for way in ways})
    there = beam.amount_of_any(totals)
    if len(totals) > _MOST_LISTED:
        there = f"{len(totals)} totals, from {beam.amount(totals[0])} to {beam.amount(totals[-1])}"
    return f"{count}. Nobody can be in both teams, so the teams can match only at {there}."


def find_error(task: BalanceTask, beam: Beam) -> LikelyError | None:
    """Matching the number of characters rather than what they are worth; None where one stands against one."""
    for left, right in _as_many_a_side(task, beam):
        if len(left) > 1 and beam.total(left) != beam.total(right):
            does = "Counts the characters on each side instead of adding what they are worth."
            sides = f"{add_names(left)} against {add_names(right)}, {len(left)} on each side"
            return LikelyError(does, f"{sides}: {_say_unequal(left, right, beam)}.")
    return None


def _as_many_a_side(task: BalanceTask, beam: Beam) -> Iterator[tuple[Team, Team]]:
    """Teams that the task allows, with as many on the left as on the right."""
    there, opposite = beam.settled_teams
    free = [one for one in beam.characters if one not in (*there, *opposite)]
    match task:
        case OppositeTask():
            pairs: Iterator[tuple[Team, Team]] = ((there, right) for right in combinations(free, len(there)))
        case StartTask():
            joined = combinations(free, abs(len(there) - len(opposite)))
            few_left, light_left = len(there) < len(opposite), beam.total(there) < beam.total(opposite)
            if len(there) == len(opposite) or (task.joining == "lighter" and few_left != light_left):
                return
            pairs = (((*there, *new), opposite) if few_left else (there, (*opposite, *new)) for new in joined)
        case _:
            pairs = (
                (left, right)
                for size in (2, 3, len(beam.characters) // 2, task.teams)
                if isinstance(size, int)
                for left in combinations(beam.characters, size)
                if all(one in left for one in there)
                for right in combinations([one for one in beam.characters if one not in left], size)
            )
    for left, right in pairs:
        everybody = len(left) + len(right) == len(beam.characters)
        if everybody if task.teams == "all" else task.teams in ("any", len(left)):
            yield left, right


def _say_unequal(left: Team, right: Team, beam: Beam) -> str:
    line = f"{_add(left, beam)} ≠ {_add(right, beam)}"
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
