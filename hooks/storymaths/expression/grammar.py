"""The grammar of arithmetic, read a token ahead into a tree.

Loosest first::

    sentence  = sum  relation sum  (relation sum)…        relation:  =  ≠  <  >  ≤  ≥  ≈
    sum       = product  (+ or −  product)…
    product   = value  (× or ÷ or "of"  value)…
    value     = number [unit] | gap | ( sum ) | − value

Rules about numbers add to it: see ``activities/rule_language/reader.py``.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from .signs import LEVELS, RELATIONS
from .tokens import Token
from .tree import NOUGHT, Gap, Node, Number, Operation

Amiss = Literal["no-value", "left-over", "bracket", "no-relation", "broken", "deep"]


class Unreadable(ValueError):
    """Tokens that do not follow the grammar: what is amiss, and the token where; None at the end."""

    def __init__(self, amiss: Amiss, token: Token | None) -> None:
        super().__init__(amiss)
        self.amiss, self.token = amiss, token


class Reader:
    """A reader of tokens by recursive descent."""

    deepest, most_signs, most_operations = 40, 160, 200
    """How many brackets may stand inside each other, how many minus signs in a row, and how many operations in a sentence."""

    def __init__(self, tokens: Sequence[Token]) -> None:
        self.tokens, self.at, self._deep, self._operations = tokens, 0, 0, 0
        self.gaps: list[str] = []
        """For each gap so far ``number``, ``digit``, or ``first`` for a digit that cannot be nought."""

    @property
    def next(self) -> Token | None:
        """The token that comes, if one does."""
        return self.tokens[self.at] if self.at < len(self.tokens) else None

    def take(self, *signs: str) -> str | None:
        """The next sign, if it is one of these."""
        token = self.next
        if token is None or token.text not in signs or token.kind in ("word", "quoted", "name"):
            return None
        self.at += 1
        return token.text

    def amiss(self, what: Amiss) -> Exception:
        """What to raise when something is amiss at the next token."""
        return Unreadable(what, self.next)

    def end(self) -> None:
        """Raises unless all has been read."""
        if self.next is not None:
            raise self.amiss("left-over")

    def sentence(self) -> tuple[tuple[Node, ...], tuple[str, ...]]:
        """The sides of a whole sentence, and the relation after each but the last."""
        sides, relations = [self.sum()], []
        while relation := self.take(*RELATIONS):
            relations.append(relation)
            sides.append(self.sum())
        self.end()
        if not relations:
            raise self.amiss("no-relation")
        return tuple(sides), tuple(relations)

    def sum(self, level: int = 0) -> Node:
        """A part whose operations hold at least as tightly as a level."""
        if level == len(LEVELS):
            return self.value()
        total = self.sum(level + 1)
        while sign := self.take(*LEVELS[level]):
            self._operations += 1
            if self._operations > self.most_operations:
                raise self.amiss("deep")  # each stands inside the next
            total = Operation("×" if sign == "of" else sign, self.number(total), self.number(self.sum(level + 1)))
        return total

    def number(self, part: Node) -> Node:
        """A part that must be a number; in plain arithmetic every part is."""
        return part

    def value(self) -> Node:
        """A number, a gap, or something in brackets or below nought."""
        minuses = 0
        while self.take("−"):
            minuses += 1
        if minuses + self._deep > self.most_signs:
            raise self.amiss("deep")
        part = self._whole()
        for _ in range(minuses):
            part = _below_nought(self.number(part))
        return part

    def _whole(self) -> Node:
        if self.take("("):
            self.deeper()
            inner = self.inside()
            if not self.take(")"):
                raise self.amiss("bracket")
            self.shallower()
            return inner
        token = self.next
        if token is None:
            raise self.amiss("no-value")
        self.at += 1
        return self.leaf(token)

    def deeper(self) -> None:
        """One bracket more inside another. Raises where there are too many."""
        self._deep += 1
        if self._deep > self.deepest:
            raise self.amiss("deep")

    def shallower(self) -> None:
        """One bracket is read to its end."""
        self._deep -= 1

    def inside(self) -> Node:
        """What a bracket may hold."""
        return self.sum()

    def leaf(self, token: Token) -> Node:
        """What a single token stands for."""
        here = self.at - 1
        if token.kind in ("number", "name"):
            return Number(token.value, token.number or token.text, token.unit, here)
        if token.kind == "gap":
            self.gaps.append("number")
            return Gap(len(self.gaps) - 1, token.value, here, token.unit)
        if token.kind == "digits":
            return self._digits(token.text, here)
        self.at = here
        raise self.amiss("broken" if token.kind == "broken" else "no-value")

    def _digits(self, text: str, here: int) -> Node:
        node: Node = Number(int(text.replace("_", "0")), text)
        for place, char in enumerate(text):
            if char == "_":
                self.gaps.append("first" if place == 0 else "digit")
                node = Operation("&", node, Gap(len(self.gaps) - 1, 10 ** (len(text) - place - 1), here))
        return node


def _below_nought(part: Node) -> Node:
    if isinstance(part, Number):
        return Number(-part.value, f"−{part.shown}", part.unit, part.token)
    return Operation("−", NOUGHT, part)
