"""Pages the build makes, in schema.org's words: terms, sets of terms, and lists."""

from __future__ import annotations

from typing import assert_never

from ...model.concept import Concept, Theme
from ...model.generated_pages import (
    ClassScreen,
    CodedObjective,
    ForGovernors,
    GuideToKind,
    SinglePage,
    Subject,
    YearCovered,
)
from ...model.objective import Framework
from ...model.year import YearLimits
from ...parse.body import words_of
from ...render.site import Rendered, Site
from ..open_data.files import open_files
from ..page_kinds.table import PAGE_KINDS
from .node import At, Node, licensed, work
from .terms import concept_term, framework_set, objective_term, term_set, theme_term, told, year_term

_SETS = ("concepts", "themes", "years", "words")
"""Lists whose entries are terms with a meaning."""


def describe_web_page(page: Rendered, site: Site, at: At) -> Node:
    """Any other page the build makes."""
    node = work("WebPage", page.source, page.title, page.summary, at)
    return {**node, **licensed(site, page.source, at)}


def _whole_site(page: Rendered, site: Site, at: At) -> Node:
    node = work("WebSite", page.source, site.settings.name or page.title, site.settings.says or page.summary, at)
    return {**node, **licensed(site, page.source, at)}


def _gathering(name: str, page: Rendered, site: Site, at: At) -> Node:
    parts = [
        {"@type": kind.linked_data.type, "@id": at(document.source), "name": words_of(document.fields.title)}
        for kind in PAGE_KINDS.values()
        if name in kind.linked_data.lists
        for document in site.collection.of_kind(kind.schema)
    ]
    node = describe_web_page(page, site, at) | {"@type": "CollectionPage"}
    return node | ({"hasPart": parts} if parts else {})


def _set(page: Rendered, site: Site, at: At) -> Node:
    return term_set(page.source, page.title, page.summary, at) | licensed(site, page.source, at)


def _downloads(page: Rendered, site: Site, at: At) -> Node:
    return describe_web_page(page, site, at) | {
        "@type": "DataCatalog",
        "dataset": [
            {
                "@type": "Dataset",
                "name": file.name,
                "description": file.says,
                "inLanguage": site.settings.language,
                **licensed(site, page.source, at),
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


def _single(name: str, page: Rendered, site: Site, at: At) -> Node:
    if name in _SETS:
        return _set(page, site, at)
    if any(name in kind.linked_data.lists for kind in PAGE_KINDS.values()):
        return _gathering(name, page, site, at)
    if name == "front":
        return _whole_site(page, site, at)
    return _downloads(page, site, at) if name == "open-data" else describe_web_page(page, site, at)


def describe_generated(about: Subject, page: Rendered, site: Site, at: At) -> Node:
    """A page the build makes, by what it is about."""
    match about:
        case Concept():
            return told(concept_term(about, at), about.says)
        case Theme():
            return told(theme_term(about, at), about.says)
        case YearLimits():
            return told(year_term(about.year, at), about.says)
        case Framework():
            return framework_set(about, at)
        case CodedObjective(framework, objective):
            term = objective_term(framework, objective, at)
            return term | {"url": term["@id"]}  # its name says it all
        case SinglePage(name):
            return _single(name, page, site, at)
        case ClassScreen() | ForGovernors() | GuideToKind() | YearCovered():
            return describe_web_page(page, site, at)
        case _:
            assert_never(about)
