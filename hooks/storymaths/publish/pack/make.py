"""A pack put together: the pages of a series, a first page, the licence and the manifest."""

from __future__ import annotations

import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

from ...model.collection import Collection
from ...model.document import Document
from ...model.series import Series
from ...render.site import Site
from . import manifest
from .contents import PAGES, select_pages
from .first_page import FIRST, LICENCE, draw_first_page, licence
from .only_series import only_series


def series_id(page: Document[Series]) -> str:
    """The name of a series' file, without an ending."""
    return page.path.rpartition("/")[2].removesuffix(".md")


def pack_files(
    collection: Collection, page: Document[Series], write_pages: Callable[[Path], None]
) -> Mapping[str, bytes]:
    """Every file of the pack of a series, in its order. ``write_pages`` builds its pages into an empty folder."""
    name = series_id(page)
    own = only_series(collection, name)
    site = Site(own, settings=collection.reference.site)
    with tempfile.TemporaryDirectory(prefix="storymaths-pack-") as folder:
        write_pages(Path(folder))
        pages = select_pages(Path(folder))
    files = {
        FIRST: draw_first_page(site, page, pages),
        LICENCE: licence(site, page),
        **{PAGES + address: content for address, content in pages.items()},
    }
    first = {FIRST: files.pop(FIRST), manifest.NAME: b""}
    first[manifest.NAME] = manifest.compose(name, page.fields.version, {FIRST: first[FIRST], **files})
    return {**first, **files}
