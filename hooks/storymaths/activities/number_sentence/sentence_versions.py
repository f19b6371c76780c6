"""Number sentences remade for another year: other numbers in the same places and the same order, and still true."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from itertools import islice, pairwise
from typing import TYPE_CHECKING

from ...expression.gapped import sentences_of, written_out
from ...expression.number import Rational
from ...expression.tokens import Token
from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import revalued
from ..saying import written
from .filled_sentence import Filled
from .gap_filling import NeedsRange, fillings, is_filled_truly
from .sentence_numbers import best_numbers
from .sentence_solving import every_filling

if TYPE_CHECKING:
    from . import NumberSentenceFields

Version = tuple["NumberSentenceFields", Context, str]
_SCALES = (Fraction(10), Fraction(5), Fraction(2), Fraction(1, 10), Fraction(1, 5), Fraction(1, 2))
_PART = {2: "half", 5: "a fifth of", 10: "a tenth of"}
_MOST_OFFERED = 300


@dataclass(frozen=True)
class Slots:
    """A filled sentence by the places of its numbers: known ones, gaps and characters."""

    one: Filled

    @cached_property
    def tokens(self) -> tuple[Token, ...]:
        """Its tokens, the missing signs put in."""
        return self.one.sentence.tokens

    @cached_property
    def values(self) -> dict[int, Rational]:
        """The number at each place, whichever way it is written or missing."""
        numbers, values = list(self.one.numbers), {}
        for at, token in enumerate(self.tokens):
            if token.kind in ("number", "name"):
                values[at] = token.value
            elif token.kind == "gap":
                values[at] = numbers.pop(0)
        return values

    @cached_property
    def follows(self) -> int | None:
        """The place of the known number that follows from the others: alone on its side if there is one, else the last."""
        if self.one.sentence.relations != ("=",):
            return None
        known = [at for at, token in enumerate(self.tokens) if token.kind == "number"]
        ends = [at for at in known if self._is_alone(at)]
        return max(ends or known, default=None)

    def _is_alone(self, at: int) -> bool:
        around = [self.tokens[near].kind for near in (at - 1, at + 1) if 0 <= near < len(self.tokens)]
        return around == ["relation"]

    def settled(self, new: Mapping[int, Rational]) -> dict[int, Rational] | None:
        """All numbers, the one that follows worked out from the new others; None if nothing whole from 0 follows."""
        tokens = [
            Token("number", str(new[at]), new[at]) if at in new else token for at, token in enumerate(self.tokens)
        ]
        if self.follows is None:
            true = is_filled_truly(next(sentences_of(tuple(tokens), ())), ())
            return dict(new) if true else None
        tokens[self.follows] = Token("gap", "___", 1)
        try:
            found = next(fillings(next(sentences_of(tuple(tokens), ())), None, 1), None)
        except NeedsRange:
            return None
        if found is None or not isinstance(found[0], int) or found[0] < 0:
            return None
        return {**new, self.follows: found[0]}

    def keeps_order(self, new: Mapping[int, Rational]) -> bool:
        """Whether whatever was more is more still, and equals are equal."""
        pairs = sorted((value, new[at]) for at, value in self.values.items())
        return all((old < later) == (made < after) and made <= after for (old, made), (later, after) in pairwise(pairs))

    def text(self, new: Mapping[int, Rational]) -> str:
        """The sentence as asked, with the new numbers where known ones stand."""
        asked = [
            token._replace(text=written(new[at], 3)) if token.kind == "number" else token
            for at, token in enumerate(self.one.sentence.asked)
        ]
        return written_out(asked, names=True)


def remade(fields: NumberSentenceFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """Versions in which the first filling found is true still: all scaled alike, then remade to suit the year."""
    try:
        found = {one.line: one for one in reversed(every_filling(fields, context))}
    except Unsolvable:
        return
    slots = [Slots(found[line]) for line in range(1, len(fields.sentences) + 1) if line in found]
    plain = all(token.kind != "digits" and not token.unit for line in slots for token in line.tokens)
    if len(slots) < len(fields.sentences) or not plain:
        return
    there = replace(context, year=year)
    if not any(token.text in ("×", "÷", "of") for line in slots for token in line.tokens):
        yield from _scaled(fields, there, slots)
    yield from _with_new_cast(fields, there, slots) if fields.fact else _renumbered(fields, there, slots)


def _scaled(fields: NumberSentenceFields, context: Context, slots: Sequence[Slots]) -> Iterator[Version]:
    top = min(context.year.largest_calculated, context.year.largest_number)
    gaps = fields.gaps if isinstance(fields.gaps, (range, tuple)) and len(fields.gaps) <= 400 else ()
    # From Year 3 on a year's numbers are ten times as large as those of the year before.
    for scale in dict.fromkeys((Fraction(10 ** max(1, context.year.year - 2)), *_SCALES)):
        values = [*(value for line in slots for value in line.values.values()), *gaps]
        if any((value * scale).denominator > 1 or value * scale > top for value in values):
            continue
        update: dict[str, object] = {
            "sentences": tuple(line.text({at: _by(v, scale) for at, v in line.values.items()}) for line in slots)
        }
        if gaps:
            update["gaps"] = tuple(_by(number, scale) for number in gaps)
        size = f"{written(scale)} times what it was" if scale > 1 else f"{_PART[scale.denominator]} what it was"
        new = (
            {character.id: _by(int(character.facts[fields.fact]), scale) for character in context.characters}
            if fields.fact
            else {}
        )
        if all(
            int(character.facts[fields.fact]) * scale == new[character.id]
            for character in context.characters
            if fields.fact
        ):
            yield fields.model_copy(update=update), _with(context, fields.fact, new), f"Every number is {size}."


def _by(number: Rational, scale: Fraction) -> int:
    return int(number * scale)


def _with(context: Context, fact: str | None, new: Mapping[str, int]) -> Context:
    if not fact:
        return context
    return replace(
        context, characters=tuple(replace(p, facts={**p.facts, fact: new[p.id]}) for p in context.characters)
    )


def _with_new_cast(fields: NumberSentenceFields, context: Context, slots: Sequence[Slots]) -> Iterator[Version]:
    """New numbers for the cast; the known number that follows is worked out, so that the same characters fit."""
    fact = fields.fact or ""
    for changed, why in islice(revalued(context, fact, context.year), 4 * _MOST_OFFERED):
        by_name = {character.name: int(character.facts[fact]) for character in changed.characters}
        new = [line.settled(_of_cast(line, by_name)) for line in slots]
        if all(new):
            texts = tuple(line.text(numbers or {}) for line, numbers in zip(slots, new, strict=True))
            yield fields.model_copy(update={"sentences": texts}), changed, why


def _of_cast(line: Slots, by_name: Mapping[str, int]) -> dict[int, Rational]:
    who = list(line.one.who)
    new: dict[int, Rational] = {}
    for at, value in line.values.items():
        token = line.tokens[at]
        if token.kind == "name":
            new[at] = by_name[token.text]
        elif token.kind == "gap" and who:
            new[at] = by_name[who.pop(0).name]
        elif at != line.follows:
            new[at] = value
    return new


def _renumbered(fields: NumberSentenceFields, context: Context, slots: Sequence[Slots]) -> Iterator[Version]:
    """Numbers chosen for the year in every sentence; like sentences get different ones."""
    offered = [best_numbers(line, context.year, fields.gaps) for line in slots]
    if not all(offered):
        return
    for turn in range(min(_MOST_OFFERED, max(map(len, offered)))):
        texts = tuple(
            line.text(numbers[(turn + 3 * at) % len(numbers)])
            for at, (line, numbers) in enumerate(zip(slots, offered, strict=True))
        )
        yield fields.model_copy(update={"sentences": texts}), context, "Other numbers in the same places and order."
