"""What every page is drawn from: the collection, its coverage, the word finder and the templates."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache, cached_property
from pathlib import Path
from typing import Any

import jinja2
from markupsafe import Markup

from ..activities.memory import Memory
from ..activities.on_pages import PageActivities, PageActivity
from ..activities.work_out import WorkedOut
from ..covers.shelves import Question, YearShelf, year_shelves
from ..covers.taught import Coverage, coverage_of
from ..model.address import (
    concept_page,
    coverage_page,
    framework_page,
    link,
    objective_page,
    slug,
    theme_page,
    year_page,
)
from ..model.collection import Collection
from ..model.concept import Concept
from ..model.document import Document
from ..model.fields import year_name
from ..model.generated_pages import FOR_AUTHORS, GeneratedPage
from ..model.imprint import Terms
from ..model.page_fields import PageFields
from ..model.session import Session
from ..model.site_settings import SiteSettings
from ..parse.body import words_of
from .inline import inline
from .quotes import curl
from .spoken import speak
from .word_links import WordFinder

_PAGES = (concept_page, coverage_page, framework_page, objective_page, theme_page, year_page)
"""Where the pages about ideas are, for every template to use by these names."""


def _finished(value: object) -> object:
    """What a template prints, with curled quotation marks: titles and names, of which nothing else is made."""
    return curl(value) if value.__class__ is str else value


@cache
def templates() -> jinja2.Environment:
    """The templates, which stand beside this file."""
    environment = jinja2.Environment(
        loader=jinja2.FileSystemLoader(Path(__file__).parent / "templates"),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_finished,
    )
    environment.filters["year"] = year_name
    environment.filters["slug"] = slug
    environment.filters["words_of"] = words_of
    environment.globals |= {page.__name__: page for page in _PAGES}
    environment.filters["lower_first"] = lambda words: words[:1].lower() + words[1:]
    return environment


@dataclass(frozen=True)
class Rendered:
    """A page ready for its frame."""

    source: str
    title: str
    summary: str
    html: str
    kind: str
    searched: bool = True
    """Whether the text search takes it in."""


@dataclass(frozen=True, slots=True)
class DrawnSection:
    """A section of a page that leads to other pages: its HTML under a heading."""

    anchor: str
    heading: str
    html: Markup


@dataclass(frozen=True, slots=True)
class Print:
    """A sheet to print, as a page offers it."""

    title: str
    says: str
    copies: str
    pages: int
    address: str
    """Of the PDF, from the site's root."""
    preview: str
    """Of the picture of its first page."""


@dataclass(frozen=True)
class Site:
    """The whole site, ready to draw any page of it."""

    collection: Collection
    activities: PageActivities = field(default_factory=dict)
    """Those of every page that is drawn, worked out."""
    memory: Memory[WorkedOut] = field(default_factory=Memory)
    """For examples, which stand on no author's page."""
    prints: Mapping[str, Sequence[Print]] = field(default_factory=dict)
    """By source, the sheets of each page; empty where none are made."""
    settings: SiteSettings = field(default_factory=SiteSettings)

    @property
    def generated(self) -> Sequence[GeneratedPage]:
        """The pages the build makes that are shown: the authors' guide only where it is."""
        made = self.collection.generated
        return made if self.settings.authors_guide else [page for page in made if page.source not in FOR_AUTHORS]

    def address(self, target: str, here: str) -> str:
        """The full address of a source where the site's own is known, else a link to it from the page ``here``."""
        return self.settings.full_address(target) if self.settings.url else link(target, here)

    def terms(self, source: str) -> Terms:
        """What may be done with a page, by its source: a book's own licence goes before the collection's."""
        licence = self.collection.reference.imprint.licence
        folder, _, rest = source.partition("/")
        book = self.collection.books.get(rest.partition("/")[0]) if folder == "books" else None
        if book is not None and book.fields.licence is not None:
            return book.fields.licence.terms
        return licence.terms

    def activities_of(self, page: Document[PageFields]) -> tuple[PageActivity, ...]:
        """The activities of a page in its order, as far as they could be worked out."""
        return self.activities[page.path]

    @cached_property
    def coverage(self) -> Coverage:
        """Which sessions teach what."""
        return coverage_of(self.collection.of_kind(Session), self.collection.reference)

    @cached_property
    def shelves(self) -> Mapping[Question, YearShelf]:
        """The shortest shelf for each framework and year."""
        return year_shelves(self.collection)

    @cached_property
    def ideas_of(self) -> Mapping[tuple[str, str], list[Concept]]:
        """The concepts an objective teaches, by framework and code."""
        ideas: dict[tuple[str, str], list[Concept]] = {}
        for concept in self.collection.reference.concepts.values():
            for framework, codes in concept.objectives.items():
                for code in codes:
                    ideas.setdefault((framework, code), []).append(concept)
        return ideas

    @cached_property
    def words(self) -> WordFinder:
        """The finder for the whole word bank."""
        return WordFinder.of(self.collection.reference.words.values())

    def tools(self, source: str) -> Mapping[str, Any]:
        """What every template may use: links and words from where its page stands, and all there is to show."""
        return {
            "to": lambda target: link(target, source),
            "text": lambda words: inline(words, source),
            "site": self,
            "reference": self.collection.reference,
            "prints": self.prints.get(source, ()),
        }

    def draw(self, template: str, source: str, **values: Any) -> str:
        """A template filled for the page made of ``source``, with its maths named for those who hear it."""
        return speak(self._fill(template, source, values))

    def fill(self, template: str, source: str, **values: Any) -> Markup:
        """A template filled that is a part of the page made of ``source``."""
        return Markup(self._fill(template, source, values))

    def _fill(self, template: str, source: str, values: Mapping[str, Any]) -> str:
        return templates().get_template(template).render(**self.tools(source), **values)

    def draw_with_words(self, template: str, source: str, **values: Any) -> str:
        """As ``draw``, with the words of the word bank linked and their meanings at the foot."""
        html, found = self.words.mark(self.draw(template, source, **values))
        return html + self.draw("meanings.html", source, found=found) if found else html
