"""The stretches of a sentence in which numbers and signs take turns, and whether each is whole or goes on in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from ..expression.signs import LEVELS
from ..expression.spoken import is_thing
from ..expression.tokens import Token
from ..expression.truth import holds_whole

_OPERATIONS = frozenset(sign for level in LEVELS for sign in level)
_MOST_TOKENS = 160
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
    "am approximately cubed fewer less more o’clock o'clock of or out past percent per pm quarter quarters remainder r "
    "rounded squared times to twice x".split()
)
"""Words that change what the number before them says."""
_PAUSES = frozenset("and as because but if or since so that then when where which while".split())
SAYS = frozenset(
    "also altogether and as because but each exactly if know left knows means now say says see since so that then therefore think too "
    "well when while yes".split()
)
"""Words that may stand beside a sum told in words, and are no part of it."""
_LEFT_OVER = frozenset(("r", "remainder", "with", "and"))
_GAPS = frozenset(("gap", "sign-gap", "digits"))
_BARE = frozenset(("equals", "is equal to", "are equal to", "is the same as", "are the same as"))
"""Words for = that may stand between two numbers alone; "is" and "makes" say more things than one."""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of pieces with a relation among them."""

    tokens: tuple[Token, ...]
    last: int
    """Where its last piece stands in the sentence."""
    left_over: int | None = None
    why: str = ""
    """Why it cannot be read whole; empty where it can."""


def runs_of(text: str, tokens: Sequence[Token]) -> Iterator[Run]:
    """The longest stretches in which numbers and signs take turns, each cut to the sides that are closed."""
    at = 0
    while at < len(tokens):
        last = _run_from(tokens, at) if _may_begin(text, tokens, at) else None
        if last is None:
            at += 1
            continue
        parts = tuple(_parts(tokens, at, last))
        if len(parts) > 1 and holds_whole(tokens[at : last + 1]):
            parts = ((at, last),)
        parted = list(tokens)
        for _, end in parts[:-1]:
            parted[end + 1] = tokens[end + 1]._replace(kind="word", text="and", typed="")
        for first, end in parts:
            yield _cut(text, parted, first, end)
        at = last + 1


def _may_begin(text: str, tokens: Sequence[Token], at: int) -> bool:
    token = tokens[at]
    if token.text == "−":  # of a number below nought
        before, after = tokens[at - 1 : at] if at else (), tokens[at + 1 : at + 2]
        is_close = bool(after) and after[0].start == token.end
        return is_close and not (before and (before[0].kind in ("number", "gap") or before[0].end == token.start))
    return token.kind in ("number", "broken") or token.text == "("


def _run_from(tokens: Sequence[Token], first: int) -> int | None:
    """The last piece of the run that begins here; None where no relation is in it."""
    at, last, related = first, None, False
    while True:
        after = _past_value(tokens, at)
        if after is None:
            return last
        if related:
            last = after - 1
        if after == len(tokens) or not _joins(tokens[after]):
            return last
        related = related or tokens[after].kind == "relation"
        at = after + 1


def _joins(token: Token) -> bool:
    return token.kind == "relation" or (token.kind == "sign" and token.text in _OPERATIONS)


def _past_value(tokens: Sequence[Token], at: int) -> int | None:
    """Where a value with its brackets ends; None where none stands."""
    minus = False
    while at < len(tokens) and (tokens[at].text == "(" or (tokens[at].text == "−" and not minus)):
        minus = minus or tokens[at].text == "−"
        at += 1
    if at == len(tokens) or tokens[at].kind not in ("number", "broken"):
        return None
    at += 1
    while at < len(tokens) and tokens[at].text == ")":
        at += 1
    return at


def _parts(tokens: Sequence[Token], first: int, last: int) -> Iterator[tuple[int, int]]:
    """The run, in parts where "and" stands between two that each have a relation."""
    related = [at for at in range(first, last + 1) if tokens[at].kind == "relation"]
    for at in range(first, last + 1):
        if tokens[at].typed == "and" and at < related[-1] and any(first < relation < at for relation in related):
            yield first, at - 1
            first = at + 1
    yield first, last


def _cut(text: str, tokens: Sequence[Token], first: int, last: int) -> Run:
    """The part of a run whose sides are closed; where there is none, the run and why."""
    if last - first > _MOST_TOKENS:
        return Run(tuple(tokens[first : last + 1]), last, why="it is too long")
    first, last = _without_brackets(tokens, first, last)
    left_over = _left_over(tokens, first, last)
    why = ""
    while opens := _open_before(text, tokens, first, last):
        why = why or opens
        related = next(at for at in range(first, last) if tokens[at].kind == "relation")
        if not any(tokens[at].kind == "relation" for at in range(related + 1, last)):
            return Run(tuple(tokens[first : last + 1]), last, why=why)
        first = related + 1
    while opens := "" if left_over is not None else _open_after(text, tokens, first, last):
        why = why or opens
        related = next(at for at in range(last, first, -1) if tokens[at].kind == "relation")
        if not any(tokens[at].kind == "relation" for at in range(first, related)):
            return Run(tuple(tokens[first : last + 1]), last, why=why)
        last = related - 1
    run = Run((*_listed_before(tokens, first), *tokens[first : last + 1]), last, left_over)
    return replace(run, why=_why_in_words(run))


def _without_brackets(tokens: Sequence[Token], first: int, last: int) -> tuple[int, int]:
    """The run without a bracket round all of it, which is the sentence's and not the sum's."""
    while tokens[first].text == "(" and _never_closes(tokens[first + 1 : last + 1]):
        first += 1
    shown = [token.text for token in tokens[first : last + 1]]
    while shown[-1] == ")" and shown.count(")") > shown.count("("):
        shown.pop()
    return first, first + len(shown) - 1


def _never_closes(tokens: Sequence[Token]) -> bool:
    """Whether a bracket is still open where a relation stands."""
    deep = 1
    for token in tokens:
        deep += {"(": 1, ")": -1}.get(token.text, 0)
        if not deep:
            return False
        if token.kind == "relation":
            return True
    return True


def _listed_before(tokens: Sequence[Token], first: int) -> tuple[Token, ...]:
    """Numbers of a list that goes on with "and": 10p, 5p and 2p."""
    found: tuple[Token, ...] = ()
    if tokens[first + 1].typed == "and":
        while first > 1 and tokens[first - 1].text == "," and tokens[first - 2].kind == "number":
            first -= 2
            found = (tokens[first], tokens[first + 1]._replace(kind="sign", text="+", typed=","), *found)
    return found


def _why_in_words(run: Run) -> str:
    """Why a relation in words may say another thing than that two sides are equal."""
    words = [token.typed for token in run.tokens if token.kind == "relation" and token.typed[:1].isalpha()]
    first, second = run.tokens[:2]
    if words and words[0].endswith("worth") and second.kind == "relation" and not first.unit:
        return "it may tell what a digit is worth"
    if not words or any(token.kind == "sign" for token in run.tokens):
        return ""
    if all(word in _BARE or word.endswith("not equal to") for word in words) or all(t.unit for t in run.tokens[::2]):
        return ""
    return f'"{words[0]}" says more things than one'


def _open_before(text: str, tokens: Sequence[Token], first: int, last: int) -> str:
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
        of_part = word == "of" and (is_alone or further is None or further.text.lower() in _PORTIONS)
        if word in _BEFORE or of_part or after_name or (in_words and word not in SAYS):
            return f'"{before.text}" stands before it'
        return "not all of it is numbers" if _follows_sign(tokens, first) else ""
    is_listed = first > 1 and before.text == "," and tokens[first - 2].kind == "number"
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


def _open_after(text: str, tokens: Sequence[Token], first: int, last: int) -> str:
    """Why what stands after a run belongs to it; empty where nothing does."""
    if last + 1 == len(tokens):
        return ""
    token, after = tokens[last], tokens[last + 1]
    relation = _first_relation(tokens, last, first, -1)
    if after.kind in _GAPS:
        return "it has a gap to fill"
    if after.kind == "sign":
        return _why_open(tokens[min(last + 2, len(tokens) - 1)])
    if after.kind == "number":
        return "two numbers stand side by side"
    is_mark = text[token.end] in _CLOSES and (after.kind != "other" or after.text in _CLOSES)
    if not is_mark and after.kind != "relation":
        return f'"{text[token.start : after.end]}" is no number'
    if after.text in _UNKNOWN or text.startswith("...", token.end):
        return _UNKNOWN.get(after.text, _UNKNOWN["…"])
    if after.kind == "word" and after.text.lower() in _AFTER:
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
    listed = token and token.text == "," and tokens[after + 1 : after + 2] and tokens[after + 1].kind == "number"
    if token is None or (token.kind == "other" and not listed) or token.text.lower() in SAYS or token.text == ")":
        return ""
    return f'"{token.text}" stands after it'


def _first_relation(tokens: Sequence[Token], start: int, end: int, step: int) -> Token:
    return next(tokens[at] for at in range(start, end + step, step) if tokens[at].kind == "relation")


def _left_over(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """The remainder told after a division: ``r 1``, ``remainder 1``, ``, with 1 left over``."""
    if not any(token.text == "÷" for token in tokens[first : last + 1]):
        return None
    after = list(tokens[last + 1 : last + 4])
    if after and after[0].text == ",":
        after.pop(0)
    if after and after[0].text[0] in "rR" and after[0].text[1:].isdecimal():
        return int(after[0].text[1:])
    if len(after) < 2 or after[0].text not in _LEFT_OVER or not after[1].number.isdecimal():
        return None
    return int(after[1].number)
