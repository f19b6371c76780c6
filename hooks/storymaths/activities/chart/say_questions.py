"""How a chart is spoken of: by whom each amount belongs to, by its label, or by the label itself."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from ...model.activity import LikelyError
from ...model.demands import Operation
from ..saying import capital, counted, listed
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
        if self.rows.owned:
            return f"How many {self.rows.thing} does {label} have?"
        return (
            f"How many {self.rows.thing} are there for {label}?" if self.rows.thing else f"How many {label} are there?"
        )

    def say_count(self, label: str, amount: Fraction) -> str:
        """So many of one."""
        if self.rows.owned:
            return f"{capital(label)} has {self._much(amount)}."
        if self.rows.thing:
            return f"{capital(label)}: {self._much(amount)}."
        return f"There {_be(amount)} {much(amount, label)}."

    def ask_gap(self, one: str, other: str, word: str) -> str:
        """How many more, or fewer, of one than of another."""
        if self.rows.owned:
            return f"How many {word} {self.rows.thing} does {one} have than {other}?"
        if self.rows.thing:
            return f"How many {word} {self.rows.thing} are there for {one} than for {other}?"
        return f"How many {word} {one} than {other} are there?"

    def say_gap(self, one: str, other: str, word: str, gap: Fraction) -> str:
        """So many more, or fewer."""
        if not self.rows.thing:
            return f"There {_be(gap)} {write_number(gap)} {word} {_name(gap, one)} than {other}."
        name = f" {_name(gap, self.rows.thing)}" if self.rows.owned else ""
        return f"{capital(one)} has {write_number(gap)} {word}{name} than {other}."

    def ask_total(self, labels: Sequence[str]) -> str:
        """How many altogether, of all or of some."""
        things = self.rows.thing
        if tuple(labels) == self.rows.labels:
            return f"How many {things} are there altogether?" if things else "How many are there altogether?"
        if self.rows.owned:
            return f"How many {things} do {listed(labels)} have altogether?"
        return f"How many {f'{things} for ' if things else ''}{listed(labels)} are there altogether?"

    def say_total(self, labels: Sequence[str], amount: Fraction) -> str:
        """So many altogether."""
        of = "" if tuple(labels) == self.rows.labels else f" for {listed(labels)}"
        return f"There {_be(amount)} {self._much(amount)} altogether{of}."

    def ask_end(self, word: str) -> str:
        """Who, or what, has the most or the least."""
        thing = f" {self.rows.thing}" if self.rows.thing else ""
        word = "fewest" if word == "least" else word
        if self.rows.owned:
            return f"Who has the {word}{thing}?"
        return f"Which has the {word}{thing}?" if thing else f"Which are there the {word} of?"

    def say_end(self, word: str, labels: Sequence[str], amount: Fraction) -> str:
        """Those with the most or the least, and how many that is."""
        word = "fewest" if word == "least" else word
        have = "has" if len(labels) == 1 else "have"
        if self.rows.owned or self.rows.thing:
            return f"{capital(listed(labels))} {have} the {word}: {self._much(amount)}."
        return f"{capital(word)} of all: {listed(labels)}, {write_number(amount)}{' each' if len(labels) > 1 else ''}."

    def add_known(self, question: str) -> str:
        """The question with how many there are in all, where an amount is left open."""
        return f"There are {write_number(self.rows.total)} in all. {question}"

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


def _name(count: Fraction, things: str) -> str:
    """``crabs``, or ``crab`` when there is one."""
    return counted(count, things).partition(" ")[2] if count == 1 else things


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
        f"Answers how many, not how many {word}.", f"{write_number(named)} in place of {write_number(gap)}."
    )
