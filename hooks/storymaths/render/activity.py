"""An activity on a page: the pupil's task, the answers folded away for the adult, and a version for each year."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup

from ..activities.bending import Version
from ..activities.work_out import WorkedOut
from ..covers.practised import Practised, practised_in
from ..model.activity import Figure, Solution
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.session import Session
from .bends import anchor_of
from .body import DrawFence, draw_blocks
from .figures.table import draw
from .site import Site, templates


@dataclass(frozen=True, slots=True)
class ShownVersion:
    """An activity as one year meets it."""

    year: int
    title: str
    solution: Solution
    changed: str
    """What is not as the author wrote it, in words; empty for the author's own version."""
    written: bool = True


def activities_drawn(site: Site, page: Document[PageFields], source: str, level: int = 4) -> DrawFence:
    """How the activities of a page are drawn where they stand in its body. ``level`` heads an activity."""
    for_teachers = isinstance(page.fields, Session)
    drawn = {
        found.fence.line: draw_activity(
            site,
            found.worked,
            source,
            anchor_of(number),
            level,
            practised_in(found.worked, site.collection.reference) if for_teachers else (),
            found.worked.other_sets,
        )
        for number, found in enumerate(site.activities_of(page), 1)
    }
    return lambda fence: drawn.get(fence.line)


def body_with_activities(site: Site, page: Document[PageFields], source: str, level: int = 4) -> str:
    """The body of a page as HTML, each fenced activity worked out where it stands."""
    return draw_blocks(page.content.blocks, source, activities_drawn(site, page, source, level))


def draw_activity(
    site: Site,
    worked: WorkedOut,
    source: str,
    anchor: str,
    level: int = 4,
    practises: Sequence[Practised] = (),
    others: Sequence[Version] = (),
) -> str:
    """An activity as HTML, with what it practises and ``others``, further sets of numbers.

    One that could not be worked out says so to its author.
    """
    if worked.kind is None or worked.fields is None or worked.solution is None or worked.year is None:
        return '<p class="activity-broken">This activity cannot be worked out yet.</p>'
    template = templates().get_template("activity.html")
    return template.render(
        kind=worked.kind,
        fields=worked.fields,
        versions=list(_versions(worked)),
        others=others,
        own_ask=worked.solution.task.ask,
        same=[year for year, version in sorted(worked.versions.items()) if version.same and year != worked.year],
        own=worked.year,
        anchor=anchor,
        level=level,
        figure=draw_figure,
        practises=practises,
        **site.tools(source),
    )


def _versions(worked: WorkedOut) -> Iterator[ShownVersion]:
    """The versions youngest first, the author's own among them."""
    assert worked.solution is not None
    assert worked.year is not None
    assert worked.fields is not None
    shown: dict[int, ShownVersion] = {
        year: ShownVersion(year, version.fields.title, version.solution, version.changed, version.written)
        for year, version in worked.versions.items()
        if not version.same
    }
    shown[worked.year] = ShownVersion(worked.year, worked.fields.title, worked.solution, "")
    yield from (shown[year] for year in sorted(shown))


def draw_figure(figure: Figure) -> Markup:
    """A figure as templates show it."""
    return Markup(draw(figure.data))
