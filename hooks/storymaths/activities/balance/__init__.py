"""Two teams that are worth the same: every way of making them, or of levelling an unfair start."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Answer, CastMember, Context, Solution, Task
from ...model.fields import Id, Strict, Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind, Unsolvable
from .sides import Sides
from .versions import remade
from .words import Words


class Given(Strict):
    """What is settled beforehand: one whole side, or one character who must take part."""

    side: Annotated[tuple[Id, ...], Field(min_length=1)] | None = None
    """Exactly these stand on the left; the question is who can stand on the right."""
    player: Id | None = None
    """This character is in one of the teams, and is shown on the left."""


class Start(Strict):
    """Who stands on each side at first. It is not level yet."""

    left: Annotated[tuple[Id, ...], Field(min_length=1)]
    right: tuple[Id, ...] = ()


class BalanceFields(ActivityFields):
    """Fields of a balance."""

    fact: Text = "mass"
    """The fact whose values are added on each side; whole numbers from 1."""
    unit: str | None = None
    """The unit of the fact, such as kg; the book's own if not stated."""
    teams: Literal["any", "all"] | Annotated[int, Field(ge=1, strict=True)] = "any"
    """``any`` two teams; so many a side; or ``all``, when everybody must be in a team."""
    given: Given | None = None
    start: Start | None = None
    joining: Literal["lighter", "either"] = "lighter"
    """With a start: whether others may join the lighter side only, or both sides."""


class Balance(Kind[BalanceFields]):
    """Teams that are worth the same.

    Steps of thought: every + that the longest answer needs, and one to see that both sides are the same.
    """

    name: ClassVar[str] = "balance"
    says: ClassVar[str] = "Two teams of characters that come to the same, such as two sides of a boat that float level."
    answer_shape: ClassVar[str] = (
        '{"left": [names], "right": [names], "total": number}, the smallest total first; of mirror images one'
    )
    fields = BalanceFields
    unordered: ClassVar[bool] = True
    """An author may write the characters of a side in any order, and the sides either way round."""
    example: ClassVar[str] = """\
kind: balance
title: Level the lifeboat
fact: mass
cast:
  gull: {mass: 2}
  crab: {mass: 3}
  puffin: {mass: 5}
  limpet: {mass: 6}
  seal: {mass: 9}
teams: any
answers:
  - gull + crab = puffin
  - gull + limpet = crab + puffin
  - crab + limpet = seal
  - gull + seal = puffin + limpet
years: {1: {largest: 10}, 3: {unit: kg}}
"""
    practises: ClassVar[dict[str, str]] = {
        "1AS-1": "numbers to ten made from two others, every way",
        "1AS-2": "= read as “is worth the same as”, with a sum on either side or on both",
        "2NF-1": "facts to ten used again and again while teams are tried",
        "2AS-1": "three or more numbers added, crossing ten on the way",
        "2AS-2": "how much more one side needs to be level",
    }

    def solve(self, fields: BalanceFields, context: Context) -> Solution:
        """Every way, the smallest total first, then the fewest characters, then as the cast is listed."""
        sides = Sides.of(fields, context)
        words = Words(fields, context, sides)
        found = sorted(sides.every_balance(), key=sides.place_in_order)
        if len(found) > context.caps.answers:
            raise Unsolvable(
                ("teams",),
                f"There are {len(found):,} ways of making these teams, more than anybody could list.",
                "choose fewer characters, or fix how many are on a side.",
                "activity-too-many-answers",
            )
        answers = tuple(_answer(words, *sides.characters_of(teams)) for teams in found)
        return Solution(
            task=Task(words.ask(), context.characters, words.shows(), words.lines(), figures=(words.figure(),)),
            answers=answers,
            demands=words.demands(found),
            steps=max(((left | right).bit_count() - 2 for left, right in found), default=0) + 1,
            note=words.why_these_are_all(found),
            likely_error=words.likely_error(found),
            answer_figures=tuple(words.answer_figure(*sides.characters_of(teams)) for teams in found[:6]),
        )

    def versions(
        self, fields: BalanceFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[BalanceFields, Context, str]]:
        """First casts in which the same teams are level, then others; see ``balance_versions``."""
        for changed, why in remade(fields, context, year):
            yield fields, changed, why


def _answer(words: Words, left: tuple[CastMember, ...], right: tuple[CastMember, ...]) -> Answer:
    return Answer(
        says=words.said(left, right),
        worked=words.worked(left, right),
        data={
            "left": [character.name for character in left],
            "right": [character.name for character in right],
            "total": words.total(left),
        },
    )


KIND = Balance()
