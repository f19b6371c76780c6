"""One build of the site: which pages it has, each as a browser gets it, and the files beside them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path

from .activities.memory import Memory
from .activities.work_out import WorkedOut
from .model.address import CONTENT, LISTS, html_of, source_of
from .model.document import Document
from .model.generated_pages import Subject
from .model.page_fields import PageFields
from .model.problem import Problem, ProblemsFound
from .model.site_settings import FRONT, SiteSettings
from .model.stand_ins import with_stand_ins
from .publish.assets import PARTS, assets, look, picture
from .publish.documents import document_of, has_document, write_documents
from .publish.fonts import letterforms
from .publish.generated import generated
from .publish.head_metadata import HeadMetadata
from .publish.open_data.files import open_data
from .publish.pack.only_series import only_series
from .publish.page_frame import Drawn, PageFrame, theme_files
from .publish.page_kinds.table import kind_of
from .publish.page_names import about_of
from .publish.sheets import Sheet, prints, sheets_of, write_sheets
from .publish.text_index import build_text_index
from .publish.undrawn import telling_where
from .reading import Reading
from .render.in_type.drawings import drawings_in_type
from .render.problem_pages import draw_problems, draw_unread
from .render.site import Print, Rendered, Site

NOT_FOUND = "404.html"
_NOT_YET = "This page cannot be shown until what is wrong is mended."
_PARTS = frozenset(f"look/{part}" for part in PARTS)
"""Of the stylesheet, which is served in one piece."""
File = bytes | str | Path
"""What is in a file, or the file it is a copy of."""
Prints = Mapping[str, Sequence[Print]]
"""By source, what each page offers to print."""


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
    """What is solved besides what was read: the examples of the kinds of activity."""
    offered: Prints | None = None
    """What pages offer to print, where sheets are made apart from the build."""
    _drawn: dict[str, Rendered] = field(default_factory=dict)
    """Authors' pages drawn before, by source: documents are made from them too."""

    @cached_property
    def _settings(self) -> SiteSettings:
        whole = self.reading.collection
        settings = whole.reference.site if whole else SiteSettings()
        shown = settings.authors_guide or self.serving
        return replace(settings, url=self.address or settings.url, authors_guide=shown)

    @cached_property
    def site(self) -> Site | None:
        """The site before its sheets are made; None when ``site_data/`` itself cannot be used."""
        whole = self.reading.collection
        if whole is None:
            return None
        shown = with_stand_ins(whole) if self.serving else whole.without_drafts()
        collection = only_series(shown, self.only_series) if self.only_series else shown
        return Site(collection, self.reading.activities, self.memory, settings=self._settings)

    @property
    def may_print(self) -> bool:
        """Whether there are sheets. A page with problems may hold what cannot be set; its author mends it first."""
        return self.site is not None and not self.reading.problems and self._settings.print_sheets

    @cached_property
    def _printed(self) -> tuple[list[Sheet], Sequence[Problem]]:
        """The sheets; under serve, what stood in their way instead."""
        if self.site is None or self.offered is not None or not self.may_print:
            return [], ()
        try:
            return sheets_of(self.site, self.root, self.kept / "sheets"), ()
        except ProblemsFound as found:
            if not self.serving:
                raise
            return [], found.problems

    @property
    def _sheets(self) -> list[Sheet]:
        return self._printed[0]

    @cached_property
    def _problems(self) -> Sequence[Problem]:
        return (*self.reading.problems, *self._printed[1])

    @cached_property
    def _site(self) -> Site | None:
        offered = prints(self._sheets) if self.offered is None else self.offered if self.may_print else {}
        return self.site and replace(self.site, prints=offered)

    @property
    def kept(self) -> Path:
        """The folder of what is made once and used again."""
        return self.root / ".cache"

    @cached_property
    def _written(self) -> Mapping[str, Document[PageFields]]:
        return {page.source: page for page in self._site.collection.documents} if self._site else {}

    @cached_property
    def _generated(self) -> Mapping[str, Callable[[], Rendered]]:
        return generated(self._site) if self._site else {}

    @cached_property
    def _subjects(self) -> Mapping[str, Subject]:
        return {page.source: page.about for page in self._site.generated} if self._site else {}

    @cached_property
    def _unread(self) -> tuple[str, ...]:
        """Pages that cannot be drawn for what is wrong with them; their author is told, on the first page in any case."""
        if not self.serving:
            return ()
        whole, content = self.reading.collection, self.root / CONTENT
        if whole is not None:
            return (FRONT, *(source_of(name) for name in sorted(whole.files) if name.endswith(".md")))
        pages = (path.relative_to(content).as_posix() for path in sorted(content.rglob("*.md")))
        return (FRONT, *LISTS.values(), *pages)

    @cached_property
    def _heads(self) -> HeadMetadata | None:
        return HeadMetadata(self._site) if self._site and not self.reading.problems else None

    @cached_property
    def _frame(self) -> PageFrame:
        return PageFrame(self._settings, self.serving)

    @cached_property
    def _sources(self) -> Mapping[str, None]:
        return dict.fromkeys((*self._written, *self._generated, *self._unread))

    @cached_property
    def source_at(self) -> Mapping[str, str]:
        """The source of every page, by its address from the site's root."""
        return {html_of(source): source for source in self._sources}

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
            for found in (self._problems, self.reading.warnings if self.serving else ())
        )
        written = self._written.get(source)
        try:
            page = self._draw_or_tell(source, written)
        except ProblemsFound as found:
            if not self.serving:
                raise
            page = draw_unread(source, _NOT_YET)
            problems = problems or list(self._problems) or list(found.problems)
        draft = written is not None and written.fields.status == "draft"
        for_machines = self._heads.element(written, page) if self._heads else ""
        told = draw_problems(problems, warnings, source, self._sources, everything=everything)
        if self._site is None:
            return Drawn(page, told, draft)
        publisher = self._site.collection.reference.imprint.publisher
        about = about_of(self._site.collection, written or self._subjects.get(source))
        return Drawn(page, told, draft, for_machines, publisher, self._site.terms(source), about)

    def _draw_or_tell(self, source: str, written: Document[PageFields] | None) -> Rendered:
        """Draws a page. Raises ``ProblemsFound`` where the program cannot."""
        if self._site is None or not (written or source in self._generated):
            return draw_unread(source, _NOT_YET)

        def draw(site: Site) -> Rendered:
            return kind_of(written).draw(site, written) if written else generated(site)[source]()

        of = source if written else self._site.collection.written_for(source)
        with telling_where(self._site, f"{CONTENT}{of}", draw):
            if written is None:
                return self._generated[source]()
            if source not in self._drawn:
                self._drawn[source] = draw(self._site)
            return self._drawn[source]

    def _page_drawn(self, source: str) -> Rendered:
        return self._draw_or_tell(source, self._written[source])

    def files(self) -> Mapping[str, File]:
        """What stands beside the pages, by address: a file's content, or the file it is a copy of."""
        return {address: content for files in self._kinds_of_file() for address, content in files().items()}

    def file(self, address: str) -> File | None:
        """One of ``files``; no more is made than it needs."""
        if address in self.picture_files:
            return picture(self.picture_files[address])
        page = self._written.get(address.removesuffix(".docx") + ".md")
        if self._site and page and address.endswith(".docx") and has_document(page):
            return document_of(self._site, page, self._page_drawn(page.source), self.kept / "documents")
        return next((found[address] for files in self._kinds_of_file() if address in (found := files())), None)

    def _kinds_of_file(self) -> Iterator[Callable[[], Mapping[str, File]]]:
        """From what is to be had for nothing to what is dear; no address is of two kinds."""
        yield lambda: {address: file for address, file in theme_files().items() if address not in _PARTS}
        yield self.pictures
        yield lambda: {NOT_FOUND: self._frame.not_found()}
        yield lambda: self._look
        yield lambda: self._letterforms
        yield lambda: self._assets
        if self._site is not None and not self.reading.problems:
            yield lambda: self._open_data  # what has problems is for its author to see, not for other programs

    @cached_property
    def _look(self) -> Mapping[str, bytes | str]:
        return look(self._settings)

    @cached_property
    def _letterforms(self) -> Mapping[str, bytes]:
        return letterforms(self.kept / "letterforms", self._settings.letterforms)

    @cached_property
    def _open_data(self) -> Mapping[str, str]:
        return open_data(self._site) if self._site else {}

    @cached_property
    def _assets(self) -> Mapping[str, bytes | str]:
        """What the collection gives; nothing where its problems stand in the way, as they do for data of all pages at once."""
        try:
            return {**assets(self._site), **drawings_in_type(self._site.collection)} if self._site else {}
        except Exception:
            if not self.serving or not self.reading.problems:
                raise
            return {}

    def pictures(self) -> Mapping[str, File]:
        """Those of the content that is shown, and can be, by their addresses."""
        served = ((name, picture(path)) for name, path in self.picture_files.items())
        return {name: content for name, content in served if content is not None}

    @cached_property
    def picture_files(self) -> Mapping[str, Path]:
        """The pictures of the content that is shown, as their authors left them."""
        if self.reading.collection is None or self._site is None:
            return {}
        whole, shown = self.reading.collection, self._site.collection.books
        hidden = tuple(page.beside("") for book, page in whole.books.items() if book not in shown)
        files = {source_of(name): self.root / name for name in sorted(whole.files) if not name.endswith(".md")}
        return {name: path for name, path in files.items() if not name.startswith(hidden) and path.is_file()}

    def finish(self, folder: Path) -> None:
        """Puts the print sheets beside the pages in the site's folder, and indexes the text.

        One series by itself is for a memory stick, where the index cannot be fetched and is not made.
        """
        if self._sheets:
            # A build of one series uses some of the sheets kept; the others are still those of the whole site.
            forget = not self.only_series
            write_sheets(self._sheets, folder, self.kept / "sheets", forget)
            if self._site is not None:
                write_documents(self._site, self._page_drawn, folder, self.kept / "documents", forget=forget)
        if not self.only_series:
            build_text_index(folder)
