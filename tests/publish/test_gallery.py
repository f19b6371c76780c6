"""The gallery: every kind shown by its own example, and every criterion of Years 1 and 2 practised by some kind."""

from __future__ import annotations

from typing import Any

import pytest
from project import collection, reference
from storymaths.activities.kind import Kind
from storymaths.activities.table import KINDS
from storymaths.publish.gallery import draw_gallery, examples_of, practised
from storymaths.render.site import Site

ALL = {
    "balance", "compare", "order", "sort", "number-sentence", "bonds", "sequence", "share", "fraction", "money", "clock",
    "measure", "chart", "position", "shape", "always-sometimes-never", "angle", "coordinates", "unknowns", "nearest",
}  # fmt: skip


def test_all_kinds_are_on_the_table() -> None:
    assert set(KINDS) == ALL


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_every_example_is_worked_out_without_a_problem(kind: Kind[Any]) -> None:
    for _, worked in examples_of(kind, reference()):
        assert worked.problems == ()
        assert worked.solution is not None
        assert worked.solution.answers


def test_every_criterion_of_years_1_and_2_can_be_practised() -> None:
    """The 18 ready-to-progress criteria of Years 1 and 2 (Department for Education, DfE-00100-2020)."""
    rows = practised(reference())
    assert len(rows) == 18
    assert [criterion.code for criterion, kinds in rows if not kinds] == []


def test_the_page_shows_them_all() -> None:
    html = draw_gallery(Site(collection())).html
    assert [name for name in ALL if f'id="kind-{name}"' not in html] == []
