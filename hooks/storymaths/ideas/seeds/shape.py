"""Shapes that the story names, or that characters carry."""

from __future__ import annotations

from ...activities.shape.set import FLATS, SOLIDS
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..idea import FromStory
from ..material import Material
from .seed import Seed

_FEWEST = 2


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for names, sort in ((FLATS, "flat"), (SOLIDS, "solid")):
        shown: list[Plain] = [name for name in material.shapes if name in names]
        marks = frozenset({f"{sort} shapes"})
        counts: list[Plain] = [
            one for one in limits.practice.shape.counts if (one in ("faces", "edges", "vertices")) == (sort == "solid")
        ]
        for fact in material.named:
            if all(value in names for value in fact.values.values()):
                use = FromStory(fact.means)
                cast: list[Plain] = [one.id for one in fact.who]
                if counts:
                    lines = activity(
                        "shape", f"What they have: {fact.means}", "", cast=cast, fact=fact.id, count=counts[:3]
                    )
                    yield Candidate(lines, (use,), marks=marks)
        if len(shown) >= _FEWEST:
            use = FromStory(f"{', '.join(map(str, shown))}")
            if counts:
                lines = activity("shape", f"The {sort} shapes of the story", "", shapes=shown, count=counts[:3])
                yield Candidate(lines, (use,), marks=marks)
                rule: list[Plain] = [f"{counts[0]} > 4"]
                yield Candidate(
                    activity("shape", f"Sort the {sort} shapes", "", shapes=shown, by=rule), (use,), marks=marks
                )


SEED = Seed("two shapes or more, all flat or all solid", _plant)
