"""The shapes of a task: named, drawn, and handed over with what they ask of a pupil."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from ...check.suggestion import did_you_mean
from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ...model.book import FactAbout
from ...model.prose import Loc
from ..kind import Unsolvable
from ..met import demands_met
from ..rule_language.tree import Gives
from ..sort.cards import Card, Cards
from ..sort.labels import Labels
from .set import FLATS, SAID, SOLIDS, WORDS, Flat, Solid, count_of, known_name

_VOCABULARY = (
    "circle", "triangle", "square", "rectangle", "cube", "cuboid", "pyramid", "sphere", "cylinder", "symmetry",
    "2-D shape", "3-D shape",
)  # fmt: skip
_MOST = 24
FLAT_COUNTS, SOLID_COUNTS = ("sides", "corners", "symmetry", "right_angles"), ("faces", "edges", "vertices")


@dataclass(frozen=True, slots=True)
class Shapes:
    """The shapes of a task, all flat or all solid, each with the name it goes by there."""

    shapes: tuple[Flat | Solid, ...]
    titles: tuple[str, ...]
    context: Context

    @property
    def solid(self) -> bool:
        """Whether they are 3-D."""
        return isinstance(self.shapes[0], Solid)

    def cards(self) -> Cards:
        """The shapes as cards to sort: their counts are the facts. What is not counted on each cannot be used."""
        counts = SOLID_COUNTS if self.solid else FLAT_COUNTS
        gives: dict[str, Gives] = {"curved": "truth"}
        lacking = {}
        for prop in counts:
            without = next((shape.name for shape in self.shapes if count_of(shape, prop) is None), None)
            if without:
                lacking[prop] = f"The {SAID[prop]} of a {without} are not counted here."
            else:
                gives[prop] = "number"
        cards = tuple(
            Card(
                shape.name,
                title,
                {prop: getattr(shape, prop) if prop == "curved" else count_of(shape, prop) for prop in gives},
            )
            for shape, title in zip(self.shapes, self.titles, strict=True)
        )
        return Cards(cards, gives, lacking, of="shape")

    def labels(self) -> Labels:
        """How their properties are said."""
        about = {name: FactAbout(means=said, unit="" if name == "curved" else said) for name, said in SAID.items()}
        if self.solid:
            about["curved"] = FactAbout(means="has a curved surface")
        return Labels(replace(self.context, facts=about))

    def figure(self) -> Figure:
        """All of them, drawn with their names."""
        data = {"names": [shape.name for shape in self.shapes], "titles": list(self.titles)}
        return Figure("solid-shapes" if self.solid else "flat-shapes", data, f"Drawings: {', '.join(self.titles)}.")

    def solution(
        self,
        task: Task,
        answers: Sequence[Answer],
        properties: Sequence[str],
        *,
        steps: int,
        note: str,
        likely_error: LikelyError | None,
        figures: tuple[Figure, ...] = (),
    ) -> Solution:
        """The whole solution; ``properties`` are those the pupil must know."""
        demands = demands_met(task, answers, _VOCABULARY)
        words = (*demands.words, *(WORDS[prop] for prop in properties if prop in WORDS))
        return Solution(
            task,
            tuple(answers),
            replace(demands, words=tuple(dict.fromkeys(words))),
            steps,
            note,
            likely_error,
            figures,
        )


def shapes_of(named: Sequence[str] | str | None, fact: str | None, context: Context) -> Shapes:
    """The shapes named, or a whole half of the set, or those in a fact of the cast. Raises ``Unsolvable``."""
    if len(context.characters) > context.caps.characters:
        raise Unsolvable(("cast",), "There are too many characters.", f"choose at most {context.caps.characters}.")
    if named is None and fact and context.characters:
        return _of_cast(fact, context)
    if not named:
        raise Unsolvable(
            ("shapes",), "No shapes are named.", "name some, or write flat or solid, or a fact of the cast."
        )
    if isinstance(named, str):
        names = list(FLATS if named == "flat" else SOLIDS)
    else:
        names = [_known(name, ("shapes", index)) for index, name in enumerate(named)]
    return _of_one_sort(names, names, context, ("shapes",))


def _of_cast(fact: str, context: Context) -> Shapes:
    names, titles = [], []
    for character in context.characters:
        value = character.facts.get(fact)
        if not isinstance(value, str):
            fix = "give the character that fact, with the name of a shape."
            raise Unsolvable(
                ("fact",), f'{character.name} has no shape as fact "{fact}".', fix, "activity-fact-missing"
            )
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
    shapes: tuple[Any, ...] = tuple(FLATS.get(name) or SOLIDS.get(name) for name in names)
    if len({type(shape) for shape in shapes}) > 1:
        raise Unsolvable(loc, "Flat shapes and solids are mixed.", "take one sort, since they have other properties.")
    if len(shapes) > _MOST or len(set(titles)) < len(titles):
        raise Unsolvable(loc, "There are too many shapes, or one is there twice.", f"name up to {_MOST}, each once.")
    return Shapes(shapes, tuple(titles), context)
