"""Where every card goes in a sorting diagram, said, shown and drawn."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from ...model.activity import Answer, Figure, LikelyError
from ..rule_language.tree import Comparison, Name, Number
from ..rule_language.words import amount
from ..rule_language.worked import worked
from ..saying import capital, listed
from .cards import Card, Cards
from .rules import ReadRule

Diagram = Literal["hoop", "venn", "carroll"]
REGIONS = ("both", "first", "second", "neither")
"""By the first rule and the second: fits both, only the first, only the second, neither."""
_MOST_SHOWN = 12


@dataclass(frozen=True, slots=True)
class Sorted:
    """Cards sorted by one rule or two, in a diagram."""

    diagram: Diagram
    rules: tuple[ReadRule, ...]
    cards: Cards
    year: int

    def regions(self) -> dict[str, list[Card]]:
        """The cards of each region, in the order given; a hoop has ``in`` and ``out``."""
        cards = self.cards.cards
        if self.diagram == "hoop":
            (rule,) = self.rules
            return {
                "in": [card for card in cards if card.id in rule.who],
                "out": [card for card in cards if card.id not in rule.who],
            }
        one, other = self.rules
        places = {(True, True): "both", (True, False): "first", (False, True): "second", (False, False): "neither"}
        found: dict[str, list[Card]] = {region: [] for region in REGIONS}
        for card in cards:
            found[places[card.id in one.who, card.id in other.who]].append(card)
        return found

    def region_names(self) -> Mapping[str, str]:
        """What each region is called in this diagram."""
        if self.diagram == "hoop":
            return {"in": f"in the hoop “{self.rules[0].fits}”", "out": "outside it"}
        one, other = self.rules
        if self.diagram == "venn":
            return {
                "both": "where the hoops cross",
                "first": f"only in “{one.fits}”",
                "second": f"only in “{other.fits}”",
                "neither": "outside both hoops",
            }
        return {
            "both": f"in the box “{one.fits}, {other.fits}”",
            "first": f"in the box “{one.fits}, {other.otherwise}”",
            "second": f"in the box “{one.otherwise}, {other.fits}”",
            "neither": f"in the box “{one.otherwise}, {other.otherwise}”",
        }

    def answer(self) -> Answer:
        """Where everyone goes."""
        regions, names = self.regions(), self.region_names()
        said = [f"{capital(names[region])}: {_names(cards) or self.cards.nobody}." for region, cards in regions.items()]
        data = {
            "regions": {region: [card.id for card in cards] for region, cards in regions.items()},
            "empty": [region for region, cards in regions.items() if not cards],
        }
        return Answer(" ".join(said), self._worked(), data)

    def _worked(self) -> str:
        """Each card's reasons; of many numbers, those that fit every rule, or else the first few."""
        cards = self.cards.cards
        if len(cards) > _MOST_SHOWN:
            fitting = [card for card in cards if all(card.id in rule.who for rule in self.rules)]
            cards = tuple((fitting or list(cards))[:_MOST_SHOWN])
        lines = []
        for card in cards:
            reasons = [worked(rule.tree, card.case, self.year, card.shown) for rule in self.rules]
            lines.append(f"{capital(card.name)}: {', '.join(dict.fromkeys(filter(None, reasons)))}.".replace(";", ","))
        return " ".join(lines)

    def note(self) -> str:
        """What an empty region tells; else that every card has been looked at."""
        regions, names = self.regions(), self.region_names()
        all_of = self.cards.of
        if self.diagram != "hoop":
            one, other = (rule.fits for rule in self.rules)
            lonely = {"first": self.rules[0], "second": self.rules[1]}
            why = {
                "both": f"no {all_of} fits both rules",
                "first": f"every {all_of} that fits “{one}” fits “{other}” too",
                "second": f"every {all_of} that fits “{other}” fits “{one}” too",
                "neither": f"every {all_of} fits one rule or the other",
            }
            why |= {region: f"no {all_of} fits “{rule.fits}”" for region, rule in lonely.items() if not rule.who}
            empty = [f"{capital(names[region])} is empty: {why[region]}." for region in REGIONS if not regions[region]]
            if empty:
                return " ".join(empty)
        elif not all(regions.values()):
            return f"Every {all_of} goes the same way, so this rule does not sort these."
        return f"Each of the {len(self.cards.cards)} {all_of}s was tried against each rule, and has just one place."

    def likely_error(self) -> LikelyError | None:
        """The likely slip, worked out: a card of both rings left in one; one of neither forced into a ring."""
        regions = self.regions()
        if self.diagram == "hoop":
            return self._edge_slip()
        if both := regions["both"]:
            names = self.region_names()
            return LikelyError(
                f"Looks at one rule only, and stops: {_names(both[:1])} fits both.",
                f"{capital(_names(both[:1]))} {names['first']}, and the other rule is forgotten.",
            )
        if neither := regions["neither"]:
            does = (
                "Thinks that everyone must go into a ring."
                if self.diagram == "venn"
                else "Leaves out who fits neither."
            )
            return LikelyError(does, f"No place for {_names(neither)}, {self.region_names()['neither']}.")
        return None

    def _edge_slip(self) -> LikelyError | None:
        """Somebody with exactly the number that must be passed, taken to pass it."""
        (rule,) = self.rules
        match rule.tree:
            case Comparison(sign="<" | ">", left=Name(name=fact), right=Number(value=edge)):
                at_edge = [card for card in self.cards.cards if card.case[fact] == edge]
                if at_edge:
                    does = f"Counts {_names(at_edge)} in, at exactly {amount(rule.tree.right)}."
                    return LikelyError(does, f"{len(rule.who) + len(at_edge)} in the hoop, where {len(rule.who)} fit.")
        return None

    def figure(self, filled: bool) -> Figure:
        """The diagram, empty for the pupil, or with everyone in their place."""
        regions, names = self.regions(), self.region_names()
        shown = {region: [card.name for card in cards] if filled else [] for region, cards in regions.items()}
        labels = [rule.fits for rule in self.rules]
        what = {"hoop": "One hoop", "venn": "Two hoops that overlap", "carroll": "A table of two by two boxes"}
        alt = f"{what[self.diagram]}, for {listed([f'“{label}”' for label in labels])}"
        if filled:
            alt += ". " + " ".join(
                f"{capital(names[region])}: {_names(cards) or 'empty'}." for region, cards in regions.items()
            )
        else:
            alt += ", still empty."
        otherwise = [rule.otherwise for rule in self.rules]
        return Figure(f"sort-{self.diagram}", {"labels": labels, "otherwise": otherwise, **shown}, alt)


def _names(cards: Sequence[Card]) -> str:
    return listed([card.name for card in cards])
