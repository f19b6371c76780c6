"""Ideas against what people made: ``python tests/bench/bench_ideas.py [ROOT …]``.

Every session and home activity is hidden, so that ideas see a book's record, its cast, its notes and its story alone. Then
each activity that people made for the book is looked for among the first ten ideas of its year: of the same kind, and of an
objective its session teaches; where a page names no objectives, as home activities do, of a concept it names. And of the
first twenty ideas of every book and year, how many break their year, cannot be read, or have no answer. The ideas were made
with the books marked "seen"; those "held back" were not read for it, and no idea was made for them.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from storymaths.activities.on_pages import activities_of
from storymaths.activities.work_out import work_out
from storymaths.ideas.find import find_ideas
from storymaths.ideas.idea import Idea, Ideas
from storymaths.model.book import Book
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.home import Home
from storymaths.model.session import Session
from storymaths.parse.collection import read_collection
from storymaths.parse.reference import read_reference

ROOT = Path(__file__).parents[2]
FIRST, NEVER_WRONG = 10, 20
SEEN = {"lamp-loft-lift", "penny-a-leg", "ten-hooks-in-the-hall", "cliff-house-lift", "ferry-fare", "twenty-lamps"}


@dataclass(frozen=True, slots=True)
class Made:
    """An activity that a person made."""

    kind: str
    year: int
    objectives: frozenset[tuple[str, str]]
    concepts: frozenset[str]
    title: str

    def is_met_by(self, idea: Idea) -> bool:
        """Whether an idea is of the same kind, and of the same objective or, where there is none, concept."""
        codes = {(one.framework, one.code) for one in idea.practises}
        same = codes & self.objectives if self.objectives else self.concepts & set(idea.concepts)
        return idea.kind == self.kind and bool(same)


@dataclass(frozen=True, slots=True)
class Row:
    """What came of one book."""

    book: str
    made: tuple[Made, ...]
    missed: tuple[Made, ...]
    wrong: int
    seconds: float

    @property
    def in_sessions(self) -> tuple[int, int]:
        """How many activities of pages with objectives were met, and how many there are."""
        return sum(bool(one.objectives) for one in self.made) - sum(bool(one.objectives) for one in self.missed), sum(
            bool(one.objectives) for one in self.made
        )


def made_for(collection: Collection, book: str) -> Iterator[Made]:
    """The activities of a book's sessions and home pages."""
    for page in (*collection.sessions_of(book), *collection.homes_of(book)):
        fields = page.fields
        claims = fields.objectives if isinstance(fields, Session) else {}
        keys = frozenset((framework, claim.code) for framework, of in claims.items() for claim in of)
        for activity in activities_of(page, collection):
            done = activity.worked.done
            if done is not None and activity.worked.year is not None:
                own = frozenset(
                    key for key in keys if collection.reference.objectives[key].year == activity.worked.year
                )
                yield Made(done.kind.name, activity.worked.year, own, frozenset(page.concepts), done.fields.title)


def hidden(collection: Collection) -> Collection:
    """The collection without its sessions and home activities."""
    kept = tuple(page for page in collection.documents if not isinstance(page.fields, Session | Home))
    return replace(collection, documents=kept)


def count_wrong(ideas: Ideas, collection: Collection) -> int:
    """How many of the first ideas cannot be put into a session as they stand."""
    book: Document[Book] = collection.books[ideas.book]
    worked = (
        work_out(idea.block, "", 1, book.fields, ideas.year, collection.reference, folder=f"books/{ideas.book}")
        for idea in ideas.ideas[:NEVER_WRONG]
    )
    return sum(bool(one.problems) or one.solution is None or not one.solution.answers for one in worked)


def measure(collection: Collection, book: str, every_year: bool = True) -> Row:
    """One book: what was made is looked for in the ideas of its year; those of the book's other years are looked over too."""
    made, without = tuple(made_for(collection, book)), hidden(collection)
    started = time.process_time()
    years = collection.books[book].fields.years
    wanted = {one.year for one in made} | ({years.best, *years.also} if every_year else set())
    found = {year: find_ideas(without, book, year) for year in wanted}
    seconds = (time.process_time() - started) / len(found)
    missed = tuple(one for one in made if not any(one.is_met_by(idea) for idea in found[one.year].ideas[:FIRST]))
    return Row(book, made, missed, sum(count_wrong(ideas, without) for ideas in found.values()), seconds)


def main() -> None:
    """Prints the table."""
    rows: list[Row] = []
    told = "--quiet" not in sys.argv
    for root in [Path(name) for name in sys.argv[1:] if not name.startswith("-")] or [ROOT]:
        collection = read_collection(root, read_reference(root))
        only_seen = "--seen" in sys.argv
        rows += [measure(collection, book) for book in collection.books if not only_seen or book in SEEN]
    print(f"{'book':<24}{'':<12}{'made':>6}{'first ten':>11}{'with objectives':>17}{'wrong':>7}{'s a year':>10}")
    for row in rows:
        met = f"{len(row.made) - len(row.missed)}"
        of, all_ = row.in_sessions
        seen = "seen" if row.book in SEEN else "held back"
        print(
            f"{row.book:<24}{seen:<12}{len(row.made):>6}{met:>11}{f'{of} of {all_}':>17}{row.wrong:>7}{row.seconds:>10.2f}"
        )
    for among, name in ((True, "seen"), (False, "held back")):
        some = [row for row in rows if (row.book in SEEN) == among]
        made, missed = sum(len(row.made) for row in some), sum(len(row.missed) for row in some)
        if made:
            print(f"{name}: {made - missed} of {made}, {100 * (made - missed) / made:.0f} %")
    for row in rows if told else ():
        for one in row.missed:
            print(
                f"  missed: {row.book}, Year {one.year}: {one.kind} ({one.title}) {sorted(code for _, code in one.objectives)}"
            )


if __name__ == "__main__":
    main()
