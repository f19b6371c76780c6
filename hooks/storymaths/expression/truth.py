"""Whether a number sentence holds, exactly; where it may be read in several ways, it is untrue only if it is in each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ..model.quantity import MEASURES, Quantity, UnlikeQuantities
from .grammar import Reader, Unreadable
from .number import Rational, exact
from .number_words import PART_OF
from .signs import OPERATE
from .tokens import Token
from .tree import Node, Number, Operation, holds_between, numbers_in, operations_in, quantity_of

MAY_BE_NONE = frozenset(("-", "–", ":", "and", ","))
"""What is typed for a sign of arithmetic, and may as well part two sayings."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """Whether a sentence holds, None where nothing can be said; and why not, or why nothing can be said."""

    holds: bool | None
    why: str = ""


TRUE, UNTRUE = Verdict(True), Verdict(False)
_BY_NOUGHT = Verdict(False, "nothing can be divided by 0")
_OF_SOMETHING = Verdict(None, "it is a part of something that is not told here")
_UNCLEAR = Verdict(None, "not every part of it is a number that is known")


def judge(tokens: Sequence[Token], left_over: int | None = None) -> Verdict:
    """Whether a sentence holds; ``left_over`` is the remainder told after its division."""
    if len(tokens) == 5 and left_over is None:  # most sentences are a sum of two numbers, and what it is
        first, sign, second, relation, whole = tokens
        plain = first.kind == second.kind == whole.kind == "number" and not (first.unit or second.unit or whole.unit)
        plain = plain and sign.text in ("+", "−", "×") and relation.text == "="
        if plain and OPERATE[sign.text](first.value, second.value) == whole.value:
            return TRUE
    verdict = _judge(tokens, left_over)
    if verdict.holds is not False:
        return verdict
    if _holds_from_the_left(tokens) or any(_judge(part, None).holds for part in _other_readings(tokens)):
        return TRUE
    return Verdict(None, "its dash may stand for from one to the other") if _has_stretch(tokens) else verdict


def holds_whole(tokens: Sequence[Token]) -> bool:
    """Whether a sentence holds with all that stands in it taken for signs."""
    return bool(_judge(tokens, None).holds)


def _judge(tokens: Sequence[Token], left_over: int | None) -> Verdict:
    try:
        sides, relations = Reader(tokens).sentence()
    except Unreadable as error:
        return _BY_NOUGHT if error.amiss == "broken" else _UNCLEAR
    return _judge_sides(sides, relations, left_over)


def _judge_sides(sides: Sequence[Node], relations: Sequence[str], left_over: int | None = None) -> Verdict:
    if left_over is not None:
        return _with_left_over(sides, relations, left_over)
    verdicts = [_compare(sides[at], relation, sides[at + 1]) for at, relation in enumerate(relations)]
    return next((v for v in verdicts if v.holds is False), next((v for v in verdicts if v.holds is None), TRUE))


def _with_left_over(sides: Sequence[Node], relations: Sequence[str], left_over: int) -> Verdict:
    match sides[-2:], relations[-1]:
        case (
            Operation("÷", Number(value=int() as shared), Number(value=int() as among)),
            Number(value=int() as each),
        ), "=":
            return Verdict(divmod(shared, among) == (each, left_over)) if among else _BY_NOUGHT
    return _UNCLEAR


def _compare(left: Node, relation: str, right: Node) -> Verdict:
    try:
        one, other = quantity_of(left), quantity_of(right)
    except ZeroDivisionError:
        return _BY_NOUGHT if relation == "=" else _UNCLEAR
    except UnlikeQuantities:
        return _compare_figures(left, relation, right)
    except ValueError:
        return _UNCLEAR
    if bool(one.kind) != bool(other.kind):
        return _compare_figures(left, relation, right)
    if one.kind != other.kind:
        if "calendar" in (one.kind, other.kind):
            return Verdict(None, "months and years have no fixed number of days")
        if "money" in (one.kind, other.kind):
            return Verdict(None, "it is a price")
        return Verdict(False, f"one is a {one.kind} and the other a {other.kind}")
    if relation == "≈":
        return Verdict(_is_about(left, one, right, other))
    if holds_between(one, relation, other):
        return TRUE
    if _is_of_something(left, right, other) or _is_of_something(right, left, one):
        return _OF_SOMETHING
    return _OF_SOMETHING if _adds_a_percentage(left) or _adds_a_percentage(right) else UNTRUE


def _compare_figures(left: Node, relation: str, right: Node) -> Verdict:
    """Sides of which only some name the unit: 250 g + 250 g = 500."""
    if _is_share(left) or _is_share(right):
        return _OF_SOMETHING
    if len({number.unit for side in (left, right) for number in numbers_in(side)} - {""}) == 1:
        figures = [_figures(side) for side in (left, right)]
        if relation != "≈" and None not in figures and (operations_in(left) or operations_in(right)):
            return _compare(figures[0] or left, relation, figures[1] or right)
    return Verdict(None, "not all of it has the same unit")


def _figures(side: Node) -> Node | None:
    match side:
        case Number(shown=shown, unit=unit) if unit:
            return Number(exact(shown)) if shown[:1].isdigit() and "%" not in shown else None
        case Operation(left=left, right=right):
            one, other = _figures(left), _figures(right)
            return replace(side, left=one, right=other) if one and other else None
        case _:
            return side


def _is_of_something(side: Node, beside: Node, other: Quantity) -> bool:
    """Whether a fraction or percentage stands for a part of an amount: 1/4 = 5, and so 3 quarters = 15."""
    tells_wholes = any(number.shown.lower() in ("whole", "wholes") for number in numbers_in(beside))
    is_all = isinstance(side, Number) and side.shown == "100%"
    return _is_share(side) and not tells_wholes and (is_all or other.amount > 1)


def _is_share(side: Node) -> bool:
    """Whether a side is a fraction or percentage alone, or so many thirds."""
    match side:
        case Number(value=value, shown=shown, unit=""):
            return shown.endswith("%") or (value.denominator > 1 and "." not in shown and value < 1)
        case Operation("×", Number(unit=""), Number(shown=shown)):
            return shown.lower() in PART_OF
        case _:
            return False


def _adds_a_percentage(side: Node) -> bool:
    """Whether a percentage is added to what is none: nobody can know of what."""
    percents = [number.shown.endswith("%") for number in numbers_in(side)]
    return isinstance(side, Operation) and side.sign in "+−" and any(percents) and not all(percents)


def _is_about(left: Node, one: Quantity, right: Node, other: Quantity) -> bool:
    """Whether two amounts are about the same.

    They are where one is the other rounded to its last figure that is not nought (101 ≈ 100, 1/3 ≈ 0.33), or where they
    differ by a tenth of the larger at most; by a quarter where both are sums, each with its own numbers rounded.
    """
    amounts = Fraction(one.amount), Fraction(other.amount)
    difference, larger = abs(amounts[0] - amounts[1]), max(map(abs, amounts))
    both_sums = isinstance(left, Operation) and isinstance(right, Operation)
    rounded = max(_half_a_place(left), _half_a_place(right))
    return difference <= max(rounded, larger / Fraction(4 if both_sums else 10))


def _half_a_place(side: Node) -> Rational:
    if not isinstance(side, Number) or not side.shown.replace(",", "").replace(".", "").isdecimal():
        return 0
    figures = side.shown.replace(",", "")
    whole = figures.rstrip("0") if "." not in figures else figures
    place = Fraction(10) ** (len(figures) - len(whole) - len(figures.partition(".")[2]))
    return place * (Fraction(side.value) / exact(side.shown)) / 2 if side.value else 0


def _other_readings(tokens: Sequence[Token]) -> Iterator[Sequence[Token]]:
    """The sentence from, or up to, what may be no sign."""
    for at, token in enumerate(tokens):
        if at == 0 and token.end == tokens[1].start:
            continue  # a number below nought that opens the line
        if token.typed in MAY_BE_NONE:
            for part in (tokens[:at], tokens[at + 1 :]):
                if any(further.kind == "relation" for further in part):
                    yield part


def _has_stretch(tokens: Sequence[Token]) -> bool:
    """Whether a dash may tell from where to where: pages 4-7, or open 9 - 5 = 8 hours."""
    has_time = any(token.unit and MEASURES[token.unit][0] in ("time", "calendar") for token in tokens)
    for before, dash, after in zip(tokens, tokens[1:], tokens[2:], strict=False):
        is_close = before.end == dash.start and after.start == dash.end
        if dash.typed in ("-", "–") and before.kind == "number" and (is_close or (has_time and not before.unit)):
            return True
    return False


def _holds_from_the_left(tokens: Sequence[Token]) -> bool:
    """Whether it holds as it is heard, each operation in its turn: three lots of five plus two."""
    if not any(token.typed[:1].isalpha() for token in tokens if token.kind == "sign") or any(
        token.kind == "bracket" for token in tokens
    ):
        return False
    sides, relations = list[Node](), list[str]()
    side: Node | None = None
    sign = ""
    for token in tokens:
        if token.kind == "relation":
            relations.append(token.text)
            sides, side = ([*sides, side] if side else sides), None
        elif token.kind == "sign":
            sign = token.text
        else:
            number = Number(token.value, token.number or token.text, token.unit)
            side = Operation("×" if sign == "of" else sign, side, number) if side else number
    sides = [*sides, side] if side else sides
    return len(sides) == len(relations) + 1 and bool(_judge_sides(sides, relations).holds)
