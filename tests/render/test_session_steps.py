"""Where on a session's page its stops and its main task stand: in the step whose words read the page."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from project import collection
from storymaths.model.fields import Pages
from storymaths.model.session import Reading, Session, Step, Stop
from storymaths.parse.body import read_body
from storymaths.render.session_steps import steps_with_stops

SESSIONS = {page.path.removeprefix("content/books/"): page for page in collection().of_kind(Session)}


def stops_of(steps: Sequence[str], pages: Sequence[int]) -> tuple[list[list[int]], list[int]]:
    """The pages of the stops in each of some steps, told in these words, and of those in none."""
    page = next(iter(SESSIONS.values()))
    names = [f"Step {'abcdef'[row]}" for row in range(len(steps))]
    body = read_body("\n\n".join(f"## {name}\n\n{words}" for name, words in zip(names, steps, strict=True)))
    reads = [Reading(pages=Pages((1, 20)), stops=tuple(Stop(page=n, ask="Why?", hear=("So.",)) for n in pages))]
    session = page.fields.model_copy(
        update={"reads": tuple(reads), "steps": tuple(Step(name=name, minutes=5) for name in names)}
    )
    shown, left = steps_with_stops(session, body)
    return [[stop.page for stop in one.stops] for one in shown], [stop.page for stop in left]


@pytest.mark.parametrize(
    ("steps", "pages", "inside", "left"),
    [
        (["Read pages 1 to 3.", "Draw.", "Read page 4."], [2, 4], [[2], [], [4]], []),
        (["Read pages 1 to 6. Do not turn to page 7.", "Read page 7."], [6, 7], [[6], [7]], []),
        (["Keep page 5 for later.", "Read page 5."], [5], [[], [5]], []),
        (["Turn back to pages 3, 4\nand 5.", "Draw."], [5], [[5], []], []),
        (["Draw.", "On page 4 they count."], [4], [[], [4]], []),
        (["Draw.", "Read page 9."], [8], [[], [8]], []),
        (["Read page 2.", "Draw."], [2, 8], [[2, 8], []], []),
        (["Read as far as page 6. Read on to page 9.", "Open the book at page 10."], [3, 8], [[3, 8], []], []),
        (["Draw.", "Count."], [3], [[], []], [3]),
    ],
)
def test_a_stop_is_made_in_the_step_that_reads_its_page(
    steps: list[str], pages: list[int], inside: list[list[int]], left: list[int]
) -> None:
    assert stops_of(steps, pages) == (inside, left)


def test_every_stop_of_the_collection_stands_once_and_in_order() -> None:
    for path, page in SESSIONS.items():
        shown, left = steps_with_stops(page.fields, page.content)
        assert [stop for one in shown for stop in one.stops] == [s for r in page.fields.reads for s in r.stops], path
        assert not left, path
        assert [one.is_main for one in shown].count(True) == 1


def test_the_main_task_is_in_the_longest_step() -> None:
    page = SESSIONS["twenty-lamps/session-1.md"]
    shown, _ = steps_with_stops(page.fields, page.content)
    assert [one.step.name for one in shown if one.is_main] == ["Share the lamps"]
    assert [[stop.page for stop in one.stops] for one in shown] == [[2, 4, 6], [], [7], [], []]
