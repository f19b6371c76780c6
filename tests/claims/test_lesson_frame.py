"""Pages, minutes and things in words, held to front matter and book."""

from __future__ import annotations

import pytest
from project import problems_with, text_of

S2, H1 = "books/cliff-house-lift/session-2.md", "books/cliff-house-lift/home-1.md"


def contradictions(words: str, path: str = S2, after: str = "Ask for all six.") -> list[str]:
    text = text_of(path).replace(after, f"{after} {words}", 1)
    assert words in text
    return [problem.message for problem in problems_with({path: text}) if problem.rule == "lesson-contradicted"]


@pytest.mark.parametrize(
    ("words", "so"),
    [
        ("Look at pages 7 and 18.", "the book has 14 pages"),
        ("Turn to page 15.", "the book has 14 pages"),
        ("Read (pages 3 to 16) again.", "the book has 14 pages"),
        ("Pairs build it. (20 minutes)", "the step has 6 minutes"),
        ("Build. (3 minutes) Draw. (4 minutes)", "makes 7 minutes"),
        ("In this 45-minute lesson they meet it.", "minutes: 50"),
        ("Give each pair 20 cubes.", "interlocking-cube, 18 for each pair"),
        ("Each pair has twenty interlocking cubes.", "interlocking-cube, 18 for each pair"),
        ("Each child gets 2 pencils.", "pencil, 1 for each child"),
        ("Read pages 7 to 9.", "reads: has no page 9"),
        ("Read page 6 and stop.", "reads: has no stop on page 6"),
        ("Look at page 6, and stop.", "reads: has no stop on page 6"),
        ("Read page 10 and talk at the stop.", "reads: has no page 10"),
        ("Pause at the three stops.", "reads: has 2 stops"),
        ("Groups of four share a mat.", "group_size: 5"),
    ],
)
def test_what_front_matter_or_book_contradicts(words: str, so: str) -> None:
    (message,) = contradictions(words)
    assert so in message


@pytest.mark.parametrize(
    "words",
    [
        "Look at pages 7 and 8.", "Page 14 is the last.", "Turn to page 20 of your diary.", "Build. (3 minutes) Draw. (3 minutes)",
        "This 50-minute lesson has two parts.", "Give each pair 18 cubes.", "Give each pair 12 cubes.", "Each group has 30 cubes.",
        "Each pair has 20 pages.", "If each pair has 20 cubes, they can build more.", "Each pair gets 3 sign cards.", "All ages 15 and up.",
        "Read page 10 for the pleasure of it.", "Read page 8 and ask.",
        "Look at page 6 and stop before it is too much.", "Go back to page 6, and stop at the bricks.",
        "Pause at the two stops.", "Groups of five share a mat.",
        "Groups of five share a mat, and groups of three have none.", "A story in seven pages.", "Read page 9 of your own book.",
    ],
)  # fmt: skip
def test_what_agrees_or_is_doubtful_is_left(words: str) -> None:
    assert contradictions(words) == []


def test_more_things_than_a_home_page_has() -> None:
    after = "Read pages 6 and 7 first."
    assert contradictions("Find six cards.", H1, after) == []
    (message,) = contradictions("Find seven cards.", H1, after)
    assert "playing-cards, 6" in message


def test_pages_of_a_home_activity_and_of_a_story() -> None:
    assert contradictions("pages 5 to 7 first", H1, "Read") != []
    assert contradictions("Read pages 9 and 10.", H1, "Join in when Worm calls.") == []
    index = "books/cliff-house-lift/index.md"
    for count, is_found in (("fifteen", True), ("14", False)):
        text = text_of(index).replace("summary: ", f"summary: In {count} pages, ", 1)
        assert [p.rule for p in problems_with({index: text})] == ["lesson-contradicted"] * is_found


def test_a_page_in_the_place_of_one_that_is_read() -> None:
    text = text_of(S2).replace("Read pages 7 and 8", "Read the pages")  # its heading would name both
    for old, new, is_found in (
        ("Read page 8", "Read page 7", True), ("Read page 8", "Look at page 9", True), ("Read page 8", "Read on", False),
        ("Read page 8", "Read page 8, and page 9 at home", False), ("Read page 8", "Read pages 7 to 8", False),
        ("Read page 8", "Read page 12", False),
    ):  # fmt: skip
        changed = text.replace(old, new, 1)
        assert changed != text or old == new
        found = [p.message for p in problems_with({S2: changed}) if "the one that is not named" in p.message]
        assert len(found) == is_found, (new, found)


def test_a_home_activity_of_one_page() -> None:
    text = text_of(H1)
    one = text.replace("pages: 6-7", "pages: 6", 1)
    assert one != text
    for words, is_found in (("page 6 first", False), ("page 7 first", True)):
        changed = one.replace("pages 6 and 7 first", words, 1)
        assert [p.rule for p in problems_with({H1: changed})] == ["lesson-contradicted"] * is_found


def test_the_year_a_bends_reason_opens_with() -> None:
    text = text_of(S2)
    for opens, is_found in (("Year 2 reads", True), ("In Year 2 they read", False), ("Year 1 reads", False)):
        changed = text.replace("why: Year 1 reads", f"why: {opens}", 1)
        assert [p.rule for p in problems_with({S2: changed})] == ["lesson-contradicted"] * is_found
