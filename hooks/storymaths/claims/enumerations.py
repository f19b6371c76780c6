"""How many things are named, and the list of them beside it: five coins, 10, 5, 2, 2 and 1; three piles: A, B and C."""

from __future__ import annotations

from collections.abc import Iterator

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END, LIST, N, number, numbers, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_AMOUNTS = (
    r"(?!(?:minutes|hours|seconds|days|weeks|months|years|pounds|pence|metres|centimetres|grams|kilograms|litres|times|tens"
    r"|ones|hundreds)\b)"
)
_NUMBERS = Form(rf"(?P<count>{N}) {_AMOUNTS}[a-z]+s(?:: |, (?:which are )?| are | were )(?P<list>{LIST}){END}")
_NAMED = Form(
    rf"(?P<count>{N}) {_AMOUNTS}[a-z]+s(?: (?!are\b|is\b|was\b|were\b|have\b|has\b)[a-z]+){{0,4}}: "
    r"(?P<list>[^.;:?!()]{1,40}(?:, [^.;:?!(),]{1,40}){0,9},? and [^.;:?!(),]{1,40})(?=[.;]|$)"
)
_LONGEST = 3
_JOINS = Form(r", and |, | and ")
_SO_MANY = Form(rf"{N}")


_MOST, _NEAR = 12, 2
"""What is further off counts something else: a bridge of 1,000 planks: 346, 364 and 436."""
_BEFORE = Form(
    r"(?:^|[.,;:!?(\"“‘—–] ?|\b(?:the|these|those|have|has|are|is|write|say|find|use|with|read|show|and|all|from|choose|lay|other|own) )$"
)


def _is_near(count: Rational, listed: int) -> bool:
    """Whether a number may be meant as a count of what is listed."""
    return 1 < count <= _MOST and listed - _NEAR <= count <= listed + _NEAR


def _parts(listed: str) -> list[str]:
    return listed.replace(", and ", ", ").split(", ")


def _begins(sentence: str, start: int) -> bool:
    """Whether a number begins what is told, and is no part of another amount."""
    return _BEFORE.search(sentence, max(0, start - 12), start) is not None


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in _NUMBERS.finditer(sentence):
        listed, count = numbers(match["list"]), number(match["count"])
        joined = [" and " in part for part in _parts(match["list"])]  # two ways, 1 and 4, and 2 and 3
        groups = len(joined) if all(joined) else 0
        if (
            _is_near(count, len(listed))
            and count not in (len(listed), sum(listed), groups)
            and _begins(sentence, match.start())
        ):
            yield Untrue(*match.span(), f"{len(listed)} are listed")
    for match in _NAMED.finditer(sentence) if ": " in sentence and " and " in sentence else ():
        items, count = _parts(match["list"]), number(match["count"])
        most = sum(1 for _ in _JOINS.finditer(match["list"])) + 1
        fewest = most if match["list"].count(" and ") == 1 else len(items)
        short = all(len(item.split()) <= _LONGEST for part in items for item in part.split(" and "))
        told = [number(of[0]) if (of := _SO_MANY.match(part)) else 1 for item in items for part in item.split(" and ")]
        are_amounts = count == sum(told) or 1 not in told[:-1]  # a ball, two tubes and a box; three, three and one left
        if (
            short
            and not are_amounts
            and _is_near(count, most)
            and not fewest <= count <= most
            and _begins(sentence, match.start())
        ):
            yield Untrue(*match.span(), f"{says(most)} are listed")


CLASS = ClaimClass(
    name="counts of a list",
    reads='A number of things and, after a comma, a colon or "are", the list of them in numbers; after a colon, in a few words each.',
    leaves="Lists of amounts and times; a list whose numbers come to the number told; lists that may be cut in two ways.",
    source="Common practice, no source: what is listed is counted.",
    cues=frozenset(("and", ": ")),
    find=_find,
    numbers=1,
)
