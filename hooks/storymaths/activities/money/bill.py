"""What there is or is bought: its amounts, the sums that add them, how a pupil is told of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from ...model.activity import Context
from ...model.demands import Demands, amounts
from ..kind import Unsolvable
from ..saying import listed
from .amount import demands_of_told, tell, tell_briefly
from .sums import Sum, add, adds_over, multiply

Items = tuple[tuple[int, int], ...]
"""How many, and what each is worth in pence."""
Prices = Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Bill:
    """Money in pence: what is there already, so many of each price, things by name, and coins."""

    start: int = 0
    items: Items = ()
    prices: Prices = field(default_factory=dict)
    purse: tuple[int, ...] = ()

    @property
    def amounts(self) -> tuple[int, ...]:
        """An amount for each sort, in order."""
        lots = (count * each for count, each in self.items)
        return (*((self.start,) if self.start else ()), *lots, *self.prices.values(), *self.purse)

    @property
    def total(self) -> int:
        """All of it."""
        return sum(self.amounts)

    @property
    def each(self) -> tuple[int, ...]:
        """What a pupil is told of: one of each sort."""
        start = (self.start,) if self.start else ()
        return (*start, *(each for _, each in self.items), *self.prices.values(), *self.purse)

    @property
    def counts(self) -> tuple[int, ...]:
        """How many there are of the sorts of several."""
        return tuple(count for count, _ in self.items if count > 1)


def multiply_lots(bill: Bill, context: Context) -> list[Sum]:
    """A sum for each sort of several. Raises ``Unsolvable`` where all comes to more than can be reckoned with."""
    if bill.total > context.caps.number:
        message = f"All that comes to more than {tell(context.caps.number, context)}."
        raise Unsolvable(("items",), message, "use smaller numbers.")
    return [multiply(count, each, context) for count, each in bill.items if count > 1]


def add_up(bill: Bill, context: Context) -> list[Sum]:
    """A sum for each sort of several, and one that adds the sorts where there are more than one."""
    return multiply_lots(bill, context) + ([add(bill.amounts)] if len(bill.amounts) > 1 else [])


Term = tuple[int, int]
"""How many times an amount in pence is added."""


def terms_of(bill: Bill, context: Context) -> list[Term]:
    """What is added up, each so many times; over and over where it is not multiplied yet."""
    terms = [(1, bill.start)] if bill.start else []
    for count, each in bill.items:
        terms += [(1, each)] * count if adds_over(count, context) else [(count, each)]
    return terms + [(1, pence) for pence in (*bill.prices.values(), *bill.purse)]


def list_bill(bill: Bill, context: Context, several: str = "{count:,} at {each} each") -> str:
    """What there is, in words; ``several`` is how things of one price are told."""
    parts = [tell_briefly(bill.start, context)] if bill.start else []
    for count, worth in bill.items:
        each = tell_briefly(worth, context)
        parts.append(several.format(count=count, each=each) if count > 1 else each)
    parts += [f"{name} at {tell_briefly(price, context)}" for name, price in bill.prices.items()]
    if bill.purse:
        parts.append(f"coins of {listed([tell_briefly(worth, context) for worth in bill.purse])}")
    return listed(parts)


LOTS = "{count:,} lots of {each}"
"""How several are told where nothing is bought."""


def demands_of_bill(bill: Bill, context: Context) -> Demands:
    """What reading of it demands."""
    words = ("coin",) if bill.purse else ()
    return demands_of_told((), context, bill.each, words) | Demands(amounts=amounts(bill.counts))
