"""Sorts shapes by what they have, or finds those that fit clues, and what that demands."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Answer, Line, Solution, Task
from ...model.demands import Demands
from ..kind import Unsolvable
from ..rule_language.reasons import demands_of_numbers
from ..saying import capital
from ..sort.places import CardReasons, Sorted, demands_of_reasons, reasons_for
from ..sort.rules import ReadRule, read_rules
from ..sort.say_places import draw, explain_empty, explain_places, find_error, say_places
from ..sort.tasks import Diagram, Placing
from . import say
from .named_shapes import Shapes
from .set import with_article
from .tasks import ClueTask, Fitting, SortTask


def sort_shapes(task: SortTask, shapes: Shapes) -> Solution[Placing]:
    """Where every shape goes in a hoop, a Venn diagram or a Carroll diagram."""
    cards = shapes.cards()
    rules = read_rules(task.by, cards, shapes.labels())
    into: Diagram = task.diagram or ("hoop" if len(rules) == 1 else "venn")
    if (into == "hoop") != (len(rules) == 1):
        message = f"There {'is 1 rule' if len(rules) == 1 else f'are {len(rules)} rules'}."
        raise Unsolvable(("diagram",), message, "give one rule for a hoop, two for the others.")
    done = Sorted(into, rules, cards)
    reasons = done.find_reasons(shapes.context.year)
    return Solution(
        task=Task(say.ask_to_sort(rules), figures=(shapes.draw(), draw(done, filled=False))),
        answers=(Answer(say_places(done), explain_places(reasons, with_article), done.value),),
        demands=_demand_rules(rules, reasons, shapes),
        steps=len(rules),
        note=explain_empty(done),
        likely_error=find_error(done),
        answer_figures=(draw(done, filled=True),),
    )


def find_fitting(task: ClueTask, shapes: Shapes) -> Solution[Fitting]:
    """Every shape that fits all the clues."""
    cards, year = shapes.cards(), shapes.context.year
    rules = read_rules(task.clues, cards, shapes.labels(), "clues")
    fits = [card for card in cards.cards if all(card.id in rule.who for rule in rules)]
    reasons = [(card, reasons_for(card, rules, year)) for card in fits]
    stray = next((card.name for card in cards.cards if card.id in rules[0].who and card not in fits), None)
    return Solution(
        task=Task(
            say.ASK_BY_CLUES,
            lines=tuple(Line((f"{capital(rule.fits)}.",)) for rule in rules),
            figures=(shapes.draw(),),
        ),
        answers=tuple(
            Answer(f"{capital(card.name)}.", say.explain_fit(why), Fitting(card.id)) for card, why in reasons
        ),
        demands=_demand_rules(rules, reasons, shapes),
        steps=len(rules),
        note=say.explain_clues(rules, cards.cards),
        likely_error=say.err_in_clues(stray) if stray else None,
    )


def _demand_rules(rules: Sequence[ReadRule], reasons: Sequence[CardReasons], shapes: Shapes) -> Demands:
    """The names and words; the numbers of the rules, and what the reasons come to."""
    demands = shapes.demands(fact for rule in rules for fact in rule.facts) | demands_of_reasons(reasons)
    for rule in rules:
        demands |= demands_of_numbers(rule.tree)
    return demands
