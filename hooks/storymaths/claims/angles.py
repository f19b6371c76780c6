"""Angles: how many degrees there are in a turn, on a line and in a shape, and which angles are acute or obtuse."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.known_facts import KnownFacts
from .claim_class import IS, ClaimClass, Untrue
from .form import Form

_DEGREES = r"(?P<degrees>\d+) ?(?:°|degrees\b)"
_ADD = r"(?:always )?(?:add up to|adds? to|total|sum to|make|makes|come to|have a (?:sum|total) of)"
_IN_SHAPE = Form(rf"\bangles (?:of|in|inside) (?:an? |any |every |the )?(?P<shape>[a-z]+?)s? {_ADD} {_DEGREES}")
_ABOUT = Form(
    rf"\bangles (?P<where>on a straight line|at a point|(?:a?round) a point|that make a straight line|in a (?:full|whole) turn)"
    rf" {_ADD} {_DEGREES}"
)
_NAMED = Form(
    rf"\b(?P<name>right angle|(?:full|whole|complete) turn|half(?:[- ]a)? turn|quarter(?: of a)? turn|three[- ]quarter turn"
    rf"|straight line|straight angle)s? "
    rf"(?:is|are|has|have|measures?|equals?|makes?)(?: exactly| always| each)? {_DEGREES}"
)
_KIND = Form(
    rf"(?:\ban angle of {_DEGREES}|(?P<degrees2>\d+) ?(?:°|degrees)) is (?:called )?(?:an? )?(?P<kind>acute|obtuse|reflex"
    rf"|right)(?: angle)?(?=[.,;:!]|$| (?:and|because|so|as)\b)"
)
_BOUND = Form(
    r"\b(?P<kind>acute|obtuse|reflex) angles? (?:is|are|measures?) (?:always )?(?P<how>more|less|greater|smaller|bigger"
    r"|larger) than (?:an? )?(?P<than>right angle|half turn|(?P<degrees>\d+) ?(?:°|degrees))"
)
_TURNS = {
    "right angle": 90,
    "full turn": 360,
    "whole turn": 360,
    "complete turn": 360,
    "straight line": 180,
    "straight angle": 180,
}
_BETWEEN = {"acute": (0, 90), "obtuse": (90, 180), "reflex": (180, 360)}


def _find(sentence: str, facts: KnownFacts) -> Iterator[Untrue]:
    for match in _IN_SHAPE.finditer(sentence):
        sides = facts.shapes.by_name.get(match["shape"], {}).get("sides")
        if sides is not None:
            right = (sides - 2) * 180
            if int(match["degrees"]) != right:
                yield Untrue(*match.span(), f"the angles of a {match['shape']} add up to {right}°")
    for match in _ABOUT.finditer(sentence):
        right = 180 if "line" in match["where"] else 360
        if int(match["degrees"]) != right:
            yield Untrue(*match.span(), f"they add up to {right}°")
    for match in _NAMED.finditer(sentence):
        right = _turn(match["name"])
        if int(match["degrees"]) != right:
            yield Untrue(*match.span(), f"it is {right}°")
    yield from _kinds(sentence)


def _kinds(sentence: str) -> Iterator[Untrue]:
    for match in _KIND.finditer(sentence):
        degrees = int(match["degrees"] or match["degrees2"])
        low, high = _BETWEEN.get(match["kind"], (89, 91))
        if not low < degrees < high:
            yield Untrue(*match.span(), f"{degrees}° is not {match['kind']}")
    for match in _BOUND.finditer(sentence):
        than = int(match["degrees"] or 0) or _turn(match["than"])
        low, high = _BETWEEN[match["kind"]]
        if than not in (low, high):
            continue
        if (match["how"] in ("more", "greater", "bigger", "larger")) != (than == low):
            yield Untrue(*match.span(), f"{match['kind']} angles lie between {low}° and {high}°")


def _turn(name: str) -> int:
    if name.startswith("quarter"):
        return 90
    if name.startswith("half"):
        return 180
    return _TURNS.get(name, 270)


CLASS = ClaimClass(
    name="angles",
    reads="The degrees of a right angle, a turn or a straight line; what the angles of a named shape, on a line or "
    "round a point add up to; "
    "whether an angle is acute, right, obtuse or reflex.",
    leaves="Angles of which no number is told.",
    source="Euclid, Elements, book I, definitions 10 to 12 and proposition 32; 360 degrees in a turn: common practice, no source.",
    cues=frozenset(("angle", "angles", "turn", "acute", "obtuse", "reflex", "degrees")),
    find=_find,
    verbs=IS | {"measures", "measure"},
)
