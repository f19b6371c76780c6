"""Sharing told in a row: numbers of groups one number makes, and what each gets for each number of groups."""

from __future__ import annotations

from collections.abc import Iterator

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END, LIST, N, number, numbers, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_GROUPS = (
    r"(?:boats|groups|children|people|friends|teams|rows|plates|bags|boxes|cups|piles|bowls|pots|tables|sets|fleets)"
)
_EACH = r"(?:on|in|for|to) each(?: [a-z]+)?"
_FACTORS = Form(
    rf"(?P<all>{N})(?: [a-z]+)? (?:works for|can be shared (?:out )?(?:equally |fairly )*(?:between|by|among)|shares? "
    rf"(?:equally |fairly )*(?:between|among)) (?P<list>{LIST}) {_GROUPS}\b"
)
_BETWEEN = Form(
    rf"(?P<all>{N})(?: [a-z]+){{0,2}} (?:shared |split |put )?(?:between|on|in|into|among) (?P<one>{LIST}) {_GROUPS}"
    rf"(?:: | is | are | makes | gives )(?P<two>{LIST}) {_EACH}{END}"
)
_WITH = Form(
    rf"\bwith (?P<among>{N}) {_GROUPS},? (?P<all>{N})(?: [a-z]+)? (?:makes?|gives?|is|are) (?P<each>{N}) {_EACH}{END}"
)
_PAIR = rf"{N}(?: [a-z]+)? (?:are|is|make|makes|fill|fills) {N}(?: [a-z]+)?"
_WITH_EACH = Form(rf"\bwith (?P<each>{N}) [a-z]+ {_EACH}, (?P<pairs>{_PAIR}(?:(?:, and |, | and ){_PAIR}){{0,9}}){END}")
_ONE_PAIR = Form(rf"({N})(?: [a-z]+)? (?:are|is|make|makes|fill|fills) ({N})")


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in (
        _FACTORS.finditer(sentence) if " and " in sentence and ("works" in sentence or "share" in sentence) else ()
    ):
        whole = number(match["all"])
        wrong = [each for each in numbers(match["list"]) if not each or whole % each]
        if wrong:
            yield Untrue(
                *match.span(), f"{says(whole)} shared by {says(wrong[0])} does not come out even", supposed=True
            )
    if " each" not in sentence:
        return
    for match in _BETWEEN.finditer(sentence) if " and " in sentence else ():
        among, each = numbers(match["one"]), numbers(match["two"])
        if len(among) == len(each):
            yield from _judge(match.span(), number(match["all"]), list(zip(among, each, strict=True)))
    has_with = "with " in sentence
    for match in _WITH.finditer(sentence) if has_with else ():
        yield from _judge(match.span(), number(match["all"]), [(number(match["among"]), number(match["each"]))])
    for match in _WITH_EACH.finditer(sentence) if has_with else ():
        on_each = number(match["each"])
        for lights, boats in _ONE_PAIR.pairs(match["pairs"]):
            yield from _judge(match.span(), number(lights), [(number(boats), on_each)])


def _judge(span: tuple[int, int], whole: Rational, shares: list[tuple[Rational, Rational]]) -> Iterator[Untrue]:
    for among, each in shares:
        if among * each != whole:
            yield Untrue(
                *span, f"{says(among)} times {says(each)} is {says(among * each)}, not {says(whole)}", supposed=True
            )
            return


CLASS = ClaimClass(
    name="sharing in a row",
    reads="The numbers of groups that a number can be shared between; what each gets with three, four and eight groups; with two on "
    "each, how many groups some numbers make.",
    leaves="Shares with some left over, and groups of other names.",
    source="Common practice, no source: groups times how many in each are all of them.",
    cues=frozenset(("works", "shared", "share", "shares", "each", "between")),
    find=_find,
    numbers=3,
)
