"""Lines of a school's own holidays that cannot be read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.holiday_lines import UnreadLine

RULE = Rule(
    name="holiday-unreadable",
    says="Each line of a file of holidays is a day, or two with a dash between, and then what it is.",
    why="A holiday that is passed over puts a lesson on a day when nobody is there.",
    source=HOUSE_RULE,
    wrong="15 Feb Half term",
    right="15/02/2027 - 19/02/2027 Half term",
)


def problems_in(path: str, unread: Iterable[UnreadLine]) -> Iterator[Problem]:
    """The lines as problems. Kept when a plan of the weeks is asked for, not on pages."""
    for line in unread:
        yield RULE.problem(
            Place(path, line.line, line.column),
            line.why,
            "write a day as 15/02/2027, or a stretch as 15/02/2027 - 19/02/2027, and then what it is.",
        )
