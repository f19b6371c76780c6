"""How each page the build makes itself is drawn; each only when asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from typing import assert_never

from ..model.concept import Concept, Theme
from ..model.generated_pages import (
    ClassScreen,
    CodedObjective,
    ForGovernors,
    GuideToKind,
    SinglePage,
    Subject,
    YearCovered,
)
from ..model.objective import Framework
from ..model.year import YearLimits
from ..render.screens.pages import draw_screen
from ..render.site import Rendered, Site
from . import (
    about_pages,
    coverage_pages,
    gallery,
    governors_pages,
    idea_pages,
    list_pages,
    objective_pages,
    open_data_pages,
    shelf_page,
)
from .guide import pages as guide_pages

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
    "screen-to-try": gallery.draw_examples_to_try,
    "guide": guide_pages.draw_guide,
    "guide-names": guide_pages.draw_guide_names,
    "guide-problems": guide_pages.draw_guide_problems,
    "catalogue": open_data_pages.draw_catalogue,
    "open-data": open_data_pages.draw_open_data,
    "front": about_pages.draw_front,
    "credits": about_pages.draw_credits,
    "access": about_pages.draw_access,
}


def generated(site: Site) -> Mapping[str, Callable[[], Rendered]]:
    """How to draw each generated page, by its source inside ``content/``."""
    return {page.source: partial(_draw, site, page.about) for page in site.generated}


def _draw(site: Site, about: Subject) -> Rendered:
    match about:
        case SinglePage(name):
            return _ONE_OF_EACH[name](site)
        case GuideToKind(kind):
            return guide_pages.draw_guide_kind(site, kind)
        case ClassScreen(session):
            return draw_screen(site, session)
        case ForGovernors(series):
            return governors_pages.draw_series_governors(site, series)
        case YearCovered(limits):
            return coverage_pages.draw_coverage_year(site, limits)
        case CodedObjective(framework, objective):
            return objective_pages.draw_objective(site, framework, objective)
        case Concept():
            return idea_pages.draw_concept(site, about)
        case Theme():
            return idea_pages.draw_theme(site, about)
        case YearLimits():
            return idea_pages.draw_year(site, about)
        case Framework():
            return objective_pages.draw_framework(site, about)
        case _:
            assert_never(about)
