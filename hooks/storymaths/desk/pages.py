"""What the desk shows: the collection, and a page of it as a form beside the page as it will look."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import Any
from urllib.parse import quote

import jinja2

from ..build import Build
from ..edits.edit import Edit, EditRefused
from ..edits.save import ChangedOutside
from ..live.project import LiveProject
from ..model.address import CONTENT, html_of, screen_page, source_of
from ..model.collection import Collection
from ..model.fields import year_name
from ..publish import starters
from ..publish.assets import stylesheet
from ..publish.sheets import Sheet, sheets_of
from ..scripts.join import joined
from .choices import Choice, choices, parts_of
from .control import Control, label_of, singular
from .desk import Desk, Saved
from .new_activity import tasks
from .offers import ideas_for, offers_for
from .page_text import ActivityForm, PageText
from .requests import Asked, Type, Write
from .shelf import Shelf, shelves
from .spots import box_of
from .states import difference
from .work_out import work_out_part, years_it_fits

_HERE = Path(__file__).parent
_SCRIPT = "desk/page.js"


class Pages:
    """Draws what the desk shows."""

    def __init__(self, root: Path, desk: Desk, now: LiveProject) -> None:
        self._root, self.desk, self._now = root, desk, now

    def collection(self) -> str:
        """The first page: all there is, and what is wrong in all."""
        self._now.look()
        build = self._now.build
        found = shelves(build.reading.collection, build.reading.problems) if build.reading.collection else []
        reference = [problem for problem in build.reading.problems if not problem.place.path.startswith(CONTENT)]
        return self._draw(
            "collection.html",
            shelves=found,
            reference=reference,
            total=len(build.reading.problems),
            starters=self._starters,
        )

    def page(self, source: str) -> str:
        """A page opened."""
        saved = self.desk.open(source)
        text = PageText(saved.text)
        siblings, title = self._siblings(source), self._title(source, text)
        return self._draw(
            "page.html",
            source=source,
            title=title,
            saved=saved,
            form=self._form(text),
            siblings=siblings,
            looks=self._looks(source, siblings),
            lists=self._lists(text),
        )

    def after(self, source: str, before: PageText | None, saved: Saved) -> Mapping[str, Any]:
        """What a tab is told of a change: the page's new mark, and its form where that is another now."""
        text = PageText(saved.text)
        told: dict[str, Any] = {"mark": saved.mark, "undo": saved.can_undo, "redo": saved.can_redo}
        if before is None or _makeup(before) != _makeup(text):
            told |= {"form": self._form(text), "title": self._title(source, text)}
        return told

    def read(self, source: str, before: str) -> PageText:
        """The text that a change is to be made to. Raises ``ChangedOutside`` where it is not the one the tab has."""
        opened = self.desk.open(source)
        if opened.mark != before:
            raise ChangedOutside(opened.text, self.desk.text_of(source, before) or opened.text)
        return PageText(opened.text)

    @staticmethod
    def box(asked: Asked) -> object:
        """What typing on counts as one change with: the same box."""
        match asked:
            case Type():
                return (asked.activity, asked.loc)
            case Write():
                return (asked.section, asked.part)
        return None

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
        return self._draw("worked_out.html", worked=worked, solution=worked.solution, fits=fits)

    def states(self, source: str) -> str:
        """The earlier states of a page, each with what was changed after it."""
        now = self.desk.open(source).text
        kept = self.desk.states.all(source)
        told = [(state, difference(state.text, now)) for state in kept if state.text != now]
        return self._draw("states.html", states=told[:60])

    def sheets(self, source: str) -> str:
        """The print sheets of a page."""
        self._now.look()
        return self._draw("sheets.html", sheets=self._sheets_of(self._now.build, source))

    def offers(self, source: str) -> str:
        """What could be put into a page, and the way to ideas for its book."""
        text = PageText(self.desk.open(source).text)
        collection = self._collection
        raw = text.raw or {}
        return self._draw(
            "offers.html",
            is_session=raw.get("kind") == "session",
            offers=offers_for(collection, source, text.text),
            years=self._choices(text)["years"],
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
        return self._draw(
            "ideas.html",
            found=ideas_for(collection, book, asked),
            sections=named if (text.raw or {}).get("kind") in kinds else (),
        )

    @property
    def _collection(self) -> Collection:
        """The collection as it was last read. Raises ``EditRefused`` where ``site_data/`` cannot be used."""
        collection = self._now.build.reading.collection
        if collection is None:
            raise EditRefused("The data in site_data cannot be used; `storymaths check` says why.")
        return collection

    def drawn(self, address: str) -> bytes | Path | None:
        """What stands at an address of the site as it would be built now."""
        page = self._now.page(address) if address.endswith(".html") else None
        found = page or self._now.file(address)
        return found.encode() if isinstance(found, str) else found

    def own(self, name: str) -> bytes | None:
        """A file of the desk's own pages."""
        if name == "desk.css":
            return (
                stylesheet().replace("../fonts/", "/site/fonts/") + (_HERE / "look" / name).read_text("utf-8")
            ).encode()
        return f"{joined(_SCRIPT)};\n".encode() if name == "desk.js" else None

    def start(self, kind: str, title: str, book: str) -> str:
        """A new page, with what a page of its kind begins with; gives its name. Raises as ``starters.start`` does."""
        known = starters.starters()
        if kind not in known or not title.strip() or any(sign in title for sign in "\n\r\\"):
            raise EditRefused("A new page needs a kind and a title.")
        today = datetime.date.today().isoformat()
        starter = known[kind][1]
        if starter.for_book and book not in (id for id, _ in self._books):
            raise starters.NoSuchBook(book)
        file = starters.start(self._root, starter, title.strip(), today, book)
        return file.relative_to(self._root / CONTENT).as_posix()

    def _form(self, text: PageText) -> str:
        return self._draw(
            "form.html",
            text=text,
            forms={number: ActivityForm(part) for number, part in text.activities.items()},
            tasks=list(tasks()),
            label_of=label_of,
            singular=singular,
            parts_of=self._parts_of,
            list_id=_list_id,
            years=self._choices(text).get("years", ()),
        )

    def _parts_of(self, control: Control) -> Sequence[Choice]:
        """The parts of the objective in a box."""
        collection = self._now.build.reading.collection
        if collection is None or len(control.loc) < 2:
            return ()
        return parts_of(collection, str(control.loc[-2]), control.value.partition(":")[0].strip())

    def _lists(self, text: PageText) -> Mapping[str, Sequence[Choice]]:
        return {name: found for name, found in self._choices(text).items() if name != "years"}

    def _choices(self, text: PageText) -> Mapping[str, Sequence[Choice]]:
        collection = self._now.build.reading.collection
        if collection is None:
            return {}
        book = collection.books.get(str((text.raw or {}).get("book", "")))
        return choices(collection, book.fields if book else None)

    @property
    def _books(self) -> Sequence[Choice]:
        self._now.look()
        collection = self._now.build.reading.collection
        return [Choice(id, page.fields.title) for id, page in collection.books.items()] if collection else []

    @property
    def _starters(self) -> Sequence[tuple[str, str, bool]]:
        return [(kind, words, starter.for_book) for kind, (words, starter) in starters.starters().items()]

    def _siblings(self, source: str) -> Shelf | None:
        """The pages of the same book."""
        build = self._now.build
        if build.reading.collection is None:
            return None
        found = shelves(build.reading.collection, build.reading.problems)
        return next((shelf for shelf in found if shelf.name and source.startswith(f"books/{shelf.name}/")), None)

    @staticmethod
    def _sheets_of(build: Build, source: str) -> Sequence[Sheet]:
        """The print sheets of a page, made now where they are not kept."""
        folder, _, rest = source.partition("/")
        book = rest.partition("/")[0]
        if folder != "books" or build.site is None or not build.may_print or book not in build.site.collection.books:
            return ()
        sheets = sheets_of(build.site, build.root, build.kept / "sheets", [book])
        return [sheet for sheet in sheets if sheet.source == source]

    def _looks(self, source: str, siblings: Shelf | None) -> Sequence[tuple[str, str]]:
        """What the frame beside the form can show: the page, its class screen, the home pages of its book."""
        looks = [("The page", f"/site/{quote(html_of(source))}")]
        screen = html_of(screen_page(source))
        if any(html_of(page) == screen for page in self._now.build.pages):
            looks.append(("Class screen", f"/site/{quote(screen)}"))
        homes = (
            [entry for entry in siblings.entries if entry.kind == "home activity" and entry.source != source]
            if siblings
            else []
        )
        return [*looks, *((f"Home {home.place}", f"/site/{quote(html_of(home.source))}") for home in homes)]

    def _title(self, source: str, text: PageText) -> str:
        return str((text.raw or {}).get("title") or source)

    @cached_property
    def _templates(self) -> jinja2.Environment:
        environment = jinja2.Environment(
            loader=jinja2.FileSystemLoader(_HERE / "templates"),
            autoescape=True,
            undefined=jinja2.StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )
        environment.filters |= {"year": year_name, "in_address": quote, "pair": lambda one: (one, one)}
        environment.globals["chr10"] = "\n"  # a box's own first line break: HTML takes one away
        return environment

    def _draw(self, template: str, **values: Any) -> str:
        return self._templates.get_template(template).render(**values)


def _list_id(control: Control) -> str:
    """The list that is offered in a box."""
    if control.shape.sort == "objective":
        return f"list-objectives-{control.loc[-2]}"
    return f"list-{control.shape.of}" if control.shape.of else ""


def _makeup(text: PageText) -> object:
    """What a form is drawn by: the same for two texts whose forms differ in their words alone."""

    def boxes(controls: Sequence[Control]) -> object:
        return [
            (
                one.id,
                one.sort,
                one.is_there and one.shape.sort == "objective" and one.value.partition(":")[0],
                boxes(one.inner),
            )
            for one in controls
        ]

    forms = [ActivityForm(part) for part in text.activities.values()]
    return (
        boxes(text.controls),
        [(form.id, form.task, boxes(form.controls)) for form in forms],
        [(section.name, len(section.parts)) for section in text.sections],
    )
