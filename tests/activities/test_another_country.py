"""A made-up country: what a year meets and practises is a folder of data, and every kind follows with no Python changed.

Its first year multiplies, cuts wholes into thirds (quarters come a year later), tells the time to five minutes, and pays
with coins of 1, 3, 9 and 27. Invented; England's order stands in ``site_data/``.
"""

from __future__ import annotations

import ast
import shutil
from functools import lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
import yaml
from storymaths.activities.fit import misfits
from storymaths.activities.kind import Kind
from storymaths.activities.table import KINDS
from storymaths.activities.work_out import WorkedOut, work_out
from storymaths.model.reference import Reference
from storymaths.parse.reference import read_reference

ACTIVITIES = Path(__file__).parents[2] / "hooks" / "storymaths" / "activities"
SITE_DATA = Path(__file__).parents[2] / "site_data"
COINS = [1, 3, 9, 27]
YEARS: dict[str | int, dict[str, Any]] = {
    1: {
        "symbols_new": ["+", "−", "=", "×", "p"], "tables": [2, 3, 5, 10], "denominators_new": [2, 3],
        "clock_minutes": 5, "largest_calculated": 100,
    },
    2: {"symbols_new": ["<", ">", "÷", "£", "°C"], "denominators_new": [4]},
}  # fmt: skip


@lru_cache(maxsize=1)
def the_country() -> Reference:
    """Its reference data, read from files as England's is."""
    with TemporaryDirectory() as folder:
        data = Path(folder) / "site_data"
        shutil.copytree(SITE_DATA, data)
        years = yaml.safe_load((data / "years.yaml").read_text(encoding="utf-8"))
        for year in years["years"]:
            year.update(YEARS.get(year["year"], {}))
        money = yaml.safe_load((data / "money.yaml").read_text(encoding="utf-8")) | {"coins": COINS, "notes": []}
        for name, content in (("years.yaml", years), ("money.yaml", money)):
            (data / name).write_text(yaml.safe_dump(content, allow_unicode=True), encoding="utf-8")
        return read_reference(Path(folder))


def worked_there(data: str) -> WorkedOut:
    return work_out(data, "here", 1, None, 2, the_country())


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_the_versions_of_every_kind_fit_the_years_of_the_country(kind: Kind[Any]) -> None:
    example = yaml.safe_load(kind.example) | {"years": {1: {}, 2: {}, 3: {}, 5: {}}}
    worked = worked_there(yaml.safe_dump(example, allow_unicode=True))
    assert worked.solution is not None
    assert worked.versions, [problem.message for problem in worked.problems]
    for year, version in worked.versions.items():
        assert misfits(version.solution.demands, the_country().years[year], the_country()) == []


def said(data: str) -> str:
    """All that pupils read and answer in the activity, and what is wrong with it."""
    worked = worked_there(data)
    told = [str(problem) for problem in worked.problems]
    if worked.solution is not None:
        task = worked.solution.task
        told += [task.ask, *map(str, task.lines)]
        told += [f"{answer.says} {answer.worked}" for answer in worked.solution.answers]
    return "\n".join(told)


def test_the_first_year_multiplies() -> None:
    assert "2 × 5 = ___" in said("{kind: share, title: Eggs, year: 1, among: 2, each: 5, things: eggs}")


def test_the_first_year_cuts_into_thirds_and_not_yet_into_quarters() -> None:
    parts = "{kind: fraction, title: Shells, year: 1, find: share, fraction: 1/%d, cast: {gull: {shells: 12}}, fact: shells}"
    assert "does not yet meet" not in said(parts % 3)
    assert "does not yet meet" in said(parts % 4)


def test_the_first_year_reads_five_minutes() -> None:
    reads = "{kind: clock, title: Tea, year: 1, find: read, times: ['16:2%d']}"
    assert "activity-" not in said(reads % 5)
    assert "too fine" in said(reads % 3)


def test_amounts_are_made_from_the_coins_of_the_country() -> None:
    worked = worked_there("{kind: money, title: Toll, year: 1, find: ways, amount: 10p}")
    assert worked.solution is not None
    paid = {coin for answer in worked.solution.answers for coin in answer.data["coins"]}
    assert paid <= set(COINS)
    # 10 from 1, 3 and 9: no nine leaves 0 to 3 threes, one nine leaves none.
    assert len(worked.solution.answers) == 5


def test_no_number_of_a_year_stands_in_the_activities() -> None:
    """Neither compared with one nor a table by year: both belong in ``site_data/``."""
    found = [
        f"{path.relative_to(ACTIVITIES)}:{node.lineno}"
        for path in sorted(ACTIVITIES.rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if _compares_a_year(node) or _is_a_table_by_year(node)
    ]
    assert found == []


def _compares_a_year(node: ast.AST) -> bool:
    if not isinstance(node, ast.Compare):
        return False
    sides = [node.left, *node.comparators]
    names = {side.attr if isinstance(side, ast.Attribute) else getattr(side, "id", "") for side in sides}
    return "year" in names and any(isinstance(side, ast.Constant) and type(side.value) is int for side in sides)


def _is_a_table_by_year(node: ast.AST) -> bool:
    keys = [key.value for key in node.keys if isinstance(key, ast.Constant)] if isinstance(node, ast.Dict) else []
    return {0, 1, 2, 3} <= {key for key in keys if type(key) is int}
