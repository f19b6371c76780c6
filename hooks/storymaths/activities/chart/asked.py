"""A question about a chart, worked out."""

from __future__ import annotations

from dataclasses import dataclass

from ...model.activity import Answer
from ...model.demands import Demands
from .tasks import QuestionAnswer


@dataclass(frozen=True, slots=True)
class Asked:
    """A question in words with its answer, what it demands, and how many steps it takes."""

    line: str
    answer: Answer[QuestionAnswer]
    demands: Demands
    steps: int
    """One for each amount read off, and one for each + − or ÷."""
