"""Somebody of the story on a grid: steps to follow, and every shortest way, where the book is about going somewhere."""

from __future__ import annotations

from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..idea import FromStory
from ..material import Material
from .seed import Seed

_GOALS: tuple[tuple[str, tuple[str, ...]], ...] = (("B3", ()), ("C2", ()), ("C3", ("B2",)))
"""Where to, and what is in the way: from A1, a few shortest ways each."""
_GOES = "journeys"
_FEWEST, _MOST = 2, 4


def goes_somewhere(material: Material) -> FromStory | None:
    """What in the book is about moving or turning; None where nothing is."""
    for concept in ("position-direction", "coordinates", "angles-turns"):
        if concept in material.noted:
            return FromStory(f"pages {', '.join(material.noted[concept])}")
    return FromStory("a journey") if _GOES in material.book.themes else None


def _plant(material: Material, limits: YearLimits) -> Candidates:
    use = goes_somewhere(material)
    if use is None:
        return
    walker = material.book.cast[0]
    cast: list[Plain] = [walker.id]
    steps = [one for one in material.counted if _FEWEST <= one.number <= _MOST]
    first, second = (*(one.number for one in steps), 3, 2)[:2]
    route: list[Plain] = [f"forward {first}", "quarter turn right", f"forward {second}"]
    ask = f"{walker.name} starts at A1. Follow the steps. Where does {walker.name} end, and facing which way?"
    grid: list[Plain] = [5, 5]
    yield Candidate(
        activity("position", f"{walker.name} sets off", ask, cast=cast, grid=grid, route=route), (use,), invented=True
    )
    ask = f"{ask} Then write the way back."
    yield Candidate(
        activity("position", f"There and back with {walker.name}", ask, cast=cast, grid=grid, route=route, back=True),
        (use,),
        invented=True,
    )
    for goal, blocked in _GOALS:
        ask = f"{walker.name} starts at A1 and wants to get to {goal}, the shortest way. Find every way."
        lines = activity("position", f"{walker.name}’s ways to {goal}", ask, cast=cast, grid=[4, 4], goal=goal)
        some: list[Plain] = [*blocked]
        yield Candidate({**lines, "blocked": some} if some else lines, (use,), finds=True, invented=True)


SEED = Seed("a journey, or pages that show moving and turning", _plant)
