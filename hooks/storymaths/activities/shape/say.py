"""Shapes counted, found by clues, judged and completed, in words and drawings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ...model.activity import GAP, Figure, LikelyError, Table
from ...model.figures.shapes import MirrorSquares
from ..rule_language.reasons import Reason
from ..saying import capital, counted, listed
from ..sort.cards import Card
from ..sort.rules import ReadRule
from .claims import Claim
from .mirror import Edge
from .named_shapes import Shapes
from .set import SAID, SOLID_COUNTS, Flat, Solid, count_of, parts_of, with_article
from .tasks import Verdict

ONLY_ONE = "There is just one: each shaded square fixes one on the other side."
ASK_BY_CLUES = "Somebody thinks of a shape. Which of these can it be? Find all that fit every clue."
_WHERE: Mapping[Edge, str] = {"right": "on its right", "left": "on its left", "top": "above it", "bottom": "below it"}


def name_properties(properties: Sequence[str], last: str = "and") -> str:
    """``faces, edges and vertices``."""
    return listed([SAID[prop] for prop in properties], last)


# Counting.


def ask_to_count(properties: Sequence[str]) -> str:
    """The task."""
    return f"How many {name_properties(properties)} does each shape have?"


def tabulate(shapes: Shapes, properties: Sequence[str]) -> Table:
    """A row to fill for each shape."""
    heads = (capital(SAID[prop]) for prop in properties)
    rows = tuple((title, *[GAP] * len(properties)) for title in shapes.titles)
    return Table("What each shape has", ("Shape", *heads), rows)


def write_counts(title: str, counts: Mapping[str, int]) -> str:
    """``A cube has 6 faces.``"""
    return f"{capital(with_article(title))} has {listed([_count(count, prop) for prop, count in counts.items()])}."


def explain_counts(shape: Flat | Solid, counts: Mapping[str, int], adds: bool) -> str:
    """The parts that are added, of a solid where the year adds; else how to count."""
    solid = isinstance(shape, Solid)
    sums = [
        f"{' + '.join(map(str, parts))} = {count} {SAID[prop]}"
        if adds and solid and (parts := parts_of(shape)[prop])
        else _count(count, prop)
        for prop, count in counts.items()
    ]
    return f"{capital(', '.join(sums))}." if solid else f"Go round it with a finger: {', '.join(sums)}."


def _count(count: int, prop: str) -> str:
    return counted(count, SAID[prop]) if count else f"no {SAID[prop]}"


def explain_counting(properties: Sequence[str]) -> str:
    """How one knows that the counts are right."""
    if set(properties) >= SOLID_COUNTS:
        return "On every one of them, faces and vertices together are 2 more than the edges."
    return "Count on a real shape, with a finger or a sticker on each."


def err_in_counting(shapes: Shapes, properties: Sequence[str]) -> LikelyError | None:
    """Ends and bases forgotten among faces; slanting lines taken for lines of symmetry."""
    for shape in shapes.shapes:
        if isinstance(shape, Solid) and "faces" in properties and shape.faces:
            gives = f"{shape.faces[1]} faces for the {shape.name} instead of {sum(shape.faces)}."
            return LikelyError("Counts the faces round the side only.", gives)
        wrong = {"rectangle": 4, "parallelogram": 2}.get(shape.name)
        if wrong and "symmetry" in properties:
            gives = f"{wrong} for the {shape.name} instead of {count_of(shape, 'symmetry')}."
            return LikelyError("Takes lines from corner to corner for mirror lines.", gives)
    return None


# Rules and clues.


def ask_to_sort(rules: Sequence[ReadRule]) -> str:
    """The task."""
    return f"Sort the shapes by {listed([f'“{rule.fits}”' for rule in rules])}. Is any place left empty?"


def explain_fit(reasons: Sequence[Reason]) -> str:
    """Why a shape fits every clue."""
    return f"{capital(', '.join(dict.fromkeys(reason.says for reason in reasons)))}."


def explain_clues(rules: Sequence[ReadRule], cards: Sequence[Card]) -> str:
    """How many shapes each clue leaves over."""
    left, told = list(cards), []
    for rule in rules:
        left = [card for card in left if card.id in rule.who]
        names = listed([card.name for card in left]) if len(left) <= 6 else f"{len(left)} shapes"
        told.append(f"{capital(rule.fits)}: leaves {names or 'none'}.")
    return " ".join(told)


def err_in_clues(stray: str) -> LikelyError:
    """A shape that fits the first clue only."""
    return LikelyError("Looks at the first clue only.", f"{capital(stray)}, which does not fit the others.")


# Claims.


def ask_about_claims(solid: bool) -> str:
    """The task."""
    what = "a solid with flat faces" if solid else "a closed shape with straight sides"
    return f"Somebody says there is {what} like these. Can it be? If it can, name one or make one. If not, say why."


def write_claim(claim: Claim) -> str:
    """``5 faces and 8 edges``."""
    return listed([counted(count, SAID[name]) for name, count in claim.given.items()])


def write_verdict(claim: Claim, verdict: Verdict) -> str:
    """Whether it can be."""
    if not verdict.can:
        return f"{write_claim(claim)}: it cannot be."
    named = f", as {listed([with_article(name) for name in verdict.shapes])}" if verdict.shapes else ""
    return f"{write_claim(claim)}: it can be{named}."


def explain_possible(shapes: Sequence[str]) -> str:
    """Why it can be."""
    return f"Look at the {shapes[0]}." if shapes else "It can be made, though no shape of the set has these counts."


def explain_limits(solid: bool) -> str:
    """Which shapes are thought of."""
    if solid:
        rule = "faces and vertices together are always 2 more than the edges"
        return f"Solids with flat faces, without dents or holes: {rule}."
    return "Shapes with straight sides; they may have dents."


def err_in_claim(claim: Claim) -> LikelyError:
    """A claim that cannot be, believed."""
    return LikelyError("Looks at one of the numbers only.", f"“It can”, for {write_claim(claim)}.")


# Half a figure.


def ask_for_half(edge: Edge) -> str:
    """The task."""
    return f"The mirror line is {_WHERE[edge]}. Shade the squares that make the whole figure symmetrical."


def write_squares(count: int) -> str:
    """How large the whole figure is."""
    return f"The whole figure has {count} shaded squares."


def explain_half(count: int, adds: bool) -> str:
    """Twice as many as on the half."""
    sums = f": {count} + {count} = {2 * count}" if adds else ""
    return f"Every square has its partner as far behind the line{sums}."


def err_in_half(slid: Sequence[str], whole: Sequence[str]) -> LikelyError | None:
    """The half slid over in place of flipped."""
    wrong = sum(one != two for row, other in zip(slid, whole, strict=True) for one, two in zip(row, other, strict=True))
    gives = f"{counted(wrong, 'squares')} in the wrong place."
    return LikelyError("Slides the half over instead of flipping it.", gives) if wrong else None


def draw_half(rows: Sequence[str], edge: Edge, whole: bool) -> Figure:
    """The squares with their mirror line."""
    across = edge in ("right", "left")
    line = "upright in the middle" if across else "level in the middle"
    what = "It is symmetrical" if whole else "Half of it is shaded, the rest is empty"
    told = "; ".join(
        f"row {index}: {row.replace('x', 'shaded ').replace('.', 'empty ').strip()}"
        for index, row in enumerate(rows, 1)
    )
    return Figure(MirrorSquares(tuple(rows), across), f"Squares with a mirror line {line}. {what}: {told}.")
