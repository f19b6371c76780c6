"""Everything a kind says for its example, for the published questions, and for mistakes of its author.

The words are kept in ``approved/``, where a change to them shows when the change is read. After reading it, keep it with
``python -m activities.approved_words`` from ``tests/`` with ``hooks`` on the path.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Any

import yaml
from activities.contexts import the_reference
from storymaths.activities.kind import Kind
from storymaths.activities.table import KINDS
from storymaths.activities.work_out import work_out
from storymaths.model.activity import Solution
from storymaths.model.plain import as_plain
from yaml_files import read_yaml

APPROVED = Path(__file__).parent / "approved"
CASES = Path(__file__).parents[1] / "outside" / "cases"
_MISTAKES = (0, -3, 10**9, "seven", "x" * 60, [], {"a": 1}, None, True, "3/4", [1, 1], ["a", "b"])
_YEARS = ("Reception", 1, 3, 5)


def words_of(kind: Kind[Any]) -> str:
    """All of it, in a stated order."""
    return "\n".join(_lines(kind)) + "\n"


def _lines(kind: Kind[Any]) -> Iterator[str]:
    example: dict[str, Any] = yaml.safe_load(kind.example)
    for name, data in _given(kind, example):
        yield f"== {name}"
        yield from _outcome(data)
    yield "== what is refused"
    yield from dict.fromkeys(line for data in _mistaken(example) for line in _problems(data))


def _given(kind: Kind[Any], example: Mapping[str, Any]) -> Iterator[tuple[str, Mapping[str, Any]]]:
    yield "the example, for other years too", {**example, "years": {year: {} for year in _YEARS}}
    cases = CASES / f"{kind.name.replace('-', '_')}.yaml"
    for case in read_yaml(cases) if cases.exists() else ():
        asked = case["activity"]
        for data in asked if isinstance(asked, list) else [asked]:
            yield case["id"], {"year": max(case["year"], 2), **data}
    forms = read_yaml(APPROVED / f"{kind.name}.yaml")
    yield from ((f"form {number}", data) for number, data in enumerate(forms, 1))


def _as_block(data: Mapping[str, Any]) -> str:
    """As an author would write it in her page; the writer in C takes far less time."""
    return yaml.dump(dict(data), Dumper=yaml.CSafeDumper, allow_unicode=True)


def _outcome(data: Mapping[str, Any]) -> Iterator[str]:
    worked = work_out(_as_block(data), "here", 1, None, 2, the_reference())
    if worked.solution is not None:
        yield from solution_words(worked.solution)
    for year, version in sorted(worked.versions.items()):
        yield f"-- year {year}: {version.changed}"
        yield from solution_words(version.solution)
    yield from (
        f"! {problem.rule}, line {problem.place.line}: {problem.message} Fix: {problem.fix}"
        for problem in worked.problems
    )


def solution_words(solution: Solution) -> Iterator[str]:
    """A solution in lines."""
    task = solution.task
    yield f"ask: {task.ask}"
    yield from (f"line: {line}" for line in (*map(str, task.shows), *map(str, task.lines)))
    if task.table:
        yield from (" | ".join(row) for row in ((task.table.caption,), task.table.columns, *task.table.rows))
    for answer in solution.answers:
        yield f"answer: {answer.says} -- {answer.worked} -- {dict(answer.data)}"
    yield f"note: {solution.note}"
    if solution.likely_error:
        yield f"slip: {solution.likely_error.does} -> {solution.likely_error.gives}"
    for figure in (*task.figures, *solution.answer_figures):
        yield f"figure: {figure.data.NAME}: {figure.alt} {as_plain(figure.data)}"
    demands = solution.demands
    numbers = [str(one) for one in demands.numbers], [str(one) for one in demands.calculated]
    yield f"uses: {numbers} {sorted(demands.signs)} {sorted(demands.units)} {demands.words} {sorted(demands.tables)}"
    yield f"steps: {solution.steps}"


def _mistaken(example: Mapping[str, Any]) -> Iterator[Mapping[str, Any]]:
    """The example with each of its fields, and each fact of its cast, put wrong in turn, and each field left out."""
    for name in example:
        if name in ("kind", "title", "years", "answers"):
            continue
        yield {key: value for key, value in example.items() if key != name}
        yield from ({**example, name: wrong} for wrong in _MISTAKES)
    cast = example.get("cast")
    if isinstance(cast, dict) and cast:
        first, facts = next(iter(cast.items()))
        for fact in facts:
            yield from ({**example, "cast": {**cast, first: {**facts, fact: wrong}}} for wrong in _MISTAKES)
        yield {**example, "cast": {first: facts}}
    yield {**example, "answers": 0}
    yield {**example, "answers": 59}


def _problems(data: Mapping[str, Any]) -> Iterator[str]:
    worked = work_out(_as_block(data), "here", 1, None, 2, the_reference())
    yield from (f"{problem.rule}: {problem.message} Fix: {problem.fix}" for problem in worked.problems)


if __name__ == "__main__":
    APPROVED.mkdir(exist_ok=True)
    for one in KINDS.values():
        (APPROVED / f"{one.name}.txt").write_text(words_of(one), encoding="utf-8")
