"""What sorting practises in a year."""

from __future__ import annotations

from typing import Literal

from .rows import PracticeRow


class SortPractice(PracticeRow):
    """The diagrams a year sorts into."""

    diagrams: tuple[Literal["hoop", "venn", "carroll"], ...]
