"""What colours tell apart is told apart by those who see fewer of them too, or by a shape; held against `coloraide`.

Protanopia, deuteranopia and tritanopia are simulated by coloraide's filters (Brettel 1997 and Viénot 1999), and
differences measured by CIEDE2000, in which 1 is about what can just be seen side by side.
"""

from __future__ import annotations

import itertools
import re

import pytest
from coloraide import Color
from project import ROOT

from .test_contrast import OTHERS, STRANDS, YEARS, contrast, modes

CLEARLY = 12.0
MARKS = (ROOT / "hooks/storymaths/render/templates/_marks.html").read_text(encoding="utf-8")


def as_seen(colour: str, sight: str) -> str:
    return Color(colour).filter(sight).convert("srgb").fit().to_string(hex=True)


@pytest.mark.parametrize("sight", ["protan", "deutan", "tritan"])
@pytest.mark.parametrize("mode", ["day", "night"])
@pytest.mark.parametrize("chosen", ["", *OTHERS])
def test_the_two_accents_and_the_shaded_parts_differ(mode: str, sight: str, chosen: str) -> None:
    colours = modes(chosen)[mode]
    for one, other in (("warm", "cool"), ("figure-fill", "figure-soft"), ("focus", "paper"), ("ink", "warm")):
        seen = [Color(as_seen(colours[name], sight)) for name in (one, other)]
        assert seen[0].delta_e(seen[1], method="2000") > CLEARLY, f"{one} and {other}"
    assert contrast(as_seen(colours["figure-fill"], sight), as_seen(colours["figure-soft"], sight)) > 2.7


def shapes(macro: str) -> list[str]:
    body = MARKS.split(f"{{% macro {macro}(")[1].split("{% endmacro %}")[0]
    return re.findall(r"%\}(<(?:path|circle)[^{]*)", body)


def test_each_year_and_each_strand_has_a_shape_of_its_own() -> None:
    # Seven colours of like strength cannot all be told apart by everyone, so no year or strand rests on its colour.
    for macro, names in (("year_mark", YEARS), ("strand_mark", STRANDS)):
        drawn = shapes(macro)
        assert len(drawn) == len(names)
        assert all(one != other for one, other in itertools.combinations(drawn, 2))
