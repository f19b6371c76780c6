"""Pages about objectives: each one, each framework's table, and the list of frameworks."""

from __future__ import annotations

from ..model.address import LISTS, framework_page, objective_page
from ..model.objective import Framework, Objective
from ..render.site import Rendered, Site


def draw_objective(site: Site, framework: Framework, objective: Objective) -> Rendered:
    """What an objective says in our words, and every session that teaches, revisits or bends to it."""
    source, key = objective_page(framework.id, objective.code), (framework.id, objective.code)
    html = site.draw(
        "objective.html",
        source,
        framework=framework,
        objective=objective,
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
    rows: dict[int, list[tuple[Objective, int, int, int]]] = {}
    for objective in framework.objectives:
        key = (framework.id, objective.code)
        counts = (
            len(which.get(key, ())) for which in (site.coverage.taught, site.coverage.revisited, site.coverage.bent)
        )
        taught, again, bent = counts
        rows.setdefault(objective.year, []).append((objective, taught, again, bent))
    html = site.draw("framework.html", source, framework=framework, years=sorted(rows.items()))
    return Rendered(source, framework.name, f"{framework.name}: codes, and what teaches them.", html, "list")


def draw_objectives(site: Site) -> Rendered:
    """The list of frameworks."""
    frameworks = [
        (framework, sum(name == framework.id for name, _ in site.coverage.taught))
        for framework in site.collection.reference.frameworks.values()
    ]
    html = site.draw("objectives.html", LISTS["objectives"], frameworks=frameworks)
    return Rendered(LISTS["objectives"], "Objectives", "The published codes, and what teaches them.", html, "list")
