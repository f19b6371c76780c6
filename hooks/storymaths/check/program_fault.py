"""The program itself stumbles: under serve its author is told so on the page, and not by a screen that stays empty."""

from __future__ import annotations

import traceback
from pathlib import Path

from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="program-fault",
    says="The program reads, checks and draws whatever it is given.",
    why="A fault of the program is not its author's, and must not stop her from seeing all the other pages.",
    source=HOUSE_RULE,
    wrong="a page that stops the program",
    right="a page that is drawn, or says what is wrong with it",
)


def as_problem(error: Exception, path: str) -> Problem:
    """What is said of an error that came up with the file ``path``, which no rule speaks of."""
    last = traceback.extract_tb(error.__traceback__)[-1]
    where = f"{Path(last.filename).name}, line {last.lineno}"
    return RULE.problem(
        Place(path),
        f"The program stumbled here, and that is its own fault ({type(error).__name__}: {error}; {where}).",
        "take back what you changed last, and send this message to whoever looks after the program.",
    )
