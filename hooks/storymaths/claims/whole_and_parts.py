"""A whole and its parts: pairs that make a number, what a number is made of, bars that are split."""

from __future__ import annotations

from collections.abc import Iterator

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, numbers, says, stands_clear
from .claim_class import ClaimClass, Untrue
from .form import Form

_SIZES = {
    "ones": 1, "twos": 2, "threes": 3, "fours": 4, "fives": 5, "sixes": 6, "sevens": 7, "eights": 8, "nines": 9, "tens": 10,
    "ten": 10, "one": 1, "twenties": 20, "hundreds": 100, "hundred": 100,
}  # fmt: skip
_TERM = rf"(?:(?:an?|another) )?{N}(?: (?:{'|'.join(_SIZES)})\b)?(?: more)?"
_ONE_TERM = Form(rf"(?:(an?|another) )?({N})(?: ({'|'.join(_SIZES)})\b)?")
_TERMS = rf"{_TERM}(?:, {_TERM}){{0,6}},? (?:and|with|plus) {_TERM}"
_ALL = rf"(?:the number )?(?P<all>{N})"
_PAIR = rf"(?P<one>{N}) and (?P<other>{N})"
_TO = r"(?:to|of|for|that (?:makes?|totals?)|making|which makes?|totalling)"
_BONDS = r"(?:(?:number |a number |the number )?(?:bonds?|pairs?|partners?|complements?)(?: pairs?| partners?)?)"
_MADE = r"(?:up )?(?:of|from|by|out of|with)"
_MAKES = r"(?:makes?|made|totals?|gives?|adds? up to|comes? to|is|are)"
_CUT = r"(?:split|cut|divided|broken|partitioned|folded)"
_PIECES = r"(?:parts?|bars?|boxes|pieces|sections|pots|blocks)"
_COMPOSED = (
    Form(
        rf"{_ALL} (?:is|can be|could be|may be)(?: {_CUT} into| made {_MADE}| composed of| the same as|) (?P<parts>{_TERMS}){END_OR_AND}"
    ),
    Form(rf"{_ALL} (?:splits|breaks|partitions|divides|parts) (?:up )?into (?P<parts>{_TERMS}){END_OR_AND}"),
    Form(
        rf"(?:(?:you|we|they) (?:can |could )?)?(?:split|break|partition) {_ALL} (?:up )?into (?P<parts>{_TERMS}){END_OR_AND}"
    ),
    Form(rf"(?P<parts>{_TERMS}) (?:together )?{_MAKES} {_ALL}{END_OR_AND}"),
)
_THAT_IS = Form(rf"(?P<parts>{_TERMS}),? (?:and |so )?that(?:[’']s| is) {_ALL}{END_OR_AND}")
_GOES_ON = Form(r",? and \d")
_PAIRED = (
    Form(rf"\bthe {_BONDS} (?:of|for|to) (?P<one>{N})(?: (?:to|for|in|of) (?:make )?{_ALL})? is (?P<other>{N}){END_OR_AND}"),
    Form(rf"{_PAIR},? (?:is|are|make|form) (?:both |together )?(?:an? |one |another )?{_BONDS} {_TO} {_ALL}\b"),
    Form(rf"\b(?:the |some |all the )?(?:{_BONDS}) {_TO} {_ALL}(?: are| is| include|:|,? such as|,? like)? (?:the pair )?{_PAIR}\b"),
    Form(rf"(?P<one>{N}) (?:goes|pairs|is paired|bonds) with (?P<other>{N}) to (?:make|give|total) {_ALL}{END_OR_AND}"),
    Form(rf"\bwhat goes with (?P<one>{N}) to make {_ALL} is (?P<other>{N}){END_OR_AND}"),
    Form(rf"(?P<one>{N}) needs (?:another )?(?P<other>{N})(?: more)? to (?:make|reach|get to) {_ALL}{END_OR_AND}"),
    Form(rf"\bto make {_ALL},? (?P<one>{N}) needs (?:another )?(?P<other>{N})(?: more)?{END_OR_AND}"),
    Form(rf"\bto make {_ALL},? (?:you )?(?:put|add|need|join) (?P<one>{N}) (?:to|and|with) (?P<other>{N}){END_OR_AND}"),
    Form(rf"(?P<one>{N}) is the {_BONDS} (?:of|for|to) (?P<other>{N}) (?:to|for|in|to make) {_ALL}{END_OR_AND}"),
)  # fmt: skip
_PART = r"(?:(?:one|1|the first|a|the) (?:of the )?(?:known )?parts?)"
_OTHER = r"(?:the )?(?:other|second|missing|unknown) part"
_WHOLE_IS = rf"(?:the )?whole (?:is|of|equals) {_ALL}"
_WHOLE = (
    Form(rf"\b{_WHOLE_IS}(?:,? and|,| with) {_PART} (?:is |equals )?(?P<one>{N}),?(?: and| so| then)* (?:so )?{_OTHER} (?:is"
         rf"|must be|equals) (?P<other>{N}){END_OR_AND}"),
    Form(rf"\bthe (?:2 )?parts (?:are|of) {_PAIR}(?:,? (?:and |so |then )*|,? make )(?:a|the) whole (?:is|of|equals) {_ALL}{END_OR_AND}"),
    Form(rf"\b{_PART} is (?P<one>{N}),?(?: and| but|, if)+ {_WHOLE_IS},?(?: and| so| then)* {_OTHER} (?:is|must"
         rf" be|equals) (?P<other>{N}){END_OR_AND}"),
    Form(rf"{_ALL} is the whole(?:[,;]| and)+ {_PAIR} are (?:its |the )?(?:2 )?parts\b"),
    Form(rf"\b{_WHOLE_IS}(?:,| and|;)* (?:and )?(?:the|its) (?:2 )?parts are {_PAIR}{END_OR_AND}"),
    Form(rf"{_PAIR} are (?:its |the )?(?:2 )?parts(?:[,;]| and| so)+ (?:the whole is )?{_ALL}(?: is the whole)?{END_OR_AND}"),
    Form(rf"\bparts (?:of )?{_PAIR} (?:make|give|belong to|have) (?:a|the) whole (?:of )?{_ALL}{END_OR_AND}"),
    Form(rf"\bpart (?P<one>{N}) and part (?P<other>{N}) (?:make|give)s? (?:(?:a|the) )?whole (?:of )?{_ALL}{END_OR_AND}"),
    Form(rf"\ba whole of {_ALL} (?:has|with|can have|is made of) (?:the )?parts (?:of )?{_PAIR}{END_OR_AND}"),
)  # fmt: skip
_BAR = rf"\bbar (?:is |of |worth |for |showing |stands for |shows |that is |measures )+{_ALL}"
_BARS = Form(
    rf"{_BAR},?(?: and| which| that)?(?: is)? {_CUT} into (?:an? |2 |3 |its )?(?:{_PIECES},? )?(?:of |worth )?(?:an? )?"
    rf"(?P<parts>{N}(?:, {N}){{0,6}} and (?:an? )?{N}){END_OR_AND}"
)
_PAIRS = Form(r"\b(?:bonds?|pairs?|partners?|complements?|goes with|needs|to make)\b")
_EQUAL = Form(
    rf"{_BAR},?(?: and| which| that)?(?: is)? {_CUT} into (?P<among>{N}) equal {_PIECES}(?: has| have| with| of| gives| is| makes|,? so)+"
    rf"(?: each (?:part|box|piece) (?:is|has|shows))? (?P<each>{N})(?: in)?"
)


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    composed = _COMPOSED if " and " in sentence or " with " in sentence else ()
    for form in (*composed, *((_THAT_IS,) if composed and "that" in sentence else ())):
        for match in form.finditer(sentence):
            side_by_side = "".join(map(says, numbers(match["parts"])))  # a five and a two, that's fifty-two
            goes_on = form is not _THAT_IS and _GOES_ON.match(sentence, match.end())
            if stands_clear(sentence, match.start()) and not goes_on and side_by_side != says(number(match["all"])):
                yield from _judge(match.span(), _worth(match["parts"]), number(match["all"]))
    for form in (*(_PAIRED if _PAIRS.search(sentence) else ()), *(_WHOLE if "whole" in sentence else ())):
        for match in form.finditer(sentence):
            whole = match["all"]
            if whole is None and (told := Form(rf"\b(?:to|of|make) ({N})").search(sentence)):
                whole = told[1]
            if whole is not None:
                yield from _judge(match.span(), number(match["one"]) + number(match["other"]), number(whole))
    has_bar = "bar " in sentence
    for match in _BARS.finditer(sentence) if has_bar else ():
        yield from _judge(match.span(), sum(numbers(match["parts"])), number(match["all"]))
    for match in _EQUAL.finditer(sentence) if has_bar else ():
        yield from _judge(match.span(), number(match["among"]) * number(match["each"]), number(match["all"]))


def _worth(text: str) -> Rational:
    return sum(number(match[2]) * _SIZES.get(match[3] or "one", 1) for match in _ONE_TERM.finditer(text))


def _judge(span: tuple[int, int], made: Rational, whole: Rational) -> Iterator[Untrue]:
    if made != whole:
        yield Untrue(*span, f"the parts make {says(made)}", supposed=True)


CLASS = ClaimClass(
    name="wholes and parts",
    reads="Pairs said to make a number; what a number is made of or splits into; a whole and its two parts; a bar and its parts.",
    leaves="Parts of things in different units, and wholes of which not every part is told.",
    source="Common practice, no source: the parts added make the whole.",
    cues=frozenset(
        "bond bonds partner partners pair pairs goes whole parts part bar splits split breaks made make makes partition partitioned "
        "composed needs more ones tens that".split()
    ),
    find=_find,
    numbers=3,
)  # fmt: skip
