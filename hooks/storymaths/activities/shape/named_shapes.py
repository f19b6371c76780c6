"""The shapes of a task: named, drawn, as cards to sort, and the words they take."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from ...model.activity import Context, Figure
from ...model.book import FactAbout
from ...model.demands import Demands
from ...model.fields import year_name
from ...model.figures.shapes import FlatShapes, SolidShapes, TitledShape
from ...model.prose import Loc
from ...parse.suggestion import did_you_mean
from ..kind import Unsolvable
from ..rule_language.tree import Gives
from ..sort.cards import Card, Cards
from ..sort.labels import Labels
from ..sort.rules import SortRule
from .set import (
    FLATS,
    OF_A_YEAR,
    SAID,
    SOLIDS,
    WORDS,
    YES_OR_NO,
    Flat,
    Solid,
    count_of,
    has,
    known_name,
    own_name,
    parts_of,
)

_VOCABULARY = frozenset(
    {"circle", "triangle", "square", "rectangle", "cube", "cuboid", "pyramid", "sphere", "cylinder"}
)
_MOST = 24
_TURNS = (25, 155, 70, 200, 115, 290, 340, 50)
"""How far flat shapes are turned, one after another: none of the set then stands on a side, or as it did."""
_QUARTERS = (90, 270)
"""How far solids are, so that each lies on another side."""


@dataclass(frozen=True, slots=True)
class Shapes:
    """The shapes of a task, all flat or all solid, each with the name it goes by there."""

    shapes: tuple[Flat | Solid, ...]
    titles: tuple[str, ...]
    context: Context
    turned: bool = False
    """Whether they are drawn any way up."""

    @property
    def solid(self) -> bool:
        """Whether they are 3-D."""
        return isinstance(self.shapes[0], Solid)

    @property
    def properties(self) -> tuple[str, ...]:
        """What is counted on such shapes."""
        return tuple(parts_of(self.shapes[0]))

    def cards(self) -> Cards:
        """The shapes as cards to sort: their counts are the facts. What is not counted on each cannot be used."""
        yes_or_no = YES_OR_NO[:1] if self.solid else YES_OR_NO
        gives: dict[str, Gives] = dict.fromkeys(yes_or_no, "truth")
        lacking = {}
        for prop in self.properties:
            without = next((shape.name for shape in self.shapes if count_of(shape, prop) is None), None)
            if without:
                lacking[prop] = f"The {SAID[prop]} of a {without} are not counted here."
            else:
                gives[prop] = "number"
        cards = (
            Card(
                shape.name,
                title,
                {fact: has(shape, fact) for fact in yes_or_no}
                | {prop: count_of(shape, prop) for prop in self.properties},
                called={fact: self.labels().context.facts[fact].means for fact in (*yes_or_no, *self.properties)},
            )
            for shape, title in zip(self.shapes, self.titles, strict=True)
        )
        return Cards(tuple(cards), gives, lacking, of="shape")

    def with_counts(self, rules: Iterable[str | SortRule]) -> Shapes:
        """Those on which everything is counted that the rules speak of."""
        spoken = " ".join(rule if isinstance(rule, str) else rule.rule for rule in rules)
        props = [prop for prop in self.properties if re.search(rf"\b{prop}\b", spoken)]
        pairs = zip(self.shapes, self.titles, strict=True)
        kept = [pair for pair in pairs if all(count_of(pair[0], prop) is not None for prop in props)]
        return replace(self, shapes=tuple(shape for shape, _ in kept), titles=tuple(title for _, title in kept))

    def labels(self) -> Labels:
        """How their properties are said."""
        about = {name: FactAbout(means=said, unit="" if name in YES_OR_NO else said) for name, said in SAID.items()}
        if self.solid:
            about["curved"] = FactAbout(means="has a curved surface")
        return Labels(replace(self.context, facts=about))

    def draw(self) -> Figure:
        """All of them, with their names."""
        told = ", each turned another way" if self.turned else ""
        return self.draw_as(self.titles, f"Drawings{told}: {', '.join(self.titles)}.")

    def draw_as(self, titles: Sequence[str], alt: str) -> Figure:
        """All of them under other titles."""
        turns = _QUARTERS if self.solid else _TURNS
        shown = tuple(
            TitledShape(shape.name, title, turns[n % len(turns)] if self.turned else 0)
            for n, (shape, title) in enumerate(zip(self.shapes, titles, strict=True))
        )
        return Figure(SolidShapes(shown) if self.solid else FlatShapes(shown), alt)

    def demands(self, properties: Iterable[str]) -> Demands:
        """The names of the shapes, and the words of the properties that the pupil must know.

        Raises ``Unsolvable`` for what the year does not look at yet.
        """
        names, wanted, year = [shape.name for shape in self.shapes], list(properties), self.context.year
        late = next((prop for prop in wanted if prop in OF_A_YEAR and prop not in year.practice.shape.counts), None)
        if late:
            message = f"{year_name(year.year)} does not yet meet the word {WORDS[late]}."
            raise Unsolvable(("shapes",), message, "ask for something else, or an older year.", "activity-beyond-year")
        words = (*words_in(names), *(WORDS[prop] for prop in wanted if prop in WORDS))
        return Demands(words=tuple(dict.fromkeys(words)), shapes=frozenset(names))


def words_in(names: Iterable[str]) -> list[str]:
    """The words of the word bank in names of shapes, in order: ``square`` and ``pyramid`` for a square-based pyramid."""
    return [word for name in names for word in name.replace("-", " ").split() if word in _VOCABULARY]


def shapes_of(
    named: Sequence[str] | str | None, fact: str | None, rules: Iterable[str | SortRule], context: Context
) -> Shapes:
    """The shapes named, or in a fact of the cast, or all of a sort on which the rules can be tried.

    Raises ``Unsolvable``.
    """
    if named is None and fact and context.characters:
        return _of_cast(fact, context)
    if not named:
        fix = "name some, or write flat or solid, or a fact of the cast."
        raise Unsolvable(("shapes",), "No shapes are named.", fix)
    if isinstance(named, str):
        names = list(FLATS if named == "flat" else SOLIDS)
        return _of_one_sort(names, names, context, ("shapes",)).with_counts(rules)
    names = [_known(name, ("shapes", index)) for index, name in enumerate(named)]
    return _of_one_sort(names, [own_name(name) for name in named], context, ("shapes",))


def _of_cast(fact: str, context: Context) -> Shapes:
    names, titles = [], []
    for character in context.characters:
        value = character.facts.get(fact)
        if not isinstance(value, str):
            message = f'{character.name} has no shape as fact "{fact}".'
            fix = "give the character that fact, with the name of a shape."
            raise Unsolvable(("fact",), message, fix, "activity-fact-missing")
        names.append(_known(value, ("fact",)))
        titles.append(f"{character.name}’s {names[-1]}")
    return _of_one_sort(names, titles, context, ("fact",))


def _known(name: str, loc: Loc) -> str:
    known = known_name(name)
    if known is None:
        near = did_you_mean(name[:40], (*FLATS, *SOLIDS))
        fix = f"use one of {', '.join((*FLATS, *SOLIDS))}."
        raise Unsolvable(loc, f'"{name[:40]}" is not in the set of shapes.{near}', fix)
    return known


def _of_one_sort(names: Sequence[str], titles: Sequence[str], context: Context, loc: Loc) -> Shapes:
    if any((name in SOLIDS) != (names[0] in SOLIDS) for name in names):
        raise Unsolvable(loc, "Flat shapes and solids are mixed.", "take one sort, since they have other properties.")
    if len(names) > _MOST or len(set(titles)) < len(titles):
        raise Unsolvable(loc, "There are too many shapes, or one is there twice.", f"name up to {_MOST}, each once.")
    return Shapes(tuple((FLATS | SOLIDS)[name] for name in names), tuple(titles), context)
