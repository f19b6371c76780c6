"""Print sheets of a live project: made aside, for the books whose pages are looked at; never while a page is waited for."""

from __future__ import annotations

import threading
from collections.abc import Callable
from pathlib import Path
from weakref import ref

from ..build import Build
from ..publish.sheets import Sheet, prints, sheets_of
from ..render.site import Print


class LiveSheets:
    """Makes sheets book by book, and knows which pages offer what."""

    def __init__(self, tell: Callable[[], None]) -> None:
        """``tell`` is called when pages offer other sheets than before."""
        self.offered: dict[str, list[Print]] = {}
        """By source, what each page offers: the sheets that were made last, until those of now are there."""
        self._tell = tell
        self._wanted: dict[str, Build] = {}
        self._asked = threading.Condition()
        self._making = threading.Lock()
        self._made: dict[str, tuple[ref[Build], list[Sheet]]] = {}

    def want(self, build: Build, source: str) -> None:
        """A page is looked at: the sheets of its book are to be made."""
        book = _book_of(build, source)
        before = self._made.get(book)
        if book and not (before and before[0]() is build):
            with self._asked:
                self._wanted[book] = build
                self._asked.notify()

    def file(self, build: Build, address: str) -> Path | None:
        """A sheet, or the picture of its first page, made now if need be; None where the address is not that of a sheet."""
        book = _book_of(build, address) if address.endswith((".pdf", ".png")) else ""
        if not book:
            return None
        kept = build.kept / "sheets"
        found = {at: file for sheet in self._make(build, book) for at, file in sheet.files(kept).items()}
        return found.get(address)

    def make_what_is_wanted(self) -> None:
        """Makes sheets as they are wanted, one book after another, without an end."""
        while True:
            with self._asked:
                self._asked.wait_for(lambda: bool(self._wanted))
                book, build = self._wanted.popitem()
            try:
                self._make(build, book)
            except Exception as error:  # one sheet that cannot be made must not end the making of all others
                print(f"The sheets of {book} could not be made: {error}", flush=True)

    def _make(self, build: Build, book: str) -> list[Sheet]:
        with self._making:
            before = self._made.get(book)
            if before and before[0]() is build:
                return before[1]
            sheets = sheets_of(build.site, build.root, build.kept / "sheets", [book]) if build.site else []
            self._made[book] = ref(build), sheets  # what was read before is not kept for its sheets
            offers = prints(sheets)
        own = {source for source in self.offered if _book_of(build, source) == book}
        if any(self.offered.get(source) != offers.get(source) for source in (*own, *offers)):
            for source in own - offers.keys():
                del self.offered[source]
            self.offered.update({source: list(listed) for source, listed in offers.items()})
            self._tell()
        return sheets


def _book_of(build: Build, address: str) -> str:
    """The book a page or a file belongs to; empty where it belongs to none, or there are no sheets now."""
    folder, _, rest = address.partition("/")
    book = rest.partition("/")[0]
    if folder != "books" or not build.may_print or build.site is None:
        return ""
    return book if book in build.site.collection.books else ""
