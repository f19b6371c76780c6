"""Turns and angles, where the book shows turning or the hands of a clock."""

from __future__ import annotations

from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..idea import FromStory
from ..material import Material
from .seed import Seed

_TURNS: tuple[Plain, ...] = ("1/4", "1/2", "3/4")


def _plant(material: Material, limits: YearLimits) -> Candidates:
    hands = [time for time in material.times if time.minutes % 60 == 0]
    if material.notes("angles-turns"):
        use = FromStory(f"pages {', '.join(material.noted['angles-turns'])}")
    elif hands:
        use = FromStory("the hands of a clock", tuple(dict.fromkeys(time.page for time in hands)))
    else:
        return
    ask = "How large is each turn?"
    yield Candidate(activity("angle", "How far round?", ask, find="turns", turns=[*_TURNS]), (use,), invented=True)
    between = [degrees for time in hands if 0 < (degrees := _between(time.minutes)) != 180]
    told: list[Plain] = [*[*dict.fromkeys(between)][:4]]
    if len(told) > 1:
        ask = "These are the angles between the hands of the story’s clocks. What is each one called?"
        yield Candidate(activity("angle", "Between the hands", ask, find="name", angles=told), (use,), invented=True)
        ask = "How large is the rest of the turn, the other way round?"
        yield Candidate(
            activity("angle", "The rest of the turn", ask, find="around", place="point", known=told[:1]),
            (use,),
            invented=True,
        )


def _between(minutes: int) -> int:
    """The smaller angle between the hands at an hour, in degrees."""
    degrees = minutes // 60 % 12 * 30
    return min(degrees, 360 - degrees)


SEED = Seed("turning, or clock times on the hour", _plant)
