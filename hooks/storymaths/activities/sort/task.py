"""What a pupil sees of a sorting, and what it asks of a year."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from ...model.activity import Answer, Figure, Scene, Slip, Solution, Table, Task
from ...model.quantity import UNITS
from ..met import uses_met
from ..saying import capital, listed
from .cards import Card, Cards

_MOST_LISTED = 20


def sort_solution(
    scene: Scene,
    cards: Cards,
    ask: str,
    facts: Sequence[str],
    answers: Sequence[Answer],
    figures: tuple[Figure, ...],
    *,
    steps: int,
    note: str,
    slip: Slip | None,
    answer_figures: tuple[Figure, ...] = (),
    words: Sequence[str] = (),
    tables: frozenset[int] = frozenset(),
) -> Solution:
    """The whole solution, its uses read off its own words. ``facts`` are those a pupil must know."""
    task = Task(
        ask,
        () if cards.of_numbers else scene.players,
        _on_cards(cards, facts),
        (_numbers(cards.cards),) if cards.of_numbers else (),
        None if cards.of_numbers else _known(scene, cards, facts),
        figures,
    )
    units = {scene.facts[fact].unit for fact in facts if fact in scene.facts} & set(UNITS)
    met = uses_met(task, answers, (), tables)
    uses = replace(met, words=tuple(dict.fromkeys(words)), units=met.units | units)
    return Solution(task, tuple(answers), uses, steps, note, slip, answer_figures)


def _on_cards(cards: Cards, facts: Sequence[str]) -> tuple[str, ...]:
    """The number on each card, where one fact with numbers is all it takes."""
    counted = [fact for fact in facts if cards.gives.get(fact) == "number"]
    if cards.of_numbers or len(counted) != 1:
        return ()
    return tuple(f"{card.case[counted[0]]:,}" for card in cards.cards)


def _numbers(cards: Sequence[Card]) -> str:
    names = [card.name for card in cards]
    values = [card.case["n"] for card in cards]
    if len(values) > _MOST_LISTED and values == list(range(values[0], values[0] + len(values))):
        return f"The whole numbers from {names[0]} to {names[-1]}"
    return ", ".join(names)


def _known(scene: Scene, cards: Cards, facts: Sequence[str]) -> Table:
    """What is known of everyone: the facts the sorting turns on."""
    heads = [scene.facts[fact].means if fact in scene.facts else fact.replace("_", " ") for fact in facts]
    rows = tuple((card.name, *(_cell(card.case[fact]) for fact in facts)) for card in cards.cards)
    caption = f"What we know: {listed(heads)}" if heads else "Who there is"
    return Table(caption, ("Who", *map(capital, heads)), rows)


def _cell(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:,}" if isinstance(value, int) else str(value)
