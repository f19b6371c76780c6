"""Signs a year need not meet, which a session may bring in: < and > in Year 1.

1NPV-2 of *Mathematics guidance: key stages 1 and 2* (Department for Education, 2020) asks for them with numbers to 20.
"""

from __future__ import annotations

from project import collection, problems_with, reference, text_of
from storymaths.activities.work_out import work_out

PAGE = "books/ferry-fare/session-2.md"
ROW = "kind: compare\ntitle: Which is more?\nstatements: [7 ? 9, 12 ? 11]\nsigns: ['<', '>']\n"


def told(symbols: str) -> set[str]:
    """Rules broken where a session of Year 1 has these signs, and compares with < and >."""
    head, front, body = text_of(PAGE).split("---\n", 2)
    return {
        problem.rule for problem in problems_with({PAGE: f"{head}---\n{front}{symbols}---\n{body}\nWrite 7 < 9.\n"})
    }


def test_a_session_that_brings_them_in_may_use_them() -> None:
    assert "\nsymbols:" not in text_of(PAGE).split("---\n", 2)[1]
    assert told('symbols:\n  new: ["<", ">"]\n') == set()


def test_without_that_they_come_too_early() -> None:
    assert "symbol-beyond-year" in told("")


def test_an_activity_of_such_a_session_may_use_them() -> None:
    def broken(signs: tuple[str, ...]) -> list[str]:
        return [one.rule for one in work_out(ROW, "page.md", 1, None, 1, reference(), signs=signs).problems]

    assert broken(("<", ">")) == []
    assert broken(()) == ["activity-beyond-year"]


def test_a_sign_that_a_later_session_brings_in_is_not_written_yet() -> None:
    split = "kind: bonds\ntitle: Two houses\nwhole: 5\nthings: gulls\nsmallest: 1\n"

    def lines(unmet: tuple[str, ...]) -> tuple[str, ...]:
        done = work_out(split, "page.md", 1, None, 1, reference(), unmet=unmet).done
        assert done is not None
        return (*map(str, done.solution.task.lines), *(answer.why for answer in done.solution.answers))

    assert any("=" in line for line in lines(()))
    for unmet in (("+", "="), ("=",), ("+",)):
        assert not any(sign in line for line in lines(unmet) for sign in "+=")


def test_what_is_still_to_come_is_read_off_the_later_sessions_of_the_book() -> None:
    sessions = collection().sessions_of("twenty-lamps")
    to_come = [collection().signs_to_come(page.fields) for page in sessions]
    assert to_come[:3] == [("×", "÷"), ("÷",), ()]
