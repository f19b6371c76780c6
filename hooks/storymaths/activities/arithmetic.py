"""What arithmetic that was read as trees demands of a child, and the cards it is laid with."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction

from ..expression import tree
from ..expression.number import Rational, WrittenNumber
from ..expression.tokens import Token
from ..expression.tree import NOUGHT, Gap, Node, Number, units_in, worth_of
from ..model.activity import Cards, NumberCard
from ..model.demands import Amount, Demands, Operation, Sign, operation
from ..model.quantity import UNITS
from ..model.year import YearLimits
from .tables_used import table_of

_AS_SIGNS = frozenset({"£", "p", "°C"})
"""Units that are signs of the year."""
_AS_LISTED = {"litre": "litres", "hour": "hours", "minute": "minutes", "second": "seconds"}
_COUNTED_OUT = 20
"""Up to so many things can be dealt out, without a table."""
_FIGURES = frozenset("0123456789,.−/")
_CALCULATED: Mapping[str, Sign] = {"+": "+", "−": "−", "×": "×", "÷": "÷", "/": "÷"}


def worth_of_unit(unit: str) -> Fraction:
    """How many base units it is; one for a bare number."""
    return UNITS[unit][1] if unit else Fraction(1)


def amount_of(number: Number) -> Fraction:
    """A number in the unit it is written with."""
    return number.value / worth_of_unit(number.unit)


def demand_numbers(numbers: Iterable[Number]) -> Demands:
    """What it demands to read and write numbers as they stand: their size, units and parts, and the signs in them."""
    amounts: dict[Amount, None] = {}
    signs: set[str] = set()
    parts: set[int] = set()
    places = 0
    for number in numbers:
        value = amount_of(number)
        shown = WrittenNumber(number.shown, value)
        unit = "" if number.unit in _AS_SIGNS else _AS_LISTED.get(number.unit, number.unit)
        amounts[Amount(value, unit)] = None
        signs |= {number.unit} & _AS_SIGNS
        signs |= {"."} if shown.places else set()
        places = max(places, shown.places)
        signs |= {"−"} if value < 0 else set()
        parts |= {shown.under} if shown.under not in (1, value.denominator) else set()
    return Demands(tuple(amounts), signs=frozenset(signs), parts=frozenset(parts), places=places)


def find_operations(sides: Sequence[Node], gaps: Sequence[Rational] = ()) -> tuple[Operation, ...]:
    """The calculations of a sentence as they are done, amounts in the smallest of its units. An addition is one."""
    unit = min(_units_in(sides), key=worth_of_unit, default="")
    return tuple(dict.fromkeys(step for side in sides for step in _steps(side, gaps, worth_of_unit(unit))))


def _units_in(sides: Sequence[Node]) -> Iterator[str]:
    yield from units_in(*sides)
    for side in sides:
        yield from (gap.unit for gap in _leaves(side) if isinstance(gap, Gap) and gap.unit)


def _leaves(node: Node) -> Iterator[Node]:
    if isinstance(node, tree.Operation):
        yield from _leaves(node.left)
        yield from _leaves(node.right)
    else:
        yield node


def _steps(node: Node, gaps: Sequence[Rational], per: Fraction) -> Iterator[Operation]:
    if not isinstance(node, tree.Operation) or node.sign not in _CALCULATED:
        return
    parts = _joined(node)
    for part in parts:
        yield from _steps(part, gaps, per)
    worths = [_in_unit(part, gaps, per) for part in (*parts, node)]
    if node.left is not NOUGHT and None not in worths:
        yield operation(_CALCULATED[node.sign], *(worth for worth in worths if worth is not None))


def _joined(node: tree.Operation) -> tuple[Node, ...]:
    """What is put together in one go: all parts of ``2 + 3 + 4``, else the two."""
    if node.sign == "+" and isinstance(node.left, tree.Operation) and node.left.sign == "+":
        return (*_joined(node.left), node.right)
    return (node.left, node.right)


def _in_unit(node: Node, gaps: Sequence[Rational], per: Fraction) -> Fraction | None:
    worth = worth_of(node, gaps)
    return None if worth is None else worth / (per if _has_unit(node) else Fraction(1))


def _has_unit(node: Node) -> bool:
    match node:
        case Number(unit=unit) | Gap(unit=unit):
            return bool(unit)
        case tree.Operation(sign="÷" | "/", left=left, right=right):
            return _has_unit(left) and not _has_unit(right)
        case tree.Operation(left=left, right=right):
            return _has_unit(left) or _has_unit(right)
        case _:
            return False


def find_tables(operations: Iterable[Operation], year: YearLimits) -> frozenset[int]:
    """The tables leaned on by products and sharings of whole numbers, and by finding a fraction of a number."""
    tables: set[int] = set()
    for one in operations:
        if one.sign not in ("×", "÷"):
            continue
        left, right = one.numbers[0], one.numbers[1]
        factors = (left, right) if one.sign == "×" else (one.numbers[-1], right)
        if all(factor.denominator == 1 for factor in factors):
            tables |= table_of(*factors, year)
        elif one.sign == "×" and 1 in (left.denominator, right.denominator):
            whole, fraction = (left, right) if left.denominator == 1 else (right, left)
            tables |= _table_of_part(whole, fraction.denominator, year)
    return frozenset(tables)


def _table_of_part(whole: Fraction, parts: int, year: YearLimits) -> frozenset[int]:
    """Halves, quarters and eighths are found by halving again and again; few things are shared out, without a table."""
    if not year.knows("×") or parts > 12:
        return frozenset()
    if parts in (2, 4, 8):
        return frozenset({2})
    return frozenset() if whole <= _COUNTED_OUT else frozenset({parts})


def cards_of(numbers: Iterable[Number], sentences: Iterable[Iterable[str]]) -> Cards:
    """A card for each number, the smallest first; each sign as often as one of the sentences, given as signs, needs it."""
    faces = {amount_of(number): number.shown for number in numbers}
    signs: Counter[str] = Counter()
    for sentence in sentences:
        signs |= Counter(sentence)
    return Cards(tuple(NumberCard(number, _face(number, faces[number])) for number in sorted(faces)), signs)


def _face(number: Fraction, shown: str) -> str:
    """As written; wholes with a fraction as one fraction, which a card shows under one another."""
    if set(shown) <= _FIGURES and "−" not in shown[1:]:
        return shown
    return str(number).replace("-", "−")


def signs_of(tokens: Iterable[Token]) -> Iterator[str]:
    """The signs that stand in a sentence; the line of a fraction and "of" are none."""
    return (token.text for token in tokens if token.kind in ("sign", "relation") and token.text not in ("/", "of", "?"))
