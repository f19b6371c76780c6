"""Whether what stands before or after a run of numbers and signs belongs to it, so that it says another thing."""

from __future__ import annotations

from collections.abc import Sequence

from ..expression.spoken_signs import is_thing
from ..expression.tokens import Token

_OPENS = "\"“‘'’”)]}([{|,.;:!?—–-…*•✓✔✗✘` \n\u2028"
_CLOSES = "\"”’'“‘([{)]}|.,;:!?—–-…*✓✔✗✘` \n\u2028"
_BEFORE = frozenset(
    "about almost another approximately around between both by each every from half into less minus nearly not off out "
    "over past per plus quarter than third times to under until up whether without x".split()
)
"""Words that change what the number after them says."""
_UNKNOWN = {"`": "code stands beside it", "…": "not all of it is written out"}
_PORTIONS = frozenset("all double each lots half most none number part quarter rest some third twice".split())
"""Words before "of" that make another number of the one after it."""
_AFTER = frozenset(
    "am approximately away cubed fewer less more o’clock o'clock of or out past percent per pm quarter quarters remainder r "
    "rounded squared times to twice x".split()
)
"""Words that change what the number before them says."""
_PAUSES = frozenset("and as because but if or since so that then when where which while".split())
SAYS = frozenset(
    "also altogether and as because but each exactly if know left knows means now say says see since so that then therefore think too "
    "well when while yes".split()
)
"""Words that may stand beside a sum told in words, and are no part of it."""
_GAPS = frozenset(("gap", "sign-gap", "digits"))


def open_before(text: str, tokens: Sequence[Token], first: int, last: int) -> str:
    """Why what stands before a run belongs to it; empty where nothing does."""
    if not first:
        return ""
    token, before = tokens[first], tokens[first - 1]
    in_words = _first_relation(tokens, first, last, 1).typed[:1].isalpha()
    if before.kind in _GAPS:
        return "it has a gap to fill"
    if before.kind == "sign":
        return _why_open(tokens[max(0, first - 2)])
    if before.kind == "number":
        return "two numbers stand side by side"
    is_mark = text[token.start - 1] in _OPENS and (before.kind != "other" or before.text in _OPENS)
    if not is_mark and before.kind != "relation":
        return f'"{text[before.start : token.end]}" is no number'
    if before.text in _UNKNOWN:
        return _UNKNOWN[before.text]
    if token.things in ("more", "less", "fewer") and tokens[first + 1].kind == "relation":
        return f'"{token.things}" is told of another number'
    if before.kind == "word" and token.text == "−" and tokens[first + 2].kind == "relation":
        return "it takes away from what is not told here"
    if before.kind == "word":
        word, is_alone = before.text.lower(), tokens[first + 1].kind == "relation"
        further = tokens[first - 2] if first > 1 else None
        after_name = word in ("and", "or") and is_alone and further is not None and further.kind == "word"
        after_name = after_name or (word == "or" and further is not None and further.kind == "number")
        if word == "and" and in_words and first > 2 and tokens[first - 3].text.lower() == "no":
            return "a part of it is none"  # 3 hundreds, no tens and five ones are 305
        of_part = word == "of" and (is_alone or further is None or further.text.lower() in _PORTIONS)
        if word in _BEFORE or of_part or after_name or (in_words and word not in SAYS):
            return f'"{before.text}" stands before it'
        return "not all of it is numbers" if _follows_sign(tokens, first) else ""
    is_listed = first > 1 and before.text == "," and tokens[first - 2].kind == "number"
    is_listed = is_listed and not (first > 2 and tokens[first - 3].kind == "relation")  # two twos are four, three …
    return "it ends a list" if in_words and is_listed and tokens[first + 1].typed != "and" else ""


def _why_open(beyond: Token) -> str:
    """Why a side goes on beyond a sign with what is no number."""
    return "it has a gap to fill" if beyond.kind in _GAPS else "not all of it is numbers"


def _follows_sign(tokens: Sequence[Token], first: int) -> bool:
    """Whether only words stand between a sign and a run: "the crab + the other 1 = 4" says nothing we can work out."""
    at = first - 1
    while at >= 0 and tokens[at].kind == "word" and tokens[at].text.lower() not in _PAUSES:
        at -= 1
    return 0 <= at < first - 1 and tokens[at].kind in ("sign", "relation")


def open_after(text: str, tokens: Sequence[Token], first: int, last: int) -> str:
    """Why what stands after a run belongs to it; empty where nothing does."""
    if last + 1 == len(tokens):
        return ""
    token, after = tokens[last], tokens[last + 1]
    relation = _first_relation(tokens, last, first, -1)
    if after.kind in _GAPS:
        return "it has a gap to fill"
    if after.kind == "sign":
        return _why_open(tokens[min(last + 2, len(tokens) - 1)])
    if after.kind == "number" and not (token.text.isdecimal() and after.text.isalpha()):  # 4 + 8 = 12 three times over
        return "two numbers stand side by side"
    is_mark = text[token.end] in _CLOSES and (after.kind != "other" or after.text in _CLOSES)
    if not is_mark and after.kind != "relation":
        return f'"{text[token.start : after.end]}" is no number'
    if after.text in _UNKNOWN or text.startswith("...", token.end):
        return _UNKNOWN.get(after.text, _UNKNOWN["…"])
    is_purpose = after.text == "to" and last + 2 < len(tokens) and tokens[last + 2].kind == "word"  # to check
    if after.kind == "word" and after.text.lower() in _AFTER and not is_purpose:
        return f'"{after.text}" stands after it'
    if after.kind == "word" and _leads_to_sign(tokens, last):
        return "not all of it is numbers"
    return _open_in_words(tokens, last) if relation.typed[:1].isalpha() else ""


def _leads_to_sign(tokens: Sequence[Token], last: int) -> bool:
    at = last + 1
    while at < len(tokens) and tokens[at].kind == "word" and tokens[at].text.lower() not in _PAUSES:
        at += 1
    return at < len(tokens) and tokens[at].kind in ("sign", "relation")


def _open_in_words(tokens: Sequence[Token], last: int) -> str:
    """Why words after a sum in words may belong to it: all but a mark, the things counted, or a new thought."""
    after = last + 1
    if tokens[after].kind == "word" and is_thing(tokens[after]) and tokens[after].text.endswith("s"):
        after += 1
    token = tokens[after] if after < len(tokens) else None
    if (
        token
        and "and" in (token.typed, token.text)
        and any(one.text == "another" for one in tokens[after + 1 : after + 2])
    ):
        return "more is added to it"
    further = tokens[after + 1 : after + 5] if token and token.text == "," else ()
    listed = further and further[0].kind == "number" and all(one.kind != "relation" for one in further)
    if token is None or (token.kind == "other" and not listed) or token.text.lower() in SAYS or token.text == ")":
        return ""
    return f'"{token.text}" stands after it'


def _first_relation(tokens: Sequence[Token], start: int, end: int, step: int) -> Token:
    return next(tokens[at] for at in range(start, end + step, step) if tokens[at].kind == "relation")
