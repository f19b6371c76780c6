"""Why no two teams are level: the plainest reason that holds for the numbers at hand."""

from __future__ import annotations

from ..saying import capital
from .beam import Beam
from .search import OUT
from .tasks import BalanceTask


def explain_none(task: BalanceTask, beam: Beam) -> str:
    """A reason a class can follow."""
    masses = beam.question.masses
    whole, most = sum(masses), max(masses)
    everybody = all(OUT not in places for places in beam.question.places)
    if everybody and whole % 2:
        return (
            f"There is no way. Together they come to {beam.amount(whole)}, which is odd, "
            "so two equal teams cannot use everybody."
        )
    if everybody and 2 * most > whole:
        heaviest = beam.characters[masses.index(most)].name
        return (
            f"There is no way. {capital(heaviest)} alone has {beam.amount(most)}, "
            f"and all the others together only {beam.amount(whole - most)}."
        )
    if any(beam.settled):
        return _explain_not_level(beam)
    if everybody and task.teams == "all":
        half = whole // 2
        return f"There is no way. Each team would need {beam.amount(half)}, and {_name_nearest(beam, half)}."
    return "There is no way. List every team by its total: no two, with nobody in both, have the same."


def _explain_not_level(beam: Beam) -> str:
    left, right = map(beam.total, beam.settled_teams)
    needed = beam.amount(abs(left - right))
    opposite = f"the difference is {needed}" if right else f"{needed} is needed on the other side"
    among = "no choice of the others makes that"
    if beam.may_join_both:
        among = "no placing of the others on the two sides makes up for it"
    return f"There is no way: {opposite}, and {among}."


def _name_nearest(beam: Beam, wanted: int) -> str:
    sums = {0}
    for mass in beam.question.masses:
        sums |= {total + mass for total in sums}
    below = max(total for total in sums if total <= wanted)
    above = min(total for total in sums if total >= wanted)
    if below == above:
        return "no team that the rules allow comes to that"
    return f"the nearest that can be made are {beam.amount(below)} and {beam.amount(above)}"
