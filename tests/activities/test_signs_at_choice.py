"""Signs a year need not meet, which a session may bring in: < and > in Year 1.

1NPV-2 of *Mathematics guidance: key stages 1 and 2* (Department for Education, 2020) asks for them with numbers to 20.
"""

from __future__ import annotations

from project import problems_with, text_of

PAGE = "books/ferry-fare/session-2.md"
SIGNS = "\n```maths\nkind: compare\ntitle: Which is more?\nstatements: [7 ? 9, 12 ? 11]\nsigns: ['<', '>']\n```\n\nWrite 7 < 9.\n"


def told(symbols: str) -> set[str]:
    """Rules broken where a session of Year 1 has these signs, and compares with < and >."""
    head, front, body = text_of(PAGE).split("---\n", 2)
    return {problem.rule for problem in problems_with({PAGE: f"{head}---\n{front}{symbols}---\n{body}{SIGNS}"})}


def test_a_session_that_brings_them_in_may_use_them() -> None:
    assert "\nsymbols:" not in text_of(PAGE).split("---\n", 2)[1]
    assert told('symbols:\n  new: ["<", ">"]\n') == set()


def test_without_that_they_come_too_early() -> None:
    assert "symbol-beyond-year" in told("")
