"""Where to look when a page without problems cannot be drawn, printed or shown all the same."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace

from ..check.program_fault import as_problem
from ..model.problem import ProblemsFound
from ..render.site import Site


@contextmanager
def telling_where(site: Site, path: str, draw: Callable[[Site], object]) -> Iterator[None]:
    """What fails inside, on what is drawn of the page at ``path`` as ``draw`` does, is raised as ``ProblemsFound``.

    Its place is the activity without which it can be drawn, if there is one. Errors of the disk are let through.
    """
    try:
        yield
    except (OSError, ProblemsFound):
        raise
    except Exception as error:
        raise ProblemsFound([as_problem(error, path, _line_of_culprit(site, path, draw))]) from error


def _line_of_culprit(site: Site, path: str, draw: Callable[[Site], object]) -> int:
    activities = site.activities.get(path, ())
    for at, one in enumerate(activities):
        without = (*activities[:at], *activities[at + 1 :])
        try:
            draw(replace(site, activities={**site.activities, path: without}))
        except Exception:
            continue
        return one.place.line
    return 1
