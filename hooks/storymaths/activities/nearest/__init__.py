"""Which of some numbers or calculations is nearest to a number."""

from __future__ import annotations

from typing import ClassVar

from ...model.activity import Context, Solution
from ..kind import Kind
from .solve import solve
from .tasks import Nearest, NearestTask


class NearestKind(Kind[NearestTask, Nearest]):
    """Steps: one for each choice."""

    name = "nearest"
    says = "Which of some numbers or calculations is nearest to a number."
    answer_shape = "{choice: 18 + 21, comes_to: 39, away: 1}"
    practises: ClassVar[dict[str, str]] = {"2NPV-2": "which of some numbers is nearest on the number line"}
    tasks = (NearestTask,)
    example = """\
kind: nearest
title: The load nearest to 40
to: 40
choices: ["18 + 21", "50 − 12", "45"]
year: 2
answers: 1
"""

    def solve(self, fields: NearestTask, context: Context) -> Solution[Nearest]:
        """Every choice that none is nearer than, in the order given."""
        return solve(fields, context)


KIND = NearestKind()
