"""Faults in ``site_data/``: nothing else can be checked until they are mended."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..model.document import Fault
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="reference-data-broken",
    says="site_data/ is kept as strictly as content: no unknown, missing or repeated keys, and every id exists.",
    why="Every check leans on it; a slip there would pass a slip everywhere.",
    source=HOUSE_RULE,
    wrong="concept: equalitty (in words.yaml)",
    right="concept: equality",
)
_MESSAGES = {
    "unknown": '"{field}" is not a field here.',
    "missing": 'The field "{field}" is missing.',
    "duplicate": '"{field}" is given twice.',
    "broken": "The file could not be read: {detail}.",
    "letter": "In these words {detail}.",
}


def as_problems(faults: Iterable[Fault]) -> Iterator[Problem]:
    """The faults as problems. Not one of the rules over the collection: there is none yet."""
    for fault in faults:
        message = _MESSAGES.get(fault.kind, '"{field}" {detail}.').format(field=fault.field, detail=fault.detail)
        yield RULE.problem(fault.place, message, fault.fix or "correct the entry in site_data/.")
