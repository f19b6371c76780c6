"""The finder of the demonstration, asked as teachers and parents ask."""

from __future__ import annotations

from finder_queries import QUERIES, Finder

from .demonstration import demonstration


def test_what_was_asked_for_comes_first_and_nothing_else() -> None:
    finder = Finder(demonstration())
    judged = {query["asks"]: finder.judge(query) for query in QUERIES}
    assert [asked for asked, one in judged.items() if not (one.has_the_right and one.has_no_other)] == []
