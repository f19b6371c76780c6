"""Named shapes: their sides, corners, faces, edges, right angles and lines of symmetry."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from ..model.known_facts import KnownFacts, KnownShapes
from .amounts import N, number, says
from .claim_class import IS, ClaimClass, Untrue

_CUES = "sides corners vertices faces edges symmetry angles sided"


@lru_cache(maxsize=2)
def _forms(names: tuple[str, ...], parts: tuple[str, ...]) -> tuple[re.Pattern[str], re.Pattern[str], re.Pattern[str]]:
    shape = "|".join(sorted((re.escape(name) for name in names), key=len, reverse=True))
    part = "|".join(sorted((re.escape(name) for name in parts), key=len, reverse=True))
    shape = rf"(?P<shape>(?:{shape}))(?P<many>e?s)?"
    some = rf"(?P<count>{N}|no) (?P<part>{part})\b"
    return (
        re.compile(rf"\b(?:an? |any |every |each |all |the |this |that |its )?(?<![\w-]){shape} (?:always |all |each |also )?"
                   rf"(?:has|have|with) (?:exactly |only |got )?(?P<list>{_unnamed(some)}(?:(?:,? and |, ){_unnamed(some)})*)"),
        re.compile(rf"\ban? (?:flat |solid |closed )?shape (?:with|that has) (?P<list>{_unnamed(some)}) is (?:called )?an? {shape}\b"),
        re.compile(some),
    )  # fmt: skip


def _unnamed(pattern: str) -> str:
    return re.sub(r"\?P<\w+>", "?:", pattern)


def _find(sentence: str, facts: KnownFacts) -> Iterator[Untrue]:
    shapes = facts.shapes
    has, called, some = _forms(tuple(shapes.by_name), tuple(shapes.by_part))
    for match in (*has.finditer(sentence), *called.finditer(sentence)):
        for told in some.finditer(sentence, match.start("list"), match.end("list")):
            yield from _judge(match, told, shapes)


def _judge(match: re.Match[str], told: re.Match[str], shapes: KnownShapes) -> Iterator[Untrue]:
    part = shapes.by_part[told["part"]]
    right = shapes.by_name[match["shape"]].get(part)
    said = 0 if told["count"] == "no" else number(told["count"])
    if right is not None and said != right:
        parts = shapes.parts[part][0 if right == 1 else 1]
        article = "an" if match["shape"][0] in "aeio" else "a"
        yield Untrue(
            match.start(), max(match.end(), told.end()), f"{article} {match['shape']} has {says(right)} {parts}"
        )


CLASS = ClaimClass(
    name="shapes",
    reads="A named shape said to have so many sides, corners or vertices, faces, edges, right angles or lines of symmetry; the name of "
    "a shape with so many.",
    leaves="Sides and faces told by their sort (two long sides); what is counted in more than one way, as on a cylinder.",
    source="site_data/facts.yaml, shapes.",
    cues=frozenset(_CUES.split()),
    find=_find,
    numbers=1,
    verbs=IS | {"with", "called"},
)
