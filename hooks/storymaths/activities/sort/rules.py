"""The rules of a sorting, read: their trees, their labels, and which cards fit."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from ...model.fields import Strict, Text
from ...model.prose import Loc
from ..kind import Unsolvable
from ..rule_language.reader import RuleFault, read_rule
from ..rule_language.tree import Name, NoValue, Rule, TooLarge, decider
from ..rule_language.words import parts_of
from .cards import Card, Cards
from .labels import Labels


class SortRule(Strict):
    """A rule with its author's own labels."""

    rule: Text
    """Such as ``legs > 4``."""
    says: Annotated[Text, Field(max_length=40)] | None = None
    """The label of what fits it: ``more than 4 legs``."""
    otherwise: Annotated[Text, Field(max_length=40)] | None = None
    """The label of what does not: ``4 legs or fewer``."""


@dataclass(frozen=True, slots=True)
class ReadRule:
    """A rule ready to sort by."""

    tree: Rule
    fits: str
    otherwise: str
    who: frozenset[str]
    """Ids of the cards that fit."""

    @property
    def facts(self) -> tuple[str, ...]:
        """The facts it speaks of, in order."""
        return tuple(dict.fromkeys(part.name for part in parts_of(self.tree) if isinstance(part, Name)))


def read_rules(
    written: Sequence[str | SortRule], cards: Cards, labels: Labels, field: str = "by"
) -> tuple[ReadRule, ...]:
    """Each rule of a field read and tried on every card. Raises ``Unsolvable`` at the rule that cannot be."""
    read = []
    for index, item in enumerate(written):
        own = item if isinstance(item, SortRule) else SortRule(rule=item)
        tree = _tree(own.rule, cards, (field, index))
        who = frozenset(card.id for card in cards.cards if _fits(tree, card, (field, index)))
        read.append(ReadRule(tree, own.says or labels.fits(tree), own.otherwise or labels.otherwise(tree), who))
    said = [rule.fits for rule in read]
    if len(set(said)) < len(said):
        raise Unsolvable((field,), "Two of the rules are the same.", "keep one of the two.")
    return tuple(read)


def _tree(text: str, cards: Cards, loc: Loc) -> Rule:
    try:
        return read_rule(text, cards.gives)
    except RuleFault as fault:
        if fault.unknown in cards.lacking:
            everyone = "leave that one out" if cards.of == "shape" else "give everyone that fact"
            fix = f"{everyone}, or use another rule."
            raise Unsolvable(loc, cards.lacking[fault.unknown], fix, "activity-fact-missing") from None
        rule = "activity-fact-missing" if fault.unknown else "activity-cannot-be"
        raise Unsolvable(loc, fault.message, fault.fix, rule) from None


def _fits(tree: Rule, card: Card, loc: Loc) -> bool:
    try:
        return bool(decider(tree)(card.case))
    except NoValue:
        raise Unsolvable(loc, f"The rule divides by nought for {card.name}.", "write another rule.") from None
    except TooLarge:
        message = f"The rule comes to more than ten million for {card.name}."
        raise Unsolvable(loc, message, "use smaller numbers.") from None
