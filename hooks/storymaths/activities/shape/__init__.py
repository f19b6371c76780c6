"""Shapes: properties counted, sorted and found by clues, what cannot be, symmetry, and shapes made of shapes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind, Unsolvable
from ..saying import listed
from ..sort.rules import SortRule
from .claims import Claim
from .compose import HELPS, Drawn, Use, composed_solution, drawn_for
from .counts import counted_solution
from .half import completed_solution
from .judging import claimed_solution
from .mirror import Edge
from .set import SAID
from .sorting import guessed_solution, sorted_solution
from .tasks import shapes_of

_ASKS = ("count", "by", "clues", "claims", "half", "make")
_YEAR_1 = ("corners",)
"""What Year 1 has a word for; sides, faces, edges, vertices and symmetry are new in Year 2."""
Property = Literal["sides", "corners", "symmetry", "right_angles", "faces", "edges", "vertices"]


class ShapeFields(ActivityFields):
    """Shapes and one of ``count``, ``by`` and ``clues``; or ``claims``; or ``half``; or ``make`` and ``pieces``."""

    shapes: Literal["flat", "solid"] | Annotated[tuple[Text, ...], Field(min_length=1, max_length=24)] | None = None
    """Names from the set of shapes, all flat or all solid; or all of a sort. With a cast, ``fact`` names their shapes."""
    count: tuple[Property, ...] = ()
    """What to count on each."""
    by: Annotated[tuple[Text | SortRule, ...], Field(max_length=2)] = ()
    """One rule or two to sort by, such as ``sides > 3``, ``symmetry = 0``, ``curved``, ``faces = 6``."""
    diagram: Literal["hoop", "venn", "carroll"] | None = None
    """What to sort into; when left out, a hoop for one rule and a Venn diagram for two."""
    clues: Annotated[tuple[Text, ...], Field(max_length=6)] = ()
    """Rules that the shape thought of fits: which of the shapes can it be?"""
    claims: Annotated[tuple[Claim, ...], Field(max_length=12)] = ()
    """Counts somebody says a shape has: can that be?"""
    half: Annotated[tuple[Text, ...], Field(max_length=40)] = ()
    """Half a figure on squares, row by row: x is shaded, a full stop is empty."""
    mirror: Edge = "right"
    """The edge of the half that the mirror line runs along."""
    make: Annotated[tuple[Text, ...], Field(max_length=40)] = ()
    """A shape to make, row by row: x is a square, ◣ ◢ ◤ ◥ are halves of one, a full stop is empty."""
    pieces: Annotated[Mapping[Text, Annotated[int, Field(ge=1)]], Field(max_length=10)] = Field(default_factory=dict)
    """What to make it of, and how many of each there are."""
    use: Use = "all"
    """Whether every piece is to be used, or some may be left over."""
    drawn: Drawn = "squares"
    """What is drawn inside the shape to make: the ``pieces`` of one way, the ``squares``, or just the ``outline``."""


class Shape(Kind[ShapeFields]):
    """Shapes and their properties.

    Steps: one for each property of a shape, each rule, each clue or each count of a claim; for a half to be
    completed, one for each shaded square; for a shape to be made, one for each piece laid.
    """

    name = "shape"
    says = "Flat and solid shapes: what they have, how they sort, which it can be, what cannot be, symmetry, and shapes made of shapes."
    answer_shape = (
        "{shape: cube, faces: 6, …}; as for sort {regions: …, empty: …}; for clues {shape: kite}; for a claim "
        "{claim: 1, can: false, shapes: []}; for a half {rows: [x..x, …], squares: 8}; for a shape made "
        "{pieces: [{piece: triangle, on: [lower left of A1]}, …]}, A1 being the bottom left square"
    )
    practises: ClassVar[dict[str, str]] = {
        "1G-1": "shapes known by name, lying any way",
        "1G-2": "smaller flat shapes turned, flipped and laid together to make a shape that is shown",
        "2G-1": "sides, corners, faces, edges and vertices counted and put side by side",
    }
    fields = ShapeFields
    example = """\
kind: shape
title: What is in the parcels?
cast:
  gull: {parcel: cube}
  crab: {parcel: triangular prism}
  seal: {parcel: square-based pyramid}
fact: parcel
count: [faces, edges, vertices]
answers: 3
years: {3: {}}
"""
    more_examples = (
        """\
kind: shape
title: The harbour hut
make: [◢◣, xx]
pieces: {wide triangle: 1, triangle: 2, square: 2, rectangle: 1}
use: some
answers: 7
years: {1: {}, 3: {}}
""",
    )

    def solve(self, fields: ShapeFields, context: Context) -> Solution:
        """Every shape counted or sorted, every shape that fits, every claim judged, in the order given."""
        asked = [name for name in _ASKS if getattr(fields, name)]
        if len(asked) != 1:
            message = f"{listed(asked)} are asked for at once." if asked else "Nothing is asked about the shapes."
            raise Unsolvable(
                (asked[1] if len(asked) > 1 else "count",), message, f"give just one of {listed(_ASKS, 'or')}."
            )
        if fields.claims:
            return claimed_solution(fields.claims, context, fields.ask)
        if fields.half:
            return completed_solution(fields.half, fields.mirror, context, fields.ask)
        if fields.make:
            return composed_solution(fields.make, fields.pieces, fields.use, fields.drawn, context, fields.ask)
        shapes = shapes_of(fields.shapes, fields.fact, context)
        if fields.count:
            return counted_solution(shapes, fields.count, fields.ask)
        if fields.by:
            return sorted_solution(shapes, fields.by, fields.diagram, fields.ask)
        return guessed_solution(shapes, fields.clues, fields.ask)

    def versions(
        self, fields: ShapeFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[ShapeFields, Context, str]]:
        """The same shapes: below Year 2 only what is counted there; of one to be made, more or less is drawn in."""
        fewer = tuple(prop for prop in fields.count if prop in _YEAR_1)
        if year.year < 2 and fewer and fewer != fields.count:
            yield (
                fields.model_copy(update={"count": fewer}),
                context,
                f"Only {listed([SAID[prop] for prop in fewer])} are counted.",
            )
        if fields.make and (drawn := drawn_for(fields.drawn, year.year - context.year.year)) != fields.drawn:
            yield fields.model_copy(update={"drawn": drawn}), context, HELPS[drawn]
        yield fields, context, "The same shapes."


KIND = Shape()
