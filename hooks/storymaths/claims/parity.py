"""Odd and even: of numbers, and of what odd and even numbers make."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, LIST, N, numbers, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_NOUN = r"(?: (?:one|numbers?|totals?|answers?))?"
_FORMS = (
    Form(rf"(?P<of>{LIST}(?= are|, which are)|{N})(?:, | (?=is|are|must|has))(?:which |that )?(?:is|are|must be|has to be)"
    rf" (?:all |both |each"
    rf" |always )?(?:an? )?"
               rf"(?P<kind>odd|even){_NOUN}{END_OR_AND}"),
    Form(rf"(?P<of>{N}),? (?:is )?an (?P<kind>odd|even) (?:number|total|answer)\b"),
    Form(rf"\b(?P<kind>odd|even) (?:numbers?|ones?)(?: are|:|,? such as|,? like|,? for example,?| include)? ?"
               rf"(?P<of>{LIST}|{N}){END_OR_AND}"),
)  # fmt: skip
_PART_OF_SUM = Form(r"(?:\d|\b(?:and|plus|minus|times|add|or|of|to|by|from|than)|[+×÷=−])[ ,]*$")
_END_IN = Form(
    rf"\b(?P<kind>odd|even) numbers? (?:all |always )*(?:ends?|finish(?:es)?|have a ones digit|has a ones digit)"
    rf" (?:in|with|of) (?P<of>{LIST}|{N})"
)
_DOUBLED = Form(
    r"\b(?:doubl(?:es?|ing)(?: (?:any|a|every) (?:whole )?number)?|twice (?:any|a|every) (?:whole )?number) (?:always"
    r" )?(?:is|are|gives?|makes?)"
    r"(?: always)? (?:an? )?odd\b"
)
_KIND = r"(?:an? |the |(?:any )?2 |any |1 |some )?(odd|even)(?: (?:numbers?|ones?))?"
_MADE = (
    Form(rf"{_KIND} (and|plus|add|\+|times|×|minus|take away|−) {_KIND},? (?:always )?"
               r"(?:is|are|makes?|gives?|equals?|=|adds? (?:up )?to|comes? to|will be|must be)(?: always)? (?:an? )?(odd|even)\b"),
    Form(r"\b(?:any )?2 (odd|even) numbers (?:always )?(?:make|add(?: up)? to|total|give|come to|have)(?: always)? "
               r"(?:an? )?(odd|even) (?:total|number|sum|answer)"),
    Form(r"\bthe (sum|total|product|difference) of (?:any )?2 (odd|even) numbers is (?:always )?(?:an? )?(odd|even)\b"),
)  # fmt: skip
_ADDED = (
    Form(
        r"\badd(?:ing)? (?:together )?(?:any )?2 (odd|even) numbers(?: together)?,?(?: and)?(?: (?:you|we))?(?: always)?"
        r" (?:get|gives?|makes?|the (?:answer|total|sum) is)(?: always)? (?:an? )?(odd|even)\b"
    ),
    Form(
        rf"\badd(?:ing)? {_KIND} (?:and|to) {_KIND},?(?: and)?(?: (?:you|we))?(?: always)? (?:get|gives?|makes?)(?: always)?"
        rf" (?:an? )?(odd|even)\b"
    ),
)
_AND = dict.fromkeys(("and", "plus", "add", "+", "minus", "take away", "−", "sum", "total", "difference"), "+")
"""What comes out odd or even as a sum does; all else as a product."""


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in _FORMS:
        for match in form.finditer(sentence):
            if _PART_OF_SUM.search(sentence, max(0, match.start() - 20), match.start()):
                continue
            odd = match["kind"] == "odd"
            wrong = [value for value in numbers(match["of"]) if value.denominator == 1 and (value % 2 == 1) != odd]
            if wrong:
                so = ", and ".join(f"{says(value)} is {'even' if odd else 'odd'}" for value in wrong)
                yield Untrue(*match.span(), so)
    for match in _END_IN.finditer(sentence):
        odd = match["kind"] == "odd"
        if wrong := [value for value in numbers(match["of"]) if (value % 2 == 1) != odd]:
            yield Untrue(*match.span(), f"{says(wrong[0])} is {'even' if odd else 'odd'}")
    yield from _rules(sentence)


def _rules(sentence: str) -> Iterator[Untrue]:
    for match in _DOUBLED.finditer(sentence):
        yield Untrue(*match.span(), "a double is even")
    for match in _ADDED[0].finditer(sentence):
        yield from _judge(match, match[1], "+", match[1], match[2])
    for match in _ADDED[1].finditer(sentence):
        yield from _judge(match, match[1], "+", match[2], match[3])
    for match in _MADE[0].finditer(sentence):
        first, sign, second, made = match.groups()
        yield from _judge(match, first, _AND.get(sign, "×"), second, made)
    for match in _MADE[1].finditer(sentence):
        kind, made = match.groups()
        yield from _judge(match, kind, "+", kind, made)
    for match in _MADE[2].finditer(sentence):
        what, kind, made = match.groups()
        yield from _judge(match, kind, _AND.get(what, "×"), kind, made)


def _judge(match: re.Match[str], first: str, sign: str, second: str, made: str) -> Iterator[Untrue]:
    odd = (first != second) if sign == "+" else (first == second == "odd")
    if odd != (made == "odd"):
        joined = "and" if sign == "+" else "times"
        yield Untrue(*match.span(), f"{first} {joined} {second} makes {'odd' if odd else 'even'}")


CLASS = ClaimClass(
    name="odd and even",
    reads="A number or a list said to be odd or even; what two odd or even numbers make when added, taken away or multiplied.",
    leaves="Even as in even better; what a letter, a character or a total without its number is.",
    source="Euclid, Elements, book VII, definitions 6 and 7, and book IX, propositions 21 to 29.",
    cues=frozenset(("odd", "even")),
    find=_find,
)
