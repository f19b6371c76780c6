"""What a table's rows claim together."""

from __future__ import annotations

import pytest
from project import problems_with, text_of
from storymaths.claims.told_tables import untrue_rows
from storymaths.model.body import Table
from storymaths.parse.body import read_text

S2 = "books/cliff-house-lift/session-2.md"


def table_of(*rows: str) -> str:
    head, *rest = rows
    return "\n".join(f"| {row} |" for row in (head, " | ".join("---" for _ in head.split("|")), *rest))


def told(*rows: str) -> list[tuple[int, str, str]]:
    return [row for table in read_text(table_of(*rows)).every(Table) for row in untrue_rows(table)]


@pytest.mark.parametrize(
    ("rows", "line", "words"),
    [
        (("Total | Ways", "7 | 6 + 1 and 4 + 3", "9 | 6 + 3 and 5 + 5"), 4, "5 + 5"),
        (("Ways | Altogether", "6 + 1 + 1 | 9"), 3, "6 + 1 + 1"),
        (("In digits | In words", "35 | thirty-five", "61 | sixty", "16 | sixteen"), 4, "sixty"),
        (("A | B | Both", "1 | 2 | 3", "4 | 2 | 6", "5 | 5 | 10", "3 | 6 | 9", "7 | 1 | 9"), 7, "9"),
        (("Boats | On each | Lights", "1 | 2 | 2", "4 | 2 | 8", "5 | 5 | 25", "3 | 6 | 19", "7 | 1 | 7"), 6, "19"),
    ],
)
def test_what_the_row_or_the_others_contradict(rows: tuple[str, ...], line: int, words: str) -> None:
    (found,) = told(*rows)
    assert found[:2] == (line, words)


@pytest.mark.parametrize(
    "rows",
    [
        ("Total | Ways", "7 | 6 + 1 and 4 + 3", "9 | 3 + ___", "8 | by 5 and 3"),
        ("Day | In words", "3 | four", "5 | one"),
        ("A | B | Both", "1 | 2 | 3", "4 | 2 | 7", "5 | 5 | 11", "3 | 6 | 9", "7 | 1 | 8"),
        ("A | B | Both", "1 | 2 | 3", "4 | 2 | 7"),
    ],
)
def test_what_agrees_or_keeps_no_rule_is_left(rows: tuple[str, ...]) -> None:
    assert told(*rows) == []


def test_it_is_told_at_its_cell() -> None:
    text = text_of(S2).rstrip() + "\n\n" + table_of("Total | Ways", "7 | 6 + 1 and 4 + 4") + "\n"
    (problem,) = problems_with({S2: text})
    assert (problem.rule, problem.place.line, problem.place.column) == ("claim-untrue", text.count("\n"), 17)
