"""Sharing and grouping things: what each gets, and how many groups there are."""

from __future__ import annotations

from collections.abc import Iterator

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_THING = r"(?: [a-z]+){1,2}?"
_LEFT = rf"(?:,?(?: and| with) (?P<left>{N}|none|nothing)(?: is| are)? left(?: over)?)?"
_EACH_GETS = rf",? (?:and |so |then )?(?:each|every)(?: one| of them| [a-z]+)? (?:gets|has|will get) (?P<each>{N})"
_FORMS = (
    Form(rf"(?P<all>{N}){_THING},? (?:are |is )?shared (?:out )?(?:equally |fairly )?(?:between|among|by)"
    rf" (?P<among>{N}){_THING}{_EACH_GETS}{_LEFT}\b"),
    Form(rf"\bshare (?P<all>{N}){_THING} (?:equally |fairly )?(?:between|among) (?P<among>{N}){_THING}{_EACH_GETS}{_LEFT}\b"),
    Form(rf"\bthere are (?P<among>{N}) (?:groups|lots|sets) of (?P<each>{N}) in (?P<all>{N}){_LEFT}{END_OR_AND}"),
    Form(rf"(?P<all>{N}){_THING},? (?:are )?shared (?:out )?(?:equally |fairly )?(?:between|among|by) (?P<among>{N}){_THING}"
               rf" (?:is|are|gives?|makes?|is just) (?P<each>{N})(?:{_THING})? each{_LEFT}\b"),
    Form(rf"\b(?P<among>{N}){_THING} share (?P<all>{N}){_THING}(?: equally| fairly)?,? (?:and|so) (?:each (?:one"
    rf" )?(?:gets|has)|(?:they )?(?:get|have)) (?P<each>{N})\b(?: each)?{_LEFT}"),
    Form(rf"(?P<all>{N})(?:{_THING})?,? (?:are )?(?:put |sorted |shared |split )?(?:into|in) groups of (?P<each>{N})"
    rf" (?:is|are|gives?|makes?) (?P<among>{N}) groups{_LEFT}\b"),
    Form(rf"\b(?P<among>{N}) (?:groups|bags|boxes|plates|lots|rows|teams) of (?P<each>{N})"
    rf" (?:is|are|makes?|gives?|hold|need) (?P<all>{N}) [a-z]+{_LEFT}"),
)  # fmt: skip


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in _FORMS:
        for match in form.finditer(sentence):
            whole, among, each = (number(match[part]) for part in ("all", "among", "each"))
            left = match["left"]
            over: Rational = 0 if left in (None, "none", "nothing") else number(left)
            if among * each + over != whole:
                rest = f" and {says(over)}" if over else ""
                yield Untrue(*match.span(), f"{says(among)} times {says(each)}{rest} is {says(among * each + over)}")


CLASS = ClaimClass(
    name="sharing",
    reads="Things shared between so many, and what each gets; things in groups of so many, and how many groups; what is left over.",
    leaves="Shares without their three numbers, and sums without things, which the reader of arithmetic works out.",
    source="Common practice, no source: equal groups multiplied.",
    cues=frozenset(("shared", "share", "groups", "bags", "boxes", "plates", "rows", "teams")),
    find=_find,
    numbers=3,
)
