"""What numbers and sums read off a chart demand."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from ...model.demands import Demands, Number, Operation, amounts
from ..saying import ending_places
from .tasks import PLACES


def demands_of_numbers(numbers: Iterable[Number]) -> Demands:
    """What reading numbers demands."""
    read = amounts(numbers)
    finest = max((count for one in read if (count := ending_places(one.number) or 0) <= PLACES), default=0)
    below = any(one.number < 0 for one in read)
    return Demands(amounts=read, signs=frozenset(("." if finest else "") + ("−" if below else "")), places=finest)


def demands_of_sums(sums: Iterable[Operation]) -> Demands:
    """What reading and working out sums demands."""
    found = Demands()
    for one in sums:
        signs = frozenset((one.sign, "="))
        found |= demands_of_numbers(map(Fraction, one.numbers)) | Demands(operations=(one,), signs=signs)
    return found
