"""Pages about ideas: each concept, theme and year, and the lists of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping

from ..model.address import LISTS, concept_page, theme_page, year_page
from ..model.book import Book
from ..model.concept import Concept, Theme
from ..model.document import Document
from ..model.fields import Claim
from ..model.session import Session
from ..model.year import YearLimits
from ..render.objectives import ShownObjective, shown
from ..render.site import Rendered, Site
from .sections import names_theme, on_concept, on_theme, on_year, things_to_do


def draw_concept(site: Site, idea: Concept) -> Rendered:
    """What a concept is, how it grows, and where it is taught."""
    reference, source = site.collection.reference, concept_page(idea.id)
    by_year: dict[int, list[ShownObjective]] = {}
    whole = {framework: [Claim(code) for code in codes] for framework, codes in idea.objectives.items()}
    for item in shown(whole, reference):
        by_year.setdefault(item.objective.year, []).append(item)
    html = site.draw(
        "concept.html",
        source,
        idea=idea,
        wider=reference.concepts.get(idea.under) if idea.under else None,
        narrower=[other for other in reference.concepts.values() if other.under == idea.id],
        sections=on_concept(site, source, idea.id, teaches=True),
        beside=on_concept(site, source, idea.id, teaches=False),
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
    return [page for page in site.collection.books.values() if names_theme(page, theme)]


def draw_theme(site: Site, theme: Theme) -> Rendered:
    """The pages with a theme."""
    source = theme_page(theme.id)
    html = site.draw("theme.html", source, theme=theme, sections=on_theme(site, source, theme.id))
    return Rendered(source, theme.name, theme.says, html, "theme")


def draw_themes(site: Site) -> Rendered:
    """The list of themes."""
    counted = [(theme, len(books_about(site, theme.id))) for theme in site.collection.reference.themes.values()]
    html = site.draw("themes.html", LISTS["themes"], themes=sorted(counted, key=lambda pair: pair[0].name))
    return Rendered(LISTS["themes"], "Themes", "What the stories are about, apart from their maths.", html, "list")


def draw_year(site: Site, limits: YearLimits) -> Rendered:
    """What a year meets and what the collection has for it."""
    source, year, reference = year_page(limits.year), limits.year, site.collection.reference
    html = site.draw(
        "year.html",
        source,
        limits=limits,
        sections=on_year(site, source, year),
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
    """How many pages teach each concept, those that none teaches left out."""
    counts = Counter(concept for page in things_to_do(site) for concept in page.concepts)
    return {concept: counts[concept] for concept in site.collection.reference.concepts if counts[concept]}
