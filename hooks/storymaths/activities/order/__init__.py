"""Characters put in order: by a fact, equals shown as equal, or by clues that may leave more orders than one."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Answer, CastMember, Context, Figure, Solution, Task
from ...model.fields import Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind, Unsolvable, whole_fact
from .clues import Clue, read_clue
from .search import Orders, too_few_to_clash
from .versions import other_values
from .words import Told

Group = tuple[CastMember, ...]
"""Characters that are equal, as the cast lists them."""


class OrderFields(ActivityFields):
    """Fields of an order. With clues the pupils see no values; with a fact as well the clues are checked by it."""

    clues: Annotated[tuple[Text, ...], Field(max_length=20)] = ()
    """Such as ``gull > crab``, ``seal between gull and crab``, ``gull next to crab``, ``gull first``."""
    starting: Literal["least", "most"] = "least"
    """Which end of the order comes first."""
    unit: str | None = None
    """The unit of the fact; the book's own if not stated."""


class Order(Kind[OrderFields]):
    """An order of the cast.

    Steps of thought: with values, one less than the places to fill; with clues, one for each clue.
    """

    name: ClassVar[str] = "order"
    says: ClassVar[str] = "Characters in order by what they have, or every order that some clues allow."
    answer_shape: ClassVar[str] = (
        '{"order": [[names that are equal], …]}, from the end the activity starts with; as the cast is listed where free'
    )
    fields = OrderFields
    example: ClassVar[str] = """\
kind: order
title: Who carried the least?
cast: {gull: {}, crab: {}, seal: {}, limpet: {}}
clues:
  - limpet < crab
  - gull between crab and seal
  - seal > limpet
answers:
  - limpet < crab < gull < seal
  - limpet < seal < gull < crab
"""
    practises: ClassVar[dict[str, str]] = {
        "1NPV-2": "numbers put in order, with < and =",
        "2NPV-1": "two-digit numbers compared by their tens, then their ones",
        "2NPV-2": "two-digit numbers in their places along a line",
    }

    def solve(self, fields: OrderFields, context: Context) -> Solution:
        """The one order by the fact; or with clues every order, sorted as the cast is listed."""
        count = len(context.characters)
        if count < 2:
            raise Unsolvable(("cast",), "An order needs at least two characters.", "add characters to the cast.")
        if count > context.caps.characters:
            message = f"{count} characters are too many for one activity."
            raise Unsolvable(("cast",), message, f"choose at most {context.caps.characters}.")
        if not fields.fact and not fields.clues:
            raise Unsolvable(("kind",), "There is nothing to order by.", "give a fact, or clues.")
        return self._by_clues(fields, context) if fields.clues else self._by_fact(fields, context)

    def _by_fact(self, fields: OrderFields, context: Context) -> Solution:
        values = whole_fact(context, fields.fact or "", ("cast",))
        ranked = sorted(context.characters, key=lambda character: values[character.id])
        groups = [tuple(group) for _, group in groupby(ranked, key=lambda character: values[character.id])]
        told = Told(fields, context, _unit(fields, context), values)
        order = tuple(groups if fields.starting == "least" else groups[::-1])
        answer = Answer(told.said(order), told.worked(order), _data(order))
        task = Task(told.ask(), context.characters, told.shows(), (told.frame(),), figures=(told.figure(()),))
        return Solution(
            task=task,
            answers=(answer,),
            demands=told.demands(order),
            steps=len(groups) - 1 or 1,
            note=told.note_by_fact(order),
            likely_error=told.slip_in_digits(order),
            answer_figures=(told.figure(order),),
        )

    def _by_clues(self, fields: OrderFields, context: Context) -> Solution:
        rising = fields.starting == "least"
        clues = [
            read_clue(text, context.characters, rising, ("clues", index)) for index, text in enumerate(fields.clues)
        ]
        values = whole_fact(context, fields.fact, ("cast",)) if fields.fact else {}
        _check_against(values, clues, context, fields)
        found = Orders(len(context.characters), clues)
        number = found.number
        if not number and fields.answers != 0:
            clash = too_few_to_clash(len(context.characters), clues)
            names = " and ".join(f'"{clue.text}"' for clue in clash)
            raise Unsolvable(clash[-1].loc, f"These clues cannot all be true: {names}.", "change one of them.")
        if number > min(context.caps.answers, fields.at_most):
            raise Unsolvable(
                ("clues",),
                f"The clues allow {number:,} orders, more than a class can list.",
                "add a clue, or choose fewer characters.",
                "activity-too-many-answers",
            )
        told = Told(fields, context, _unit(fields, context), {})
        orders = [told.turned(tuple((context.characters[index],) for index in order)) for order in found]
        answers = tuple(Answer(told.said(order), told.by_clues(clues), _data(order)) for order in orders)
        figures: tuple[Figure, ...] = tuple(told.figure(order) for order in orders[:3])
        task = Task(told.ask(), context.characters, (), told.clue_lines(clues), figures=(told.figure(()),))
        note = told.note_by_clues(clues, orders)
        return Solution(
            task, answers, told.uses_of_clues(), len(clues), note, told.slip_in_clues(clues, orders), figures
        )

    def versions(
        self, fields: OrderFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[OrderFields, Context, str]]:
        """With clues the same; with values, ones of the year's size that make every digit count."""
        for changed, why in other_values(fields, context, year):
            yield fields, changed, why


def _unit(fields: OrderFields, context: Context) -> str:
    about = context.facts.get(fields.fact or "")
    return fields.unit if fields.unit is not None else about.unit if about else ""


def _data(order: tuple[Group, ...]) -> dict[str, list[list[str]]]:
    return {"order": [[character.name for character in group] for group in order]}


def _check_against(values: dict[str, int], clues: list[Clue], context: Context, fields: OrderFields) -> None:
    """That the facts, where they are stated, bear every clue out."""
    if not values:
        return
    ranked = sorted(range(len(context.characters)), key=lambda index: values[context.characters[index].id])
    for clue in clues:
        if not _true_of(clue, ranked, [values[character.id] for character in context.characters]):
            message = f'"{clue.text}" is not so: {_facts_of(clue, context, values)}.'
            raise Unsolvable(clue.loc, message, f"change the clue, or the {fields.fact} of one of them.")


def _true_of(clue: Clue, ranked: list[int], values: list[int]) -> bool:
    if len({values[index] for index in clue.who}) < len(clue.who):
        return False  # of two that are equal neither comes first
    placed, last = 0, None
    for newcomer in ranked:
        if not clue.allows(newcomer, placed, last, len(ranked)):
            return False
        placed, last = placed | 1 << newcomer, newcomer
    return True


def _facts_of(clue: Clue, context: Context, values: dict[str, int]) -> str:
    named = [context.characters[index] for index in clue.who]
    return ", ".join(f"{character.name} has {values[character.id]}" for character in named)


KIND = Order()
