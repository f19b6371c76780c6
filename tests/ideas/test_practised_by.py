"""``site_data/practised.yaml`` beside what the kinds say of themselves, and ideas beside what people made."""

from __future__ import annotations

from bench.bench_ideas import measure
from project import collection, reference
from storymaths.activities.table import KINDS

RTP = "england-ready-to-progress"
LEAST = 2 / 3
"""Of what people made, an idea of the same kind and objective should stand among the first ten."""


def test_every_line_begins_with_a_kind_or_is_a_mark_of_several() -> None:
    marks = {"odd", "three", "of", "flat", "solid", "every"}
    practised = reference().practised_by
    ways = [way for of in (*practised.objectives.values(), practised.concepts) for some in of.values() for way in some]
    unknown = [way for way in ways if way.split()[0] not in KINDS and way.split()[0] not in marks]
    assert unknown == []
    tasks = {f"{kind.name} {task.task_name}" for kind in KINDS.values() for task in kind.tasks}
    told = {way.partition(" & ")[0] for way in ways}
    named = {
        way for way in told if " " in way and way.split()[0] in KINDS and way.split()[0] not in ("sequence", "compare")
    }
    assert (
        named - tasks - {"bonds +", *(f"chart read {show}" for show in ("line", "pie", "table", "pictogram"))} == set()
    )


def test_years_one_and_two_claim_no_more_than_the_kinds_say_they_can() -> None:
    claims = reference().practised_by.objectives[RTP]
    beyond = {
        (code, way.split()[0])
        for code, ways in claims.items()
        for way in ways
        if code[0] in "12" and way.split()[0] in KINDS and code not in KINDS[way.split()[0]].practises
    }
    assert beyond == set()


def test_people_made_most_of_what_is_proposed() -> None:
    rows = [measure(collection(), book, every_year=False) for book in collection().books]
    made, missed = sum(len(row.made) for row in rows), sum(len(row.missed) for row in rows)
    assert sum(row.wrong for row in rows) == 0
    assert (made - missed) / made >= LEAST
