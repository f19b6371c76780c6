"""The answers of a session gathered on a page of their own, for print only: a fold does not open on paper."""

from __future__ import annotations

from ..model.document import Document
from ..model.session import Session
from .activity import draw_figure
from .site import Site


def draw_answers_apart(site: Site, page: Document[Session]) -> str:
    """The answers under the titles of their activities, then that of the question to end on.

    Screens hide the section, and print hides the folds it repeats. Of an activity's versions for several years only
    the page's own is printed, and so are only its answers.
    """
    worked = [found.worked for found in site.activities_of(page)]
    solved = [(one.fields.title, one.solution) for one in worked if one.fields and one.solution]
    return site.draw("answers_apart.html", page.source, session=page.fields, solved=solved, figure=draw_figure)
