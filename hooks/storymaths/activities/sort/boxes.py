"""One card for each box: every way of putting different cards into boxes so that each fits its box's rule."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ...model.activity import Context
from ..kind import Unsolvable
from .cards import Card, Cards
from .rules import ReadRule

_MOST_TRIES = 200_000
InBoxes = tuple[Card, ...]
"""A card for each box."""


def fill_boxes(rules: Sequence[ReadRule], cards: Cards, context: Context) -> list[InBoxes]:
    """Every filling, in the order of the cards, box after box.

    Raises ``Unsolvable`` when there are more than can be listed, or too many trials to be sure.
    """
    tries = 0

    def fill(filled: InBoxes) -> Iterator[InBoxes]:
        nonlocal tries
        if len(filled) == len(rules):
            yield filled
            return
        for card in cards.cards:
            tries += 1
            if tries > min(context.caps.tries, _MOST_TRIES):
                message = "There are too many ways of filling these boxes to try them all."
                raise Unsolvable(("by",), message, "use fewer boxes.")
            if card.id in rules[len(filled)].who and card not in filled:
                yield from fill((*filled, card))

    found = []
    for filling in fill(()):
        found.append(filling)
        if len(found) > context.caps.answers:
            message = f"There are more than {context.caps.answers} ways of filling these boxes."
            fix = "make the rules stricter, or use fewer cards."
            raise Unsolvable(("by",), message, fix, "activity-too-many-answers")
    return found
