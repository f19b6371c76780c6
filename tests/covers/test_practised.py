"""What activities practise, against what their own data plainly is; and that every mark in the data can be made."""

from __future__ import annotations

import pytest
from project import reference
from storymaths.activities.table import KINDS
from storymaths.activities.work_out import work_out
from storymaths.covers.practised import practised_in


def practised(block: str, year: int) -> dict[str, list[str]]:
    """The parts by the code of their objective."""
    worked = work_out(f"title: One\n{block}\n", "page.md", 1, None, year, reference())
    assert worked.done, worked.problems
    return {one.objective.code: [part.id for part in one.parts] for one in practised_in(worked, reference())}


@pytest.mark.parametrize(
    ("block", "year", "parts"),
    [
        ("kind: sequence\nterms: [6, 16, ___, 36]", 2, {"2N1": ["tens"]}),
        ("kind: sequence\nterms: [64, 54, 43, 34, 24]\nmistake: true", 2, {"2N1": ["tens-back"]}),
        ("kind: sequence\nterms: [3, 6, ___, 12]", 2, {"2N1": ["threes"]}),
        ("kind: sequence\nterms: [4, 7, ___, 13]", 2, {}),  # in threes, and not from nought
        ("kind: chart\nshow: tally\ndata: {red: 4, blue: 7}", 2, {"2S1": ["read-tally-chart"]}),
        ("kind: chart\ntask: draw\nshow: block\ndata: {red: 4, blue: 7}", 2, {"2S1": ["make-block-diagram"]}),
        ("kind: money\nfind: ways\namount: 8\npurse: [5, 2, 2, 1]", 1, {"1M3": ["coins-to-10p"]}),
        ("kind: number-sentence\nsentences: [4 + ___ = 8]", 1, {"1C2b": ["read-plus"], "1AS-2": ["plus"]}),
    ],
)
def test_only_what_is_certain(block: str, year: int, parts: dict[str, list[str]]) -> None:
    assert practised(block, year) == parts


def test_marks_in_the_data_begin_with_a_kind_or_a_coin() -> None:
    marks = {
        mark for objective in reference().objectives.values() for part in objective.parts for mark in part.practised_by
    }
    assert {mark.partition(" ")[0] for mark in marks} <= {*KINDS, "coin"}
