"""Sorting in words: what is known of everyone, boxes to fill, and a rule to be guessed."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Context, Figure, LikelyError, Table
from ...model.figures.sorting import SortHoop
from ..rule_language.reasons import Reason
from ..saying import capital, listed
from .boxes import InBoxes
from .cards import Card, Cards
from .guess import Guess
from .labels import Labels
from .places import CardReasons
from .rules import ReadRule

_MOST_LISTED = 20


def list_numbers(cards: Sequence[Card]) -> str:
    """The numbers to sort; a long stretch by its ends."""
    values = [card.case["n"] for card in cards]
    if len(values) > _MOST_LISTED and values == list(range(values[0], values[0] + len(values))):
        return f"The whole numbers from {cards[0].name} to {cards[-1].name}"
    return ", ".join(card.name for card in cards)


def tabulate(context: Context, cards: Cards, facts: Sequence[str]) -> Table:
    """What is known of everyone: the facts the sorting turns on."""
    heads = [context.facts[fact].means if fact in context.facts else fact.replace("_", " ") for fact in facts]
    rows = tuple((card.name, *(write_fact(card.case[fact]) for fact in facts)) for card in cards.cards)
    caption = f"What we know: {listed(heads)}" if heads else "Who there is"
    return Table(caption, ("Who", *map(capital, heads)), rows)


def write_fact(value: object) -> str:
    """A fact as it stands in a table or on a card."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:,}" if isinstance(value, int) else str(value)


# Boxes.


def ask_to_fill(rules: Sequence[ReadRule]) -> str:
    """The task."""
    return f"Put a different one in each box: {listed([f'“{rule.fits}”' for rule in rules])}."


def say_filling(rules: Sequence[ReadRule], filling: InBoxes) -> str:
    """What is in each box."""
    return "; ".join(f"{capital(rule.fits)}: {card.name}" for rule, card in zip(rules, filling, strict=True)) + "."


def explain_filling(reasons: Sequence[CardReasons]) -> str:
    """Why each fits its box."""
    return ". ".join(_explain_card(card, own) for card, own in reasons) + "."


def _explain_card(card: Card, own: Sequence[Reason]) -> str:
    why = ", ".join(dict.fromkeys(one.says for one in own))
    return f"{card.name}: {f'exactly {why}' if why == card.name else why}"


def explain_boxes(rules: Sequence[ReadRule], cards: Cards, found: Sequence[InBoxes]) -> str:
    """Where to start: the box with the fewest cards that fit; or which boxes cannot be filled together."""
    tightest = min(rules, key=lambda rule: len(rule.who))
    if not tightest.who:
        return f"Nothing fits “{tightest.fits}”."
    names = ", ".join(card.name for card in cards.cards if card.id in tightest.who)
    start = f"Start with “{tightest.fits}”: only {names} can go there."
    return start if found else f"{start} Whatever goes there, another box is left without a card that fits."


def err_in_boxes(rules: Sequence[ReadRule], cards: Cards, found: Sequence[InBoxes]) -> LikelyError | None:
    """A card that fits a box and is wanted in another."""
    for place, rule in enumerate(rules):
        wanted = {filling[place].id for filling in found}
        for card in cards.cards:
            if card.id not in rule.who - wanted:
                continue
            other = next((rules[filling.index(card)].fits for filling in found if card in filling), None)
            if other is not None:
                does = f"Puts {card.name} in “{rule.fits}”, where it fits."
                return LikelyError(does, f"Nothing is left for “{other}”.")
    return None


# A rule to be guessed.

ASK_TO_GUESS = "Some are inside the ring and the rest are outside. What could the rule be? Find every rule that fits."


def explain_guess(sides: Sequence[Sequence[CardReasons]]) -> str:
    """Why everyone is inside or outside."""
    told = []
    for place, side in zip(("Inside", "Outside"), sides, strict=True):
        reasons = (f"{card.name} {'; '.join(dict.fromkeys(one.says for one in own))}" for card, own in side)
        told.append(f"{place}: {', '.join(reasons)}")
    return "; ".join(told) + "."


def explain_all(guess: Guess, found: int) -> str:
    """How one knows that these are all."""
    tried = sum(1 for _ in guess.try_rules())
    facts = listed([fact.replace("_", " ") for fact in guess.facts])
    if not found:
        return (
            f"Of {tried} rules about {facts}, none puts these inside and all others outside: two facts would be needed."
        )
    return f"{tried} rules about one fact were tried ({facts}); the others all put somebody in the wrong place."


def err_in_guess(guess: Guess, labels: Labels) -> LikelyError | None:
    """A rule that everyone inside fits, and somebody outside as well."""
    wide = guess.find_too_wide()
    if wide is None:
        return None
    rule, stray = wide
    gives = f"“{capital(labels.fits(rule))}”, but {stray.name} fits that and is outside."
    return LikelyError("Looks only at those inside.", gives)


def draw_guess(guess: Guess) -> Figure:
    """One ring with those inside in it; its label is still to be found."""
    ins, outs = (tuple(card.name for card in side) for side in guess.split())
    alt = f"One ring without a label. In the ring: {listed(ins)}. Outside it: {listed(outs)}."
    return Figure(SortHoop("?", "", ins, outs), alt)
