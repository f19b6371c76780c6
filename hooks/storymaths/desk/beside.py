"""What the desk shows beside a form: problems, activities worked out, earlier states, print sheets, offers, the site."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from ..build import Build
from ..edits.edit import Edit, EditRefused
from ..live.project import LiveProject
from ..model.address import source_of
from ..model.collection import Collection
from ..model.fields import year_name
from ..publish.sheets import Sheet, sheets_of
from .control import label_of
from .desk import Desk
from .drawing import draw
from .offers import ideas_for, offers_for
from .page_text import PageText
from .spots import box_of
from .states import difference
from .values import years
from .work_out import work_out_part, years_it_fits


class Beside:
    """Draws it, of the collection as it is now."""

    def __init__(self, desk: Desk, now: LiveProject) -> None:
        self.desk, self._now = desk, now

    def look(self) -> None:
        """Reads what has changed."""
        self._now.look()

    def problems(self, source: str) -> Mapping[str, Any]:
        """What is wrong with a page now, each with the box it belongs beside."""
        self._now.look()
        all_of_it = self._now.build.reading.problems
        saved = self.desk.open(source)
        text = PageText(saved.text)
        own = [problem for problem in all_of_it if source_of(problem.place.path) == source]
        told = [{"box": box_of(p, text), "line": p.place.line, "message": p.message, "fix": p.fix} for p in own]
        return {"mark": saved.mark, "problems": told, "elsewhere": len(all_of_it) - len(own)}

    def worked_out(self, source: str, number: int) -> str:
        """An activity worked out as it stands in its file now."""
        text = PageText(self.desk.open(source).text)
        if number not in text.activities:
            raise EditRefused("There is no such activity in the page.")
        self._now.look()
        build = self._now.build
        worked = work_out_part(build, source, text, number)
        fits = years_it_fits(build, worked)
        return draw("worked_out.html", worked=worked, solution=worked.solution, fits=fits)

    def states(self, source: str) -> str:
        """The earlier states of a page, each with what was changed after it."""
        now = self.desk.open(source).text
        kept = self.desk.states.all(source)
        told = [(state, difference(state.text, now)) for state in kept if state.text != now]
        return draw("states.html", states=told[:60])

    def sheets(self, source: str) -> str:
        """The print sheets of a page."""
        self._now.look()
        return draw("sheets.html", sheets=self._sheets_of(self._now.build, source))

    def offers(self, source: str) -> str:
        """What could be put into a page, and the way to ideas for its book."""
        text = PageText(self.desk.open(source).text)
        collection = self._collection
        raw = text.raw or {}
        return draw(
            "offers.html",
            is_session=raw.get("kind") == "session",
            offers=offers_for(collection, source, text.text),
            years=years(list(collection.reference.years)),
            year=str(raw.get("year", "")),
            label_of=label_of,
        )

    def offered(self, source: str, text: str, key: str) -> Edit:
        """The change that a proposal makes. Raises ``EditRefused`` where it is not proposed any more."""
        found = next((one.edit for one in offers_for(self._collection, source, text) if one.key == key), None)
        if found is None:
            raise EditRefused("That is not proposed any more, now that the page is another.")
        return found

    def ideas(self, source: str, year: str) -> str:
        """The ideas for the book of a page and a year, as an author writes it. Raises ``EditRefused``."""
        collection, text = self._collection, PageText(self.desk.open(source).text)
        book = str((text.raw or {}).get("book", "")) or source.removeprefix("books/").partition("/")[0]
        asked = next((number for number in collection.reference.years if year in (str(number), year_name(number))), -1)
        kinds = ("session", "home")
        named = [(at, section.name) for at, section in enumerate(text.sections) if section.name]
        return draw(
            "ideas.html",
            found=ideas_for(collection, book, asked),
            sections=named if (text.raw or {}).get("kind") in kinds else (),
        )

    def drawn(self, address: str) -> bytes | Path | None:
        """What stands at an address of the site as it would be built now."""
        page = self._now.page(address) if address.endswith(".html") else None
        found = page or self._now.file(address)
        return found.encode() if isinstance(found, str) else found

    @property
    def _collection(self) -> Collection:
        """The collection as it was last read. Raises ``EditRefused`` where ``site_data/`` cannot be used."""
        collection = self._now.build.reading.collection
        if collection is None:
            raise EditRefused("The data in site_data cannot be used; `storymaths check` says why.")
        return collection

    @staticmethod
    def _sheets_of(build: Build, source: str) -> Sequence[Sheet]:
        """The print sheets of a page, made now where they are not kept."""
        folder, _, rest = source.partition("/")
        book = rest.partition("/")[0]
        if folder != "books" or build.site is None or not build.may_print or book not in build.site.collection.books:
            return ()
        sheets = sheets_of(build.site, build.root, build.kept / "sheets", [book])
        return [sheet for sheet in sheets if sheet.source == source]
