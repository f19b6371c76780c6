"""How a chart is spoken of: by whom each amount belongs to, by its label, or by the label itself."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from ...expression.noun import is_plural
from ...model.activity import LikelyError
from ...model.demands import Operation
from ..saying import capital, counted, listed, one_or_many, there_are
from ..sentences import write_calculation
from .rows import Rows
from .tasks import PLACES, write_number


def much(amount: Fraction, things: str) -> str:
    """``3 boats``, ``1 boat``, ``2.5 boats``."""
    return counted(amount, things) if amount.denominator == 1 else f"{write_number(amount)} {things}".strip()


@dataclass(frozen=True, slots=True)
class ChartWords:
    """Questions about rows, and their answers, in whole sentences."""

    rows: Rows

    def _much(self, amount: Fraction) -> str:
        return much(amount, self.rows.thing)

    def ask_count(self, label: str) -> str:
        """How many of one."""
        if self.rows.axis:
            return f"How many {self._things}are there at {label} {self.rows.axis}?"
        if self.rows.owned:
            return f"How many {self.rows.thing} does {label} have?"
        return f"How many {self._things}are there for {label}?" if self._for else f"How many {label} are there?"

    @property
    def _things(self) -> str:
        return f"{self.rows.thing} " if self.rows.thing else ""

    @property
    def _for(self) -> bool:
        """Whether a label says what amounts are for, and is not itself what is counted."""
        return bool(self.rows.thing or self.rows.columns or self._of_numbers)

    @property
    def _of_numbers(self) -> bool:
        """Whether labels are numbers or ranges of them, such as ``10 to 19``, of which nobody counts several."""
        return any(label[:1].isdigit() for label in self.rows.labels)

    def say_count(self, label: str, amount: Fraction) -> str:
        """So many of one."""
        if self.rows.axis:
            return f"At {label} {self.rows.axis}: {self._much(amount)}."
        if self.rows.owned:
            return f"{capital(label)} has {self._much(amount)}."
        if self._for:
            return f"{capital(label)}: {self._much(amount)}."
        return f"There {_be(amount)} {much(amount, label)}."

    def ask_gap(self, one: str, other: str, word: str) -> str:
        """How many more, or fewer, of one than of another."""
        if self.rows.owned:
            return f"How many {word} {self.rows.thing} does {one} have than {other}?"
        if self._for:
            return f"How many {word} {self._things}are there for {one} than for {other}?"
        return f"How many {word} {one} than {other} are there?"

    def say_gap(self, one: str, other: str, word: str, gap: Fraction) -> str:
        """So many more, or fewer."""
        if self.rows.columns or (self._of_numbers and not self.rows.thing):
            return f"There {_be(gap)} {write_number(gap)} {word} for {one} than for {other}."
        if not self.rows.thing:
            return f"There {_be(gap)} {write_number(gap)} {word} {one_or_many(gap, one)} than {other}."
        name = f" {one_or_many(gap, self.rows.thing)}" if self.rows.owned else ""
        return f"{capital(one)} {self._have([one])} {write_number(gap)} {word}{name} than {other}."

    def _have(self, labels: Sequence[str]) -> str:
        """``has`` for one character or one thing; ``have`` for several, and for a label that names several."""
        several = len(labels) > 1 or (not self.rows.owned and is_plural(labels[0]))
        return "have" if several else "has"

    def ask_total(self, labels: Sequence[str]) -> str:
        """How many altogether, of all or of some."""
        things = self.rows.thing
        if tuple(labels) == self.rows.labels:
            return f"How many {things} are there altogether?" if things else "How many are there altogether?"
        if self.rows.owned:
            return f"How many {things} do {listed(labels)} have altogether?"
        of = f"{self._things}for " if things or self._of_numbers else ""
        return f"How many {of}{listed(labels)} are there altogether?"

    def say_total(self, labels: Sequence[str], amount: Fraction) -> str:
        """So many altogether."""
        if tuple(labels) == self.rows.labels:
            return f"There {_be(amount)} {self._much(amount)} altogether."
        if self.rows.owned:
            return f"{capital(listed(labels))} {self._have(labels)} {self._much(amount)} altogether."
        of = f" for {listed(labels)}" if self._for else f" {listed(labels)}"
        return f"There {_be(amount)} {self._much(amount)}{of} altogether."

    def ask_end(self, word: str) -> str:
        """Who, or what, has the most or the least."""
        thing = f" {self.rows.thing}" if self.rows.thing else ""
        word = "fewest" if word == "least" else word
        if self.rows.owned:
            return f"Who has the {word}{thing}?"
        return f"Which has the {word}{thing}?" if thing or self._of_numbers else f"Which are there the {word} of?"

    def say_end(self, word: str, labels: Sequence[str], amount: Fraction) -> str:
        """Those with the most or the least, and how many that is."""
        word = "fewest" if word == "least" else word
        if self.rows.owned or self.rows.thing:
            return f"{capital(listed(labels))} {self._have(labels)} the {word}: {self._much(amount)}."
        return f"{capital(word)} of all: {listed(labels)}, {write_number(amount)}{' each' if len(labels) > 1 else ''}."

    def add_known(self, question: str) -> str:
        """The question with how many there are in all, where an amount is left open."""
        return f"There are {write_number(self.rows.total)} in all. {question}"

    def ask_key(self, label: str, amount: Fraction) -> str:
        """What a picture stands for, one row being told."""
        there = (
            f"{capital(label)} stand for {self._much(amount)}." if self.rows.thing else f"{there_are(amount, label)}."
        )
        return f"{there} How many does one picture stand for?"

    def say_key(self, each: int) -> str:
        """What a picture stands for."""
        return f"Each picture stands for {self._much(Fraction(each))}."

    def ask_mean(self) -> str:
        """The mean of all amounts."""
        return (
            f"What is the mean number of {self.rows.thing}?" if self.rows.thing else "What is the mean of the amounts?"
        )

    def say_mean(self, amount: Fraction) -> str:
        """The mean."""
        return f"The mean is {write_number(amount)}."


def _be(amount: Fraction) -> str:
    return "is" if amount == 1 else "are"


def explain_by_sums(sums: Iterable[Operation]) -> str:
    """Sums that lead to the answer: ``2 × 2 = 4; 4 + 1 = 5.``"""
    return f"{'; '.join(write_calculation(one, PLACES) for one in sums)}."


def explain_by_pairing(larger: str, gap: Fraction) -> str:
    """One by one, before there is a sign for taking away."""
    return f"Pair them off: {larger} has {write_number(gap)} left over."


def explain_by_counting(total: Fraction) -> str:
    """One by one, before there is a sign for adding."""
    return f"Count them all: {write_number(total)}."


def explain_end(sizes: Sequence[Fraction]) -> str:
    """The amounts from the end asked for."""
    return f"In order: {', '.join(map(write_number, sizes))}."


def expect_how_many(word: str, named: Fraction, gap: Fraction) -> LikelyError:
    """Answering how many."""
    return LikelyError(
        f"Answers how many, not how many {word}.", f"{write_number(named)} instead of {write_number(gap)}."
    )
