"""Numbers and calculations to choose from, read as their author wrote them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ..expression.gapped import GappedSentence, NotASentence, read_gapped, sentences_of
from ..expression.tree import Number, numbers_in, worth_of
from ..model.demands import Operation
from ..model.document import Loc
from .arithmetic import find_operations
from .kind import Unsolvable


@dataclass(frozen=True, slots=True)
class Choice:
    """A choice: as written, as the left side of a sentence, and what it comes to."""

    text: str
    sentence: GappedSentence
    worth: Fraction

    @property
    def steps(self) -> tuple[Operation, ...]:
        """Its calculations."""
        return find_operations(self.sentence.sides[:1])

    @property
    def numbers(self) -> tuple[Number, ...]:
        """The numbers in it, as they are written."""
        return tuple(numbers_in(self.sentence.sides[0]))


def read_choice(text: str, loc: Loc) -> Choice:
    """A number or a calculation without gaps. Raises ``Unsolvable``."""
    try:
        [sentence] = list(sentences_of(read_gapped(f"{text} = 0", {}), ()))
        worth = None if len(sentence.sides) > 2 or sentence.gaps else worth_of(sentence.sides[0], ())
    except (NotASentence, ValueError):
        worth = None
    if worth is None:
        message = f'"{text[:40]}" is no number and no calculation.'
        raise Unsolvable(loc, message, "write it like 45, 2.5 or 18 + 21.", "activity-broken")
    return Choice(text.strip().replace("-", "−"), sentence, Fraction(worth))
