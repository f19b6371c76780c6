"""One card for each box: every way of putting different cards into boxes so that each fits its box's rule."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...model.activity import Answer, Context, LikelyError
from ..kind import Unsolvable
from ..rule_language.worked import worked
from ..saying import capital
from .cards import Card, Cards
from .rules import ReadRule


def every_filling(rules: Sequence[ReadRule], cards: Cards, context: Context) -> list[tuple[Card, ...]]:
    """Every filling, in the order of the cards, box after box.

    Raises ``Unsolvable`` when there are more than can be listed, or too many trials to be sure.
    """
    tries = 0

    def fill(filled: tuple[Card, ...]) -> Iterator[tuple[Card, ...]]:
        nonlocal tries
        if len(filled) == len(rules):
            yield filled
            return
        for card in cards.cards:
            tries += 1
            if tries > min(context.caps.tries, 200_000):
                raise Unsolvable(
                    ("by",), "There are too many ways of filling these boxes to try them all.", "use fewer boxes."
                )
            if card.id in rules[len(filled)].who and card not in filled:
                yield from fill((*filled, card))

    found = []
    for filling in fill(()):
        found.append(filling)
        if len(found) > context.caps.answers:
            message = f"There are more than {context.caps.answers} ways of filling these boxes."
            raise Unsolvable(
                ("by",), message, "make the rules stricter, or use fewer cards.", "activity-too-many-answers"
            )
    return found


def filling_answer(rules: Sequence[ReadRule], filling: Sequence[Card], year: int) -> Answer:
    """One way of filling the boxes."""
    said = [f"{capital(rule.fits)}: {card.name}" for rule, card in zip(rules, filling, strict=True)]
    why = [
        f"{card.name}: {worked(rule.tree, card.case, year, card.shown)}"
        for rule, card in zip(rules, filling, strict=True)
    ]
    return Answer(
        "; ".join(said) + ".",
        ". ".join(line.replace(";", ",") for line in why) + ".",
        {"boxes": [c.id for c in filling]},
    )


def boxes_note(rules: Sequence[ReadRule], cards: Cards, found: int) -> str:
    """Where to start: the box with the fewest cards that fit; or which boxes cannot be filled together."""
    by_id = {card.id: card.name for card in cards.cards}
    tightest = min(rules, key=lambda rule: len(rule.who))
    if not tightest.who:
        return f"Nothing fits “{tightest.fits}”."
    names = ", ".join(by_id[card.id] for card in cards.cards if card.id in tightest.who)
    start = f"Start with “{tightest.fits}”: only {names} can go there."
    return start if found else f"{start} Whatever goes there, another box is left without a card that fits."


def boxes_slip(rules: Sequence[ReadRule], cards: Cards, found: Sequence[tuple[Card, ...]]) -> LikelyError | None:
    """A card that fits a box and is wanted in another."""
    for place, rule in enumerate(rules):
        wanted = {filling[place].id for filling in found}
        for card in cards.cards:
            if found and card.id in rule.who - wanted and any(card in filling for filling in found):
                other = next(rules[filling.index(card)].fits for filling in found if card in filling)
                return LikelyError(
                    f"Puts {card.name} in “{rule.fits}”, where it fits.", f"Nothing is left for “{other}”."
                )
    return None
