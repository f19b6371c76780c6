"""An order in words and drawings: the task, why it is so, and the likely error."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from ...expression.noun import noun_of
from ...model.activity import CastMember, Context, Figure, LikelyError
from ...model.figures.sorting import Places
from ...model.quantity import UNITS
from ..saying import counted, listed, written
from .clues import Clue
from .search import Orders
from .tasks import OrderTask

Groups = Sequence[tuple[CastMember, ...]]


class Speaker:
    """Says what an order is about."""

    def __init__(self, task: OrderTask, context: Context) -> None:
        self._task, self._context = task, context
        self._rising = task.starting == "least"
        about = context.facts.get(task.fact or "")
        self.unit = noun_of(about) if task.unit is None else task.noun(task.unit)
        sign = "<" if self._rising else ">"
        self.sign = sign if context.year.knows(sign) else ""
        """The sign orders are written with; empty where it is not met yet."""
        self.equals_known = context.year.knows("=")
        self._then = f" {sign} " if self.sign else ", then "
        self._and = " = " if self.equals_known else " and "

    def turn(self, rising: Groups) -> tuple[tuple[CastMember, ...], ...]:
        """An order from least to most, from the end this one starts with."""
        return tuple(rising if self._rising else rising[::-1])

    # What a pupil sees.

    @property
    def _ends(self) -> tuple[str, str]:
        return ("least", "most") if self._rising else ("most", "least")

    @property
    def _what(self) -> str:
        return self.unit if self.unit and self.unit not in UNITS else _as_words(self._task.fact or "")

    def ask_by_fact(self) -> str:
        """The task."""
        first, last = self._ends
        return f"Put everybody in order of {self._what}, from {first} to {last}. Put those that are equal side by side."

    def ask_by_clues(self) -> str:
        """The task."""
        first, last = self._ends
        by = f" by {self._what}" if self._what else ""
        return f"Put everybody in order{by}, from {first} to {last}. Find every order that the clues allow."

    def tell_clues(self, clues: Sequence[Clue]) -> tuple[str, ...]:
        """The clues, in words for those who do not know < and > yet."""
        return tuple(self._in_words(clue) if clue.sign and not self.sign else clue.text for clue in clues)

    def _in_words(self, clue: Clue) -> str:
        names = [self._context.characters[index].name for index in clue.who]
        return " and ".join(f"{less} has less than {more}" for less, more in pairwise(names))

    def amount(self, number: int) -> str:
        """A value with its unit: ``6``, ``6 kg``, ``4 legs``."""
        return f"{written(number)} {self.unit}" if self.unit in UNITS else counted(number, self.unit)

    # The answer.

    def name(self, order: Groups) -> str:
        """Such as ``crab = limpet < gull``."""
        return self._then.join(self._and.join(character.name for character in group) for group in order)

    def explain(self, order: Groups, values: Mapping[str, int]) -> str:
        """The values in order."""
        unit = f" {self.unit}" if self.unit in UNITS else ""
        numbers = ([f"{written(values[character.id])}{unit}" for character in group] for group in order)
        return f"{self._then.join(self._and.join(group) for group in numbers)}."

    def explain_by_clues(self, clues: Sequence[Clue]) -> str:
        """That every clue holds."""
        return f"It keeps every clue: {'; '.join(self.tell_clues(clues))}."

    # For the adult.

    def note_by_fact(self, order: Groups) -> str:
        """Why there is one order only."""
        ties = [group for group in order if len(group) > 1]
        if not ties:
            return "There is one order: no two have the same."
        named = listed([" and ".join(character.name for character in group) for group in ties])
        return f"There is one order, with equals side by side: {named}."

    def note_by_clues(self, clues: Sequence[Clue], orders: Sequence[Groups]) -> str:
        """Whether the clues fix the order, and which clue could be left out."""
        if not orders:
            return "There is no such order: the clues cannot all be true."
        count = len(self._context.characters)
        idle = [c.text for c in clues if Orders(count, [o for o in clues if o is not c]).number == len(orders)]
        spare = f' The clue "{idle[0]}" is not needed.' if idle and len(clues) > 1 else ""
        if len(orders) == 1:
            return f"The clues fix one order.{spare}"
        pair = self._undecided(orders)
        return (
            f"The clues leave {len(orders)} orders: they do not tell which of {pair[0]} and {pair[1]} has more.{spare}"
        )

    def _undecided(self, orders: Sequence[Groups]) -> tuple[str, str]:
        """Two characters that stand one way round in one order and the other way round in another."""
        one, other = ([group[0].name for group in order] for order in orders[:2])
        moved = next(index for index, name in enumerate(one) if other[index] != name)
        return one[moved], other[moved]

    def err_in_digits(self, numbers: Sequence[int]) -> LikelyError | None:
        """Looking at the ones before the tens."""
        if min(numbers) < 0:
            return self._err_below_nought(numbers)
        wrong = sorted(numbers, key=lambda number: number % 10, reverse=not self._rising)
        if max(numbers) < 10 or wrong == list(numbers) or len(numbers) < 2:
            return None
        return LikelyError("Looks at the ones first.", f"{', '.join(self.amount(number) for number in wrong)}.")

    def _err_below_nought(self, numbers: Sequence[int]) -> LikelyError | None:
        """Passing over the minus signs."""
        wrong = sorted(numbers, key=abs, reverse=not self._rising)
        if wrong == list(numbers):
            return None
        return LikelyError("Looks at the numbers without their signs.", f"{', '.join(map(self.amount, wrong))}.")

    def err_in_clues(self, clues: Sequence[Clue], orders: Sequence[Groups]) -> LikelyError | None:
        """Stopping at the first order, or reading “between” as “in the very middle of”."""
        if len(orders) > 1:
            return LikelyError("Stops at the first order that fits.", f"only {self.name(orders[0])}.")
        apart = next((c for c in clues if c.says == "between" and orders and self._apart(c, orders[0])), None)
        if apart is None:
            return None
        return LikelyError("Takes “between” to mean right beside both.", f'no order, because of "{apart.text}".')

    def _apart(self, clue: Clue, order: Groups) -> bool:
        place = {group[0].id: index for index, group in enumerate(order)}
        one, two, three = (place[self._context.characters[index].id] for index in clue.who)
        return abs(one - two) + abs(one - three) > 2

    # Drawings.

    def draw(self, order: Groups) -> Figure:
        """A row of places: empty before anybody plays, filled with an answer."""
        if order:
            places = tuple(tuple(character.name for character in group) for group in order)
            inside = ", then ".join(" and ".join(place) for place in places)
        else:
            places = ((),) * len(self._context.characters)
            inside = f"{len(places)} empty places"
        # The question says first of what: of months and of things that happen there is no least.
        return Figure(Places(places, "first", "last"), f"A row from first to last: {inside}.")


def _as_words(fact: str) -> str:
    return fact.replace("_", " ").replace("-", " ")
