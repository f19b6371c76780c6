"""Answers for a page of their own on paper: of the page's own year, each under its title, without folds."""

from __future__ import annotations

import re

from project import all_activities, collection
from storymaths.activities.memory import Memory
from storymaths.model.session import Session
from storymaths.render.answers_apart import draw_answers_apart
from storymaths.render.site import Site


def test_each_answer_stands_under_its_title_without_its_fold() -> None:
    whole = collection()
    activities = all_activities()
    site = Site(whole, activities, Memory())
    for page in whole.of_kind(Session):
        apart = draw_answers_apart(site, page)
        titles = [found.worked.fields.title for found in activities[page.path] if found.worked.fields]
        assert [one.replace("&#39;", "’") for one in re.findall("<h3>(.*?)</h3>", apart)] == [
            *(title.replace("'", "’") for title in titles),
            "A question to end on",
        ]
        for found in activities[page.path]:
            assert found.worked.solution is not None
            assert apart.count('class="answer-says"') >= len(found.worked.solution.answers)
        own = sum(len(found.worked.solution.answers) for found in activities[page.path] if found.worked.solution)
        assert apart.count('class="answer-says"') == own, "the versions for other years stay on the screen"
        assert "<details" not in apart
        assert " id=" not in apart
