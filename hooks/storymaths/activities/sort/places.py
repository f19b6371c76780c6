"""Where every card goes in a sorting diagram, and what placing it demands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ...model.demands import Demands
from ...model.year import YearLimits
from ..rule_language.reasons import Reason, find_reasons
from .cards import Card, Cards
from .rules import ReadRule
from .tasks import Diagram, Placing, Region

_MOST_SHOWN = 12
_ONE: Mapping[tuple[bool, ...], Region] = {(True,): "in", (False,): "out"}
_TWO: Mapping[tuple[bool, ...], Region] = {
    (True, True): "both", (True, False): "first", (False, True): "second", (False, False): "neither",
}  # fmt: skip
_THREE: Mapping[tuple[bool, ...], Region] = {
    (True, True, True): "all", (True, True, False): "first and second", (True, False, True): "first and third",
    (False, True, True): "second and third", (True, False, False): "first", (False, True, False): "second",
    (False, False, True): "third", (False, False, False): "none",
}  # fmt: skip
"""The region of a card, by which of the rules it fits."""
CardReasons = tuple[Card, Sequence[Reason]]
"""A card, and why it goes where it goes."""


@dataclass(frozen=True, slots=True)
class Sorted:
    """Cards sorted by one rule, two or three, in a diagram."""

    diagram: Diagram
    rules: tuple[ReadRule, ...]
    cards: Cards

    @property
    def regions(self) -> dict[Region, list[Card]]:
        """The cards of each region, in the order given; a hoop has ``in`` and ``out``."""
        names = _ONE if self.diagram == "hoop" else _THREE if len(self.rules) == 3 else _TWO
        found: dict[Region, list[Card]] = {region: [] for region in names.values()}
        for card in self.cards.cards:
            found[names[tuple(card.id in rule.who for rule in self.rules)]].append(card)
        return found

    @property
    def value(self) -> Placing:
        """The answer."""
        regions = self.regions
        return Placing(
            {region: tuple(card.id for card in cards) for region, cards in regions.items()},
            tuple(region for region, cards in regions.items() if not cards),
        )

    def find_reasons(self, year: YearLimits) -> list[CardReasons]:
        """Each card's reasons; of many numbers, those that fit every rule, or else the first few."""
        cards = self.cards.cards
        if len(cards) > _MOST_SHOWN:
            fitting = [card for card in cards if all(card.id in rule.who for rule in self.rules)]
            cards = tuple((fitting or list(cards))[:_MOST_SHOWN])
        return [(card, reasons_for(card, self.rules, year)) for card in cards]


def reasons_for(card: Card, rules: Sequence[ReadRule], year: YearLimits) -> list[Reason]:
    """Why a card fits the rules, or does not."""
    return [reason for rule in rules for reason in find_reasons(rule.tree, card.case, year, card.shown, card.called)]


def demands_of_reasons(reasons: Sequence[CardReasons]) -> Demands:
    """What they all demand."""
    demands = Demands()
    for _, own in reasons:
        for reason in own:
            demands |= reason.demands
    return demands
