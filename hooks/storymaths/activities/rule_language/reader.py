"""Reads a rule such as ``odd(a) and a + b > 6``: the grammar of arithmetic, with names, properties and truths.

Loosest first::

    rule       = each  (or  each)…
    each       = one  (and  one)…
    one        = not one  |  comparison
    comparison = sum  (relation  sum)…          relation:  =  ≠  <  >  ≤  ≥   (also != <= >=)
    value      = number | letter or fact | property(sum, …) | "words" | ( rule ) | − value
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from ...expression.grammar import Amiss, Reader
from ...expression.signs import COMPARE, RULES
from ...expression.tokens import Token, read_tokens
from ...parse.suggestion import did_you_mean
from .functions import FUNCTIONS, LARGEST
from .tree import Call, Comparison, Gives, Join, Name, Not, Number, Rule, Words, gives

LONGEST, DEEPEST = 200, 12
_SHOWN: Mapping[Gives, str] = {"number": "a number", "truth": "true or false", "text": "words"}
_AMISS: Mapping[Amiss, str] = {
    "no-value": "a number or a name is missing",
    "left-over": "something is out of place",
    "bracket": 'a ")" is missing',
}


class RuleFault(ValueError):
    """A rule that cannot be read: what is wrong, and what would mend it, for a teacher."""

    def __init__(self, message: str, fix: str, unknown: str = "") -> None:
        """``unknown`` is a name nobody knows, where that is what is wrong."""
        super().__init__(message)
        self.message, self.fix, self.unknown = message, fix, unknown


def read_rule(text: str, names: Mapping[str, Gives]) -> Rule:
    """The tree of a rule that is true or false, over these names. Raises ``RuleFault``."""
    if len(text) > LONGEST:
        raise RuleFault(f"The rule is {len(text)} letters long.", f"say it in {LONGEST} or fewer.")
    reader = _RuleReader(text, names)
    rule = reader.inside()
    reader.end()
    return _truth(rule, text)


def _truth(rule: Rule, text: str) -> Rule:
    if gives(rule) != "truth":
        raise RuleFault(
            f'"{text.strip()}" is {_SHOWN[gives(rule)]}; a rule is true or false.',
            f'say for example "{text.strip()} > 4".',
        )
    return rule


class _RuleReader(Reader):
    """A reader of one rule, a token ahead."""

    deepest = most_signs = DEEPEST

    def __init__(self, text: str, names: Mapping[str, Gives]) -> None:
        super().__init__(tuple(read_tokens(text, RULES)))
        self._text, self._names = text, names

    def amiss(self, what: Amiss) -> RuleFault:
        if what == "deep":
            return RuleFault("The rule has too many brackets, or too many signs in a row.", "say it more simply.")
        if what == "broken" and self.next:
            return RuleFault(f"{self.next.number} is divided by nought.", "write another number under the line.")
        return self._fault(_AMISS[what])

    def _fault(self, what: str) -> RuleFault:
        rest = self._text[self.next.start :].strip() if self.next else ""
        where = f'before "{rest[:20]}"' if rest else "at the end"
        return RuleFault(
            f'The rule "{self._text.strip()[:60]}" cannot be read: {what} {where}.',
            "write it like: odd(a) and a + b > 6",
        )

    def inside(self) -> Rule:
        """A whole rule, alone or in brackets."""
        return self._joined("or", lambda: self._joined("and", self._one))

    def _joined(self, word: str, part: Callable[[], Rule]) -> Rule:
        left = part()
        while self.take(word):
            left = Join(word, self._so(left), self._so(part()))
        return left

    def _so(self, part: Rule) -> Rule:
        if gives(part) != "truth":
            raise self._fault('"and", "or" and "not" join what is true or false; there is something else')
        return part

    def _one(self) -> Rule:
        if self.take("not"):
            self.deeper()
            inner = Not(self._so(self._one()))
            self.shallower()
            return inner
        left, found = self.sum(), None
        while sign := self.take(*COMPARE):
            right = self._words_for(left) or self.sum()
            link = self._compared(sign, left, right)
            found, left = (Join("and", found, link) if found else link), right
        return found or left

    def _compared(self, sign: str, left: Rule, right: Rule) -> Rule:
        kinds = {gives(left), gives(right)}
        if len(kinds) > 1 or (sign not in "=≠" and kinds != {"number"}):
            raise self._fault(f'"{sign}" stands between things that cannot be so compared')
        return Comparison(sign, left, right)

    def _words_for(self, left: Rule) -> Rule | None:
        """A bare word after a fact whose values are words: ``home = harbour``."""
        token = self.next
        if gives(left) != "text" or token is None or token.kind != "word" or token.text in self._names:
            return None
        self.at += 1
        return Words(token.text)

    def number(self, part: Rule) -> Rule:
        """A part that must be a number. Raises ``RuleFault``."""
        if gives(part) != "number":
            raise self._fault("a number is needed")
        return part

    def leaf(self, token: Token) -> Rule:
        """A number, words in quotation marks, or what a name stands for."""
        if token.kind == "quoted":
            return Words(token.text)
        if token.kind == "word":
            return self._named(token.text)
        node = super().leaf(token)
        if isinstance(node, Number) and node.value > LARGEST:
            raise RuleFault(f"The number {token.text[:20]} is past ten million.", "write a smaller one.")
        return node

    def _named(self, name: str) -> Rule:
        if name in FUNCTIONS and name not in self._names:
            return self._call(name)
        if name not in self._names:
            known = (*self._names, *FUNCTIONS)
            message = f'The rule speaks of "{name[:40]}", which is not known here.{did_you_mean(name[:40], known)}'
            raise RuleFault(message, f"use {', '.join(known)}.", unknown=name)
        return Name(name, self._names[name])

    def _call(self, name: str) -> Rule:
        self.deeper()
        if not self.take("("):
            raise self._fault('a "(" is missing')
        parts = [self.number(self.sum())]
        while self.take(","):
            parts.append(self.number(self.sum()))
        if not self.take(")"):
            raise self.amiss("bracket")
        self.shallower()
        takes = FUNCTIONS[name].takes
        if len(parts) != takes:
            form = f"{name}(a)" if takes == 1 else f"{name}(a, 5)"
            raise RuleFault(f'"{name}" is given {len(parts)} numbers and takes {takes}.', f"write {form}.")
        return Call(name, tuple(parts), FUNCTIONS[name].gives)
