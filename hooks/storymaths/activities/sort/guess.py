"""Guess my rule: every rule about one fact that puts inside exactly those who are inside."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ...model.activity import Context
from ...parse.suggestion import did_you_mean
from ..kind import Unsolvable
from ..rule_language.tree import Call, Comparison, Name, Not, Number, Rule, Words, decider
from ..saying import listed
from .cards import Card, Cards
from .tasks import GuessTask

FactRule = tuple[str, Rule]
"""A fact, and a rule about it."""


@dataclass(frozen=True, slots=True)
class Guess:
    """A sorting whose rule is to be found: some are inside, all others outside."""

    cards: Cards
    inside: frozenset[str]
    facts: tuple[str, ...]
    """The facts looked at, in order."""
    tables: tuple[int, ...]
    """Tables of the year: whole numbers may be counted in them."""

    def split(self) -> tuple[list[Card], list[Card]]:
        """Those inside and those outside."""
        cards = self.cards.cards
        return [c for c in cards if c.id in self.inside], [c for c in cards if c.id not in self.inside]

    def try_rules(self) -> Iterator[FactRule]:
        """Every rule that is tried, fact by fact."""
        return ((fact, rule) for fact in self.facts for rule in self._forms(fact))

    def _forms(self, fact: str) -> Iterator[Rule]:
        """The rules tried for a fact, in order. Yes-or-no facts: so, not so. Words: the same, not the same.

        Numbers: exactly one value, any but one, more than, fewer than, odd, even, counted in a table of the
        year. ``more than 4`` and ``more than 5`` are one rule where they tell the same cards apart: of such,
        the one that names the nearest value of somebody outside stands for all.
        """
        ins, outs = ([card.case[fact] for card in side] for side in self.split())
        kind = self.cards.gives[fact]
        name = Name(fact, kind)
        if kind == "truth":
            yield from (name, Not(name))
        elif kind == "text":
            yield from (Comparison("=", name, Words(ins[0])), Comparison("≠", name, Words(outs[0])))
        else:
            for sign, value in (("=", ins[0]), ("≠", outs[0]), (">", max(outs)), ("<", min(outs))):
                yield Comparison(sign, name, Number(value, str(value)))
            yield from (Call("odd", (name,)), Call("even", (name,)))
            yield from (Call("multiple", (name, Number(table, str(table)))) for table in self.tables if table > 2)

    def find_rules(self) -> list[FactRule]:
        """Every rule that fits, in the order they are tried."""
        return [(fact, rule) for fact, rule in self.try_rules() if self._who_fits(rule) == self.inside]

    def find_too_wide(self) -> tuple[Rule, Card] | None:
        """The first rule that everyone inside fits, and somebody outside as well; not one that denies."""
        for _, rule in self.try_rules():
            if isinstance(rule, Not) or (isinstance(rule, Comparison) and rule.sign == "≠"):
                continue
            fits = self._who_fits(rule)
            if self.inside < fits:
                return rule, next(card for card in self.cards.cards if card.id in fits - self.inside)
        return None

    def _who_fits(self, rule: Rule) -> frozenset[str]:
        decide = decider(rule)
        return frozenset(card.id for card in self.cards.cards if decide(card.case))


def read_guess(task: GuessTask, cards: Cards, context: Context) -> Guess:
    """The sorting whose rule is to be found. Raises ``Unsolvable`` for people and facts that are not there."""
    ids = [card.id for card in cards.cards]
    for index, name in enumerate(task.inside):
        if name not in ids:
            message = f'"{name}" is not in the cast.{did_you_mean(name, ids)}'
            raise Unsolvable(("inside", index), message, f"use {listed(ids, 'or')}.", "activity-fact-missing")
    if set(task.inside) == set(ids):
        message = "Everyone is inside, so there is nothing to tell apart."
        raise Unsolvable(("inside",), message, "leave somebody outside.")
    for index, fact in enumerate(task.looking_at):
        if fact not in cards.gives:
            message = cards.lacking.get(fact, f'Nobody has a fact "{fact[:40]}".{did_you_mean(fact[:40], cards.gives)}')
            raise Unsolvable(("looking_at", index), message, "look at other facts.", "activity-fact-missing")
    if not cards.gives:
        message = "There is no fact that everyone has."
        raise Unsolvable(("cast",), message, "give everyone the same facts.", "activity-fact-missing")
    return Guess(cards, frozenset(task.inside), task.looking_at or tuple(cards.gives), context.year.tables)


def write_rule(rule: Rule) -> str:
    """A rule as the language of rules writes it."""
    match rule:
        case Not(inner=Name(name=fact)):
            return f"not {fact}"
        case Comparison(sign=sign, left=Name(name=fact), right=Number(shown=shown)):
            return f"{fact} {sign} {shown}"
        case Comparison(sign=sign, left=Name(name=fact), right=Words(text=text)):
            return f'{fact} {sign} "{text}"'
        case Call(name=called, parts=(Name(name=fact), *rest)):
            return f"{called}({', '.join([fact, *(part.shown for part in rest if isinstance(part, Number))])})"
        case Name(name=fact):
            return fact
    raise AssertionError(rule)
