"""What a second pass over many activities costs beside the first, which solves them.

``python tests/bench/bench_passes.py [ACTIVITIES]`` (default 10,000) makes a collection of so many, all different, from
the kinds' own examples, ten a page, and prints the processor time of working them out; of doing so again with what
the first pass solved, as a rebuild under ``serve`` does; and of handing them to the pages, as a build does.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from dataclasses import replace
from itertools import cycle, islice
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))
sys.path.insert(0, str(Path(__file__).parent.parent.parent / "hooks"))

from project import collection
from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import work_out_pages
from storymaths.activities.table import KINDS
from storymaths.activities.work_out import WorkedOut
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.page_fields import PageFields
from storymaths.parse.document import parse_document
from storymaths.render.site import Site

A_PAGE = 10


def make_collection(count: int) -> Collection:
    """So many activities. A note makes each another, and leaves its answers as they are."""
    texts = [text for kind in KINDS.values() for text in (kind.example, *kind.more_examples)]
    different = [f"# number {n}\n{text}" for n, text in enumerate(islice(cycle(texts), count))]
    pages = [_page(n, different[at : at + A_PAGE]) for n, at in enumerate(range(0, count, A_PAGE))]
    return replace(collection(), documents=tuple(pages))


def _page(number: int, texts: list[str]) -> Document[PageFields]:
    blocks = "\n\n".join(f"```maths\n{text.rstrip()}\n```" for text in texts)
    opening = f"---\nkind: page\ntitle: Page {number}\nsummary: Made up to measure with.\n---\n\n"
    page = parse_document(f"content/page-{number}.md", f"{opening}{blocks}\n")
    assert isinstance(page, Document)
    return page


def seconds(work: Callable[[], object]) -> float:
    """The processor time of one call."""
    started = time.process_time()
    work()
    return time.process_time() - started


def main() -> None:
    """Makes the collection and measures."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 10_000
    whole, memory = make_collection(count), Memory[WorkedOut]()
    first = seconds(lambda: work_out_pages(whole, memory))
    again = seconds(lambda: work_out_pages(whole, Memory(memory)))
    site = Site(whole, work_out_pages(whole, memory))
    handed_on = seconds(lambda: [site.activities_of(page) for page in whole.documents])
    found = sum(len(site.activities_of(page)) for page in whole.documents)
    print(
        f"{found:,} activities: solved in {first:.1f} s; again in {again:.2f} s, ratio {again / first:.3f} (below 0.1)"
    )
    print(f"handed to their pages in {handed_on * 1000:.1f} ms")


if __name__ == "__main__":
    main()
