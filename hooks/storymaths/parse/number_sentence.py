"""Number sentences in running text: found among the words, and worked out exactly."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from ..expression.grammar import Reader, Unreadable
from ..expression.number import exact
from ..expression.signs import LEVELS, OPERATE, PROSE
from ..expression.tokens import Token, read_tokens
from ..expression.tree import Node, Number, Operation, holds, holds_between, quantity_of
from ..model.prose import VULGAR
from ..model.quantity import Quantity, UnlikeQuantities

_V = "".join(VULGAR)
_BEFORE_NUMBER = re.compile(rf"[=≠<>](?=[ (£−]*[\d{_V}])")
_BEGINS = re.compile(rf"[\d{_V}(£−+×÷=≠<>_□?]")
"""Words before any of these are no part of a sum."""
_WRONG_MARK = re.compile(r"\[([^\]\n]+)\]\{wrong\}")
_LEFT_OVER = frozenset(("r", "remainder", "with", "and"))
_OPERATIONS = frozenset(sign for level in LEVELS for sign in level)
_IN_NAMES = frozenset(("of", "-"))
_GAPS = frozenset(("gap", "sign-gap", "digits"))


@dataclass(frozen=True, slots=True)
class NumberSentence:
    """A number sentence in a text: the words, where they start, and whether it is marked as a mistake."""

    text: str
    start: int
    marked_wrong: bool = False
    left_over: int | None = None
    tokens: tuple[Token, ...] = field(default=(), compare=False, repr=False)
    """Its pieces, where it was found in a text."""


@lru_cache(maxsize=4096)  # several rules read each page, one rule after another
def find_number_sentences(text: str) -> tuple[NumberSentence, ...]:
    """The number sentences of a text that can be worked out; those with gaps or names are passed over."""
    return tuple(_found(text))


def _found(text: str) -> Iterator[NumberSentence]:
    marked = [(mark.start(1), mark.end(1)) for mark in _WRONG_MARK.finditer(text)] if "{wrong}" in text else []
    for low, high in _lines_with_relations(text):
        tokens = tuple(read_tokens(text, PROSE, start=low, end=high))
        for first, last in _runs(text, tokens):
            start, end = tokens[first].start, tokens[last].end
            inside = next(((a, b) for a, b in marked if a <= start < b), (low, high))
            if _begun_before(tokens, first, inside[0]) or _goes_on(tokens, last, inside[1]):
                continue
            own = tokens[first : last + 1]
            left_over = _left_over(tokens, last, inside[1]) if any(token.text == "÷" for token in own) else None
            yield NumberSentence(text[start:end], start, inside != (low, high), left_over, own)


def _lines_with_relations(text: str) -> Iterator[tuple[int, int]]:
    """Where lines in which a number may follow = ≠ < or > start and end: looking only there is several times faster."""
    end = -1
    for sign in _BEFORE_NUMBER.finditer(text):
        if sign.start() >= end:
            start = text.rfind("\n", 0, sign.start()) + 1
            end = text.find("\n", sign.start())
            end = len(text) if end < 0 else end
            begins = _BEGINS.search(text, start, end)
            yield begins.start() if begins else start, end


def _runs(text: str, tokens: Sequence[Token]) -> Iterator[tuple[int, int]]:
    """The longest stretches of tokens in which numbers and signs take turns, a relation among them: first and last."""
    at = 0
    while at < len(tokens):
        last = _run_from(tokens, at) if _may_begin(text, tokens[at]) else None
        if last is None:
            at += 1
        else:
            yield at, last
            at = last + 1


def _may_begin(text: str, token: Token) -> bool:
    if token.kind not in ("number", "broken") and token.text not in ("(", "−"):
        return False
    before = text[token.start - 1] if token.start else " "
    return not (before.isalnum() or before in "_.,/")


def _run_from(tokens: Sequence[Token], first: int) -> int | None:
    """The last token of the run that begins here; None where no relation is in it."""
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


def _begun_before(tokens: Sequence[Token], first: int, low: int) -> bool:
    """Whether what stands before belongs to the sum: "the crab + 1 = 4" says nothing we can work out."""
    at = first - 1
    if at < 0 or tokens[at].start < low:
        return False
    if tokens[at].kind in _GAPS or _is_sign(tokens[at]):
        return True
    while at > 0 and tokens[at - 1].start >= low and _is_of_a_name(tokens[at]):
        at -= 1
        if tokens[at + 1].kind == "word" and _is_sign(tokens[at]):
            return True
    return False


def _is_of_a_name(token: Token) -> bool:
    return token.kind in ("word", "number") or token.text in _IN_NAMES


def _goes_on(tokens: Sequence[Token], last: int, high: int) -> bool:
    """Whether what stands after belongs to the sum."""
    after = tokens[last + 1 : last + 2]
    if not after or after[0].end > high:
        return False
    if after[0].kind in _GAPS:
        # A question mark that ends the line, or a quotation, is no gap.
        further = tokens[last + 2 : last + 3]
        return after[0].end - after[0].start > 1 or bool(further and further[0].start > after[0].end)
    at = last + 1
    if after[0].kind == "word":
        while at < len(tokens) and (tokens[at].kind == "word" or tokens[at].text in _IN_NAMES):
            at += 1
    return at < len(tokens) and tokens[at].end <= high and _is_sign(tokens[at])


def _is_sign(token: Token) -> bool:
    return token.kind in ("sign", "relation") and token.text != "of"


def _left_over(tokens: Sequence[Token], last: int, high: int) -> int | None:
    """The remainder told after a division: ``r 1``, ``remainder 1``, ``, with 1 left over``."""
    after = [token for token in tokens[last + 1 : last + 4] if token.end <= high]
    if after and after[0].text == ",":
        after.pop(0)
    if len(after) < 2 or after[0].text not in _LEFT_OVER or not after[1].text.isdecimal():
        return None
    return int(after[1].text)


def marked_mistakes(text: str) -> Iterator[tuple[str, int]]:
    """What stands in ``[…]{wrong}`` marks, and where."""
    if "{wrong}" in text:
        for mark in _WRONG_MARK.finditer(text):
            yield mark.group(1), mark.start(1)


def is_true(sentence: NumberSentence) -> bool | None:
    """Whether it holds, exactly; None where its amounts cannot be compared or a divisor is nought."""
    tokens = sentence.tokens or tuple(read_tokens(sentence.text, PROSE))
    if len(tokens) == 5 and sentence.left_over is None:  # most sentences are a sum of two numbers, and what it is
        first, sign, second, relation, whole = tokens
        plain = first.kind == second.kind == whole.kind == "number" and not (first.unit or second.unit or whole.unit)
        if plain and sign.text in ("+", "−", "×") and relation.kind == "relation":
            return holds(OPERATE[sign.text](first.value, second.value), relation.text, whole.value)
    try:
        sides, relations = Reader(tokens).sentence()
        if sentence.left_over is not None:
            return _true_with_left_over(sides, relations, sentence.left_over)
        worth = [quantity_of(side) for side in sides]
        return all(holds_between(worth[i], relation, worth[i + 1]) for i, relation in enumerate(relations))
    except (UnlikeQuantities, ZeroDivisionError, ValueError):
        return None


def _true_with_left_over(sides: Sequence[Node], relations: Sequence[str], left_over: int) -> bool | None:
    match sides[-2:], relations[-1]:
        case (
            Operation("÷", Number(value=int() as shared), Number(value=int() as among)),
            Number(value=int() as each),
        ), "=":
            return divmod(shared, among) == (each, left_over)
    return None


def value_of(text: str) -> Quantity:
    """The worth of one side, such as ``3 × (2 + 4)``. Raises ``ValueError`` if it is not one."""
    reader = Reader(tuple(read_tokens(text, PROSE)))
    try:
        side = reader.sum()
        reader.end()
    except Unreadable as error:
        if error.amiss == "broken":
            raise ZeroDivisionError(text) from None
        raise ValueError(f"{text} is not a sum") from None
    return quantity_of(side)


__all__ = ["VULGAR", "NumberSentence", "exact", "find_number_sentences", "is_true", "marked_mistakes", "value_of"]
