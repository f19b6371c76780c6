"""Activities with every task there is: the kinds' examples, published questions, and others as a class meets them."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import yaml
from activities.approved_words import CASES
from storymaths.activities.kind import Kind
from storymaths.activities.table import KINDS
from storymaths.activities.work_out import work_out
from storymaths.activities.worked import AnyWorked
from storymaths.model.reference import Reference

FOR_A_CLASS = Path(__file__).with_name("for_a_class.yaml")


def every_task(reference: Reference) -> Iterator[AnyWorked]:
    """All examples and all of ``for_a_class.yaml``, and of each task the longest and the shortest published question."""
    written = yaml.safe_load(FOR_A_CLASS.read_text(encoding="utf-8"))
    for kind in KINDS.values():
        own = [yaml.safe_dump(one, allow_unicode=True) for one in written if one["kind"] == kind.name]
        for text in (kind.example, *kind.more_examples, *own):
            worked = work_out(text, "here", 1, None, 2, reference)
            assert worked.done, (text, [problem.message for problem in worked.problems])
            yield worked.done
        by_task: dict[str, list[AnyWorked]] = {}
        for text in _published(kind):
            if (done := work_out(text, "here", 1, None, 2, reference).done) and done.solution.answers:
                by_task.setdefault(done.fields.task_name, []).append(done)
        for some in by_task.values():
            some.sort(key=lambda done: len(str(done.solution.task)))
            yield from (some[0], some[-1]) if len(some) > 1 else some


def _published(kind: Kind[Any]) -> Iterator[str]:
    cases = CASES / f"{kind.name.replace('-', '_')}.yaml"
    for case in yaml.safe_load(cases.read_text(encoding="utf-8")) if cases.exists() else ():
        asked = case["activity"]
        for one in asked if isinstance(asked, list) else [asked]:
            yield yaml.safe_dump({"year": case["year"], **one}, allow_unicode=True)
