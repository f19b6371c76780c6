"""Objectives of a year the session is not for."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .codes_named import NamedCode, codes_named

RULE = Rule(
    name="objective-wrong-year",
    says="A session teaches objectives of its own year; those of the year before, or of an earlier session, stand under "
    "revisits, those of another year under that year's bend.",
    why="A school reads coverage by year: a Year 3 code in a Year 2 session would count as Year 3 taught.",
    source=HOUSE_RULE,
    wrong="year: 2 … objectives: {england-content-domain: [3C4]}",
    right="year: 2 … bends: {3: {objectives: {england-content-domain: [3C4]}, …}}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each known code whose year does not fit its role."""
    for named in codes_named(collection):
        objective = collection.reference.objectives.get((named.framework, named.code))
        if objective is None or objective.year == _fitting(named):
            continue
        if named.role == "revisited" and objective.year == named.year:
            if not _is_taught_before(collection, named):
                yield RULE.problem(
                    named.page.place(*named.loc),
                    f"No session before this one teaches {named.code}, so it cannot be taken up again here.",
                    "move it to objectives. If another book of yours teaches it, name that one in this book's index.md, "
                    "under after:.",
                )
            continue
        yield RULE.problem(
            named.page.place(*named.loc),
            f"{named.code} belongs to {year_name(objective.year)}; {_role(named)}.",
            _fix(named, objective.year),
        )


def _is_taught_before(collection: Collection, named: NamedCode) -> bool:
    """Whether an earlier session of the book, or one of a book that comes before, teaches it."""
    session = named.page.fields
    own = (page for page in collection.sessions_of(session.book) if page.fields.number < session.number)
    return any(
        claim.code == named.code
        for page in (*collection.sessions_before(session.book), *own)
        for claim in page.fields.objectives.get(named.framework, ())
    )


def _fitting(named: NamedCode) -> int:
    return named.year - 1 if named.role == "revisited" else named.year


def _role(named: NamedCode) -> str:
    if named.role == "revisited":
        before = year_name(max(named.year - 1, 0))
        return f"what a {year_name(named.year)} session revisits is of {before}, or was taught by a session before it"
    if named.role == "bend":
        return f"it stands in the bend to {year_name(named.year)}"
    return f"the session is for {year_name(named.year)}"


def _fix(named: NamedCode, year: int) -> str:
    own = named.page.fields.year
    if year == own:
        return "move it to objectives."
    if year == own - 1 and named.role == "taught":
        return "move it to revisits."
    if named.role == "bend" or abs(year - own) != 1:
        return "take it out, or use a code of the right year."
    return f"move it to the bend to {year_name(year)}."
