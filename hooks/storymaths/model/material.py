"""Classroom and household things, their sizes and hazards, and whether one is a small part."""

from __future__ import annotations

import math
from typing import Annotated, Literal

from pydantic import Field

from .fields import Id, Strict, Text, Year

CYLINDER_ACROSS_MM = 31.7
CYLINDER_SHALLOW_MM = 25.4
CYLINDER_DEEP_MM = 57.1
LONGEST_THAT_COULD_FIT_MM = 65.4
"""The slanting line inside the small-parts cylinder of 16 CFR 1501.4: √(31.75² + 57.15²), rounded up."""

Allergen = Literal[
    "celery", "cereals containing gluten", "crustaceans", "eggs", "fish", "lupin", "milk", "molluscs",
    "mustard", "nuts", "peanuts", "sesame seeds", "soybeans", "sulphur dioxide and sulphites",
]  # fmt: skip
"""The fourteen of Annex II to Regulation (EU) No 1169/2011."""

Verdict = Literal["yes", "no", "unknown"]

PRINTED = frozenset(
    "recording-sheet number-card sign-card cast-card balance-mat part-whole-mat tens-frame hundred-square number-line".split()
)
"""Materials that come out of a printer unless the school has them already."""


def small_part(sides_mm: tuple[float, float, float]) -> Verdict:
    """Whether a thing of these three sides fits wholly inside the small-parts cylinder.

    Source: 16 CFR 1501.4 and its Figure 1 (diameter 31.7 mm, depth 25.4 mm sloping to 57.1 mm).
    The answer is ``unknown`` between what surely fits and what surely cannot.
    """
    thin, middle, longest = sorted(sides_mm)
    if math.hypot(thin, middle) <= CYLINDER_ACROSS_MM and longest <= CYLINDER_SHALLOW_MM:
        return "yes"
    if middle > CYLINDER_ACROSS_MM or longest > LONGEST_THAT_COULD_FIT_MM:
        return "no"
    return "unknown"


Side = Annotated[float, Field(ge=0.1, le=10_000)]


class Material(Strict):
    """Something to get ready: its size, what it can do to somebody, and what serves at home."""

    id: Id
    name: Text
    plural: Text
    poured: bool = False
    """True for what is not counted, such as water: nobody needs 1 water."""
    also: tuple[Text, ...] = ()
    """Other ways it is written in running text."""
    size_mm: tuple[Side, Side, Side] | None = None
    """Length, width and height of one; none for liquids, and things too big to matter."""
    round: bool = False
    """True for balls and flat discs, which fit the cylinder by their diameter."""
    sheds_small_parts: bool = False
    food: bool = False
    allergens: tuple[Allergen, ...]
    """Always stated; empty means none of the fourteen."""
    household: bool = False
    """True for what most kitchens have."""
    at_home: Text | None = None
    """What to use instead at home, if not household."""
    apparatus: bool = False
    """True when children need to be shown how to use it before they use it alone."""
    hazards: tuple[Id, ...] = ()
    """Cautions it demands, apart from small parts and allergens, which are worked out."""
    reusable: bool = True
    of_one_book: bool = False
    """True for what serves one book only, and cannot be used again with another: the book itself, its cast cards."""

    def counted(self, count: int) -> str:
        """So many of it: ``1 bowl``, ``4 bowls``, and ``water``, however much."""
        return self.name if self.poured else f"{count} {self.name if count == 1 else self.plural}"

    @property
    def is_small_part(self) -> Verdict:
        """Whether one of these could be swallowed or choked on, worked out from its size."""
        if self.sheds_small_parts:
            return "yes"
        if self.size_mm is None:
            return "no"
        thin, middle, longest = sorted(self.size_mm)
        if self.round and middle == longest <= CYLINDER_ACROSS_MM:
            return "yes"
        return small_part((thin, middle, longest))


class Caution(Strict):
    """A risk: what in a session calls for it, the standard line printed with it, and its source."""

    id: Id
    name: Text
    line: Annotated[Text, Field(max_length=420)]
    """Our standard line, printed beside the author's own note."""
    applies_to: Annotated[tuple[Literal["session", "home"], ...], Field(min_length=1)]
    oldest_year: Year | None = None
    """The last year it applies to (by food for the age of five and under, say); none for all."""
    trigger_words: tuple[Text, ...] = ()
    """Words in the text that call for it."""
    not_beside: tuple[Text, ...] = ()
    """Words of the same sentence that show another risk in its place."""
    forbidden_words: tuple[Text, ...] = ()
    """Phrases no page may use, whatever its cautions say."""
    why: Text
    source: Text
    verified: Literal["retrieved", "retrieved (secondary)", "project rule"]

    @property
    def still_to_write(self) -> str:
        """What a note on it says that is proposed and not yet written."""
        return f"Say what the adult does about {self.name.lower()}."

    @property
    def how_to_note(self) -> str:
        """How a note on it comes into a page, to be pasted as it stands; what it then says has still to be written."""
        note = f'- {{risk: {self.id}, note: "{self.still_to_write}"}}'
        return f"write under cautions:, in place of [ ] if it has that,  {note}  and in the quotes what is done"
