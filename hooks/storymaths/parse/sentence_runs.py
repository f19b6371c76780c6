"""The stretches of a sentence in which numbers and signs take turns, and whether each is whole or goes on in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from ..expression.signs import LEVELS
from ..expression.tokens import Token
from ..expression.truth import holds_whole
from .sentence_edges import open_after, open_before

_OPERATIONS = frozenset(sign for level in LEVELS for sign in level)
_MOST_TOKENS, _MOST_BRACKETS, _MOST_LISTED = 160, 40, 40
_LEFT_OVER = frozenset(("r", "remainder", "with", "and"))
_LEFT = frozenset(("left", "over", "remaining", "spare", "remainder", "to", "as", "is", "are"))
"""Words after the number that is left over; "with 1 to spare", "and 1 is left"."""
_BARE = frozenset(("equals", "is equal to", "are equal to", "is the same as", "are the same as"))
"""Words for = that may stand between two numbers alone; "is" and "makes" say more things than one."""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of pieces with a relation among them."""

    tokens: tuple[Token, ...]
    first: int
    last: int
    """Where its first and last piece stand in the sentence."""
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
        if len(parts) > 1 and not all(holds_whole(tokens[first : end + 1]) for first, end in parts):
            parts = ((at, last),) if holds_whole(tokens[at : last + 1]) else parts
        parted = tokens if len(parts) == 1 else _with_words(tokens, [end + 1 for _, end in parts[:-1]])
        for first, end in parts:
            yield _cut(text, parted, first, end)
        at = last + 1


def _with_words(tokens: Sequence[Token], places: Sequence[int]) -> list[Token]:
    """The pieces, with "and" as a word and no sign in some places."""
    found = list(tokens)
    for at in places:
        found[at] = found[at]._replace(kind="word", text="and", typed="")
    return found


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
    minus, start = False, at
    while at < min(len(tokens), start + _MOST_BRACKETS) and (
        tokens[at].text == "(" or (tokens[at].text == "−" and not minus)
    ):
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
    if len(related) == 1 or last - first > _MOST_TOKENS:
        yield first, last
        return
    for at in range(first, last + 1):
        if tokens[at].typed == "and" and at < related[-1] and any(first < relation < at for relation in related):
            yield first, at - 1
            first = at + 1
    yield first, last


def _cut(text: str, tokens: Sequence[Token], first: int, last: int) -> Run:
    """The part of a run whose sides are closed; where there is none, the run and why."""
    if last - first > _MOST_TOKENS:
        return Run(tuple(tokens[first : last + 1]), first, last, why="it is too long")
    first, last = _without_brackets(tokens, first, last)
    left_over = _left_over(tokens, first, last)
    why = ""
    while opens := open_before(text, tokens, first, last):
        why = why or opens
        related = next(at for at in range(first, last) if tokens[at].kind == "relation")
        if not any(tokens[at].kind == "relation" for at in range(related + 1, last)):
            return Run(tuple(tokens[first : last + 1]), first, last, why=why)
        first = related + 1
    while opens := "" if left_over is not None else open_after(text, tokens, first, last):
        why = why or opens
        related = next(at for at in range(last, first, -1) if tokens[at].kind == "relation")
        if not any(tokens[at].kind == "relation" for at in range(first, related)):
            return Run(tuple(tokens[first : last + 1]), first, last, why=why)
        last = related - 1
    listed = _listed_before(tokens, first)
    run = Run((*listed, *tokens[first : last + 1]), first - len(listed), last, left_over)
    return replace(run, why=open_before(text, tokens, run.first, last) or _why_in_words(run))


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
        while (
            first > 1
            and len(found) < _MOST_LISTED
            and tokens[first - 1].text == ","
            and tokens[first - 2].kind == "number"
        ):
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


def _left_over(tokens: Sequence[Token], first: int, last: int) -> int | None:
    """The remainder told after a division: ``r 1``, ``remainder 1``, ``, with 1 left over``."""
    if not any(token.text == "÷" for token in tokens[first : last + 1]):
        return None
    after = list(tokens[last + 1 : last + 5])
    if after and after[0].text == "each":
        after.pop(0)
    if after and after[0].text == ",":
        after.pop(0)
    if after and after[0].text[0] in "rR" and after[0].text[1:].isdecimal():
        return int(after[0].text[1:])
    if len(after) < 2 or after[0].text not in _LEFT_OVER or not after[1].number.isdecimal():
        return None
    if after[0].text in ("with", "and") and not (after[2:] and after[2].text in _LEFT):
        return None  # 6 ÷ 1 = 6 and 6 ÷ 6 = 1
    return int(after[1].number)
