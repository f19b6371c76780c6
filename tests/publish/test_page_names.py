"""What tabs and searches elsewhere are told of a page: its years, its ideas and its books, whichever kind it is of."""

from __future__ import annotations

import re

from project import collection
from storymaths.model.any_book import AnyBook
from storymaths.model.book import Book
from storymaths.model.concept import Concept
from storymaths.model.home import Home
from storymaths.model.series import Series
from storymaths.model.session import Session
from storymaths.publish.page_frame import Drawn, PageFrame
from storymaths.publish.page_names import about_of
from storymaths.render.site import Rendered

WHOLE = collection()
WRITTEN = [page for page in WHOLE.documents if isinstance(page.fields, AnyBook | Book | Home | Series | Session)]
TAUGHT = {idea for page in WHOLE.of_kind(Session) for idea in page.fields.concepts}
IDEAS = [page.about for page in WHOLE.generated if isinstance(page.about, Concept) and page.about.id in TAUGHT]
YEAR = re.compile(r"\b(Reception|Year [1-6])\b")
"""What schools in England call the years to eleven: Department for Education, "The national curriculum" on gov.uk (from memory)."""


def test_every_lesson_book_series_and_idea_tells_its_year_idea_and_book() -> None:
    titles = {page.fields.title for page in WHOLE.of_kind(Book)} | {"any picture book"}
    names = {idea.name for idea in WHOLE.reference.concepts.values()}
    for subject in [*WRITTEN, *IDEAS]:
        own = subject.name if isinstance(subject, Concept) else subject.fields.title
        page, about = Rendered("x.md", own, "What it is.", "", "page"), about_of(WHOLE, subject)
        for said in (about.title_of(page), about.description_of(page)):
            assert YEAR.search(said), said
            assert any(name in said for name in names), said
            assert any(title in said for title in titles) or re.search(r"\d picture books", said), said
        assert about.title_of(page).startswith(own)
        assert about.description_of(page).endswith("What it is.")


def test_the_frame_says_it_in_its_head() -> None:
    page = next(page for page in WRITTEN if isinstance(page.fields, Session))
    about = about_of(WHOLE, page)
    frame = PageFrame(WHOLE.reference.site, serving=False)
    html = frame.put_around(Drawn(Rendered("x.md", "One & all", "What it is.", "", "page"), "", False, about=about))
    year, book = f"Year {page.fields.best_year}", WHOLE.books[page.fields.book_at(page.path) or ""].fields.title
    assert re.search(rf"<title>One &amp; all · {year} · .*{re.escape(book)} · ", html)
    assert re.search(rf'<meta name="description" content="{year}.*{re.escape(book)}\. What it is\."', html)
