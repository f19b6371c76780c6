"""Sorting: who goes where by one rule or two, one card to a box, or the rule behind a sorting."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Id, Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind, Unsolvable
from ..rule_language.words import tables_in, words_in
from ..saying import listed
from .boxes import boxes_note, boxes_slip, every_filling, filling_answer
from .cards import Cards, WrittenNumbers, cast_cards, number_cards
from .guess import guess_of
from .labels import Labels
from .places import Sorted
from .rules import ReadRule, SortRule, read_rules
from .task import sort_solution
from .versions import sort_versions

_WORDS = {"venn": ("Venn diagram",), "carroll": ("Carroll diagram",)}
_HOW_MANY = {
    "hoop": (1, 1, "one rule"),
    "venn": (2, 2, "two rules"),
    "carroll": (2, 2, "two rules"),
    "boxes": (1, 6, "rules"),
}


class SortFields(ActivityFields):
    """Fields of a sorting: ``by`` for a diagram or boxes, or ``inside`` for a rule to be guessed."""

    by: Annotated[tuple[Text | SortRule, ...], Field(max_length=6)] = ()
    """One rule or two (for boxes up to six) about facts of the cast, such as ``swims`` or ``legs > 4``;
    about numbers, with ``n``, such as ``odd(n)`` or ``multiple(n, 7)``."""
    diagram: Literal["hoop", "venn", "carroll", "boxes"] | None = None
    """What to sort into; when left out, a hoop for one rule and a Venn diagram for two."""
    numbers: WrittenNumbers | None = None
    """Numbers to sort in place of a cast: a list, or a stretch such as ``10 to 99``; at most a hundred."""
    inside: tuple[Id, ...] = ()
    """Guess my rule: those in the hoop. Everyone else of the cast is outside."""
    looking_at: tuple[Text, ...] = ()
    """Guess my rule: the facts to look at; all that everyone has when left out."""


class Sort(Kind[SortFields]):
    """Sorting by facts.

    Steps: one for each rule, and one more where two rules are put together; for a box, one each; for a rule
    to be guessed two, what those inside share and whether nobody outside has it.
    """

    name = "sort"
    says = "Sorting a cast, or numbers, by one rule or two in hoops or boxes; or guessing the rule of a sorting."
    answer_shape = (
        "{regions: {both: [ids], first: [ids], second: [ids], neither: [ids]}, empty: [region]} with in and out for one "
        "rule; for boxes {boxes: [one id a box]}; for a rule to be guessed {rule: legs > 4}"
    )
    practises: ClassVar[dict[str, str]] = {
        "1G-1": "shapes and things told apart by what they have, whatever way up",
        "1AS-1": "odd and even as rules to sort by",
        "1NPV-2": "numbers compared with more than and fewer than",
        "2G-1": "properties put side by side: what fits one rule, both or neither",
    }
    fields = SortFields
    example = """\
kind: sort
title: Who goes in which hoop?
cast:
  gull: {legs: 2, swims: true, flies: true}
  crab: {legs: 10, swims: false, flies: false}
  puffin: {legs: 2, swims: true, flies: true}
  seal: {legs: 0, swims: true, flies: false}
  moth: {legs: 6, swims: false, flies: true}
  whelk: {legs: 0, swims: false, flies: false}
by:
  - {rule: flies, says: can fly, otherwise: cannot fly}
  - {rule: legs > 4, says: more than 4 legs, otherwise: 4 legs or fewer}
diagram: venn
answers: 1
years: {1: {}, 3: {}}
"""

    def solve(self, fields: SortFields, context: Context) -> Solution:
        """The one sorting; every filling of the boxes; or every rule that fits, in the order stated there."""
        cards = number_cards(fields.numbers) if fields.numbers else cast_cards(context)
        if fields.inside:
            return _guessed(fields, context, cards)
        rules = read_rules(fields.by, cards, Labels(context))
        diagram = fields.diagram or ("hoop" if len(rules) == 1 else "venn")
        if not _HOW_MANY[diagram][0] <= len(rules) <= _HOW_MANY[diagram][1]:
            message = f"There are {len(rules)} rules to sort by."
            fix = f"give {_HOW_MANY[diagram][2]} in by, or say who is inside to have a rule guessed."
            raise Unsolvable(("by",), message, fix)
        if diagram == "boxes":
            return _boxed(fields, context, cards, rules)
        return _placed(fields, context, Sorted(diagram, rules, cards, context.year.year))

    def versions(
        self, fields: SortFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[SortFields, Context, str]]:
        """The same cards in a diagram that suits the year; see ``sort_versions``."""
        return sort_versions(fields, context, year)


def _placed(fields: SortFields, context: Context, done: Sorted) -> Solution:
    labels = [f"“{rule.fits}”" for rule in done.rules]
    things = "number" if done.cards.of_numbers else "one"
    ask = {
        "hoop": f"Which go in the hoop {labels[0]}, and which stay outside?",
        "venn": f"Put each {things} in the hoops {listed(labels)}. What goes where they cross? What stays outside?",
        "carroll": f"Put each {things} in its box, by {listed(labels)}. Is any box empty?",
    }[done.diagram]
    return sort_solution(
        context,
        done.cards,
        fields.ask or ask,
        _facts(done.rules),
        (done.answer(),),
        (done.figure(filled=False),),
        steps=len(done.rules) + (len(done.rules) > 1),
        note=done.note(),
        likely_error=done.likely_error(),
        answer_figures=(done.figure(filled=True),),
        words=_words(done.diagram, done.rules, context),
        tables=_tables(done.rules),
    )


def _boxed(fields: SortFields, context: Context, cards: Cards, rules: tuple[ReadRule, ...]) -> Solution:
    found = every_filling(rules, cards, context)
    labels = listed([f"“{rule.fits}”" for rule in rules])
    return sort_solution(
        context,
        cards,
        fields.ask or f"Put a different one in each box: {labels}.",
        _facts(rules),
        [filling_answer(rules, filling, context.year.year) for filling in found],
        (),
        steps=len(rules),
        note=boxes_note(rules, cards, len(found)),
        likely_error=boxes_slip(rules, cards, found),
        words=_words("boxes", rules, context),
        tables=_tables(rules),
    )


def _guessed(fields: SortFields, context: Context, cards: Cards) -> Solution:
    guess = guess_of(fields.inside, fields.looking_at, cards, context)
    found = guess.found()
    return sort_solution(
        context,
        cards,
        fields.ask
        or "Some are inside the hoop and the rest are outside. What could the rule be? Find every rule that fits.",
        guess.facts,
        [guess.answer(fact, rule, context.year.year) for fact, rule in found],
        (guess.figure(),),
        steps=2,
        note=guess.note(len(found)),
        likely_error=guess.likely_error(),
        words=tuple(word for _, rule in found for word in ("sort", *words_in(rule, context.year.year))),
        tables=frozenset[int]().union(*(tables_in(rule) for _, rule in found)),
    )


def _facts(rules: tuple[ReadRule, ...]) -> list[str]:
    return list(dict.fromkeys(fact for rule in rules for fact in rule.facts))


def _words(diagram: str, rules: tuple[ReadRule, ...], context: Context) -> tuple[str, ...]:
    return (
        *_WORDS.get(diagram, ()),
        "sort",
        *(word for rule in rules for word in words_in(rule.tree, context.year.year)),
    )


def _tables(rules: tuple[ReadRule, ...]) -> frozenset[int]:
    return frozenset[int]().union(*(tables_in(rule.tree) for rule in rules))


KIND = Sort()
