"""What maths is in a book: every kind of activity tried with what the book has, and the best put first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..activities.on_pages import activities_of
from ..covers.taught import Key
from ..expression.say import written
from ..model.collection import Collection
from ..model.reference import Reference
from .gaps import gaps_of
from .gather import material_of
from .idea import Hardness, Idea, Ideas, NotCarried, Unfed, WhyNot
from .material import Material
from .rank import in_order, reasons_for
from .reason import Reason
from .seeds.table import SEEDS
from .tried import Tried, same_work, try_candidate


def find_ideas(
    collection: Collection, book: str, year: int, objective: Key | None = None, series: str | None = None
) -> Ideas:
    """Ideas for a book, by its id, and a year, best first; with ``objective`` only those that practise it.

    What ``series`` still misses ranks higher; without it, what any series that has the book misses. Of the book's
    pages only the objectives are looked at, and which work they set already: that is not proposed again.
    """
    reference, material = collection.reference, material_of(collection, book)
    gaps = gaps_of(collection, book, series)
    planted, tried = _try_all(material, year, reference)
    had = _find_had(collection, book)
    asked = [one for one in tried if objective is None or objective in _keys(one)]
    wanted = [one for one in asked if one.alike not in had]
    ordered = in_order([(one, reasons_for(one, material, gaps, year, reference)) for one in wanted], material)
    return Ideas(
        book,
        material.book.title,
        year,
        objective,
        tuple(filter(None, gaps.of)),
        tuple(_idea(one, reasons, year, material) for one, reasons in ordered),
        tuple(_not_carried(tried, planted, year, objective, reference)),
        tuple(_unfed(tried)),
        len(asked) - len(wanted),
    )


def _find_had(collection: Collection, book: str) -> frozenset[tuple[object, ...]]:
    """The work that the book's sessions and home activities set."""
    pages = (*collection.sessions_of(book), *collection.homes_of(book))
    done = (activity.worked.done for page in pages for activity in activities_of(page, collection))
    return frozenset(same_work(one.fields, one.solution) for one in done if one is not None)


def _keys(tried: Tried) -> set[Key]:
    return {(one.framework, one.code) for one in tried.practises}


def _try_all(material: Material, year: int, reference: Reference) -> tuple[set[str], list[Tried]]:
    """The kinds that the book has something for, and all that comes out, the same work once."""
    planted: set[str] = set()
    found: dict[tuple[object, ...], Tried] = {}
    titles: set[str] = set()  # a page has each title once, and any two ideas may come to stand on it together
    for kind, seed in SEEDS.items():
        for candidate in seed.plant(material, reference.years[year]):
            planted.add(kind)
            title = str(candidate.lines["title"])
            tried = try_candidate(candidate, material, year, reference) if title not in titles else None
            if tried and tried.alike not in found:
                found[tried.alike] = tried
                titles.add(title)
    return planted, list(found.values())


def _idea(tried: Tried, reasons: tuple[Reason, ...], year: int, material: Material) -> Idea:
    solution, fields = tried.solution, tried.fields
    hardness = Hardness(
        solution.steps, written(solution.demands.largest, 3), len(solution.answers), solution.difficulty
    )
    noted = [concept for concept in material.noted if concept in tried.concepts]
    return Idea(
        kind=fields.kind,
        task=fields.task_name,
        title=fields.title,
        year=year,
        block=tried.block,
        ask=solution.task.ask,
        answers=tuple(answer.says for answer in solution.answers),
        note=solution.note,
        hardness=hardness,
        practises=tried.practises,
        concepts=(*noted, *(concept for concept in tried.concepts if concept not in noted)),
        uses=tried.candidate.uses,
        changes=tried.candidate.changes,
        reasons=reasons,
    )


def _not_carried(
    tried: Sequence[Tried], planted: set[str], year: int, objective: Key | None, reference: Reference
) -> Iterator[NotCarried]:
    """The objectives of the year, or the one asked for, that nothing practises."""
    carried = {key for one in tried for key in _keys(one)}
    for framework in reference.frameworks:
        for one in reference.objectives_of.get((framework, year), ()):
            key = (framework, one.code)
            if key in carried or (objective is not None and key != objective):
                continue
            could = {way.split()[0] for way in reference.practised_by.ways(key)}
            kinds = tuple(kind for kind in SEEDS if kind in could)
            why: WhyNot = (
                "no kind" if not kinds else "does not come out" if planted & set(kinds) else "nothing to feed it"
            )
            yield NotCarried(framework, one.code, one.says, why, kinds)


def _unfed(tried: Sequence[Tried]) -> Iterator[Unfed]:
    fed = {one.kind for one in tried}
    yield from (Unfed(kind, seed.needs) for kind, seed in SEEDS.items() if kind not in fed)
