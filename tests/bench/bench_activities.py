"""What working activities out costs, measured side by side in one run.

``python tests/bench/bench_activities.py`` prints:

* every way of balancing twelve characters, in milliseconds and as a ratio to a bare meet in the middle;
* finding values for eight characters that come out in each year;
* each kind's example: worked out with its versions, and again from memory;
* the whole gallery and every book: solving all their activities, and drawing their pages with that done;
* the slowest of the bad inputs that ``tests/activities`` gives, which takes a few minutes to find.

Medians of several rounds taken in turn, since the machine drifts; processor time, since others share it.
"""

from __future__ import annotations

import statistics
import sys
import time
from collections import defaultdict
from collections.abc import Callable
from itertools import product
from pathlib import Path
from typing import Any

import pytest
import yaml

sys.path.insert(0, str(Path(__file__).parent.parent))
sys.path.insert(0, str(Path(__file__).parent.parent.parent / "hooks"))

from activities import trials
from activities.contexts import the_reference
from project import ROOT, collection
from storymaths.activities.balance.search import ANYWHERE, Question, every_balance
from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import work_out_pages
from storymaths.activities.table import KINDS
from storymaths.activities.tune import tune
from storymaths.activities.work_out import WorkedOut, work_out
from storymaths.publish.gallery import draw_gallery, examples_of
from storymaths.publish.page_kinds.table import kind_of
from storymaths.render.site import Site

ROUNDS = 9
TWELVE = tuple(range(1, 13))
EIGHT = "kind: balance\ntitle: Eight\nat_most: 500\ncast: {{{cast}}}\n".format(
    cast=", ".join(f"{name}: {{}}" for name in "gull crab seal puffin whelk limpet otter heron".split())
)


def seconds(work: Callable[[], object]) -> float:
    """The processor time of one call."""
    started = time.process_time()
    work()
    return time.process_time() - started


def bare_meet_in_the_middle(masses: tuple[int, ...]) -> int:
    """How many ways there are, mirror images once, with the least a search in two halves can do: sums and their teams."""
    middle = len(masses) // 2
    halves: list[dict[int, list[tuple[int, ...]]]] = []
    for half in (masses[:middle], masses[middle:]):
        by_sum: dict[int, list[tuple[int, ...]]] = defaultdict(list)
        for signs in product((-1, 0, 1), repeat=len(half)):
            by_sum[sum(sign * mass for sign, mass in zip(signs, half, strict=True))].append(signs)
        halves.append(by_sum)
    found = [one + other for total, ones in halves[0].items() for one in ones for other in halves[1].get(-total, ())]
    return (len(found) - 1) // 2


def bench_balance() -> None:
    """Prints the time of every split of twelve, and its ratio to the bare search in the same run."""
    question = Question(TWELVE, (ANYWHERE,) * len(TWELVE))
    assert len(every_balance(question)) == bare_meet_in_the_middle(TWELVE)
    ours, bare = [], []
    for _ in range(ROUNDS):
        bare.append(seconds(lambda: bare_meet_in_the_middle(TWELVE)))
        ours.append(seconds(lambda: every_balance(question)))
    took, least = statistics.median(ours), statistics.median(bare)
    print(
        f"balance: {len(every_balance(question)):,} ways with twelve characters in {took * 1000:.1f} ms (at most 20); "
        f"a bare meet in the middle {least * 1000:.1f} ms; ratio {took / least:.2f}"
    )


def bench_tune() -> None:
    """Prints how long finding values for eight characters takes, by year."""
    times = []
    for year in range(1, 7):
        took = seconds(lambda year=year: tune(EIGHT, year, (1, 6), None, the_reference()))  # type: ignore[misc]
        tuned = tune(EIGHT, year, (1, 6), None, the_reference())
        times.append(f"Year {year} {took * 1000:.0f} ms ({len(tuned.proposals)} proposals)")
    print(f"tune, eight characters, 1 to 6 answers (at most 1000 ms each): {', '.join(times)}")


def bench_examples() -> None:
    """Prints how long each kind's example takes with its versions, and again from memory."""
    for name, kind in KINDS.items():
        memory = Memory[WorkedOut]()

        versions = {"years": {1: {}, 3: {}}}

        def work(
            example: str = yaml.safe_dump(yaml.safe_load(kind.example) | versions), memory: Memory[WorkedOut] = memory
        ) -> object:
            return work_out(example, "x.md", 1, None, 2, the_reference(), memory=memory)

        first, again = seconds(work), seconds(work)
        print(f"{name:<22} {first * 1000:7.1f} ms; again {again * 1000:.2f} ms")


def bench_pages() -> None:
    """Prints what solving every activity of the gallery and the books takes, beside drawing their pages."""
    pages = [page for page in collection().documents if page.path.startswith("content/books/")]

    def solve() -> None:
        work_out_pages(collection())
        for kind in KINDS.values():
            examples_of(kind, the_reference())

    def draw() -> None:
        site = Site(collection(), activities, memory)
        for page in pages:
            kind_of(page).draw(site, page)
        draw_gallery(site)

    solved, drawn, memory = [], [], Memory[WorkedOut]()
    activities = work_out_pages(collection(), memory)
    for kind in KINDS.values():
        examples_of(kind, the_reference(), memory)
    for _ in range(ROUNDS):
        solved.append(seconds(solve))
        drawn.append(seconds(draw))
    took, least = statistics.median(solved), statistics.median(drawn)
    print(
        f"gallery and {len(pages)} pages of books: solved in {took * 1000:.0f} ms, drawn in {least * 1000:.0f} ms; "
        f"ratio {took / least:.2f} (below 1)"
    )


def bench_bad_input() -> None:
    """Prints the slowest of the bad inputs of the tests, each from reading it to its problem."""
    slowest: list[tuple[float, str]] = []

    def timed(trial: Callable[..., Any]) -> Callable[..., Any]:
        def tried(kind: Any, data: Any, *rest: Any, **named: Any) -> Any:
            started = time.process_time()
            try:
                return trial(kind, data, *rest, **named)
            finally:
                slowest.append((time.process_time() - started, f"{kind.name}: {str(data)[:100]}"))

        return tried

    trials.refused, trials.never_breaks = timed(trials.refused), timed(trials.never_breaks)
    code = pytest.main(["-q", "--no-header", "-n", "0", "-p", "bench.few_examples", str(ROOT / "tests/activities")])
    took, what = max(slowest)
    print(f"bad input: {len(slowest):,} tried, the slowest in {took * 1000:.0f} ms (at most 1000): {what}")
    if code:
        print("Some tests failed: see above.")


if __name__ == "__main__":
    the_reference()
    bench_balance()
    bench_tune()
    bench_examples()
    bench_pages()
    bench_bad_input()
