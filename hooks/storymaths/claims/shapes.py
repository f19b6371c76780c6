"""Named shapes: their sides, corners, faces, edges, right angles and lines of symmetry."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from ..expression.number import Rational
from ..model.known_facts import KnownFacts, KnownShapes, Part
from .amounts import END_OR_AND, N, number, says
from .claim_class import IS, ClaimClass, Untrue
from .number_words import NUMBER_IN_WORDS, number_in_words

_SORTS = "squares? rectangles? triangles? circles?".replace(" ", "|")
_CUES = "squares rectangles triangles circles sides corners vertices faces edges symmetry angles sided"


_FACE = re.compile(rf"(?P<count>{N}) (?P<sort>{_SORTS})\b")


class _Forms:
    """The ways a shape and its parts are told, for the names known."""

    def __init__(self, names: Iterable[str], parts: Iterable[str], solids: Iterable[str]) -> None:
        faces = rf"{N} (?:{_SORTS})\b(?! (?:and|or) [a-z]+ faces)"
        self.faces = re.compile(
            rf"(?<![\w-])(?P<solid>{_longest_first(solids)})s? (?:(?:always |each )?(?:has|have|with) )?(?:flat faces: )?"
            rf"(?P<list>{faces}(?:(?:,? and |, ){faces})*)"
        )
        shape = rf"(?P<shape>{_longest_first(names)})(?:e?s)?"
        some = rf"(?:{N}|no) (?:{_longest_first(parts)})\b"
        some = rf"(?P<list>{some}(?:(?:,? and |, ){some})*)"
        self.part = re.compile(rf"(?P<count>{N}|no) (?P<part>{_longest_first(parts)})\b")
        self.whole = (
            re.compile(
                rf"(?<![\w-]){shape} (?:always |all |each |also )?(?:has|have) (?:exactly |only |got )?{some}(?: only| in all|"
                rf" altogether)?{END_OR_AND}"
            ),
            re.compile(rf"\bshapes? (?:with|that has|that have) {some} (?:is|are) (?:called )?(?:an? )?{shape}\b"),
            re.compile(
                rf"(?<![\w-]){shape} is an? (?:flat |solid |closed )?shape (?:with|that has) {some}{END_OR_AND}"
            ),
        )
        sided = rf"(?P<sided>\d+|{NUMBER_IN_WORDS.rpartition('(?!')[0]})-sided"
        self.sided = (
            re.compile(rf"(?<![\w-]){shape} is an? {sided} (?:shape|polygon|figure)\b"),
            re.compile(rf"\b{sided} (?:shape|polygon|figure)s? (?:is|are) (?:called )?(?:an? )?{shape}\b"),
        )


def _longest_first(names: Iterable[str]) -> str:
    return f"(?:{'|'.join(sorted(map(re.escape, names), key=len, reverse=True))})"


@lru_cache(maxsize=2)
def _forms(names: tuple[str, ...], parts: tuple[str, ...], solids: tuple[str, ...]) -> _Forms:
    return _Forms(names, parts, solids)


def _find(sentence: str, facts: KnownFacts) -> Iterator[Untrue]:
    shapes = facts.shapes
    forms = _forms(tuple(shapes.by_name), tuple(shapes.by_part), tuple(shapes.faces_by_name))
    for match in forms.faces.finditer(sentence):
        may_have = shapes.faces_by_name[match["solid"]]
        for told in _FACE.finditer(match["list"]):
            sort = told["sort"] if told["sort"].endswith("s") else told["sort"] + "s"
            right = next((counts for name, counts in may_have.items() if name == sort), None)
            if right and number(told["count"]) not in right:
                yield Untrue(*match.span(), f"of the flat faces of a {match['solid']}, {says(right[0])} are {sort}")
    for match in (match for form in forms.whole for match in form.finditer(sentence)):
        for told in forms.part.finditer(sentence, match.start("list"), match.end("list")):
            said = 0 if told["count"] == "no" else number(told["count"])
            yield from _judge(match, shapes.by_part[told["part"]], said, shapes)
    for match in (match for form in forms.sided for match in form.finditer(sentence)):
        sides = match["sided"]
        yield from _judge(match, "sides", int(sides) if sides.isdigit() else number_in_words(sides), shapes)


def _judge(match: re.Match[str], part: Part, said: Rational, shapes: KnownShapes) -> Iterator[Untrue]:
    right = shapes.by_name[match["shape"]].get(part)
    if right is not None and said != right:
        parts = shapes.parts[part][0 if right == 1 else 1]
        article = "an" if match["shape"][0] in "aeio" else "a"
        yield Untrue(*match.span(), f"{article} {match['shape']} has {says(right)} {parts}")


CLASS = ClaimClass(
    name="shapes",
    reads="A named shape said to have so many sides, corners or vertices, faces, edges, right angles or lines of symmetry; the name of "
    "a shape with so many.",
    leaves="Sides and faces told by their sort (two long sides); what is counted in more than one way, as on a cylinder.",
    source="site_data/facts.yaml, shapes.",
    cues=frozenset(_CUES.split()),
    find=_find,
    verbs=IS,
)
