"""One build of the site, as the frame around it asks for it: what to leave out, what to add, each page's HTML."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path

from .model.address import link, source_of
from .model.document import Document, Fields
from .model.site_settings import SiteSettings
from .pipeline import read_and_check
from .publish.assets import PARTS, assets
from .publish.generated import generated
from .publish.head_metadata import HeadMetadata
from .publish.open_data import sitemap
from .publish.open_data.files import open_data
from .publish.sheets import Sheet, prints, sheets_of, write_sheets
from .publish.text_index import build_text_index
from .render.content_page import draw_content
from .render.policy import policy
from .render.problem_pages import draw_problems, draw_unread
from .render.site import Rendered, Site
from .terminal import as_text

_THEMES_OWN = "assets/"
"""Scripts, styles and pictures the theme brings along: 2.5 MB, and not one page uses them."""
_MADE_HERE = frozenset({sitemap.ADDRESS})
"""The frame has one of its own, whose days come from the clock."""
_PARTS_OF_THE_STYLESHEET = frozenset(f"look/{part}" for part in PARTS)
"""Served in one piece."""


@dataclass(frozen=True)
class Drawn:
    """A page for the frame: its HTML, what is wrong with it, whether it is a draft, and what programs may read of it."""

    page: Rendered
    problems: str
    draft: bool
    for_machines: str = ""
    """What stands in the head for programs to read."""


class Build:
    """Reads a project once, then draws its pages one by one as they are asked for."""

    def __init__(
        self,
        root: Path,
        serving: bool = False,
        print_sheets: bool = False,
        settings: SiteSettings | None = None,
        only_series: str = "",
    ) -> None:
        reading = read_and_check(root)
        self.problems = reading.problems
        self._whole = reading.collection
        self._serving = serving
        self._settings = settings or SiteSettings()
        self._sheets: list[Sheet] = []
        self._root, self._kept = root, root / ".cache"
        self._print_sheets, self._only_series = print_sheets, only_series

    def report(self) -> str:
        """Every problem, for people."""
        return as_text(self.problems)

    def shows_series(self, series: str) -> bool:
        """Whether a series is there and is no draft."""
        return self._site is not None and series in self._site.collection.series

    @cached_property
    def _site(self) -> Site | None:
        """None when ``site_data/`` itself cannot be used."""
        if self._whole is None:
            return None
        shown = self._whole if self._serving else self._whole.without_drafts()
        collection = shown.only_series(self._only_series) if self._only_series else shown
        site = Site(collection, settings=self._settings)
        return replace(site, prints=prints(self._sheets_of(site)))

    def _sheets_of(self, site: Site) -> list[Sheet]:
        # A page with problems may hold what cannot be set; its author mends it first.
        if self._print_sheets and not self.problems:
            self._sheets = sheets_of(site, self._root, self._kept / "sheets")
        return self._sheets

    @cached_property
    def _written(self) -> Mapping[str, Document[Fields]]:
        return {source_of(page.path): page for page in self._site.collection.documents} if self._site else {}

    @cached_property
    def _unused_books(self) -> tuple[str, ...]:
        """Folders of books that are not shown, as sources begin."""
        if self._whole is None or self._site is None:
            return ()
        shown = self._site.collection.books
        return tuple(f"{source_of(page.folder)}/" for book, page in self._whole.books.items() if book not in shown)

    @cached_property
    def _generated(self) -> Mapping[str, Callable[[], Rendered]]:
        return generated(self._site) if self._site else {}

    @cached_property
    def _heads(self) -> HeadMetadata | None:
        return HeadMetadata(self._site) if self._site and not self.problems else None

    @property
    def generated_sources(self) -> list[str]:
        """Sources of the pages to add to those in ``content/``."""
        return [source for source in self._generated if source not in self._written]

    def is_left_out(self, source: str) -> bool:
        """Whether a file is not to be published: a draft outside serve, or what no page of ours asks for."""
        if source.endswith(".md"):
            return not self._serving and source not in self._written
        ours = _PARTS_OF_THE_STYLESHEET | _MADE_HERE
        return source.startswith((_THEMES_OWN, *self._unused_books)) or source in ours

    def assets(self) -> Mapping[str, bytes | str]:
        """Files to add beside the pages: the finder's data, the letterforms and open data."""
        if self._site is None:
            return {}
        # What has problems is for its author to see, not for other programs to take.
        return {**assets(self._site, self._kept), **({} if self.problems else open_data(self._site))}

    def draw(self, source: str) -> Drawn:
        """A page. One with problems is drawn as far as it can be, with its problems told first."""
        mine = [p for p in self.problems if source_of(p.place.path) == source or self._site is None]
        written = self._written.get(source)
        if written is not None and self._site is not None:
            page = draw_content(self._site, written)
        elif source in self._generated:
            page = self._generated[source]()
        else:
            page = draw_unread(source)
        draft = written is not None and written.fields.status == "draft"
        heads = self._heads
        return Drawn(page, draw_problems(mine), draft, heads.element(written, page) if heads else "")

    def linker(self, source: str) -> Callable[[str], str]:
        """Links from the page made of ``source`` to other sources."""
        return lambda target: link(target, source)

    def policy(self, kind: str) -> str:
        """The Content Security Policy for a page of a kind."""
        return policy(kind, self._serving)

    def finish(self, site_folder: Path) -> float:
        """Puts the print sheets beside the pages, and indexes the text; returns the seconds indexing took.

        One series by itself is for a memory stick, where the index cannot be fetched and is not made.
        """
        if self._sheets:
            # A build of one series uses some of the sheets kept; the others are still those of the whole site.
            write_sheets(self._sheets, site_folder, self._kept / "sheets", forget=not self._only_series)
        return 0.0 if self._only_series else build_text_index(site_folder)
