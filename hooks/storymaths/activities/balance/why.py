"""Why no two teams are level: the plainest reason that holds for the numbers at hand."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from ..saying import capital
from .search import LEFT, OUT, RIGHT
from .sides import Sides

if TYPE_CHECKING:
    from . import BalanceFields


def why_none(sides: Sides, fields: BalanceFields, amount: Callable[[int], str]) -> str:
    """A reason a class can follow. ``amount`` says a number with its unit."""
    masses = sides.question.masses
    whole = sum(masses)
    heaviest = max(range(len(masses)), key=masses.__getitem__)
    everybody = all(OUT not in places for places in sides.question.places)
    if everybody and whole % 2:
        return (
            f"There is no way. Together they come to {amount(whole)}, which is odd, "
            "so two equal teams cannot use everybody."
        )
    if everybody and 2 * masses[heaviest] > whole:
        return (
            f"There is no way. {capital(sides.characters[heaviest].name)} alone has {amount(masses[heaviest])}, "
            f"and all the others together only {amount(whole - masses[heaviest])}."
        )
    if everybody and not any(sides.start) and fields.teams == "all":
        return f"There is no way. Each team would need {amount(whole // 2)}, and {_nearest(sides, whole // 2, amount)}."
    if any(sides.start):
        return _why_not_level(sides, amount)
    return (
        "There is no way. List every team by its total, from the smallest: no two teams that may play, "
        "with nobody in both, have the same total."
    )


def _why_not_level(sides: Sides, amount: Callable[[int], str]) -> str:
    left, right = (sides.total(team) for team in sides.start)
    needed = amount(abs(left - right))
    opposite = f"the difference is {needed}" if right else f"{needed} is needed on the other side"
    free = [i for i in range(len(sides.characters)) if not (sides.start[0] | sides.start[1]) >> i & 1]
    both = any({LEFT, RIGHT} <= sides.question.places[i] for i in free)
    among = (
        "no choice of the others makes that"
        if not both
        else "no placing of the others on the two sides makes up for it"
    )
    return f"There is no way: {opposite}, and {among}."


def _nearest(sides: Sides, wanted: int, amount: Callable[[int], str]) -> str:
    sums = {0}
    for mass in sides.question.masses:
        sums |= {total + mass for total in sums}
    below = max(total for total in sums if total <= wanted)
    above = min(total for total in sums if total >= wanted)
    if below == above:
        return "no team that the rules allow comes to that"
    return f"the nearest that can be made are {amount(below)} and {amount(above)}"
