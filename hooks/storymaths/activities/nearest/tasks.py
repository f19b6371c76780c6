"""Which of some numbers or calculations is nearest to a number, and what the answer is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, ClassVar

from pydantic import Field

from ...model.fields import Text
from ...model.plain import Plain
from ..given import Castless
from ..kind import Exact
from ..saying import plain


class NearestTask(Castless):
    """A number, and choices of which one or several are nearest to it."""

    task_name: ClassVar[str] = "nearest"
    to: Exact
    """The number to be near."""
    choices: Annotated[tuple[Text, ...], Field(min_length=2, max_length=8)]
    """Numbers or calculations, such as ``["18 + 21", "6 × 7", "45"]``."""


@dataclass(frozen=True, slots=True)
class Nearest:
    """A choice that none is nearer than, what it comes to, and how far away that is."""

    choice: str
    comes_to: Fraction
    away: Fraction

    def as_plain(self) -> Mapping[str, Plain]:
        """Whole numbers as such."""
        return {"choice": self.choice, "comes_to": plain(self.comes_to), "away": plain(self.away)}
