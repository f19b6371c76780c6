"""Number sentences and families for another year: other numbers in the same places and the same order, still true."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from itertools import islice, pairwise

from ...expression.gapped import GappedSentence, sentences_of, written_out
from ...expression.number import Rational
from ...expression.tokens import Token
from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import SAME_NUMBERS, easier_first, revalued, with_values
from ..saying import listed, written
from .filled import PLACES, Filled
from .gap_filling import MOST_TRIED, NeedsRange, Plan, is_filled_truly, only_filling, plan_for
from .number_choice import best_numbers
from .search import find_fillings
from .tasks import ChoiceTask, FamilyTask, NumberSentenceTask, SentencesTask

Version = tuple[NumberSentenceTask, Context, str]
_FACTORS = (6, 7, 8, 9, 4, 3, 12, 11)
"""What a table is multiplied by in a family, best first."""
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

    @cached_property
    def _open(self) -> GappedSentence:
        """The sentence with a gap at each place, read once for all the numbers tried."""
        tokens = (Token("gap", "___", 1) if at in self.values else token for at, token in enumerate(self.tokens))
        return next(sentences_of(tuple(tokens), ()))

    @cached_property
    def _plan(self) -> Plan | None:
        """How the number that follows is worked out of the others; None where it cannot be."""
        try:
            return plan_for(self._open, [None if at == self.follows else () for at in self.values])
        except NeedsRange:
            return None

    def settled(self, new: Mapping[int, Rational]) -> dict[int, Rational] | None:
        """All numbers, the one that follows worked out from the new others; None if nothing whole from 0 follows."""
        if self.follows is None:
            return dict(new) if is_filled_truly(self._open, [new[at] for at in self.values]) else None
        found = self._plan and only_filling(self._open, self._plan, [new.get(at, 0) for at in self.values])
        return {**new, self.follows: found} if isinstance(found, int) and found >= 0 else None

    def keeps_order(self, new: Mapping[int, Rational]) -> bool:
        """Whether whatever was more is more still, and equals are equal."""
        pairs = sorted((value, new[at]) for at, value in self.values.items())
        return all((old < later) == (made < after) and made <= after for (old, made), (later, after) in pairwise(pairs))

    def text(self, new: Mapping[int, Rational]) -> str:
        """The sentence as asked, with the new numbers where known ones stand."""
        asked = [
            token._replace(text=written(new[at], PLACES)) if token.kind == "number" else token
            for at, token in enumerate(self.one.sentence.asked)
        ]
        return written_out(asked, names=True)


def versions_of(task: NumberSentenceTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """Other numbers and the same ones: the same first for a younger year, last for an older one."""
    there = replace(context, year=year)
    same: Version = (task, there, SAME_NUMBERS)
    yield from easier_first(same, _with_other_numbers(task, context, there), year.year > context.year.year)


def _with_other_numbers(task: NumberSentenceTask, context: Context, there: Context) -> Iterator[Version]:
    if not there.year.knows("=") or isinstance(task, ChoiceTask):  # a story keeps its numbers
        return
    if isinstance(task, FamilyTask):
        yield from _with_other_family(task, there)
    else:
        yield from _with_other_sentences(task, context, there)


def _with_other_family(task: FamilyTask, there: Context) -> Iterator[Version]:
    """Families that suit the year, crossing ten before not, the same number missing."""
    year = there.year
    for a, b in _pairs_for(task, year):
        whole = a + b if task.family_of == "+" else a * b
        if whole <= min(year.largest_calculated, year.largest_number) and len(set(task.known)) == len(task.known):
            changed = task.with_known((a, b, whole)[: len(task.known)])
            yield changed, there, f"The family of {listed([written(number) for number in (a, b, whole)])}."


def _pairs_for(task: FamilyTask, year: YearLimits) -> Sequence[tuple[int, int]]:
    """Pairs of parts, or a table and a factor, best first."""
    if task.family_of == "+":
        return year.practice.bonds.pairs
    tables = [table for table in reversed(year.tables) if table > 1]
    return [(min(t, n), max(t, n)) for n in _FACTORS for t in tables if t != n]


def _with_other_sentences(task: SentencesTask, context: Context, there: Context) -> Iterator[Version]:
    """Versions in which the first filling found is true still: all scaled alike, then remade to suit the year."""
    try:
        found = {one.line: one for one in reversed(find_fillings(task, context))}
    except Unsolvable:
        return
    slots = [Slots(found[line]) for line in range(1, len(task.sentences) + 1) if line in found]
    plain = all(token.kind != "digits" and not token.unit for line in slots for token in line.tokens)
    if len(slots) < len(task.sentences) or not plain:
        return
    if not any(token.text in ("×", "÷", "of") for line in slots for token in line.tokens):
        yield from _scaled(task, there, slots)
    yield from _with_new_cast(task, there, slots) if task.fact else _renumbered(task, there, slots)


def steps_of(task: NumberSentenceTask, context: Context) -> int:
    """How long it takes to solve one: the numbers or characters that may stand in the gaps but the last, in each sentence."""
    if not isinstance(task, SentencesTask):
        return 60
    choices = len(context.characters) if isinstance(task.gaps, str) else len(task.gaps or ())
    tried = (min(MOST_TRIED, choices ** max(0, text.count("___") - 1)) for text in task.sentences)
    return sum(120 + 5 * min(choices, 100) + one // 10 for one in tried)


def _scaled(task: SentencesTask, context: Context, slots: Sequence[Slots]) -> Iterator[Version]:
    top = min(context.year.largest_calculated, context.year.largest_number)
    gaps = task.gaps if isinstance(task.gaps, (range, tuple)) and len(task.gaps) <= 400 else ()
    facts = [int(character.facts[task.fact]) for character in context.characters] if task.fact else []
    for scale in dict.fromkeys((Fraction(context.year.practice.number_sentence.times), *_SCALES)):
        values = [*(value for line in slots for value in line.values.values()), *gaps]
        if any((value * scale).denominator > 1 for value in (*values, *facts)):
            continue
        if any(value * scale > top for value in values):
            continue
        texts = tuple(line.text({at: _by(v, scale) for at, v in line.values.items()}) for line in slots)
        scaled = task.with_sentences(texts)
        if gaps:
            scaled = scaled.with_gaps(tuple(_by(number, scale) for number in gaps))
        size = f"{written(scale)} times what it was" if scale > 1 else f"{_PART[scale.denominator]} what it was"
        place = with_values(context, task.fact, {value: _by(value, scale) for value in facts}) if task.fact else context
        yield scaled, place, f"Every number is {size}."


def _by(number: Rational, scale: Fraction) -> int:
    return int(number * scale)


def _with_new_cast(task: SentencesTask, context: Context, slots: Sequence[Slots]) -> Iterator[Version]:
    """New numbers for the cast; the known number that follows is worked out, so that the same characters fit."""
    fact = task.fact or ""
    for changed, why in islice(revalued(context, fact, context.year), 4 * _MOST_OFFERED):
        context.effort.spend(20 * len(slots))
        by_name = {character.name: int(character.facts[fact]) for character in changed.characters}
        new = [line.settled(_of_cast(line, by_name)) for line in slots]
        if all(new):
            texts = tuple(line.text(numbers or {}) for line, numbers in zip(slots, new, strict=True))
            yield task.with_sentences(texts), changed, why


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


def _renumbered(task: SentencesTask, context: Context, slots: Sequence[Slots]) -> Iterator[Version]:
    """Numbers chosen for the year in every sentence; like sentences get different ones."""
    offered = [best_numbers(line, context.year, task.gaps) for line in slots]
    if not all(offered):
        return
    for turn in range(min(_MOST_OFFERED, max(map(len, offered)))):
        texts = tuple(
            line.text(numbers[(turn + 3 * at) % len(numbers)])
            for at, (line, numbers) in enumerate(zip(slots, offered, strict=True))
        )
        yield task.with_sentences(texts), context, "Other numbers in the same places and order."
