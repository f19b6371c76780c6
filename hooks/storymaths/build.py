"""One build of the site: which pages it has, each as a browser gets it, and the files beside them."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path

from .activities.memory import Memory
from .activities.work_out import WorkedOut
from .check.program_fault import as_problem
from .model.address import CONTENT, LISTS, source_of
from .model.document import Document
from .model.page_fields import PageFields
from .model.site_settings import FRONT, SiteSettings
from .model.stand_ins import with_stand_ins
from .publish.assets import PARTS, assets, look, picture
from .publish.documents import write_documents
from .publish.generated import generated
from .publish.head_metadata import HeadMetadata
from .publish.open_data.files import open_data
from .publish.pack.only_series import only_series
from .publish.page_frame import Drawn, PageFrame, theme_files
from .publish.page_kinds.table import kind_of
from .publish.sheets import Sheet, prints, sheets_of, write_sheets
from .publish.text_index import build_text_index
from .reading import Reading
from .render.in_type.drawings import drawings_in_type
from .render.problem_pages import draw_problems, draw_unread
from .render.site import Rendered, Site

NOT_FOUND = "404.html"
_NOT_YET = "This page cannot be shown until what is wrong is mended."
_PARTS_OF_THE_STYLESHEET = frozenset(f"look/{part}" for part in PARTS)
"""Served in one piece."""


@dataclass(frozen=True)
class Build:
    """A project that has been read, to be drawn page by page. Nothing is drawn before it is asked for."""

    root: Path
    reading: Reading
    serving: bool = False
    """Whether it is for its author, who sees drafts, and pages with problems as far as they can be drawn."""
    only_series: str = ""
    """One series and what it uses; empty for the whole site."""
    address: str = ""
    """Where the site stands, if not where its settings say."""
    memory: Memory[WorkedOut] = field(default_factory=Memory)
    """What the reading solved, and what is solved besides."""
    _drawn: dict[str, Rendered] = field(default_factory=dict)
    """Authors' pages drawn before, by source: documents are made from them too."""

    @cached_property
    def _settings(self) -> SiteSettings:
        whole = self.reading.collection
        settings = whole.reference.site if whole else SiteSettings()
        return replace(settings, url=self.address) if self.address else settings

    @cached_property
    def _bare_site(self) -> Site | None:
        """The site before its sheets are made; None when ``site_data/`` itself cannot be used."""
        whole = self.reading.collection
        if whole is None:
            return None
        shown = with_stand_ins(whole) if self.serving else whole.without_drafts()
        collection = only_series(shown, self.only_series) if self.only_series else shown
        return Site(collection, self.reading.activities, self.memory, settings=self._settings)

    @cached_property
    def _sheets(self) -> list[Sheet]:
        # A page with problems may hold what cannot be set; its author mends it first.
        if self._bare_site is None or self.reading.problems or not self._settings.print_sheets:
            return []
        return sheets_of(self._bare_site, self.root, self._kept / "sheets")

    @cached_property
    def _site(self) -> Site | None:
        return self._bare_site and replace(self._bare_site, prints=prints(self._sheets))

    @property
    def _kept(self) -> Path:
        return self.root / ".cache"

    @cached_property
    def _written(self) -> Mapping[str, Document[PageFields]]:
        return {page.source: page for page in self._site.collection.documents} if self._site else {}

    @cached_property
    def _generated(self) -> Mapping[str, Callable[[], Rendered]]:
        return generated(self._site) if self._site else {}

    @cached_property
    def _unread(self) -> tuple[str, ...]:
        """Pages that cannot be drawn for what is wrong with them; their author is told, on the first page in any case."""
        if not self.serving:
            return ()
        content, lists = self.root / CONTENT, () if self._site else LISTS.values()
        return (FRONT, *lists, *(path.relative_to(content).as_posix() for path in sorted(content.rglob("*.md"))))

    @cached_property
    def _heads(self) -> HeadMetadata | None:
        return HeadMetadata(self._site) if self._site and not self.reading.problems else None

    @cached_property
    def _frame(self) -> PageFrame:
        return PageFrame(self._settings, self.serving)

    @cached_property
    def _sources(self) -> Mapping[str, None]:
        return dict.fromkeys((*self._written, *self._generated, *self._unread))

    @property
    def pages(self) -> list[str]:
        """The sources of every page."""
        return list(self._sources)

    def page(self, source: str) -> str:
        """A page as a browser gets it."""
        return self._frame.put_around(self.draw(source))

    def draw(self, source: str) -> Drawn:
        """A page for its frame. One with problems is drawn as far as it can be, with its problems told first."""
        everything = source == FRONT or self._site is None
        problems, warnings = (
            [p for p in found if everything or source_of(p.place.path) == source]
            for found in (self.reading.problems, self.reading.warnings if self.serving else ())
        )
        written = self._written.get(source)
        try:
            page = self._draw(source, written)
        except Exception as error:
            if not self.serving:
                raise
            page = draw_unread(source, _NOT_YET)
            problems = problems or list(self.reading.problems) or [as_problem(error, f"{CONTENT}{source}")]
        draft = written is not None and written.fields.status == "draft"
        for_machines = self._heads.element(written, page) if self._heads else ""
        told = draw_problems(problems, warnings, source, self._sources, everything=everything)
        if self._site is None:
            return Drawn(page, told, draft)
        publisher = self._site.collection.reference.imprint.publisher
        return Drawn(page, told, draft, for_machines, publisher, self._site.terms(source))

    def _draw(self, source: str, written: Document[PageFields] | None) -> Rendered:
        if written is not None and self._site is not None:
            if source not in self._drawn:
                self._drawn[source] = kind_of(written).draw(self._site, written)
            return self._drawn[source]
        if source in self._generated:
            return self._generated[source]()
        return draw_unread(source, _NOT_YET)

    def _page_drawn(self, source: str) -> Rendered:
        return self._draw(source, self._written[source])

    def files(self) -> Mapping[str, bytes | str | Path]:
        """What stands beside the pages, by address: a file's content, or the file it is a copy of."""
        files: dict[str, bytes | str | Path] = {
            **theme_files(),
            **self._pictures(),
            NOT_FOUND: self._frame.not_found(),
            **look(self._kept, self._settings),
            **self._assets(),
        }
        if self._site is not None and not self.reading.problems:
            files |= open_data(self._site)  # what has problems is for its author to see, not for other programs
        return {address: content for address, content in files.items() if address not in _PARTS_OF_THE_STYLESHEET}

    def _assets(self) -> Mapping[str, bytes | str]:
        """What the collection gives; nothing where its problems stand in the way, as they do for data of all pages at once."""
        try:
            return {**assets(self._site), **drawings_in_type(self._site.collection)} if self._site else {}
        except Exception:
            if not self.serving or not self.reading.problems:
                raise
            return {}

    def _pictures(self) -> Mapping[str, Path | str]:
        """Those of the content that is shown, and can be."""
        if self.reading.collection is None or self._site is None:
            return {}
        whole, shown = self.reading.collection, self._site.collection.books
        hidden = tuple(page.beside("") for book, page in whole.books.items() if book not in shown)
        files = {source_of(name): self.root / name for name in sorted(whole.files) if not name.endswith(".md")}
        there = ((name, path) for name, path in files.items() if not name.startswith(hidden) and path.is_file())
        served = ((name, picture(path)) for name, path in there)
        return {name: content for name, content in served if content is not None}

    def finish(self, folder: Path) -> None:
        """Puts the print sheets beside the pages in the site's folder, and indexes the text.

        One series by itself is for a memory stick, where the index cannot be fetched and is not made.
        """
        if self._sheets:
            # A build of one series uses some of the sheets kept; the others are still those of the whole site.
            forget = not self.only_series
            write_sheets(self._sheets, folder, self._kept / "sheets", forget)
            if self._site is not None:
                write_documents(self._site, self._page_drawn, folder, self._kept / "documents", forget=forget)
        if not self.only_series:
            build_text_index(folder)
        self.memory.forget_the_pass_before()
