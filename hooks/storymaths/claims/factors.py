"""Factors, multiples, primes, squares and cubes: what a number is said to be of these."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from math import gcd, lcm

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, LIST, N, number, numbers, says, stands_clear
from .claim_class import ClaimClass, Untrue
from .form import Form

_SOME = rf"(?P<some>{LIST}|{N})"
_ARE = r",? (?:is|are)(?: both| all| each| also)?(?: examples of)?"
_KIND = r"(?P<kind>prime|composite|square|cube|triangular)"
_POWER = Form(rf"(?P<a>{N}) (?P<power>squared|cubed) (?:is|equals|makes|gives|=) (?P<b>{N}){END_OR_AND}")
_POWER_OF = Form(rf"\bthe (?P<power>square|cube) of (?P<a>{N}) is (?P<b>{N}){END_OR_AND}")
_ROOT = Form(rf"\bthe (?P<power>square|cube) root of (?P<b>{N}) is (?P<a>{N}){END_OR_AND}")
_IS_KIND = Form(rf"{_SOME}{_ARE} (?:an? )?{_KIND}(?: numbers?)?{END_OR_AND}")
_KINDS_ARE = Form(
    rf"\b(?:the )?(?:first (?P<first>{N}) )?{_KIND} numbers?(?: (?:up to|under|below|less than|between {N} and) (?P<to>{N}))?"
    rf"(?: are|:|,? such as|,? like| include) {_SOME}{END_OR_AND}"
)
_MULTIPLE = Form(rf"{_SOME}{_ARE} (?:an? |the )?(?:common )?multiples? of (?P<of>{N}(?: and {N})*){END_OR_AND}")
_FACTOR = Form(
    rf"{_SOME}{_ARE} (?:an? |the )?(?:common )?(?:factors?|divisors?|a factor pair) (?:of|for) (?P<of>{N}(?: and"
    rf" {N})*){END_OR_AND}"
)
_DIVISIBLE = Form(rf"{_SOME}{_ARE} (?:exactly )?divisible by (?P<of>{N}){END_OR_AND}")
_MULTIPLES_ARE = Form(rf"\bmultiples of (?P<of>{N})(?: are|:|,? such as| include) {_SOME}{END_OR_AND}")
_FACTORS_ARE = Form(
    rf"\b(?P<all>the )?(?P<common>common )?factors of (?P<of>{N}(?: and {N})?)(?: are|:| include|,? which are)"
    rf" {_SOME}{END_OR_AND}"
)
_HAS_FACTORS = Form(rf"(?P<of>{N}) has (?:only |exactly |just )?(?P<count>{N}) factors{END_OR_AND}")
_FACTORS_HAD = Form(rf"(?P<of>{N}) has (?:the |as )?(?:its )?factors {_SOME}{END_OR_AND}")
_PAIR = Form(
    rf"(?P<a>{N}) (?:and|×|times) (?P<b>{N}) (?:is|are|make) (?:both )?an? factor pair (?:of|for) (?P<of>{N}){END_OR_AND}"
)
_PAIRS = Form(
    rf"\bfactor pairs? (?:of|for) (?P<of>{N}) (?:is|are|include|includes)(?: the pair)? (?P<a>{N}) and (?P<b>{N})\b"
)
_HCF = Form(
    rf"\bthe (?P<what>highest|greatest|largest|lowest|least|smallest|first) common (?P<kind>factor|multiple) of"
    rf" (?P<a>{N}) and (?P<b>{N}) is (?P<c>{N}){END_OR_AND}"
)
_MOST = 10_000


def _is(value: Rational, kind: str) -> bool:
    """Whether a whole number is prime, composite, square, cube or triangular."""
    if value.denominator != 1:
        return False
    whole = int(value)
    match kind:
        case "prime":
            return whole > 1 and len(_factors(whole)) == 2
        case "composite":
            return whole > 1 and len(_factors(whole)) > 2
        case "square":
            return any(n * n == whole for n in range(int(whole**0.5) + 2))
        case "cube":
            return any(n**3 == whole for n in range(round(whole ** (1 / 3)) + 2))
        case _:
            return any(n * (n + 1) // 2 == whole for n in range(int((2 * whole) ** 0.5) + 2))


def _factors(whole: int) -> list[int]:
    return [each for each in range(1, whole + 1) if whole % each == 0] if 0 < whole <= _MOST else []


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in (_POWER, _POWER_OF, _ROOT):
        for match in form.finditer(sentence):
            power = 2 if match["power"].startswith("square") else 3
            if stands_clear(sentence, match.start()) and number(match["a"]) ** power != number(match["b"]):
                told = "squared" if power == 2 else "cubed"
                yield Untrue(*match.span(), f"{match['a']} {told} is {says(number(match['a']) ** power)}")
    yield from _kinds(sentence)
    yield from _multiples(sentence)
    yield from _lists(sentence)


def _kinds(sentence: str) -> Iterator[Untrue]:
    for match in (*_IS_KIND.finditer(sentence), *_KINDS_ARE.finditer(sentence)):
        some, kind = numbers(match["some"]), match["kind"]
        if max(some) > _MOST or ("to" not in match.re.groupindex and not stands_clear(sentence, match.start())):
            continue
        if wrong := [value for value in some if not _is(value, kind)]:
            yield Untrue(*match.span(), f"{_listed(wrong)} {_are(wrong)} not {kind}")
        elif missing := _left_out(match, some, kind):
            yield Untrue(*match.span(), f"{_listed(missing)} {_are(missing)} {kind} too")


def _left_out(match: re.Match[str], some: Sequence[Rational], kind: str) -> list[Rational]:
    """What a list "up to" a number leaves out."""
    to = match.groupdict().get("to")
    if to is None or " between " in match.group() or " are " not in match.group() or number(to) > _MOST:
        return []
    last = int(number(to)) + (" up to " in match.group())
    return [each for each in range(1, last) if _is(each, kind) and each not in some]


def _multiples(sentence: str) -> Iterator[Untrue]:
    for form, is_multiple in ((_MULTIPLE, True), (_DIVISIBLE, True), (_MULTIPLES_ARE, True), (_FACTOR, False)):
        for match in form.finditer(sentence):
            some, of = numbers(match["some"]), numbers(match["of"])
            if form is not _MULTIPLES_ARE and not stands_clear(sentence, match.start()):
                continue
            if any(value.denominator != 1 for value in (*some, *of)) or 0 in (of if is_multiple else some):
                continue
            wrong = [a for a in some if any((a % b if is_multiple else b % a) != 0 for b in of)]
            if wrong:
                what = "multiple" if is_multiple else "factor"
                named = f"{what}s" if len(wrong) > 1 else f"a {what}"
                yield Untrue(*match.span(), f"{_listed(wrong)} {_are(wrong)} not {named} of {match['of']}")


def _lists(sentence: str) -> Iterator[Untrue]:
    for match in (*_FACTORS_ARE.finditer(sentence), *_FACTORS_HAD.finditer(sentence)):
        of, some = [int(each) for each in numbers(match["of"])], numbers(match["some"])
        right = sorted(set.intersection(*(set(_factors(each)) for each in of)))
        if not right:
            continue
        whole_list = match.groupdict().get("all") and " are " in match.group()
        if any(each not in right for each in some) or (whole_list and set(some) != set(right)):
            yield Untrue(*match.span(), f"the factors are {_listed(right)}")
    for match in _HAS_FACTORS.finditer(sentence):
        right = _factors(int(number(match["of"])))
        if right and number(match["count"]) != len(right):
            yield Untrue(*match.span(), f"its factors are {_listed(right)}")
    for match in (*_PAIR.finditer(sentence), *_PAIRS.finditer(sentence)):
        made = number(match["a"]) * number(match["b"])
        if made != number(match["of"]):
            yield Untrue(*match.span(), f"{match['a']} times {match['b']} is {says(made)}")
    for match in _HCF.finditer(sentence):
        yield from _common(match)


def _common(match: re.Match[str]) -> Iterator[Untrue]:
    one, other = int(number(match["a"])), int(number(match["b"]))
    right = gcd(one, other) if match["kind"] == "factor" else lcm(one, other)
    highest = match["what"] in ("highest", "greatest", "largest")
    if highest == (match["kind"] == "factor") and number(match["c"]) != right:
        yield Untrue(*match.span(), f"it is {right}")


def _listed(some: Sequence[Rational]) -> str:
    shown = [says(value) for value in some]
    return " and ".join(filter(None, (", ".join(shown[:-1]), shown[-1])))


def _are(some: Sequence[Rational]) -> str:
    return "are" if len(some) > 1 else "is"


CLASS = ClaimClass(
    name="factors and multiples",
    reads="Numbers said to be prime, composite, square, cube or triangular, or factors or multiples of a number; the list of a number's "
    "factors; a number squared or cubed.",
    leaves="Numbers said not to be so; lists that do not say how far they go.",
    source="Euclid, Elements, book VII, definitions 3, 5, 11, 13, 18 and 19.",
    cues=frozenset(
        "squared cubed square cube root prime primes composite triangular factor factors multiple multiples divisible".split()
    ),
    find=_find,
    numbers=1,
)
