"""Which numbers to put in the places of a number sentence, so that it practises what a year learns."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from ...expression.number import Rational
from ...expression.tree import Node, Number, Operation, join, worth_of
from ...model.year import YearLimits

if TYPE_CHECKING:
    from .versions import Slots

_MOST_COMBINED = 2000


def best_numbers(
    line: Slots, year: YearLimits, gaps: Sequence[int] | str | None, most: int = 300
) -> list[dict[int, Rational]]:
    """Numbers for every place, whole, in the old order and within the year, those that practise most first."""
    free = [at for at in line.values if at != line.follows]
    pool = [n for n in year.practice.number_sentence.numbers if n <= year.largest_calculated]
    found = []
    for chosen in _choices(pool, len(free)):
        new = line.settled(dict(zip(free, chosen, strict=True)))
        if new is None or not line.keeps_order(new) or not _may_stand(line, new, gaps):
            continue
        score = _score(line, new, year)
        if score is not None and new != line.values:
            found.append((-score, -min(new.values()), tuple(new.values()), new))
    return [new for *_, new in sorted(found, key=lambda item: item[:3])[:most]]


def _choices(pool: Sequence[int], places: int) -> Iterator[tuple[int, ...]]:
    """Every choice of a number for each place, or an even spread of them where there are too many."""
    total = len(pool) ** places
    step = 1 if total <= _MOST_COMBINED else total // _MOST_COMBINED | 1
    for number in range(0, total, step):
        yield tuple(pool[number // len(pool) ** place % len(pool)] for place in range(places))


def _may_stand(line: Slots, new: dict[int, Rational], gaps: Sequence[int] | str | None) -> bool:
    if gaps is None or isinstance(gaps, str):
        return True
    return all(new[at] in gaps for at in new if line.tokens[at].kind == "gap")


def _score(line: Slots, new: dict[int, Rational], year: YearLimits) -> int | None:
    """How much a choice practises the year; None when it is out of reach."""
    gaps = [new[at] for at in line.values if line.tokens[at].kind == "gap"]
    known = {at: new[at] for at in line.values if line.tokens[at].kind != "gap"}
    total = 0
    for side in line.one.sentence.sides:
        found = _practised(side, gaps, known, year)
        if found is None:
            return None
        total += found
    alike = 2 * (len(set(new.values())) < len(new))
    if any(token.text in ("×", "÷", "of") for token in line.tokens):
        return total - alike  # how large a product is depends on its table alone
    size, top = max(new.values()), min(year.largest_calculated, 10_000)
    return total + (10 * size >= top) + (4 * size >= top) - alike


def _practised(node: Node, gaps: Sequence[Rational], known: dict[int, Rational], year: YearLimits) -> int | None:
    """One for each sum across ten, two for each product in a table of the year; None past its reach."""
    if not isinstance(node, Operation):
        return 0
    left, right = _practised(node.left, gaps, known, year), _practised(node.right, gaps, known, year)
    a, b = _worth(node.left, gaps, known), _worth(node.right, gaps, known)
    result = None if a is None or b is None else join(a, node.sign, b)
    if left is None or right is None or a is None or b is None or result is None:
        return None
    whole = all(isinstance(n, int) and 0 <= n <= year.largest_calculated for n in (a, b, result))
    if not whole:
        return None
    if node.sign in "×÷":
        first, second = (a, b) if node.sign == "×" else (result, b)
        table = min(first, second) > 1 and max(first, second) <= 12 and (first in year.tables or second in year.tables)
        new = {first, second} & set(year.practice.number_sentence.newer_tables)
        return left + right + 2 + bool(new) - (max(first, second) > 10) if table else None
    one, other = (a, b) if node.sign == "+" else (result, b)
    return left + right + (int(one) % 10 + int(other) % 10 > 10) - 2 * (min(one, other) == 0)


def _worth(node: Node, gaps: Sequence[Rational], known: dict[int, Rational]) -> Rational | None:
    """What a part comes to with its gaps filled in, and other numbers in the place of those that are known."""
    if isinstance(node, Operation):
        one, other = _worth(node.left, gaps, known), _worth(node.right, gaps, known)
        return None if one is None or other is None else join(one, node.sign, other)
    return known.get(node.token, node.value) if isinstance(node, Number) else worth_of(node, gaps)
