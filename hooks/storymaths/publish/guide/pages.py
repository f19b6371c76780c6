"""The pages of the authors' guide."""

from __future__ import annotations

from ...activities.rules import every_rule
from ...model.address import LISTS, guide_page
from ...model.page_schemas import SCHEMAS
from ...render.site import Rendered, Site
from ..page_kinds.kind import NotListed
from ..page_kinds.table import PAGE_KINDS
from .fields import example_page, examples_of, fields_of
from .names import name_lists

COMMONEST = (
    "front-matter-broken", "field-missing", "field-unknown", "field-mistyped", "text-cut", "starter-unfilled",
    "word-unknown", "material-unknown", "concept-unknown", "minutes-do-not-add", "step-without-section",
    "page-outside-book", "activity-claim-wrong", "caution-missing", "link-broken",
)  # fmt: skip
"""The rules that authors meet most, as those did who tried; common practice, no source."""
_KIND = "guide"


def draw_guide(site: Site) -> Rendered:
    """How pages are written, shared and mended."""
    kinds = [(guide_page(name), PAGE_KINDS[name].names.one) for name in SCHEMAS]
    return _drawn(
        site,
        "guide.html",
        "guide",
        "Authors’ guide",
        "How to write pages, and what to do when something is wrong.",
        kinds=kinds,
    )


def draw_guide_names(site: Site) -> Rendered:
    """Every name that can be written, to search and copy."""
    lists = list(name_lists(site.collection.reference))
    summary = "Every concept, theme, material, caution, word and objective, as you write it."
    return _drawn(site, "guide_names.html", "guide-names", "Names to copy", summary, lists=lists)


def draw_guide_problems(site: Site) -> Rendered:
    """The commonest problems and how each is mended."""
    rules = every_rule()
    summary = "The fifteen commonest problems, and how each is mended."
    commonest = [rules[name] for name in COMMONEST]
    return _drawn(site, "guide_problems.html", "guide-problems", "When something is wrong", summary, rules=commonest)


def draw_guide_kind(site: Site, kind: str) -> Rendered:
    """Every field of a kind of page, with a finished example."""
    source, row = guide_page(kind), PAGE_KINDS[kind]
    title = f"Every field of a {row.names.one}"
    html = site.draw(
        "guide_fields.html",
        source,
        title=title,
        kind=kind,
        names=row.names,
        can_be_started=not isinstance(row.starter, NotListed),
        fields=list(fields_of(SCHEMAS[kind])),
        examples=examples_of(kind),
        whole=example_page(kind).strip(),
    )
    return Rendered(source, title, "What each field is for, with an example.", html, _KIND, searched=False)


def _drawn(site: Site, template: str, name: str, title: str, summary: str, **values: object) -> Rendered:
    html = site.draw(template, LISTS[name], title=title, summary=summary, **values)
    return Rendered(LISTS[name], title, summary, html, _KIND, searched=False)
