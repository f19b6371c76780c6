"""Which signs of running text are signs there, and which numbers count things."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .tokens import Token

LINKS = frozenset(
    "a after altogether an and as at away because before but each for from here if in is it left not now of on or over so than that "
    "the their then there these they this those to too we when where which while who with without you r remainder".split()
)
"""Words that name no things: what comes after a number and one of these is not what is counted."""
_MOST_NAMED = 3
_LEFT = frozenset(("left", "over", "remaining", "spare"))


def _is_size(tokens: Sequence[Token], at: int) -> bool:
    """Whether a number of tens or thirds was made a product here."""
    return at < len(tokens) and tokens[at].text == "×" and tokens[at].start == tokens[at].end


def is_value(tokens: Sequence[Token], at: int) -> bool:
    """Whether a value begins at a place."""
    return at < len(tokens) and (tokens[at].kind == "number" or tokens[at].text in ("(", "−"))


def with_signs(text: str, tokens: Sequence[Token]) -> list[Token]:
    """Signs that are none, by where they stand, become words or marks of the sentence."""
    found: list[Token] = []
    for at, token in enumerate(tokens):
        found.append(_as_meant(text, found, token, tokens, at))
    return found


def _as_meant(text: str, before: Sequence[Token], token: Token, tokens: Sequence[Token], at: int) -> Token:
    shown = text[token.start : token.end]
    is_sign = token.kind in ("sign", "relation")
    if is_sign and shown[:1].isalpha() and not _joins(before, token, shown.lower(), tokens, at):
        return token._replace(kind="word", text=shown)
    if shown == "?" and _ends_sentence(text, token):
        return token._replace(kind="other", text="?")
    if shown in ("<", ">", "=") and text[token.end : token.end + 1] in ("-", "–", "<", ">"):
        return token._replace(kind="other", text=shown)  # an arrow
    if shown in ("-", "–") and not before and _is_apart(f" {text}", token, 1):
        return token._replace(kind="other", text=shown)
    if shown == "," and len(before) > 1 and before[-2].start == before[-2].end and _is_size(tokens, at + 2):
        return token._replace(kind="sign", text="+", typed=",")  # 3 hundreds, 4 tens and 5 ones
    if shown == ":" and _is_apart(text, token) and before and before[-1].kind == "number" and is_value(tokens, at + 1):
        return token._replace(kind="sign", text="÷", typed=":")
    return token._replace(typed=shown.lower()) if is_sign and shown not in ("", token.text) else token


def _joins(before: Sequence[Token], token: Token, typed: str, tokens: Sequence[Token], at: int) -> bool:
    """Whether a word stands where a sign would."""
    if not is_value(tokens, at + 1):
        return False
    if token.text == "of":
        part = before[-1] if before else None
        return part is not None and part.kind == "number" and _is_part(part)
    if token.text == "+" and at + 2 < len(tokens) and tokens[at + 2].text in _LEFT:
        return False  # 4 and 1 left over
    if token.kind == "sign" and typed != "and":
        return True
    named = 0
    while named < min(_MOST_NAMED, len(before)) and before[-1 - named].kind == "word":
        named += 1
    return len(before) > named and (before[-1 - named].kind in ("number", "gap") or before[-1 - named].text == ")")


def _is_part(token: Token) -> bool:
    """Whether a number may stand before "of" as a part of what follows: ½, 3/4, 10%, two thirds."""
    return token.value.denominator > 1 or token.text[-1] == "%" or "/" in token.text


def _ends_sentence(text: str, mark: Token) -> bool:
    """Whether a question mark is the end of a question and no gap."""
    close = mark.start > 0 and (text[mark.start - 1].isalnum() or text[mark.start - 1] in ")”’\"'")
    return close and (mark.end == len(text) or not text[mark.end].isalnum())


def _is_apart(text: str, token: Token, further: int = 0) -> bool:
    """Whether a mark has space on both sides."""
    start, end = token.start + further, token.end + further
    return text[start - 1 : start].isspace() and text[end : end + 1].isspace()


def with_things(text: str, tokens: Sequence[Token]) -> Iterator[Token]:
    """Numbers take in the names of what they count, where a sign comes after."""
    at = 0
    while at < len(tokens):
        token, at = tokens[at], at + 1
        if token.kind == "number":
            after = at
            while after < min(at + _MOST_NAMED, len(tokens)) and is_thing(tokens[after]):
                after += 1
            if at < after < len(tokens) and tokens[after].kind in ("sign", "relation"):
                last = tokens[after - 1]
                token = token._replace(text=text[token.start : last.end], end=last.end, things=last.text.lower())
                at = after
        yield token


def is_thing(token: Token) -> bool:
    """Whether a word may name what is counted."""
    return token.kind == "word" and token.text.lower() not in LINKS and len(token.text) > 1
