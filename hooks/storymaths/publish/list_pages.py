"""Pages there is one of: find, books, at home, series, words, materials, safety, how it is checked."""

from __future__ import annotations

from itertools import groupby

from ..activities.rules import every_rule
from ..model.address import LISTS
from ..model.any_book import AnyBook
from ..model.document import Document
from ..model.fields import YEARS
from ..model.series import Series
from ..model.session import Session
from ..render.site import Rendered, Site
from .idea_pages import books_about, concept_counts
from .ideas import kinds_found
from .page_kinds.words import listed
from .sections import things_to_do


def draw_find(site: Site) -> Rendered:
    """The finder, and the lists that answer without it."""
    reference, collection = site.collection.reference, site.collection
    meant = [page.fields.best_year for page in things_to_do(site)]
    years = [(year, meant.count(year)) for year in YEARS]
    themes = [(theme, len(books_about(site, theme.id))) for theme in reference.themes.values()]
    summary = f"Every {listed(kind.names.one for kind, _ in kinds_found())}."
    html = site.draw(
        "find.html",
        LISTS["find"],
        summary=summary,
        root=".",
        years=[pair for pair in years if pair[1]],
        concepts=[(reference.concepts[concept], count) for concept, count in concept_counts(site).items()],
        themes=[pair for pair in themes if pair[1]],
        home_count=len(collection.at_home),
    )
    return Rendered(LISTS["find"], "Find an idea", summary, html, "find", searched=False)


def draw_plan(site: Site) -> Rendered:
    """The page that shows a teacher's own plan; the plan itself stays on their device."""
    html = site.draw("plan.html", LISTS["plan"], class_size=site.collection.reference.limits.class_size)
    summary = "The sessions you chose, and what to get ready for all of them."
    return Rendered(LISTS["plan"], "My plan", summary, html, "plan", searched=False)


def draw_books(site: Site) -> Rendered:
    """All books."""
    html = site.draw("books.html", LISTS["books"], books=list(site.collection.books.values()))
    return Rendered(LISTS["books"], "Books", "Picture books with maths in the plot.", html, "list", searched=False)


def draw_at_home(site: Site) -> Rendered:
    """All home activities, by book, with its story where it can be read here."""
    whole = site.collection
    books = [(page, whole.homes_of(book), whole.stories.get(book)) for book, page in whole.books.items()]
    html = site.draw(
        "at_home.html", LISTS["at-home"], books=[pair for pair in books if pair[1]], any_book=whole.of_kind(AnyBook)
    )
    return Rendered(LISTS["at-home"], "At home", "Ten minutes with a book and a child.", html, "list", searched=False)


def draw_series_list(site: Site) -> Rendered:
    """All series."""
    html = site.draw("series_list.html", LISTS["series"], series=site.collection.of_kind(Series))
    return Rendered(LISTS["series"], "Series", "Books in order, for a purpose.", html, "list", searched=False)


def draw_words(site: Site) -> Rendered:
    """The word bank by letter, with the sessions that teach each word."""
    taught: dict[str, list[Document[Session]]] = {}
    for page in site.collection.of_kind(Session):
        for word in page.fields.words.new:
            taught.setdefault(word, []).append(page)
    words = sorted(site.collection.reference.words.values(), key=lambda entry: entry.word.lower())
    letters = [
        (letter, [(word, taught.get(word.word, [])) for word in group])
        for letter, group in groupby(
            words, key=lambda entry: entry.word[0].lower() if entry.word[0].isalpha() else "0–9"
        )
    ]
    html = site.draw("words.html", LISTS["words"], letters=letters)
    return Rendered(LISTS["words"], "Word bank", "The words of the subject, explained to a child.", html, "list")


def draw_materials(site: Site) -> Rendered:
    """Everything the lessons may use."""
    materials = sorted(site.collection.reference.materials.values(), key=lambda material: material.name.lower())
    html = site.draw("materials.html", LISTS["materials"], materials=materials)
    return Rendered(LISTS["materials"], "Materials", "What the lessons use, and what to look out for.", html, "list")


def draw_safety(site: Site) -> Rendered:
    """Every caution with its line, what calls for it, and its source."""
    reference = site.collection.reference
    things: dict[str, list[str]] = {caution: [] for caution in reference.cautions}
    for material in reference.materials.values():
        for risk in material.hazards:
            things[risk].append(material.name)
    html = site.draw("safety.html", LISTS["safety"], cautions=list(reference.cautions.values()), things=things)
    return Rendered(LISTS["safety"], "Safety and care", "What makes a page carry a note.", html, "list")


def draw_checked(site: Site) -> Rendered:
    """Every rule, why it is there and where it comes from."""
    html = site.draw("checked.html", LISTS["checked"], rules=list(every_rule().values()))
    return Rendered(LISTS["checked"], "How these lessons are checked", "Every rule, and why.", html, "list")
