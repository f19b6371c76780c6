"""Amounts of money: whole pence inside, read as an author writes them, written in the way each year writes them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

from ...expression.noun import Noun
from ...expression.number import read_amount
from ...model.activity import Context, Shown
from ...model.demands import Amount, Demands
from ...model.money import PARTS, Currency
from ..saying import counted

MOST_PENCE = 10_000_000
_HUNDREDTHS = 2
_MOST_DIGITS = 9
_WAYS = frozenset((("£", 0), ("£", 2), ("p", 0), ("", 0)))
"""A unit, and how many decimal places may be written with it."""


def _pence(value: Any) -> Any:
    problem = ValueError('should be an amount of money such as 45p, "£2" or "£1.50"')
    if isinstance(value, bool) or not isinstance(value, (int, str)):
        raise problem
    try:
        amount = read_amount(str(value).replace(",", "").replace(" ", ""))
    except ZeroDivisionError:
        raise problem from None
    if amount is None or amount.count is not None or not amount.number.text.replace(".", "").isdecimal():
        raise problem
    number = amount.number
    if len(number.text) > _MOST_DIGITS or (amount.unit, number.places) not in _WAYS:
        raise problem
    return int(number.value * (PARTS if amount.unit == "£" else 1))


Pence = Annotated[int, BeforeValidator(_pence), Field(ge=0, le=MOST_PENCE)]
"""Money in whole pence, up to £100,000. Written 45p, £2 or £1.50; a bare number is pence."""
SomePence = Annotated[int, BeforeValidator(_pence), Field(ge=1, le=MOST_PENCE)]
"""Money, more than none."""


@dataclass(frozen=True, slots=True)
class Notation:
    """One way to write amounts: in parts, in wholes or in wholes with decimals; with signs or as bare numbers."""

    money: Currency
    form: Literal["parts", "wholes", "decimals"]
    signed: bool

    def number(self, pence: int) -> Fraction:
        """The number that is written."""
        return Fraction(pence, 1 if self.form == "parts" else PARTS)

    def write(self, pence: int) -> str:
        """In a number sentence: ``20p``, ``£2``, ``£1.50``; ``20`` without signs."""
        wholes, rest = divmod(pence, PARTS)
        if self.form == "parts":
            return f"{pence:,}{self.money.part.sign if self.signed else ''}"
        number = f"{wholes:,}" if self.form == "wholes" else f"{wholes:,}.{rest:02}"
        return f"{self.money.whole.sign if self.signed else ''}{number}"

    def tell(self, pence: int) -> str:
        """In running words, where a bare number has its unit: ``7 pence``."""
        unit = self.money.part if self.form == "parts" else self.money.whole
        return self.write(pence) if self.signed else counted(self.number(pence), Noun(unit.many, unit.one))

    @property
    def signs(self) -> frozenset[str]:
        """The signs that are written."""
        if not self.signed:
            return frozenset()
        if self.form == "parts":
            return frozenset({self.money.part.sign})
        return frozenset({self.money.whole.sign, "."} if self.form == "decimals" else {self.money.whole.sign})


def notation_for(amounts: Iterable[int], context: Context) -> Notation:
    """How to write the amounts of one number sentence so that they can be added: all in one unit or as decimals."""
    seen, signed = list(amounts), _uses_signs(context)
    if all(amount % PARTS == 0 for amount in seen):
        return Notation(context.money, "wholes", signed)
    decimal = signed and _uses_decimals(context) and any(amount >= PARTS for amount in seen)
    return Notation(context.money, "decimals" if decimal else "parts", signed)


def tell(pence: int, context: Context) -> str:
    """An amount in running words: ``7 pence`` before the signs are met, ``£1 and 50p`` before decimals are."""
    return " and ".join(notation.tell(amount) for notation, amount in _written(pence, context))


def tell_briefly(pence: int, context: Context) -> str:
    """An amount among others in a list, where ``£1 and 50p`` would read as two: ``150p``."""
    return " and ".join(notation.tell(amount) for notation, amount in _written_briefly(pence, context))


def show(pence: int, context: Context) -> Shown:
    """An amount on a card."""
    written = list(_written(pence, context))
    number = written[0][0].number(pence) if len(written) == 1 else None
    return Shown(tell(pence, context), number)


def demands_of_told(
    told: Iterable[int], context: Context, briefly: Iterable[int] = (), words: tuple[str, ...] = ()
) -> Demands:
    """What reading amounts in running words demands; those told ``briefly`` stand in lists. ``words`` are read too."""
    written = [form for pence in dict.fromkeys(told) for form in _written(pence, context)]
    written += [form for pence in dict.fromkeys(briefly) for form in _written_briefly(pence, context)]
    return Demands(
        amounts=tuple(dict.fromkeys(Amount(notation.number(pence)) for notation, pence in written)),
        signs=frozenset().union(*(notation.signs for notation, _ in written)),
        words=words,
    )


def _uses_signs(context: Context) -> bool:
    return context.year.knows(context.money.part.sign) and context.year.knows(context.money.whole.sign)


def _uses_decimals(context: Context) -> bool:
    return context.year.decimal_places >= _HUNDREDTHS


def _written(pence: int, context: Context) -> Iterator[tuple[Notation, int]]:
    """An amount as it is told: in one piece, or as wholes and parts."""
    wholes, part = divmod(pence, PARTS)
    signed = _uses_signs(context)
    if wholes and part and signed and _uses_decimals(context):
        yield Notation(context.money, "decimals", signed), pence
        return
    if wholes:
        yield Notation(context.money, "wholes", signed), pence - part
    if part or not wholes:
        yield Notation(context.money, "parts", signed), part


def _written_briefly(pence: int, context: Context) -> Iterator[tuple[Notation, int]]:
    written = list(_written(pence, context))
    in_parts = len(written) > 1 and _uses_signs(context)
    return iter([(Notation(context.money, "parts", True), pence)] if in_parts else written)
