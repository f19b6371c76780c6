"""Number sentences of amounts as values: how one is written, how amounts are brought into one unit, what it demands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import groupby
from math import prod

from ...model.demands import Amount as AmountMet
from ...model.demands import Demands, Operation, operation
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..tables_used import table_of
from .amount import SIZES, Amount, bare, in_sentence, is_decimal, tell_as_given, unit_listed, unit_sign, write

Sentence = tuple[Amount | str, ...]
"""A number sentence in its order: amounts, numbers without a unit, and signs."""
_RELATIONS = frozenset("=<>")


def join(amounts: Iterable[Amount], sign: str) -> Sentence:
    """The amounts with a sign between each two."""
    terms = [part for amount in amounts for part in (sign, amount)]
    return tuple(terms[1:])


def write_sentence(sentence: Sentence, year: YearLimits) -> str:
    """``3 × 20 cm = 60 cm``."""
    return " ".join(part if isinstance(part, str) else write(part, year) for part in sentence)


def write_sentences(sentences: Iterable[Sentence], year: YearLimits) -> str:
    """Sentences one after another, with a full stop each."""
    return ". ".join(write_sentence(one, year) for one in sentences) + "."


def make_like(amount: Amount, unit: str, year: YearLimits) -> list[Sentence]:
    """Sentences that bring an amount into a unit: ``3 × 20 cm = 60 cm``, ``1 m = 100 cm``, ``1 1/4 kg = 1.25 kg``."""
    own, sentences = amount.as_one, list[Sentence]()
    if amount.count > 1:
        sentences.append((bare(amount.count), "×", amount.each, "=", own))
    elif _is_rewritten(amount, year):
        sentences.append((amount, "=", own))
    other = amount.into(unit)
    if amount.unit in UNITS and unit in UNITS and write(other, year) != write(own, year):
        sentences.append((own, "=", other))
    elif amount.unit != unit and amount.unit in SIZES:
        one = Amount(Fraction(1), amount.unit).into(unit).number
        sign, times = ("×", one) if one >= 1 else ("÷", 1 / one)
        sentences.append((bare(amount.number), sign, bare(times), "=", bare(other.number)))
    return sentences


def _is_rewritten(amount: Amount, year: YearLimits) -> bool:
    """Whether an author's fraction of a standard unit is written otherwise in the year."""
    wording = amount.wording
    fraction = wording is not None and wording.under > 1 and amount.unit in UNITS
    return fraction and tell_as_given(amount, year) != write(amount.as_one, year)


def make_all_like(amounts: Iterable[Amount], unit: str, year: YearLimits) -> list[Sentence]:
    """Sentences that bring amounts into one unit, each once."""
    return list(dict.fromkeys(one for amount in amounts for one in make_like(amount, unit, year)))


def demands_of_told(amounts: Iterable[Amount], year: YearLimits, words: tuple[str, ...] = ()) -> Demands:
    """What reading amounts as given demands; ``words`` are read too."""
    found = Demands(words=words)
    for amount in amounts:
        number, under = amount.each.number, amount.wording.under if amount.wording else 1
        times = amount.wording.times if amount.wording else amount.count > 1
        marks = {"×": times, "−": number < 0, ".": is_decimal(amount, year)}
        found |= Demands(
            amounts=(
                *([AmountMet(Fraction(amount.count))] if amount.count > 1 else []),
                AmountMet(number, unit_listed(amount.unit)),
            ),
            signs=frozenset({unit_sign(amount.unit), *(sign for sign, used in marks.items() if used)} - {""}),
            parts=frozenset({under} if under not in (1, number.denominator) else ()),
        )
    return found


def demands_of_unit(unit: str) -> Demands:
    """What a unit without a number demands, as in a question."""
    return Demands(other_units=frozenset({unit_listed(unit)} - {""}), signs=frozenset({unit_sign(unit)} - {""}))


def demands_of_read(sentence: Sentence, year: YearLimits) -> Demands:
    """What reading a number sentence demands, without working it out."""
    read = demands_of_told((in_sentence(part) for part in sentence if isinstance(part, Amount)), year)
    return read | Demands(signs=frozenset(part for part in sentence if isinstance(part, str)))


def demands_of_sentences(sentences: Iterable[Sentence], year: YearLimits) -> Demands:
    """What reading and working out number sentences demands."""
    found = Demands()
    for sentence in dict.fromkeys(sentences):
        worked = _operations(sentence)
        tables = frozenset[int]().union(*(_table(one, year) for one in worked))
        found |= demands_of_read(sentence, year) | Demands(operations=worked, tables=tables)
    return found


def _operations(sentence: Sentence) -> tuple[Operation, ...]:
    """What is worked out on each side of the sentence."""
    sides = [list(part) for relation, part in groupby(sentence, lambda one: one in _RELATIONS) if not relation]
    return tuple(_operation(side) for side in sides if len(side) > 1)


def _operation(side: Sequence[Amount | str]) -> Operation:
    numbers = [part.number for part in side if isinstance(part, Amount)]
    match side[1]:
        case "+":
            return operation("+", *numbers, sum(numbers))
        case "−":
            return operation("−", *numbers, numbers[0] - sum(numbers[1:]))
        case "×":
            return operation("×", *numbers, prod(numbers, start=Fraction(1)))
        case _:
            return operation("÷", *numbers, numbers[0] / numbers[1])


def _table(one: Operation, year: YearLimits) -> frozenset[int]:
    """The table that multiplying leans on, and dividing backwards."""
    factors = {"×": one.numbers[:2], "÷": one.numbers[1:]}.get(one.sign)
    return table_of(factors[0], factors[1], year) if factors else frozenset()
