"""Pages of words, and pages the build makes: terms, sets of terms, lists, and the site itself."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial

from ...model.address import LISTS, concept_page, framework_page, objective_page, theme_page, year_page
from ...model.book import Book
from ...model.concept import Concept, Theme
from ...model.document import Document
from ...model.home import Home
from ...model.objective import Framework, Objective
from ...model.page import Page
from ...model.series import Series
from ...model.session import Session
from ...model.site_settings import FRONT
from ...model.year import YearLimits
from ...render.inline import plain
from ...render.site import Rendered, Site
from ..open_data.files import open_files
from .lessons import RESOURCE
from .node import LANGUAGE, At, Node, dated, licensed, work
from .terms import concept_term, framework_set, objective_term, term_set, theme_term, told, year_term

Describe = Callable[[Rendered, Site, At], Node]
_SETS = ("concepts", "themes", "years", "words")
"""Lists whose entries are terms with a meaning."""
_GATHERED: Mapping[str, tuple[type[Book] | type[Home] | type[Series] | type[Session], ...]] = {
    "books": (Book,),
    "at-home": (Home,),
    "series": (Series,),
    "catalogue": (Book, Session, Home),
}
"""Lists of written pages, and which."""
_AS: Mapping[type, str] = {
    Book: "CollectionPage",
    Home: RESOURCE,
    Session: RESOURCE,
    Series: "CreativeWorkSeries",
}


def describe_plain(page: Document[Page], site: Site, at: At) -> Node:
    """A page of words; the front page stands for the whole site."""
    source, fields, imprint = page.source, page.fields, site.collection.reference.imprint
    if source == FRONT:
        node = work("WebSite", source, site.settings.name or fields.title, site.settings.says or fields.summary, at)
    else:
        node = work("WebPage", source, fields.title, fields.summary, at)
    return {**node, **licensed(imprint), **dated(fields.published, fields.updated)}


def describe_web_page(page: Rendered, site: Site, at: At) -> Node:
    """Any other page the build makes."""
    node = work("WebPage", page.source, page.title, page.summary, at)
    return {**node, **licensed(site.collection.reference.imprint)}


def _gathering(name: str, page: Rendered, site: Site, at: At) -> Node:
    parts = [
        {"@type": _AS[kind], "@id": at(document.source), "name": plain(document.fields.title)}
        for kind in _GATHERED[name]
        for document in site.collection.of_kind(kind)
    ]
    node = describe_web_page(page, site, at) | {"@type": "CollectionPage"}
    return node | ({"hasPart": parts} if parts else {})


def _set(page: Rendered, site: Site, at: At) -> Node:
    return term_set(page.source, page.title, page.summary, at) | licensed(site.collection.reference.imprint)


def _downloads(page: Rendered, site: Site, at: At) -> Node:
    imprint = site.collection.reference.imprint
    return describe_web_page(page, site, at) | {
        "@type": "DataCatalog",
        "dataset": [
            {
                "@type": "Dataset",
                "name": file.name,
                "description": file.says,
                "inLanguage": LANGUAGE,
                **licensed(imprint),
                "distribution": {
                    "@type": "DataDownload",
                    "contentUrl": at(file.address),
                    "encodingFormat": file.media_type,
                },
            }
            for file in open_files(site)
            if file.is_data
        ],
    }


def _concept(concept: Concept, page: Rendered, site: Site, at: At) -> Node:
    return told(concept_term(concept, at), concept.says)


def _theme(theme: Theme, page: Rendered, site: Site, at: At) -> Node:
    return told(theme_term(theme, at), theme.says)


def _year(limits: YearLimits, page: Rendered, site: Site, at: At) -> Node:
    return told(year_term(limits.year, at), limits.says)


def _framework(framework: Framework, page: Rendered, site: Site, at: At) -> Node:
    return framework_set(framework, at)


def _objective(framework: Framework, objective: Objective, page: Rendered, site: Site, at: At) -> Node:
    term = objective_term(framework, objective, at)
    return term | {"url": term["@id"]}  # its name says it all


def describers(site: Site) -> Mapping[str, Describe]:
    """How to describe each page the build makes, by its source; one that is not named is a web page."""
    reference = site.collection.reference
    found: dict[str, Describe] = {LISTS[name]: _set for name in _SETS}
    found |= {LISTS[name]: partial(_gathering, name) for name in _GATHERED}
    found[LISTS["open-data"]] = _downloads
    found |= {concept_page(concept.id): partial(_concept, concept) for concept in reference.concepts.values()}
    found |= {theme_page(theme.id): partial(_theme, theme) for theme in reference.themes.values()}
    found |= {year_page(limits.year): partial(_year, limits) for limits in reference.years.values()}
    for framework in reference.frameworks.values():
        found[framework_page(framework.id)] = partial(_framework, framework)
        for objective in framework.objectives:
            page = objective_page(framework.id, objective.code)
            found[page] = partial(_objective, framework, objective)
    return found
