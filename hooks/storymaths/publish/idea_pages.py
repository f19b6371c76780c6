"""Pages about ideas: each concept, theme and year, and the lists of them."""

from __future__ import annotations

from collections.abc import Mapping

from ..model.address import LISTS, concept_page, theme_page, year_page
from ..model.book import Book
from ..model.concept import Concept, Theme
from ..model.document import Document
from ..model.home import Home
from ..model.session import Session
from ..model.year import YearLimits
from ..render.objectives import ShownObjective, shown
from ..render.site import Rendered, Site


def sessions_with(site: Site, concept: str) -> list[Document[Session]]:
    """Sessions that teach a concept."""
    return [page for page in site.collection.of_kind(Session) if concept in page.fields.concepts]


def homes_with(site: Site, concept: str) -> list[Document[Home]]:
    """Home activities that practise a concept."""
    return [page for page in site.collection.of_kind(Home) if concept in page.fields.concepts]


def draw_concept(site: Site, idea: Concept) -> Rendered:
    """What a concept is, how it grows, and where it is taught."""
    reference, source = site.collection.reference, concept_page(idea.id)
    by_year: dict[int, list[ShownObjective]] = {}
    for item in shown(idea.objectives, reference):
        by_year.setdefault(item.objective.year, []).append(item)
    html = site.draw(
        "concept.html",
        source,
        idea=idea,
        wider=reference.concepts.get(idea.under) if idea.under else None,
        narrower=[other for other in reference.concepts.values() if other.under == idea.id],
        sessions=sessions_with(site, idea.id),
        homes=homes_with(site, idea.id),
        pages_of=[
            (page, seen)
            for page in site.collection.of_kind(Book)
            for seen in page.fields.maths_on_pages
            if idea.id in seen.concepts
        ],
        objectives=sorted(by_year.items()),
        words=[word for word in reference.words.values() if word.concept == idea.id],
    )
    return Rendered(source, idea.name, idea.says, html, "concept")


def draw_concepts(site: Site) -> Rendered:
    """The tree of concepts with how much teaches each."""
    reference = site.collection.reference
    count = concept_counts(site)
    inner: dict[str, list[tuple[Concept, int]]] = {}
    for idea in reference.concepts.values():
        if idea.under:
            inner.setdefault(idea.under, []).append((idea, count.get(idea.id, 0)))
    strands = [
        (
            strand,
            [
                (idea, inner.get(idea.id, []), count.get(idea.id, 0))
                for idea in reference.concepts.values()
                if idea.strand == strand.id and not idea.under
            ],
        )
        for strand in reference.strands.values()
    ]
    html = site.draw("concepts.html", LISTS["concepts"], strands=strands)
    return Rendered(LISTS["concepts"], "Concepts", "The ideas of primary mathematics, by strand.", html, "list")


def books_about(site: Site, theme: str) -> list[Document[Book]]:
    """Books with a theme, among those a class should be prepared for included."""
    return [
        page
        for page in site.collection.books.values()
        if theme in page.fields.themes or any(item.theme == theme for item in page.fields.sensitive)
    ]


def draw_theme(site: Site, theme: Theme) -> Rendered:
    """The books, sessions and home activities with a theme."""
    source = theme_page(theme.id)
    html = site.draw(
        "theme.html",
        source,
        theme=theme,
        books=books_about(site, theme.id),
        sessions=[page for page in site.collection.of_kind(Session) if theme.id in page.fields.themes],
        homes=[page for page in site.collection.of_kind(Home) if theme.id in page.fields.themes],
    )
    return Rendered(source, theme.name, theme.says, html, "theme")


def draw_themes(site: Site) -> Rendered:
    """The list of themes."""
    counted = [(theme, len(books_about(site, theme.id))) for theme in site.collection.reference.themes.values()]
    html = site.draw("themes.html", LISTS["themes"], themes=sorted(counted, key=lambda pair: pair[0].name))
    return Rendered(LISTS["themes"], "Themes", "What the stories are about, apart from their maths.", html, "list")


def draw_year(site: Site, limits: YearLimits) -> Rendered:
    """What a year meets and what the collection has for it."""
    source, year, reference = year_page(limits.year), limits.year, site.collection.reference
    sessions = site.collection.of_kind(Session)
    html = site.draw(
        "year.html",
        source,
        limits=limits,
        sessions=[page for page in sessions if page.fields.year == year],
        bending=[page for page in sessions if year in page.fields.bends],
        homes=[page for page in site.collection.of_kind(Home) if year == page.fields.year or year in page.fields.also],
        ideas=[idea for idea in reference.concepts.values() if year in idea.grows],
    )
    name = "Reception" if year == 0 else f"Year {year}"
    return Rendered(source, name, limits.says, html, "year")


def draw_years(site: Site) -> Rendered:
    """The list of years."""
    sessions = site.collection.of_kind(Session)
    counted = [
        (limits, sum(page.fields.year == limits.year for page in sessions))
        for limits in site.collection.reference.years.values()
    ]
    html = site.draw("years.html", LISTS["years"], years=counted)
    return Rendered(LISTS["years"], "Years", "What each school year in England meets.", html, "list")


def concept_counts(site: Site) -> Mapping[str, int]:
    """How many sessions and home activities each concept has, those with none left out."""
    counts = {c: len(sessions_with(site, c)) + len(homes_with(site, c)) for c in site.collection.reference.concepts}
    return {concept: count for concept, count in counts.items() if count}
