"""What the series of a book still miss."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..covers.taught import Coverage, Key, coverage_of
from ..model.collection import Collection


@dataclass(frozen=True, slots=True)
class Gaps:
    """Coverage by series; under an empty name that of the book alone, where it is in none."""

    of: Mapping[str, Coverage]

    def misses(self, key: Key) -> tuple[str, bool] | None:
        """The first series that does not teach all of an objective, and whether it teaches some; None where all do.

        Where nothing is taught yet, nothing is missed.
        """
        for series, coverage in self.of.items():
            if coverage.sessions and (how := coverage.how(key)) != "taught":
                return series, how == "part"
        return None


def gaps_of(collection: Collection, book: str, series: str | None) -> Gaps:
    """The gaps of one series, or of every one that has the book."""
    wanted = [series] if series else [name for name, page in collection.series.items() if book in page.fields.books]
    books = {name: collection.series[name].fields.books for name in wanted} or {"": (book,)}
    return Gaps(
        {
            name: coverage_of([page for one in of for page in collection.sessions_of(one)], collection.reference)
            for name, of in books.items()
        }
    )
