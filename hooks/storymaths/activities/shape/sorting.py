"""Shapes sorted by what they have, and the shape somebody thinks of, found by clues."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Answer, LikelyError, Solution
from ...model.plain import as_plain_mapping
from ..kind import Unsolvable
from ..met import as_task
from ..rule_language.reasons import explain
from ..saying import capital, listed
from ..sort.cards import Card
from ..sort.places import Sorted
from ..sort.rules import ReadRule, SortRule, read_rules
from ..sort.say_places import draw, explain_empty, explain_places, find_error, say_places
from ..sort.tasks import Diagram
from .tasks import Shapes


def sorted_solution(shapes: Shapes, by: Sequence[str | SortRule], diagram: Diagram | None, ask: str | None) -> Solution:
    """Where every shape goes in a hoop, a Venn diagram or a Carroll diagram."""
    cards = shapes.cards()
    rules = read_rules(by, cards, shapes.labels())
    into: Diagram = diagram or ("hoop" if len(rules) == 1 else "venn")
    if (into == "hoop") != (len(rules) == 1):
        raise Unsolvable(
            ("diagram",), f"There are {len(rules)} rules.", "give one rule for a hoop, two for the others."
        )
    done = Sorted(into, rules, cards)
    answer = Answer(
        say_places(done), explain_places(done.find_reasons(shapes.context.year)), as_plain_mapping(done.value)
    )
    asked = f"Sort the shapes by {listed([f'“{rule.fits}”' for rule in rules])}. Is any place left empty?"
    return shapes.solution(
        as_task(ask or asked, figures=(shapes.figure(), draw(done, filled=False))),
        [answer],
        _facts(rules),
        steps=len(rules),
        note=explain_empty(done),
        likely_error=find_error(done),
        figures=(draw(done, filled=True),),
    )


def guessed_solution(shapes: Shapes, clues: Sequence[str], ask: str | None) -> Solution:
    """Every shape that fits all the clues."""
    cards = shapes.cards()
    rules = read_rules(clues, cards, shapes.labels(), "clues")
    fits = [card for card in cards.cards if all(card.id in rule.who for rule in rules)]
    answers = [Answer(f"{capital(card.name)}.", _why(card, rules, shapes), {"shape": card.id}) for card in fits]
    asked = "Somebody thinks of a shape. Which of these can it be? Find all that fit every clue."
    stray = next((card.name for card in cards.cards if card.id in rules[0].who and card not in fits), None)
    return shapes.solution(
        as_task(ask or asked, lines=tuple(f"{capital(rule.fits)}." for rule in rules), figures=(shapes.figure(),)),
        answers,
        _facts(rules),
        steps=len(rules),
        note=_left_after_each(rules, cards.cards),
        likely_error=LikelyError("Looks at the first clue only.", f"{capital(stray)}, which does not fit the others.")
        if stray
        else None,
    )


def _why(card: Card, rules: Sequence[ReadRule], shapes: Shapes) -> str:
    reasons = (explain(rule.tree, card.case, shapes.context.year) for rule in rules)
    return f"{capital(', '.join(dict.fromkeys(filter(None, reasons))))}.".replace(";", ",")


def _left_after_each(rules: Sequence[ReadRule], cards: Sequence[Card]) -> str:
    """How many shapes each clue leaves over."""
    left, told = list(cards), []
    for rule in rules:
        left = [card for card in left if card.id in rule.who]
        names = listed([card.name for card in left]) if len(left) <= 6 else f"{len(left)} shapes"
        told.append(f"{capital(rule.fits)}: leaves {names or 'none'}.")
    return " ".join(told)


def _facts(rules: Sequence[ReadRule]) -> list[str]:
    return [fact for rule in rules for fact in rule.facts]
