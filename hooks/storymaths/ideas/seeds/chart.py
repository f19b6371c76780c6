"""What each of the cast has, in a chart to read or to draw."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates
from ..material import Material
from ..number_sets import NumberSet, number_sets
from .seed import Seed

_SHOWS = {
    "block diagram": "block",
    "pictogram": "pictogram",
    "tally chart": "tally",
    "bar chart": "bar",
    "table": "table",
}
_SCALED = ("pictogram", "bar")
_PICTURED, _FEW = 2, 10


def _plant(material: Material, limits: YearLimits) -> Candidates:
    shows = [show for chart, show in _SHOWS.items() if limits.draws(chart)]
    newest = [_SHOWS[chart] for chart in limits.charts_new if chart in _SHOWS]
    for numbers in number_sets(material, limits):
        for show in sorted(shows, key=lambda one: one not in newest):
            yield from _charts(numbers, show)


def _charts(numbers: NumberSet, show: str) -> Iterator[Candidate]:
    things = numbers.fact.things
    largest = max(numbers.values.values())
    if show == "block" and largest > 2 * _FEW:
        return
    each: dict[str, Plain] = {"each": _PICTURED * (1 if largest <= 2 * _FEW else _FEW)} if show in _SCALED else {}
    name = {"block": "block diagram", "tally": "tally chart", "bar": "bar chart"}.get(show, show)
    ask = f"The {name} shows {numbers.words.everybodys}. Answer the questions."
    read = numbers.with_cast("chart", f"{things.capitalize()} in a {name}", ask, show=show)
    yield replace(read, lines={**read.lines, **each})
    if show != "table":
        ask = f"Draw a {name}. It shows {numbers.words.everybodys}."
        draw = numbers.with_cast("chart", f"Draw the {things} as a {name}", ask, task="draw", show=show)
        yield replace(draw, lines={**draw.lines, **each})


SEED = Seed("three characters or more with a number each, and a year that reads charts", _plant)
