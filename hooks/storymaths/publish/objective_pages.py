"""Pages about objectives: each one, each framework's table, and the list of frameworks."""

from __future__ import annotations

from collections import Counter

from ..covers.table import year_table
from ..model.address import LISTS, framework_page, objective_page
from ..model.objective import Framework, Objective
from ..render.coverage_part import with_its_book
from ..render.session_links import SessionLinks
from ..render.site import Rendered, Site


def draw_objective(site: Site, framework: Framework, objective: Objective) -> Rendered:
    """What an objective says in our words, and every session that teaches, revisits or bends to it."""
    source, key = objective_page(framework.id, objective.code), (framework.id, objective.code)
    html = site.draw(
        "objective.html",
        source,
        framework=framework,
        objective=objective,
        here=source,
        how=site.coverage.how(key),
        missing=site.coverage.missing.get(key, ()),
        by_part=site.coverage.parts.get(key, {}),
        sessions_in=SessionLinks(source, with_its_book(site)),
        taught=site.coverage.taught.get(key, []),
        revisited=site.coverage.revisited.get(key, []),
        bent=site.coverage.bent.get(key, []),
        ideas=site.ideas_of.get(key, []),
    )
    title = f"{objective.code}: {objective.says}"
    return Rendered(source, title, f"{framework.short_name}, {objective.says}", html, "objective", searched=False)


def draw_framework(site: Site, framework: Framework) -> Rendered:
    """A framework's objectives by year, with how many sessions teach each."""
    source = framework_page(framework.id)
    tables = [
        year_table(site.coverage, site.collection.reference, framework, year)
        for year in sorted({objective.year for objective in framework.objectives})
    ]
    html = site.draw("framework.html", source, framework=framework, tables=tables)
    return Rendered(source, framework.name, f"{framework.name}: codes, and what teaches them.", html, "list")


def draw_objectives(site: Site) -> Rendered:
    """The list of frameworks."""
    coverage = site.coverage
    frameworks = [
        (framework, Counter(coverage.how(key) for key in coverage.taught if key[0] == framework.id))
        for framework in site.collection.reference.frameworks.values()
    ]
    html = site.draw("objectives.html", LISTS["objectives"], frameworks=frameworks)
    return Rendered(LISTS["objectives"], "Objectives", "The published codes, and what teaches them.", html, "list")
