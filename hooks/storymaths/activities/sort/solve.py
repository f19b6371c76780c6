"""Finds where everyone goes, every filling of boxes, or every rule behind a sorting, and what that demands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from ...model.activity import Answer, Context, Figure, Line, NumberCard, Shown, Solution, Task
from ...model.activity import Cards as LaidCards
from ...model.demands import Demands
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..rule_language.reasons import demands_of_number, demands_of_numbers, find_reasons
from ..rule_language.tree import Rule
from ..rule_language.words import tables_in, words_in
from ..saying import capital
from . import say, say_places
from .boxes import fill_boxes
from .cards import Cards, cast_cards, number_cards
from .guess import read_guess, write_rule
from .labels import Labels, signs_in_label
from .places import CardReasons, Sorted, demands_of_reasons, reasons_for
from .rules import ReadRule, read_rules
from .tasks import BoxesTask, Filling, GuessedRule, GuessTask, PlaceTask, SortAnswer, SortTask, ThreeRingsTask

_WORDS = {"hoop": (), "venn": ("Venn diagram",), "carroll": ("Carroll diagram",)}
_TWO = (2, 2, "two rules")
_THREE = (3, 3, "three rules")
_HOW_MANY = {"hoop": (1, 1, "one rule"), "venn": _TWO, "carroll": _TWO, "boxes": (1, 6, "rules")}


def solve(task: SortTask, context: Context) -> Solution[SortAnswer]:
    """The one sorting; every filling of the boxes; or every rule that fits, in the order stated there."""
    if isinstance(task, GuessTask):
        return _guess(task, context)
    cards = number_cards(task.numbers) if task.numbers else cast_cards(context)
    rules = read_rules(task.by, cards, Labels(context))
    diagram = task.into if isinstance(task, PlaceTask) else "boxes"
    fewest, most, what = _THREE if isinstance(task, ThreeRingsTask) else _HOW_MANY[diagram]
    if not fewest <= len(rules) <= most:
        message = (
            f"There {'is' if len(rules) == 1 else 'are'} {len(rules)} rule{'' if len(rules) == 1 else 's'} to sort by."
        )
        raise Unsolvable(("by",), message, f"give {what} in by, or say who is inside to have a rule guessed.")
    return _fill(rules, cards, context) if isinstance(task, BoxesTask) else _place(task, rules, cards, context)


def place(done: Sorted, reasons: Sequence[CardReasons]) -> Answer[SortAnswer]:
    """Where everyone goes, as an answer."""
    return Answer(say_places.say_places(done), say_places.explain_places(reasons), done.value)


def _place(task: PlaceTask, rules: tuple[ReadRule, ...], cards: Cards, context: Context) -> Solution[SortAnswer]:
    done = Sorted(task.into, rules, cards)
    reasons = done.find_reasons(context.year)
    return Solution(
        task=_show(
            say_places.ask_to_place(done),
            cards,
            _not_given_away(_facts(rules), cards),
            context,
            (say_places.draw(done, filled=False),),
        ),
        answers=(place(done, reasons),),
        demands=_demands_of_cards(cards, _facts(rules), context, (*_WORDS[task.into], "sort"))
        | _demands_of_rules([rule.tree for rule in rules], context.year)
        | demands_of_reasons(reasons),
        steps=len(rules) + (len(rules) > 1),
        note=say_places.explain_empty(done),
        likely_error=say_places.find_error(done),
        answer_figures=(say_places.draw(done, filled=True),),
        cards=_lay(cards),
    )


def _fill(rules: tuple[ReadRule, ...], cards: Cards, context: Context) -> Solution[SortAnswer]:
    found = fill_boxes(rules, cards, context)
    why: list[list[CardReasons]] = [
        [(card, reasons_for(card, (rule,), context.year)) for rule, card in zip(rules, filling, strict=True)]
        for filling in found
    ]
    return Solution(
        task=_show(say.ask_to_fill(rules), cards, _not_given_away(_facts(rules), cards), context),
        answers=tuple(
            Answer(
                say.say_filling(rules, filling), say.explain_filling(own), Filling(tuple(card.id for card in filling))
            )
            for filling, own in zip(found, why, strict=True)
        ),
        demands=_demands_of_cards(cards, _facts(rules), context, ("sort",))
        | _demands_of_rules([rule.tree for rule in rules], context.year)
        | demands_of_reasons([one for own in why for one in own]),
        steps=len(rules),
        note=say.explain_boxes(rules, cards, found),
        likely_error=say.err_in_boxes(rules, cards, found),
        cards=_lay(cards),
    )


def _guess(task: GuessTask, context: Context) -> Solution[SortAnswer]:
    cards, labels, year = cast_cards(context), Labels(context), context.year
    guess = read_guess(task, cards, context)
    rules = [rule for _, rule in guess.find_rules()]
    why: list[list[list[CardReasons]]] = [
        [[(card, find_reasons(rule, card.case, year)) for card in side] for side in guess.split()] for rule in rules
    ]
    return Solution(
        task=_show(say.ASK_TO_GUESS, cards, guess.facts, context, (say.draw_guess(guess),)),
        answers=tuple(
            Answer(f"{capital(labels.fits(rule))}.", say.explain_guess(sides), GuessedRule(write_rule(rule)))
            for rule, sides in zip(rules, why, strict=True)
        ),
        demands=_demands_of_cards(cards, guess.facts, context, ("sort",))
        | _demands_of_rules(rules, year)
        | demands_of_reasons([one for sides in why for side in sides for one in side]),
        steps=2,
        note=say.explain_all(guess, len(rules)),
        likely_error=say.err_in_guess(guess, labels),
    )


def labels_that_miss(task: GuessTask, context: Context) -> list[str]:
    """Rules that were tried for a guess and put somebody in the wrong place, as they are said; in the order tried."""
    guess, labels = read_guess(task, cast_cards(context), context), Labels(context)
    fitting = {labels.fits(rule) for _, rule in guess.find_rules()}
    tried = dict.fromkeys(labels.fits(rule) for _, rule in guess.try_rules())
    return [label for label in tried if label not in fitting]


def _facts(rules: Sequence[ReadRule]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(fact for rule in rules for fact in rule.facts))


def _not_given_away(facts: Sequence[str], cards: Cards) -> list[str]:
    """The facts that do not answer a rule by yes or no."""
    return [fact for fact in facts if cards.gives.get(fact) != "truth"]


def _show(ask: str, cards: Cards, facts: Sequence[str], context: Context, figures: tuple[Figure, ...] = ()) -> Task:
    """What a pupil sees: the numbers to sort, or the cast and the facts it must know."""
    if cards.of_numbers:
        return Task(ask, lines=(Line((say.list_numbers(cards.cards),)),), figures=figures)
    # The number on each card, where one fact with numbers is all it takes.
    counted = [fact for fact in facts if cards.gives.get(fact) == "number"]
    values = [int(card.case[counted[0]]) for card in cards.cards] if len(counted) == 1 else []
    shows = tuple(Shown(say.write_fact(value), Fraction(value)) for value in values)
    return Task(ask, context.characters, shows, table=say.tabulate(context, cards, facts), figures=figures)


def _lay(cards: Cards) -> LaidCards | None:
    """The numbers to sort as cards to lay; of a cast the characters are moved."""
    if not cards.of_numbers:
        return None
    faces = {Fraction(card.case["n"]): card.name for card in cards.cards}
    return LaidCards(tuple(NumberCard(number, faces[number]) for number in sorted(faces)), {})


def _demands_of_rules(rules: Iterable[Rule], year: YearLimits) -> Demands:
    """What the labels demand."""
    demands = Demands()
    for rule in rules:
        demands |= demands_of_numbers(rule) | Demands(
            signs=signs_in_label(rule, year), words=words_in(rule, year), tables=tables_in(rule)
        )
    return demands


def _demands_of_cards(cards: Cards, facts: Sequence[str], context: Context, words: tuple[str, ...]) -> Demands:
    """What reading the cards demands, and the words of the task."""
    units = {context.facts[fact].unit for fact in facts if fact in context.facts} & set(UNITS)
    demands = Demands(words=words, other_units=frozenset(units))
    counted = ["n"] if cards.of_numbers else [fact for fact in facts if cards.gives.get(fact) == "number"]
    for card in cards.cards:
        for fact in counted:
            demands |= demands_of_number(card.case[fact], card.shown.get(fact, ""))
    return demands
