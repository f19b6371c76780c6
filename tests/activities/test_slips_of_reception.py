"""A likely slip is one of working out: a year that writes nothing has none, in its own activities and in versions for it."""

from __future__ import annotations

from project import reference
from storymaths.activities.work_out import work_out

SHARED = "kind: share\ntitle: Two bowls\ntotal: 8\namong: 2\nthings: spoons\nyears: {Reception: {}}\n"


def test_year_1_has_the_slip_and_reception_has_none() -> None:
    first = work_out(SHARED, "page.md", 1, None, 1, reference())
    assert first.problems == ()
    assert first.solution is not None
    assert first.solution.likely_error is not None
    assert first.versions[0].solution.likely_error is None
    own = work_out(SHARED.replace("years: {Reception: {}}\n", ""), "page.md", 1, None, 0, reference()).solution
    assert own is not None
    assert own.likely_error is None
