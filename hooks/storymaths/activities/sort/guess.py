"""Guess my rule: every rule about one fact that puts inside exactly those who are inside."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...check.suggestion import did_you_mean
from ...model.activity import Answer, Context, Figure, LikelyError
from ..kind import Unsolvable
from ..rule_language.tree import Call, Comparison, Name, Not, Number, Rule, Words, decider
from ..rule_language.worked import worked
from ..saying import capital, listed
from .cards import Card, Cards
from .labels import Labels


@dataclass(frozen=True, slots=True)
class Guess:
    """A sorting whose rule is to be found: some are inside, all others outside."""

    cards: Cards
    inside: frozenset[str]
    facts: tuple[str, ...]
    """The facts looked at, in order."""
    tables: tuple[int, ...]
    """Tables of the year: whole numbers may be counted in them."""
    labels: Labels

    def _split(self) -> tuple[list[Card], list[Card]]:
        cards = self.cards.cards
        return [c for c in cards if c.id in self.inside], [c for c in cards if c.id not in self.inside]

    def forms(self, fact: str) -> Iterator[Rule]:
        """The rules tried for a fact, in order. Yes-or-no facts: so, not so. Words: the same, not the same.

        Numbers: exactly one value, any but one, more than, fewer than, odd, even, counted in a table of the
        year. ``more than 4`` and ``more than 5`` are one rule where they tell the same cards apart: of such,
        the one that names the nearest value of somebody outside stands for all.
        """
        ins, outs = ([card.case[fact] for card in side] for side in self._split())
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

    def found(self) -> list[tuple[str, Rule]]:
        """Every rule that fits, with the fact it is about: fact by fact, in the order of ``forms``."""
        return [
            (fact, rule)
            for fact in self.facts
            for rule in self.forms(fact)
            if all(bool(decider(rule)(card.case)) == (card.id in self.inside) for card in self.cards.cards)
        ]

    def answer(self, fact: str, rule: Rule, year: int) -> Answer:
        """One rule that fits, with the reasons of everyone inside and outside."""
        sides = [
            f"{place}: {', '.join(f'{card.name} {worked(rule, card.case, year)}' for card in cards)}"
            for place, cards in zip(("Inside", "Outside"), self._split(), strict=True)
        ]
        return Answer(f"{capital(self.labels.fits(rule))}.", "; ".join(sides) + ".", {"rule": in_language(rule)})

    def note(self, found: int) -> str:
        """How one knows that these are all."""
        tried = sum(1 for fact in self.facts for _ in self.forms(fact))
        facts = listed([fact.replace("_", " ") for fact in self.facts])
        if not found:
            return f"Of {tried} rules about {facts}, none puts these inside and all others outside: two facts would be needed."
        return f"{tried} rules about one fact were tried ({facts}); the others all put somebody in the wrong place."

    def likely_error(self) -> LikelyError | None:
        """A rule that everyone inside fits, and somebody outside as well."""
        for fact in self.facts:
            for rule in self.forms(fact):
                if isinstance(rule, Not) or (isinstance(rule, Comparison) and rule.sign == "≠"):
                    continue
                fits = {card.id for card in self.cards.cards if decider(rule)(card.case)}
                if self.inside < fits:
                    stray = next(card.name for card in self.cards.cards if card.id in fits - self.inside)
                    said = self.labels.fits(rule)
                    return LikelyError(
                        "Looks only at those inside.", f"“{capital(said)}”, but {stray} fits that and is outside."
                    )
        return None

    def figure(self) -> Figure:
        """One hoop with those inside in it; its label is still to be found."""
        ins, outs = ([card.name for card in side] for side in self._split())
        alt = f"One hoop without a label. In the hoop: {listed(ins)}. Outside it: {listed(outs)}."
        return Figure("sort-hoop", {"labels": ["?"], "otherwise": [""], "in": ins, "out": outs}, alt)


def guess_of(inside: Sequence[str], looking_at: Sequence[str], cards: Cards, context: Context) -> Guess:
    """The sorting whose rule is to be found. Raises ``Unsolvable`` for people and facts that are not there."""
    ids = [card.id for card in cards.cards]
    if cards.of_numbers:
        raise Unsolvable(
            ("numbers",), "A rule is guessed from facts, and numbers have none.", "give a cast with facts."
        )
    for index, name in enumerate(inside):
        if name not in ids:
            message = f'"{name}" is not in the cast.{did_you_mean(name, ids)}'
            raise Unsolvable(("inside", index), message, f"use {listed(ids, 'or')}.", "activity-fact-missing")
    if set(inside) == set(ids):
        raise Unsolvable(
            ("inside",), "Everyone is inside, so there is nothing to tell apart.", "leave somebody outside."
        )
    for index, fact in enumerate(looking_at):
        if fact not in cards.gives:
            message = cards.lacking.get(fact, f'Nobody has a fact "{fact[:40]}".{did_you_mean(fact[:40], cards.gives)}')
            raise Unsolvable(("looking_at", index), message, "look at other facts.", "activity-fact-missing")
    if not cards.gives:
        raise Unsolvable(
            ("cast",), "There is no fact that everyone has.", "give everyone the same facts.", "activity-fact-missing"
        )
    facts = tuple(looking_at) or tuple(cards.gives)
    return Guess(cards, frozenset(inside), facts, context.year.tables, Labels(context))


def in_language(rule: Rule) -> str:
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
