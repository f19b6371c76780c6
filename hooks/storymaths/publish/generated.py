"""Every page the build makes itself, by its source; each is drawn only when asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from ..model.address import (
    LISTS,
    SCREEN_TO_TRY,
    concept_page,
    coverage_page,
    framework_page,
    governors_page,
    objective_page,
    screen_page,
    theme_page,
    year_page,
)
from ..model.series import Series
from ..model.session import Session
from ..render.screens.pages import draw_screen
from ..render.site import Rendered, Site
from . import (
    coverage_pages,
    gallery,
    governors_pages,
    idea_pages,
    list_pages,
    objective_pages,
    open_data_pages,
    shelf_page,
)

_ONE_OF_EACH: Mapping[str, Callable[[Site], Rendered]] = {
    "find": list_pages.draw_find,
    "plan": list_pages.draw_plan,
    "books": list_pages.draw_books,
    "at-home": list_pages.draw_at_home,
    "series": list_pages.draw_series_list,
    "concepts": idea_pages.draw_concepts,
    "themes": idea_pages.draw_themes,
    "years": idea_pages.draw_years,
    "objectives": objective_pages.draw_objectives,
    "coverage": coverage_pages.draw_coverage,
    "governors": governors_pages.draw_governors,
    "shelf": shelf_page.draw_shelf,
    "words": list_pages.draw_words,
    "materials": list_pages.draw_materials,
    "safety": list_pages.draw_safety,
    "checked": list_pages.draw_checked,
    "gallery": gallery.draw_gallery,
    "catalogue": open_data_pages.draw_catalogue,
    "open-data": open_data_pages.draw_open_data,
}


def generated(site: Site) -> Mapping[str, Callable[[], Rendered]]:
    """How to draw each generated page, by its source inside ``content/``."""
    reference = site.collection.reference
    pages: dict[str, Callable[[], Rendered]] = {LISTS[name]: partial(draw, site) for name, draw in _ONE_OF_EACH.items()}
    pages[SCREEN_TO_TRY] = partial(gallery.draw_examples_to_try, site)
    for session in site.collection.of_kind(Session):
        pages[screen_page(session.source)] = partial(draw_screen, site, session)
    for concept in reference.concepts.values():
        pages[concept_page(concept.id)] = partial(idea_pages.draw_concept, site, concept)
    for theme in reference.themes.values():
        pages[theme_page(theme.id)] = partial(idea_pages.draw_theme, site, theme)
    for limits in reference.years.values():
        pages[year_page(limits.year)] = partial(idea_pages.draw_year, site, limits)
        pages[coverage_page(limits.year)] = partial(coverage_pages.draw_coverage_year, site, limits)
    for series in site.collection.of_kind(Series):
        page = governors_page(series.source)
        pages[page] = partial(governors_pages.draw_series_governors, site, series)
    for framework in reference.frameworks.values():
        pages[framework_page(framework.id)] = partial(objective_pages.draw_framework, site, framework)
        for objective in framework.objectives:
            page = objective_page(framework.id, objective.code)
            pages[page] = partial(objective_pages.draw_objective, site, framework, objective)
    return pages
