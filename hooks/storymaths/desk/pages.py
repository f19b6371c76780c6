"""What the desk shows: the collection, and a page of it as a form beside the page as it will look."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from functools import cached_property
from pathlib import Path
from string import Template
from typing import Any
from urllib.parse import quote

from ..edits.edit import EditRefused
from ..edits.save import ChangedOutside
from ..live.project import LiveProject
from ..model.address import CONTENT, html_of, screen_page, source_of
from ..publish import starters
from ..publish.assets import stylesheet
from ..scripts.join import joined
from .asked import Asked, Type, Write
from .beside import Beside
from .choices import Choice, choices, parts_of
from .control import Control, label_of, singular
from .desk import Desk, Saved
from .drawing import draw
from .hanging import find_hanging
from .new_activity import tasks
from .page_text import ActivityForm, PageText
from .shelf import Shelf, shelves

_HERE = Path(__file__).parent
_SCRIPT = "desk/page.js"


class Pages:
    """Draws what the desk shows."""

    def __init__(self, root: Path, desk: Desk) -> None:
        self._root, self.desk = root, desk

    @cached_property
    def beside(self) -> Beside:
        """What is shown beside a form."""
        return Beside(self.desk, self._now)

    @cached_property
    def _now(self) -> LiveProject:
        """The collection, read when it is first asked for."""
        return LiveProject(self._root)

    def collection(self) -> str:
        """The first page: all there is, and what is wrong in all."""
        self._now.look()
        build = self._now.build
        found = shelves(build.reading.collection, build.reading.problems) if build.reading.collection else []
        reference = [problem for problem in build.reading.problems if not problem.place.path.startswith(CONTENT)]
        return draw(
            "collection.html",
            shelves=found,
            reference=reference,
            total=len(build.reading.problems),
            starters=self._starters,
        )

    def page(self, source: str) -> str:
        """A page opened."""
        self._now.look()
        saved = self.desk.open(source)
        text = PageText(saved.text)
        siblings, title = self._siblings(source), self._title(source, text)
        return draw(
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
        if hanging := self._hanging(source, before, text) if before else []:
            told["hanging"] = hanging
        return told

    def _hanging(self, source: str, before: PageText, text: PageText) -> list[Mapping[str, str]]:
        """What to show beside each number of the cast that is another now."""
        collection = self._now.build.reading.collection
        record = collection.books.get(source.removeprefix("books/").removesuffix("/index.md")) if collection else None
        if record is None or record.source != source:
            return []
        found = find_hanging(self._root, record.folder, record.fields, before, text)
        return [{"box": one.box, "html": draw("hanging.html", one=one, source_of=source_of)} for one in found]

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

    def own(self, name: str) -> bytes | None:
        """A file of the desk's own pages."""
        if name == "desk.css":
            collection = self._now.build.reading.collection
            site = stylesheet(collection.reference.site.colours) if collection else stylesheet()
            return (site.replace("../fonts/", "/site/fonts/") + (_HERE / "look" / name).read_text("utf-8")).encode()
        return f"{joined(_SCRIPT)};\n".encode() if name == "desk.js" else None

    def start(self, kind: str, title: str, book: str) -> str:
        """A new page, with what a page of its kind begins with; gives its name. Raises as ``starters.start`` does."""
        known = starters.starters()
        if kind not in known or not starters.folder_of(title) or any(sign in title for sign in "\n\r\\"):
            raise EditRefused("A new page needs a kind and a title.")
        today = datetime.date.today().isoformat()
        starter = known[kind][1]
        if starter.for_book and book not in (id for id, _ in self._books):
            raise starters.NoSuchBook(book)
        folder = self.desk.content
        for part in Template(starter.path).safe_substitute(slug=starters.folder_of(title), book=book).split("/")[:-1]:
            folder /= part
            if folder.is_symlink():
                raise EditRefused(
                    f"{folder.name} is a link to another place: pages are begun in the collection itself."
                )
        file = starters.start(self._root, starter, title.strip(), today, book, notes=False)
        return file.relative_to(self._root / CONTENT).as_posix()

    def _form(self, text: PageText) -> str:
        return draw(
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
        """What is offered in boxes, by the names of the lists; the activities of the page are what its bends name."""
        data = [ActivityForm(part).raw or {} for part in text.activities.values()]
        named = [Choice(str(one.get("id") or one.get("title")), str(one.get("title", ""))) for one in data]
        return {**{name: found for name, found in self._choices(text).items() if name != "years"}, "activities": named}

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
                one.sorts,
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
