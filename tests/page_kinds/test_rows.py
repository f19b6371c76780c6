"""A row of the table of page kinds is whole, or the type checker says which part is missing."""

from __future__ import annotations

import ast
import copy
import re
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from page_kinds import poem
from project import ROOT
from storymaths.model.address import LISTS
from storymaths.model.page_schemas import SCHEMAS
from storymaths.publish.page_kinds.kind import NotListed
from storymaths.publish.page_kinds.table import PAGE_KINDS

PARTS = ("PageKind", "InFinder", "InCatalogue", "OnIdeaPages", "Section", "InLinkedData", "Starter", "Names")
MUTE = """
from typing import TypeVar
S = TypeVar("S", bound=OfBook)
def row_of(schema: type[S]) -> None: ...
class Mute(OfBook):
    kind: Literal["mute"]
row_of(Mute)
""".strip().splitlines()
"""A schema that leaves its questions unanswered, given to a row."""
_ERROR = re.compile(r"^[^:]*:(\d+): error: (.*)$", re.MULTILINE)


Checked = tuple[list[tuple[str, str, int]], dict[int, list[str]]]
"""The parts left out, each with the line of its row; and what the type checker says of each line."""


def name_of(call: ast.Call) -> str:
    return call.func.id if isinstance(call.func, ast.Name) else ""


def lacking(row: ast.Assign) -> Iterator[tuple[str, str, str]]:
    """The row with each of its parts left out in turn: what the part is of, its name, and the row without it."""
    calls = [node for node in ast.walk(row) if isinstance(node, ast.Call) and name_of(node) in PARTS]
    for n, call in enumerate(calls):
        for m, keyword in enumerate(call.keywords):
            faulty = copy.deepcopy(row)
            again = [node for node in ast.walk(faulty) if isinstance(node, ast.Call) and name_of(node) in PARTS]
            del again[n].keywords[m]
            faulty.targets = [ast.Name(f"ROW_{n}_{m}", ast.Store())]
            yield name_of(call), str(keyword.arg), ast.unparse(faulty)


@pytest.fixture(scope="module")
def checked(tmp_path_factory: pytest.TempPathFactory) -> Checked:
    """One run over the poem's row, whole and with each part left out."""
    source = Path(poem.__file__).read_text(encoding="utf-8")
    row = next(
        node
        for node in ast.parse(source).body
        if isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "POEM"
    )
    lines, left_out = source.splitlines(), list[tuple[str, str, int]]()
    for of, part, faulty in lacking(row):
        lines.append(faulty)
        left_out.append((of, part, len(lines)))
    lines += MUTE
    file = tmp_path_factory.mktemp("rows") / "rows.py"
    file.write_text("\n".join(lines) + "\n", encoding="utf-8")
    command = [sys.executable, "-m", "mypy", "--strict", "--no-error-summary", str(file)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    said: dict[int, list[str]] = {}
    for line, message in _ERROR.findall(done.stdout):
        said.setdefault(int(line), []).append(message)
    assert said, done.stdout + done.stderr
    return left_out, said


def test_each_part_left_out_is_named(checked: Checked) -> None:
    left_out, said = checked
    for of, part, line in left_out:
        assert f'Missing named argument "{part}" for "{of}"' in " ".join(said[line]), (part, said[line])


def test_a_schema_that_leaves_a_question_unanswered_makes_no_row(
    checked: Checked,
) -> None:
    said = checked[1]
    assert 'Only concrete class can be given where "type[Mute]" is expected' in said[max(said)][0]


def test_nothing_else_is_said_of_the_row(checked: Checked) -> None:
    left_out, said = checked
    assert len(left_out) > 20
    assert said.keys() - {line for *_, line in left_out} == {max(said)}


def test_every_schema_has_a_row_of_its_own() -> None:
    assert {name: row.schema for name, row in PAGE_KINDS.items()} == dict(SCHEMAS)


def test_every_list_that_is_named_is_one_of_the_site() -> None:
    assert {name for row in PAGE_KINDS.values() for name in row.linked_data.lists} <= LISTS.keys()


def test_no_two_kinds_have_a_letter_or_a_list_in_common() -> None:
    rows = PAGE_KINDS.values()
    letters = [row.finder.letter for row in rows if not isinstance(row.finder, NotListed)]
    lists = [row.catalogue.list for row in rows if not isinstance(row.catalogue, NotListed)]
    assert len(letters) == len(set(letters))
    assert len(lists) == len(set(lists))
