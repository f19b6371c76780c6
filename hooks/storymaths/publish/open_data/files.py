"""The table of open data files: what each is, which standard it keeps, and how it is made."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from ...model.objective import Framework
from ...render.site import Site
from . import catalogue, catalogue_table, curriculum, feed, sitemap
from .catalogue_schema import catalogue_schema

JSON = "application/json"


@dataclass(frozen=True, slots=True)
class OpenFile:
    """A file for other programs."""

    address: str
    """From the site's root."""
    name: str
    says: str
    standard: str
    version: str
    media_type: str
    make: Callable[[], str]
    is_data: bool = True
    """Whether it holds the collection's own data, and not only where things are or what data means."""


def open_files(site: Site) -> list[OpenFile]:
    """Every file there is to offer. Those that cannot be without full addresses wait until the site has one."""
    return [*_catalogues(site), *(_addressed(site) if site.settings.url else [])]


def open_data(site: Site) -> Mapping[str, str]:
    """Each file's address from the site's root, and what is in it."""
    return {file.address: file.make() for file in open_files(site)}


def _catalogues(site: Site) -> list[OpenFile]:
    return [
        OpenFile(
            catalogue.ADDRESS,
            "Catalogue",
            f"Every {catalogue.told_of()}, with years, minutes, ideas, objectives and materials.",
            "JSON, described by the schema below",
            catalogue.FORMAT,
            JSON,
            lambda: _json(catalogue.catalogue(site)),
        ),
        OpenFile(
            catalogue.SCHEMA_ADDRESS,
            "Schema of the catalogue",
            "What each part of the catalogue means, and what may stand in it.",
            "JSON Schema, draft 2020-12",
            catalogue.FORMAT,
            "application/schema+json",
            lambda: _schema(site),
            is_data=False,
        ),
        OpenFile(
            catalogue_table.ADDRESS,
            "Catalogue as a table",
            f"A row for each {catalogue_table.told_of()}, to open in a spreadsheet.",
            "CSV (RFC 4180), UTF-8 with a byte order mark",
            catalogue.FORMAT,
            "text/csv",
            lambda: catalogue_table.catalogue_table(site),
        ),
    ]


def _addressed(site: Site) -> list[OpenFile]:
    frameworks = [it for it in site.collection.reference.frameworks.values() if it.objectives]
    files = [_curriculum(framework, site) for framework in frameworks]
    if feed.entries(site):
        files.append(
            OpenFile(
                feed.ADDRESS,
                "Feed",
                f"New and changed {feed.told_of()}, for a feed reader.",
                "Atom (RFC 4287)",
                "1.0",
                "application/atom+xml",
                partial(feed.feed, site),
                is_data=False,
            )
        )
    says = "Every page, and the day it last changed where the page says; for search engines."
    made = partial(sitemap.sitemap, site)
    sitemap_file = OpenFile(
        sitemap.ADDRESS, "Sitemap", says, "Sitemaps protocol", "0.9", "application/xml", made, is_data=False
    )
    return [*files, sitemap_file]


def _curriculum(framework: Framework, site: Site) -> OpenFile:
    return OpenFile(
        curriculum.address(framework.id),
        framework.name,
        f"{len(framework.objectives)} objectives by strand and year, with what comes before what. The words are ours.",
        "1EdTech CASE 1.1, a CFPackage",
        framework.revised.isoformat(),
        JSON,
        lambda: _json(curriculum.curriculum(framework, site)),
    )


def _schema(site: Site) -> str:
    return _json({"$id": site.address(catalogue.SCHEMA_ADDRESS, catalogue.SCHEMA_ADDRESS), **catalogue_schema()})


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False, indent=1) + "\n"
