"""Answers for a page of their own on paper."""

from __future__ import annotations

from storymaths.render.answers_apart import answers_apart


def test_each_answer_stands_under_its_heading_without_its_fold() -> None:
    html = (
        "<h2>Look for</h2><h3 id='q'>A question</h3>"
        '<details class="answer"><summary>The answer</summary><p id="it">Beaver &amp; Snail.</p></details>'
    )
    apart = answers_apart(html, "Who < what?")
    assert "<h2>Answers: Who &lt; what?</h2>" in apart
    assert "<h3>A question</h3><p>Beaver &amp; Snail.</p>" in apart
    assert "summary" not in apart
    assert "id=" not in apart


def test_of_versions_for_several_years_the_pages_own_is_printed() -> None:
    html = "<h4>Level</h4>" + "".join(
        f'<div class="{kind}" data-year="{n}"><details class="answers"><summary>All</summary><p>{n}</p></details></div>'
        for n, kind in ((1, "version"), (2, "version own"), (3, "version"))
    )
    assert "<ol><li><h3>Level</h3><p>2</p></li></ol>" in answers_apart(html, "Rides")


def test_a_page_without_answers_has_no_such_page() -> None:
    assert answers_apart("<h2>Look for</h2><details><summary>More</summary></details>", "A page") == ""
