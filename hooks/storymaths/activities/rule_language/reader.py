"""Reads a rule such as ``odd(a) and a + b > 6`` by a grammar of its own.

Loosest first::

    rule       = each  (or  each)…
    each       = one  (and  one)…
    one        = not one  |  comparison
    comparison = sum  (relation  sum)…          relation:  =  ≠  <  >  ≤  ≥   (also != <= >=)
    sum        = product  (+ or −  product)…
    product    = value  (× or ÷  value)…        (also * /)
    value      = number | 2/3 | letter or fact | property(sum, …) | "words" | ( rule ) | − value
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from ...check.suggestion import did_you_mean
from .functions import FUNCTIONS, LARGEST
from .tree import Call, Comparison, Gives, Join, Name, Not, Number, Operation, Rule, Words, gives

LONGEST, DEEPEST = 200, 12
_TOKEN = re.compile(
    r"\s*(?:(?P<number>\d+/\d+|\d+(?:\.\d+)?)|(?P<name>[^\W\d]\w*)|(?P<text>\"[^\"]*\"|“[^”]*”|'[^']*')"
    r"|(?P<sign>!=|<=|>=|[=≠<>≤≥+−*×/÷(),-]))"
)
_SAME_SIGN = {"!=": "≠", "<=": "≤", ">=": "≥", "-": "−", "*": "×", "/": "÷"}
_RELATIONS = frozenset("=≠<>≤≥")
_JOINING = frozenset(("and", "or", "not"))
_SHOWN: Mapping[Gives, str] = {"number": "a number", "truth": "true or false", "text": "words"}


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
    reader = _Reader(text, names)
    rule = reader.rule()
    reader.end()
    return _truth(rule, text)


def _truth(rule: Rule, text: str) -> Rule:
    if gives(rule) != "truth":
        raise RuleFault(
            f'"{text.strip()}" is {_SHOWN[gives(rule)]}; a rule is true or false.',
            f'say for example "{text.strip()} > 4".',
        )
    return rule


class _Reader:
    """A reader of one rule, a token ahead."""

    def __init__(self, text: str, names: Mapping[str, Gives]) -> None:
        self._text, self._names, self._at, self._deep = text, names, 0, 0

    def _peek(self) -> tuple[str, str]:
        token = _TOKEN.match(self._text, self._at)
        if token is None:
            return "", ""
        kind = token.lastgroup or ""
        return kind, _SAME_SIGN.get(token[kind], token[kind]) if kind == "sign" else token[kind]

    def _take(self, *wanted: str) -> str | None:
        kind, shown = self._peek()
        if shown in wanted and kind in ("sign", "name"):
            token = _TOKEN.match(self._text, self._at)
            assert token is not None
            self._at = token.end()
            return shown
        return None

    def _need(self, sign: str) -> None:
        if not self._take(sign):
            raise self._fault(f'a "{sign}" is missing')

    def _fault(self, what: str) -> RuleFault:
        rest = self._text[self._at :].strip()
        where = f'before "{rest[:20]}"' if rest else "at the end"
        return RuleFault(
            f'The rule "{self._text.strip()[:60]}" cannot be read: {what} {where}.',
            "write it like: odd(a) and a + b > 6",
        )

    def end(self) -> None:
        """Raises where something is left over."""
        if self._text[self._at :].strip():
            raise self._fault("something is out of place")

    def rule(self) -> Rule:
        left = self._each()
        while self._take("or"):
            left = Join("or", self._so(left), self._so(self._each()))
        return left

    def _each(self) -> Rule:
        left = self._one()
        while self._take("and"):
            left = Join("and", self._so(left), self._so(self._one()))
        return left

    def _so(self, part: Rule) -> Rule:
        if gives(part) != "truth":
            raise self._fault('"and", "or" and "not" join what is true or false; there is something else')
        return part

    def _deeper(self) -> None:
        self._deep += 1
        if self._deep > DEEPEST:
            raise RuleFault("The rule has too many brackets, or too many signs in a row.", "say it more simply.")

    def _one(self) -> Rule:
        if self._take("not"):
            self._deeper()
            inner = Not(self._so(self._one()))
            self._deep -= 1
            return inner
        return self._comparison()

    def _comparison(self) -> Rule:
        left, found = self._sum(), None
        while sign := self._take(*_RELATIONS):
            right = self._words_for(left) or self._sum()
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
        kind, shown = self._peek()
        if gives(left) != "text" or kind != "name" or shown in self._names:
            return None
        self._take(shown)
        return Words(shown)

    def _sum(self) -> Rule:
        left = self._product()
        while sign := self._take("+", "−"):
            left = Operation(sign, self._amount(left), self._amount(self._product()))
        return left

    def _product(self) -> Rule:
        left = self._value()
        while sign := self._take("×", "÷"):
            left = Operation(sign, self._amount(left), self._amount(self._value()))
        return left

    def _amount(self, part: Rule) -> Rule:
        if gives(part) != "number":
            raise self._fault("a number is needed")
        return part

    def _value(self) -> Rule:
        kind, shown = self._peek()
        if kind == "sign" and shown in ("−", "("):
            self._take(shown)
            self._deeper()
            inner = _less_than_nought(self._amount(self._value())) if shown == "−" else self.rule()
            if shown == "(":
                self._need(")")
            self._deep -= 1
            return inner
        token = _TOKEN.match(self._text, self._at)
        if token is None or kind == "sign" or shown in _JOINING:
            raise self._fault("a number or a name is missing")
        self._at = token.end()
        if kind == "number":
            return _number(shown)
        return Words(shown[1:-1]) if kind == "text" else self._named(shown)

    def _named(self, name: str) -> Rule:
        if name in FUNCTIONS and name not in self._names:
            return self._call(name)
        if name not in self._names:
            known = (*self._names, *FUNCTIONS)
            message = f'The rule speaks of "{name[:40]}", which is not known here.{did_you_mean(name[:40], known)}'
            raise RuleFault(message, f"use {', '.join(known)}.", unknown=name)
        return Name(name, self._names[name])

    def _call(self, name: str) -> Rule:
        self._deeper()
        self._need("(")
        parts = [self._amount(self._sum())]
        while self._take(","):
            parts.append(self._amount(self._sum()))
        self._need(")")
        self._deep -= 1
        takes = FUNCTIONS[name].takes
        if len(parts) != takes:
            form = f"{name}(a)" if takes == 1 else f"{name}(a, 5)"
            raise RuleFault(f'"{name}" is given {len(parts)} numbers and takes {takes}.', f"write {form}.")
        return Call(name, tuple(parts))


def _less_than_nought(part: Rule) -> Rule:
    if isinstance(part, Number):
        return Number(-part.value, f"−{part.shown}")
    return Operation("−", Number(0, "0"), part)


def _number(shown: str) -> Number:
    try:
        value = Fraction(shown)
    except ZeroDivisionError:
        raise RuleFault(f"{shown} is divided by nought.", "write another number under the line.") from None
    if value > LARGEST:
        raise RuleFault(f"The number {shown[:20]} is past ten million.", "write a smaller one.")
    return Number(value.numerator if value.denominator == 1 else value, shown)
