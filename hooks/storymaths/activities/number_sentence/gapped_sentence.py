"""Number sentences with gaps as trees that can be worked out: the grammar of ``parse/number_sentence.py``, with gaps."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from .gapped_tokens import NotASentence, Rational, Token, whole_if_can

OPERATIONS, RELATIONS = "+−×÷", "=≠<>"


@dataclass(frozen=True, slots=True)
class Known:
    """A number that is given; ``token`` is where it is written."""

    value: Rational
    token: int


@dataclass(frozen=True, slots=True)
class Gap:
    """A gap for a number or digit, the ``at``-th of its sentence; it counts ``worth`` times over."""

    at: int
    worth: Rational
    token: int


@dataclass(frozen=True, slots=True)
class Joined:
    """Two parts and the sign between them; ``&`` puts the digits of one number together."""

    sign: str
    left: Node
    right: Node


Node = Known | Gap | Joined


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


def written_out(tokens: Sequence[Token], gaps: Sequence[str] = (), names: bool = False) -> str:
    """Tokens as text; gaps filled in from the left, the rest ``___``, or ``□`` for a digit."""
    left, text = list(gaps), ""
    for place, token in enumerate(tokens):
        piece = _piece(token, left, names)
        before = tokens[place - 1].text if place else "("
        minus = before == "−" and re.search(r"(?:^|[+−×÷=≠<>(] ?)−$", text)
        text += piece if before == "(" or token.text == ")" or minus else f" {piece}"
    return text


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
    if len(missing) > 4:
        raise NotASentence("more than four signs are missing; leave out fewer")
    if not missing:
        yield _Reader(tokens).sentence((), tokens)
        return
    for choice in product(signs, repeat=len(missing)):
        if sum(sign in RELATIONS for sign in choice) == (0 if has_relation else 1):
            put = dict(zip(missing, choice, strict=True))
            yield _Reader(
                tuple(
                    Token("relation" if put[at] in RELATIONS else "sign", put[at]) if at in put else token
                    for at, token in enumerate(tokens)
                )
            ).sentence(choice, tokens)


class _Reader:
    """A reader of tokens, one ahead."""

    def __init__(self, tokens: tuple[Token, ...]) -> None:
        self._tokens, self._at = tokens, 0
        self._gaps: list[str] = []

    def _take(self, *signs: str) -> str | None:
        if self._at < len(self._tokens) and self._tokens[self._at].text in signs:
            self._at += 1
            return self._tokens[self._at - 1].text
        return None

    def sentence(self, signs: tuple[str, ...], asked: tuple[Token, ...]) -> GappedSentence:
        sides, relations = [self._sum()], []
        while relation := self._take(*RELATIONS):
            relations.append(relation)
            sides.append(self._sum())
        if self._at < len(self._tokens):
            raise NotASentence(f'the "{self._tokens[self._at].text}" does not belong where it stands')
        if not relations:
            raise NotASentence("there is no =, ≠, < or > in it")
        return GappedSentence(self._tokens, tuple(sides), tuple(relations), tuple(self._gaps), signs, asked)

    def _sum(self) -> Node:
        total = self._product()
        while sign := self._take("+", "−"):
            total = Joined(sign, total, self._product())
        return total

    def _product(self) -> Node:
        total = self._value()
        while sign := self._take("×", "÷", "of"):
            total = Joined("×" if sign == "of" else sign, total, self._value())
        return total

    def _value(self) -> Node:
        if self._take("−"):
            inner = self._value()
            return Known(-inner.value, inner.token) if isinstance(inner, Known) else Joined("−", Known(0, -1), inner)
        if self._take("("):
            inner = self._sum()
            if not self._take(")"):
                raise NotASentence("a bracket is opened and not closed")
            return inner
        if self._at >= len(self._tokens):
            raise NotASentence("it stops where a number or a gap should come")
        token, here = self._tokens[self._at], self._at
        self._at += 1
        if token.kind in ("number", "name"):
            return Known(token.value, here)
        if token.kind == "gap":
            self._gaps.append("number")
            return Gap(len(self._gaps) - 1, token.value, here)
        if token.kind == "digits":
            return self._digits(token.text, here)
        raise NotASentence(f'a number or a gap should come where "{token.text}" stands')

    def _digits(self, text: str, here: int) -> Node:
        node: Node = Known(int(text.replace("_", "0")), -1)
        for place, char in enumerate(text):
            if char == "_":
                self._gaps.append("first" if place == 0 else "digit")
                node = Joined("&", node, Gap(len(self._gaps) - 1, 10 ** (len(text) - place - 1), here))
        return node


def worth_of(node: Node, gaps: Sequence[Rational]) -> Rational | None:
    """What a side comes to with its gaps filled in; None where it divides by nought."""
    if isinstance(node, Known):
        return node.value
    if isinstance(node, Gap):
        return node.worth * gaps[node.at]
    left, right = worth_of(node.left, gaps), worth_of(node.right, gaps)
    return None if left is None or right is None else join(left, node.sign, right)


def join(left: Rational, sign: str, right: Rational) -> Rational | None:
    """One operation, exactly; None for a division by nought."""
    if sign == "÷":
        return whole_if_can(Fraction(left) / right) if right else None
    return left * right if sign == "×" else left - right if sign == "−" else left + right


def holds(left: Rational, relation: str, right: Rational) -> bool:
    """Whether two worths stand in a relation."""
    return {"=": left == right, "≠": left != right, "<": left < right, ">": left > right}[relation]


def gaps_in(node: Node) -> frozenset[int]:
    """Which gaps stand in a part."""
    if isinstance(node, Joined):
        return gaps_in(node.left) | gaps_in(node.right)
    return frozenset({node.at}) if isinstance(node, Gap) else frozenset()
