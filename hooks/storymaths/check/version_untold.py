"""A series whose version is not the newest of its changes, or whose changes do not go forward."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.series import Series, version_order

RULE = Rule(
    name="version-untold",
    says="The version of a series is the newest among its changes; versions and dates go forward, and none is told twice.",
    why="A school that has an older version reads from it what is new; a gap or a step back would mislead it.",
    source=HOUSE_RULE,
    wrong='version: "1.2" … changes: [{version: "1.0", …}, {version: "1.1", …}]',
    right='version: "1.2" … changes: [{version: "1.0", …}, {version: "1.1", …}, {version: "1.2", …}]',
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for a version that no change tells of, and for each change that does not come after the one before."""
    for page in collection.of_kind(Series):
        series = page.fields
        newest = series.history[-1].version
        if series.version != newest:
            yield RULE.problem(
                page.place("version"),
                f"The series is version {series.version}, but the newest of its changes is {newest}.",
                "tell under changes what is new in this version, or correct the number.",
            )
        for earlier, change in pairwise(series.history):
            index = next(at for at, listed in enumerate(series.changes) if listed is change)
            if version_order(change.version) == version_order(earlier.version):
                yield RULE.problem(
                    page.place("changes", index, "version"),
                    f"Version {change.version} is told twice.",
                    "tell all that is new in a version in one place, or correct the number.",
                )
            elif change.date < earlier.date:
                yield RULE.problem(
                    page.place("changes", index, "date"),
                    f"Version {change.version} is dated before version {earlier.version}.",
                    "correct the date.",
                )
