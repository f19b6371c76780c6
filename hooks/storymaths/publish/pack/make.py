"""A pack put together: the pages of a series, a first page, the licence and the manifest."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path

from ...model.collection import Collection
from ...model.document import Document
from ...model.series import Series
from ...render.site import Site
from . import manifest
from .build_pages import build_pages
from .contents import PAGES, packed_pages
from .first_page import FIRST, LICENCE, draw_first_page, licence
from .only_series import only_series


def series_id(page: Document[Series]) -> str:
    """The name of a series' file, without an ending."""
    return page.path.rpartition("/")[2].removesuffix(".md")


def pack_files(root: Path, collection: Collection, page: Document[Series]) -> Mapping[str, bytes]:
    """Every file of the pack of a series, in its order. Raises ``BuildFailed``."""
    name = series_id(page)
    own = only_series(collection, name)
    with tempfile.TemporaryDirectory(prefix="storymaths-pack-") as folder:
        build_pages(root, name, page.fields.books, Path(folder))
        pages = packed_pages(Path(folder))
    files = {
        FIRST: draw_first_page(Site(own), page, pages),
        LICENCE: licence(page, root),
        **{PAGES + address: content for address, content in pages.items()},
    }
    first = {FIRST: files.pop(FIRST), manifest.NAME: b""}
    first[manifest.NAME] = manifest.written(name, page.fields.version, {FIRST: first[FIRST], **files})
    return {**first, **files}
