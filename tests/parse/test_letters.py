"""Signs that mislead, typed or spelt as HTML has it: what is told, where, and what is left alone."""

from __future__ import annotations

import pytest
from project import PROJECT, problems_with, reference, text_of
from storymaths.activities.on_pages import work_out_pages
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.parse.collection import read_page
from storymaths.parse.letters import faults_in_letters
from storymaths.parse.reference import ReferenceBroken, read_reference
from storymaths.render.activity import body_with_activities
from storymaths.render.site import Site

PAGE = "books/cliff-house-lift/session-2.md"


@pytest.mark.parametrize(
    ("words", "at", "says"),
    [
        ("six \u202e bricks", "\u202e", "U+202E"),
        ("six &#x202e; bricks", "&#x", "U+202E"),
        ("six &#8238; bricks", "&#8", "U+202E"),
        ("six &#x202E bricks", "&#x", "U+202E"),
        ("mi&shy;nus", "&shy;", "U+00AD"),
        ("mi&zwnj;nus", "&zwnj;", "U+200C"),
        ("mi&ZeroWidthSpace;nus", "&Zero", "U+200B"),
        ("&lrm;six", "&lrm;", "U+200E"),
        ("&#xE000;0&#xE001;", "&#xE000;", "U+E000"),
        ("equ&#x430;l", "&#x430;", "U+0430"),
        ("e&#113;u&#97;&#x43e;", "&#x43e;", "U+043E"),
        ("9 + 4 \uff1d 14", "\uff1d", "U+FF1D"),
        ("9 + 4 = \uff11\uff14", "\uff11", "U+FF11"),
        ("cafe&#x301;", "e&#x301;", "two signs"),
        ("six &#27; bricks", "&#27;", "U+001B"),
        ("six &#0; bricks", "&#0;", "U+FFFD"),
        ("a &amp; b &nbsp; c &shy; d", "&shy;", "U+00AD"),
    ],
)
def test_a_sign_is_told_where_it_stands(words: str, at: str, says: str) -> None:
    fault = next(faults_in_letters("a.md", words))
    assert says in fault.detail
    place = words.index(at) + (1 if at.startswith("e&") else 0)
    assert fault.place.column in (place, place + 1)


@pytest.mark.parametrize(
    "words",
    ["6 &lt; 7 &amp; 8", "&frac12; of &pound;4", "6&nbsp;cm", "R&D; AT&T", "caf&eacute;", "&#x2212;", "می\u200cخواهم"],
)
def test_these_are_left_alone(words: str) -> None:
    assert list(faults_in_letters("a.md", words)) == []


def test_one_spelt_in_yaml_and_again_as_html_is_told() -> None:
    title = text_of(PAGE).replace("title: Who is worth Camel?", 'title: "Who is worth \\x26#x202e;Camel?"')
    (problem,) = problems_with({PAGE: title})
    assert problem.rule == "letter-misleading"
    assert problem.place.line == 4


def test_site_data_holds_none(tmp_path) -> None:  # type: ignore[no-untyped-def]
    own = tmp_path / "site_data"
    own.mkdir()
    site = (PROJECT / "site_data/site.yaml").read_text("utf-8")
    for written in ("Wind \u202e", "Wind &shy;", '"Wind \\u202e"'):
        (own / "site.yaml").write_text(site, encoding="utf-8")
        (own / "themes.yaml").write_text(f"themes:\n  - {{id: kites, name: {written}, says: W.}}\n", encoding="utf-8")
        with pytest.raises(ReferenceBroken, match=r"themes\.yaml:2.*is not seen"):
            read_reference(tmp_path)


def drawn(marks: str) -> str:
    """The body of a page with three activities that ask for ``marks``, and a picture of them."""
    one = f"```maths\nkind: bonds\ntitle: A %s\nwhole: 7\nparts: 2\nask: '{marks} Find all.'\n```\n"
    picture = f'![{marks}](page-1.svg "{marks} <b>x</b>")\n\n'
    text = text_of(PAGE) + picture + "".join(one % n for n in range(3))
    page = read_page(f"content/{PAGE}", text.encode(), reference().limits.files)
    assert isinstance(page, Document)
    assert any(fault.kind == "letter" for fault in page.faults) == bool(marks)
    whole = Collection((page,), (), frozenset(), reference())
    return body_with_activities(Site(whole, work_out_pages(whole)), page, PAGE)


def test_marks_in_a_text_are_words_and_never_a_part_of_the_page() -> None:
    """Private signs once stood for activities: thirty of each in three activities made 74 MB of page out of 12 kB."""
    marks = "".join(f"&#xE000;{n}&#xE001;" for n in range(4)) * 8
    plain, marked = drawn(""), drawn(marks)
    assert marked.count("<section") == plain.count("<section") > 0
    assert len(marked) < len(plain) + 10 * len(marks)
    assert "&lt;b&gt;x&lt;/b&gt;" in marked
