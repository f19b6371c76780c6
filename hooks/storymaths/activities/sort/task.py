"""What a pupil sees of a sorting, and what it asks of a year."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Table, Task
from ...model.quantity import UNITS
from ..met import demands_met
from ..saying import capital, listed
from .cards import Card, Cards

_MOST_LISTED = 20


def sort_solution(
    context: Context,
    cards: Cards,
    ask: str,
    facts: Sequence[str],
    answers: Sequence[Answer],
    figures: tuple[Figure, ...],
    *,
    steps: int,
    note: str,
    likely_error: LikelyError | None,
    answer_figures: tuple[Figure, ...] = (),
    words: Sequence[str] = (),
    tables: frozenset[int] = frozenset(),
) -> Solution:
    """The whole solution, its uses read off its own words. ``facts`` are those a pupil must know."""
    task = Task(
        ask,
        () if cards.of_numbers else context.characters,
        _on_cards(cards, facts),
        (_numbers(cards.cards),) if cards.of_numbers else (),
        None if cards.of_numbers else _known(context, cards, facts),
        figures,
    )
    units = {context.facts[fact].unit for fact in facts if fact in context.facts} & set(UNITS)
    met = demands_met(task, answers, (), tables)
    demands = replace(met, words=tuple(dict.fromkeys(words)), units=met.units | units)
    return Solution(task, tuple(answers), demands, steps, note, likely_error, answer_figures)


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


def _known(context: Context, cards: Cards, facts: Sequence[str]) -> Table:
    """What is known of everyone: the facts the sorting turns on."""
    heads = [context.facts[fact].means if fact in context.facts else fact.replace("_", " ") for fact in facts]
    rows = tuple((card.name, *(_cell(card.case[fact]) for fact in facts)) for card in cards.cards)
    caption = f"What we know: {listed(heads)}" if heads else "Who there is"
    return Table(caption, ("Who", *map(capital, heads)), rows)


def _cell(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:,}" if isinstance(value, int) else str(value)
