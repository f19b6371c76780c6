"""A map of the story on squared paper, where the book is about going somewhere."""

from __future__ import annotations

from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..material import Material
from .position import goes_somewhere
from .seed import Seed

_PLACES = ([2, 3], [5, 1], [0, 4], [4, 4])
_BELOW = ([-2, 3], [3, -1], [-4, -2], [1, 4])
_CORNERS = ([1, 1], [5, 1], [5, 4])


def _plant(material: Material, limits: YearLimits) -> Candidates:
    use = goes_somewhere(material)
    if use is None:
        return
    for places in (_PLACES, _BELOW):
        points: dict[str, Plain] = {letter: [*place] for letter, place in zip("ABCD", places, strict=True)}
        ask = "The map of the story has four places on it. What are the coordinates of each?"
        yield Candidate(
            activity("coordinates", "The map of the story", ask, find="read", points=points), (use,), invented=True
        )
        ask = "Mark the four places on the map."
        yield Candidate(activity("coordinates", "Mark the map", ask, find="plot", points=points), (use,), invented=True)
        ask = "Each place is moved 2 to the right and 1 down. Where is it now?"
        yield Candidate(
            activity("coordinates", "The map moves", ask, find="translate", points=points, by=[2, -1]),
            (use,),
            invented=True,
        )
        yield Candidate(
            activity("coordinates", "The map in a mirror", "", find="reflect", points=points, axis="y"),
            (use,),
            invented=True,
        )
    corners: dict[str, Plain] = {letter: [*place] for letter, place in zip("ABC", _CORNERS, strict=True)}
    ask = "Three corners of a rectangle are on the map. Where is the fourth?"
    yield Candidate(
        activity("coordinates", "The fourth corner", ask, find="corner", points=corners), (use,), invented=True
    )


SEED = Seed("a journey, or pages that show moving, and a year that uses coordinates", _plant)
