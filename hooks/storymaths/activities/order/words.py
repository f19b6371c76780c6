"""An order in words and drawings: the task, why it is so, the slip, and what it asks of a year."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import pairwise
from typing import TYPE_CHECKING

from ...model.activity import CastMember, Context, Demands, Figure, LikelyError
from ...model.quantity import UNITS
from ..saying import counted, listed
from .clues import Clue
from .search import Orders

if TYPE_CHECKING:
    from . import OrderFields

Groups = Sequence[tuple[CastMember, ...]]
_YEAR_OF_EQUALS, _YEAR_OF_SIGNS = 1, 2


class Told:
    """Says what an order is about."""

    def __init__(self, fields: OrderFields, context: Context, unit: str, values: Mapping[str, int]) -> None:
        self._fields, self._context, self._unit, self._values = fields, context, unit, values
        self._rising = fields.starting == "least"
        self._signs_known = context.year.year >= _YEAR_OF_SIGNS
        sign = "<" if self._rising else ">"
        self._then = f" {sign} " if self._signs_known else ", then "
        self._and = " = " if context.year.year >= _YEAR_OF_EQUALS else " and "

    def turned(self, rising: Groups) -> tuple[tuple[CastMember, ...], ...]:
        """An order from least to most, from the end this one starts with."""
        return tuple(rising if self._rising else rising[::-1])

    # What a pupil sees.

    def ask(self) -> str:
        """The task."""
        ends = ("least", "most") if self._rising else ("most", "least")
        what = (self._fields.fact or "").replace("_", " ").replace("-", " ")
        if self._unit and self._unit not in UNITS:
            what = self._unit
        if self._fields.clues:
            by = f" by {what}" if what else ""
            return f"Put everybody in order{by}, from {ends[0]} to {ends[1]}. Find every order that the clues allow."
        return f"Put everybody in order of {what}, from {ends[0]} to {ends[1]}. Put those that are equal side by side."

    def shows(self) -> tuple[str, ...]:
        """What each card carries."""
        return tuple(self._amount(self._values[character.id]) for character in self._context.characters)

    def frame(self) -> str:
        """A line to write the order into; where the equals are is for pupils to find."""
        return ", ".join("___" for _ in self._context.characters)

    def clue_lines(self, clues: Sequence[Clue]) -> tuple[str, ...]:
        """The clues, in words for those who do not know < and > yet."""
        return tuple(c.text if self._signs_known or c.says != "chain" else self._in_words(c) for c in clues)

    def _in_words(self, clue: Clue) -> str:
        names = [self._context.characters[index].name for index in clue.who]
        return " and ".join(f"{less} has less than {more}" for less, more in pairwise(names))

    # The answer.

    def said(self, order: Groups) -> str:
        """Such as ``crab = limpet < gull``."""
        return self._then.join(self._and.join(character.name for character in group) for group in order)

    def worked(self, order: Groups) -> str:
        """The values in order."""
        return f"{self._then.join(self._and.join(self._number(p) for p in group) for group in order)}."

    def by_clues(self, clues: Sequence[Clue]) -> str:
        """That every clue holds."""
        return f"It keeps every clue: {'; '.join(self.clue_lines(clues))}."

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
        spare = f' The rest would do without "{idle[0]}".' if idle and len(clues) > 1 else ""
        if len(orders) == 1:
            return f"The clues fix one order.{spare}"
        pair = self._undecided(orders)
        return (
            f"The clues leave {len(orders)} orders, found by trying each character that may come next. "
            f"They do not tell which of {pair[0]} and {pair[1]} has more.{spare}"
        )

    def _undecided(self, orders: Sequence[Groups]) -> tuple[str, str]:
        """Two characters that stand one way round in one order and the other way round in another."""
        one, other = ([group[0].name for group in order] for order in orders[:2])
        moved = next(index for index, name in enumerate(one) if other[index] != name)
        return one[moved], other[moved]

    def slip_in_digits(self, order: Groups) -> LikelyError | None:
        """Looking at the ones before the tens."""
        numbers = [self._values[group[0].id] for group in order]
        wrong = sorted(numbers, key=lambda number: number % 10, reverse=not self._rising)
        if max(numbers) < 10 or wrong == numbers or len(numbers) < 2:
            return None
        return LikelyError(
            "Looks at the ones first.", f"The order {', '.join(self._amount(number) for number in wrong)}."
        )

    def slip_in_clues(self, clues: Sequence[Clue], orders: Sequence[Groups]) -> LikelyError | None:
        """Stopping at the first order, or reading “between” as “in the very middle of”."""
        if len(orders) > 1:
            return LikelyError("Stops at the first order that fits.", f"{self.said(orders[0])} only.")
        apart = next((c for c in clues if c.says == "between" and orders and self._apart(c, orders[0])), None)
        if apart is None:
            return None
        return LikelyError("Takes “between” to mean right beside both.", f'No order, because of "{apart.text}".')

    def _apart(self, clue: Clue, order: Groups) -> bool:
        place = {group[0].id: index for index, group in enumerate(order)}
        one, two, three = (place[self._context.characters[index].id] for index in clue.who)
        return abs(one - two) + abs(one - three) > 2

    def demands(self, order: Groups) -> Demands:
        """Numbers are read and compared; nothing is worked out."""
        ties = any(len(group) > 1 for group in order)
        return Demands(
            numbers=tuple(Fraction(self._values[character.id]) for character in self._context.characters),
            symbols=frozenset(sign for sign in "<>=" if sign in self._then or (ties and sign in self._and)),
            units=frozenset({self._unit} if self._unit in UNITS else ()),
            words=("order", "least", "most"),
        )

    def uses_of_clues(self) -> Demands:
        """Signs and words only."""
        written = " ".join((self._then, *self._fields.clues)) if self._signs_known else ""
        return Demands(symbols=frozenset(sign for sign in "<>" if sign in written), words=("order", "least", "most"))

    # Drawings.

    def figure(self, order: Groups) -> Figure:
        """A row of places: empty before anybody plays, filled with an answer."""
        first, last = ("least", "most") if self._rising else ("most", "least")
        if order:
            places = [[character.name for character in group] for group in order]
            inside = ", then ".join(" and ".join(place) for place in places)
        else:
            places = [[] for _ in self._context.characters]
            inside = f"{len(places)} empty places"
        return Figure(
            "places", {"places": places, "first": first, "last": last}, f"A row from {first} to {last}: {inside}."
        )

    def _number(self, character: CastMember) -> str:
        unit = f" {self._unit}" if self._unit in UNITS else ""
        return f"{self._values[character.id]:,}{unit}"

    def _amount(self, number: int) -> str:
        return f"{number:,} {self._unit}" if self._unit in UNITS else counted(number, self._unit)
