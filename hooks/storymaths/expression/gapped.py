"""Number sentences with gaps: for numbers, for the digits of one, or for signs.

A gap is ``___`` (``?`` and ``□`` do as well). Where a number belongs it stands for a number; where a sign
belongs, for a sign; inside a number, as in ``7?8``, for a digit.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

from .grammar import Reader, Unreadable
from .signs import COMPARE, GAPPED
from .tokens import Token, read_tokens
from .tree import Node

MOST_LETTERS, MOST_SIGNS, LARGEST = 120, 4, 10_000_000
_LONGEST_NUMBER = 14


class NotASentence(ValueError):
    """The text does not follow the grammar; the message says so to a teacher."""


@dataclass(frozen=True, slots=True)
class GappedSentence:
    """A sentence whose signs are all there: sides, the relation after each but the last, and its gaps."""

    tokens: tuple[Token, ...]
    sides: tuple[Node, ...]
    relations: tuple[str, ...]
    gaps: tuple[str, ...]
    """For each gap ``number``, ``digit``, or ``first`` for a digit that cannot be nought."""
    signs: tuple[str, ...] = ()
    """The signs put where signs were missing."""
    asked: tuple[Token, ...] = ()
    """The tokens as asked, with the gaps for signs."""

    def written(self, gaps: Sequence[str], names: bool = False) -> str:
        """The sentence with its gaps filled in; characters by name or by number."""
        return written_out(self.tokens, gaps, names)


def read_gapped(text: str, names: Mapping[str, Token]) -> tuple[Token, ...]:
    """The pieces of a sentence. Raises ``NotASentence``."""
    if len(text) > MOST_LETTERS:
        raise NotASentence(f"a sentence of {len(text)} letters is too long to read; write it in fewer than 120")
    tokens = tuple(read_tokens(text, GAPPED, names))
    for token in tokens:
        _check(token)
    return tokens


def _check(token: Token) -> None:
    if token.kind in ("word", "other"):
        raise NotASentence(f'"{token.text}" is neither a number, a sign nor one of the cast')
    if len(token.number) > _LONGEST_NUMBER:
        raise NotASentence(f"{token.number[:12]}… is beyond ten million, the largest number primary schools meet")
    if token.kind == "broken":
        raise NotASentence(f"{token.number} has nought under the line")
    if token.kind == "number" and token.amount > LARGEST:
        raise NotASentence(f"{token.number} is beyond ten million, the largest number primary schools meet")


def written_out(tokens: Sequence[Token], gaps: Sequence[str] = (), names: bool = False) -> str:
    """Tokens as text; gaps filled in from the left, the rest ``___``, or ``□`` for a digit."""
    left, text = list(gaps), ""
    for place, token in enumerate(tokens):
        piece = _piece(token, left, names)
        before = tokens[place - 1].text if place else "("
        close = before == "(" or token.text == ")" or (before == "−" and _opens(tokens, place - 1))
        text += piece if close else f" {piece}"
    return text


def _opens(tokens: Sequence[Token], place: int) -> bool:
    """Whether nothing stands before a sign that it could join to what follows."""
    return not place or tokens[place - 1].kind in ("sign", "relation") or tokens[place - 1].text == "("


def _piece(token: Token, left: list[str], names: bool) -> str:
    if token.kind == "digits":
        return "".join(char if char.isdigit() else left.pop(0) if left else "□" for char in token.text)
    if token.kind in ("gap", "sign-gap"):
        filling = left.pop(0) if left else "___"
        close = token.unit in ("", "p")
        return f"£{filling}" if token.unit == "£" else f"{filling}{'' if close else ' '}{token.unit}"
    return str(token.value) if token.kind == "name" and not names else token.text


def sentences_of(tokens: tuple[Token, ...], signs: Sequence[str]) -> Iterator[GappedSentence]:
    """The sentence with each choice of signs where signs are missing. Raises ``NotASentence``."""
    missing = [at for at, token in enumerate(tokens) if token.kind == "sign-gap"]
    has_relation = any(token.kind == "relation" for token in tokens)
    if len(missing) > MOST_SIGNS:
        raise NotASentence("more than four signs are missing; leave out fewer")
    if not missing:
        yield _sentence(tokens, (), tokens)
        return
    for choice in product(signs, repeat=len(missing)):
        if sum(sign in COMPARE for sign in choice) == (0 if has_relation else 1):
            put = dict(zip(missing, choice, strict=True))
            complete = tuple(
                Token("relation" if put[at] in COMPARE else "sign", put[at]) if at in put else token
                for at, token in enumerate(tokens)
            )
            yield _sentence(complete, choice, tokens)


def _sentence(tokens: tuple[Token, ...], signs: tuple[str, ...], asked: tuple[Token, ...]) -> GappedSentence:
    reader = Reader(tokens)
    try:
        sides, relations = reader.sentence()
    except Unreadable as error:
        raise NotASentence(_why(error)) from None
    return GappedSentence(tokens, sides, relations, tuple(reader.gaps), signs, asked)


def _why(error: Unreadable) -> str:
    if error.amiss == "no-value":
        return (
            f'a number or a gap should come where "{error.token.text}" stands'
            if error.token
            else "it stops where a number or a gap should come"
        )
    return {
        "bracket": "a bracket is opened and not closed",
        "no-relation": "there is no =, ≠, < or > in it",
        "deep": "it is too long, or has too many brackets inside each other",
    }.get(error.amiss, f'the "{error.token.text if error.token else ""}" does not belong where it stands')
