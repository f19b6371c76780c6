"""Sharing and grouping things: what each gets, and how many groups there are."""

from __future__ import annotations

from collections.abc import Iterator

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_THING = r"(?: [a-z]+){1,2}?"
_LEFT = (
    rf"(?:,?(?: and| with| leaving| and leaves?| and leaving| remainder| r)+ (?:a remainder of )?(?P<left>{N}|none|nothing)(?: [a-z]+)?"
    rf"(?: is| are)?(?: left(?: over)?| over| remaining| spare|(?=[.,;]|$)))?"
)
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
    Form(rf"\bshar(?:e|ing) (?P<all>{N})(?:{_THING})? (?:equally |fairly |out )*(?:between|among|by)"
         rf" (?P<among>{N})(?:{_THING})?,? (?:gives?|is|makes?|means)"
         rf"(?: each of them| them| each child| each)? (?P<each>{N})(?:{_THING})?(?: each| per [a-z]+| for each)?{_LEFT}{END_OR_AND}"),
    Form(rf"\b(?:there are |we have |with |in )?(?P<among>{N}) (?:equal )?(?:groups|rows|lots|sets|bags|boxes|teams|plates"
         rf"|packs) of (?P<each>{N})(?:{_THING})?,?"
         rf" (?:so |and |which |that )*(?:there are|is|are|makes?|that is|gives?|has|have) (?P<all>{N})(?:{_THING})?(?:"
         rf" altogether| in all| in total){END_OR_AND}"),
    Form(rf"\b(?:an )?array (?:with|of|has|that has) (?P<among>{N}) rows? (?:and|of|by|with) (?P<each>{N})(?: columns?| in each"
         rf"| in each row|{_THING})?,?"
         rf" (?:has|makes?|shows?|is|gives|holds|contains|so there are) (?P<all>{N})\b"),
    Form(rf"\ba (?P<among>{N}) by (?P<each>{N}) (?:array|grid|rectangle of squares) (?:has|makes?|shows?|is|gives|holds"
         rf"|contains) (?P<all>{N})\b"),
    Form(rf"\ban array of (?P<all>{N})(?:{_THING})? (?:has|can have|makes|can be|is) (?P<among>{N}) rows of (?P<each>{N})\b"),
    Form(rf"(?P<all>{N})(?:{_THING})? (?:makes?|make up|fill|give) (?P<among>{N}) (?:full |whole |equal )?[a-z]+ of"
         rf" (?P<each>{N}){_LEFT}{END_OR_AND}"),
)  # fmt: skip
_SAME = Form(
    rf"\b(?P<a>{N}) (?:rows|lots|groups|sets) of (?P<b>{N})(?:{_THING})? (?:is|are|makes?|has|have|gives?) (?:the same"
    rf" (?:amount |number |total )?as|equal to) "
    rf"(?P<c>{N}) (?:rows|lots|groups|sets) of (?P<d>{N}){END_OR_AND}"
)
_AND_MORE = Form(
    rf"(?P<a>{N}) [a-z]+ of (?P<b>{N})(?: [a-z]+){{0,2}} and (?P<more>{N}) (?:more|extra|others?|ones|singles?)(?: [a-z]+)?"
    rf" (?:is|are|makes?|gives?|shows?) (?P<all>{N})\b"
)
_MORE_TO_COME = Form(
    r" (?:is |are )?(?:left|over|spare)\b|,? (?:with|and|remainder|r|leaving|but)\b.*\b(?:left|over|remain\w*|spare|more|leav\w*)\b"
)


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in _FORMS:
        for match in form.finditer(sentence):
            whole, among, each = (number(match[part]) for part in ("all", "among", "each"))
            left = match.groupdict().get("left")
            tells_left = " left" in sentence[match.end("each") : match.end()]
            if left is None and (tells_left or _MORE_TO_COME.match(sentence, match.end())):
                continue
            over: Rational = 0 if left in (None, "none", "nothing") else number(left)
            if among * each + over != whole:
                rest = f" and {says(over)}" if over else ""
                yield Untrue(*match.span(), f"{says(among)} times {says(each)}{rest} is {says(among * each + over)}")
    for match in _SAME.finditer(sentence):
        a, b, c, d = (number(match[part]) for part in "abcd")
        if a * b != c * d:
            yield Untrue(
                *match.span(),
                f"{says(a)} times {says(b)} is {says(a * b)}, and {says(c)} times {says(d)} is {says(c * d)}",
            )
    for match in _AND_MORE.finditer(sentence):
        made = number(match["a"]) * number(match["b"]) + number(match["more"])
        if made != number(match["all"]):
            yield Untrue(*match.span(), f"it is {says(made)}")


CLASS = ClaimClass(
    name="sharing",
    reads="Things shared between so many, and what each gets; things in groups of so many, and how many groups; what is left over.",
    leaves="Shares without their three numbers, and sums without things, which the reader of arithmetic works out.",
    source="Common practice, no source: equal groups multiplied.",
    cues=frozenset(
        (
            "shared",
            "share",
            "sharing",
            "array",
            "grid",
            "lots",
            "sets",
            "more",
            "groups",
            "bags",
            "boxes",
            "plates",
            "rows",
            "teams",
        )
    ),
    find=_find,
    numbers=3,
)
