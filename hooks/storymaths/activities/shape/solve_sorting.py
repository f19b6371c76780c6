"""Sorts shapes by what they have, or finds those that fit clues, and what that demands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ...model.activity import Answer, Line, Solution, Task
from ...model.demands import Demands, Sign, amounts, operation
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..rule_language.tree import COMPARE, Call, Comparison, Name, Number, Operation, Rule, decider, gives
from ..rule_language.words import parts_of
from ..saying import capital
from ..sort.cards import Card
from ..sort.places import Diagram, Sorted
from ..sort.rules import ReadRule, read_rules
from . import say
from .named_shapes import Shapes
from .tasks import ClueTask, Fitting, Sorting, SortTask

_SIGNS: Mapping[str, Sign] = {"+": "+", "−": "−", "×": "×", "÷": "÷"}


def sort_shapes(task: SortTask, shapes: Shapes) -> Solution[Sorting]:
    """Where every shape goes in a hoop, a Venn diagram or a Carroll diagram."""
    cards = shapes.cards()
    rules = read_rules(task.by, cards, shapes.labels())
    into: Diagram = task.diagram or ("hoop" if len(rules) == 1 else "venn")
    if (into == "hoop") != (len(rules) == 1):
        message = f"There {'is 1 rule' if len(rules) == 1 else f'are {len(rules)} rules'}."
        raise Unsolvable(("diagram",), message, "give one rule for a hoop, two for the others.")
    done = Sorted(into, rules, cards, shapes.context.year.year)
    found = done.answer()
    regions = {region: tuple(card.id for card in there) for region, there in done.regions().items()}
    value = Sorting(regions, tuple(region for region, there in regions.items() if not there))
    return Solution(
        task=Task(say.ask_to_sort(rules), figures=(shapes.draw(), done.figure(filled=False))),
        answers=(Answer(found.says, found.worked, value),),
        demands=_demand_rules(rules, cards.cards, shapes),
        steps=len(rules),
        note=done.note(),
        likely_error=done.likely_error(),
        answer_figures=(done.figure(filled=True),),
    )


def find_fitting(task: ClueTask, shapes: Shapes) -> Solution[Fitting]:
    """Every shape that fits all the clues."""
    cards, year = shapes.cards(), shapes.context.year
    rules = read_rules(task.clues, cards, shapes.labels(), "clues")
    fits = [card for card in cards.cards if all(card.id in rule.who for rule in rules)]
    stray = next((card.name for card in cards.cards if card.id in rules[0].who and card not in fits), None)
    return Solution(
        task=Task(
            say.ASK_BY_CLUES,
            lines=tuple(Line((f"{capital(rule.fits)}.",)) for rule in rules),
            figures=(shapes.draw(),),
        ),
        answers=tuple(
            Answer(f"{capital(card.name)}.", say.explain_fit(card, rules, year.year), Fitting(card.id)) for card in fits
        ),
        demands=_demand_rules(rules, fits, shapes),
        steps=len(rules),
        note=say.explain_clues(rules, cards.cards),
        likely_error=say.err_in_clues(stray) if stray else None,
    )


def _demand_rules(rules: Sequence[ReadRule], cards: Sequence[Card], shapes: Shapes) -> Demands:
    """The names and words; the numbers of the rules, and what they come to and are compared by for each card."""
    demands = shapes.demands(fact for rule in rules for fact in rule.facts)
    for rule in rules:
        for part in parts_of(rule.tree):
            if isinstance(part, Number):
                demands |= Demands(amounts([part.value]))
            for card in cards:
                demands |= _demand_part(part, card, shapes.context.year)
    return demands


def _demand_part(part: Rule, card: Card, year: YearLimits) -> Demands:
    """What a part of a rule comes to for a card, and the signs it is written with."""
    match part:
        case Operation(sign=sign, left=left, right=right):
            numbers = (decider(one)(card.case) for one in (left, right, part))
            return Demands(operations=(operation(_SIGNS[sign], *numbers),), signs=frozenset(sign))
        case Comparison(left=left, right=right) if gives(left) == "number":
            one, other = decider(left)(card.case), decider(right)(card.case)
            sign = next(sign for sign in "=<>" if COMPARE[sign](one, other))
            # A count that is the one named is given alone: "4 = 4" would tell nobody anything.
            alone = sign == part.sign == "=" and isinstance(left, Name) and isinstance(right, Number)
            return Demands(amounts([one, other]), signs=frozenset(() if alone or not year.knows(sign) else sign))
        case Call(parts=(first, *_)) if gives(part) == "truth":
            return Demands(amounts([decider(first)(card.case)]))
    return Demands()
