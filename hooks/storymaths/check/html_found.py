"""The HTML tags, attributes and addresses in an author's words, each where it stands."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from html import unescape
from html.parser import HTMLParser

from ..model.body import Body
from ..model.document import Document, Loc, marked_up
from ..model.page_fields import PageFields
from ..model.problem import Place
from ..model.prose import BODY
from ..parse.body import read_body, read_text

_LISTED = re.compile(r"\{:?([^{}\n]*)\}")
_SET = re.compile(r"(?:^|\s)([A-Za-z][\w:.-]*)=")
_UNSEEN = re.compile(r"[\x00-\x20\x7f-\xa0\u200b-\u200f\u2028\u2029]+")
_SCHEME = re.compile(r"([a-z][a-z0-9+.-]*):|[/\\]{2}", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Text:
    """One text of a page, as it is read."""

    page: Document[PageFields]
    loc: Loc
    content: Body

    def place(self, line: int, words: str) -> Place:
        """Where ``words``, found on a line, stand in the file."""
        return self.page.place_on_line(line, words) if self.loc == BODY else self.page.place(*self.loc, within=words)


@dataclass(frozen=True, slots=True)
class Tag:
    """An HTML tag: its name and attributes in small letters, how it is written, and its line."""

    name: str
    attributes: Mapping[str, str]
    written: str
    line: int


@dataclass(frozen=True, slots=True)
class Address:
    """Where a link leads or a picture comes from."""

    to: str
    written: str
    """The address, or the tag that holds it, as it stands in the text."""
    line: int
    picture: bool

    @property
    def leads_out(self) -> str | None:
        """See ``leads_out``."""
        return leads_out(self.to)


def leads_out(address: str) -> str | None:
    """How an address begins if it leads out of the site: ``https``, or ``//``; None within the site.

    Browsers pass over signs that are not seen, and read ``&#58;`` as a colon; so does this.
    """
    match = _SCHEME.match(_UNSEEN.sub("", unescape(address)))
    return (match.group(1) or "//").lower() if match else None


def texts_of(page: Document[PageFields]) -> Iterator[Text]:
    """The texts of a page that hold any HTML, link, picture or list of attributes."""
    for loc, words in page.marked_up:
        yield Text(page, loc, read_text(words))
    content = page.content
    if content.markup or content.links or content.pictures or "{" in page.body:
        yield Text(page, BODY, content)
    for fence in content.activities:
        if marked_up(fence.text):
            yield Text(page, BODY, read_body(fence.text, fence.line + 1))


def tags_in(content: Body) -> list[Tag]:
    """Every tag, declaration and instruction; comments are let pass."""
    return _Tags(content.markup).found if content.markup else []


def attributes_listed_in(content: Body) -> Iterator[tuple[str, int]]:
    """Every attribute set as some Markdown has it, ``{title="A rope"}``, and its line."""
    for run in content.runs:
        if run.kind == "words" and "{" in run.text:
            for block in _LISTED.finditer(run.text):
                yield from ((attribute.group(1), run.line) for attribute in _SET.finditer(block.group(1)))


def addresses_in(content: Body) -> Iterator[Address]:
    """Every address, of a Markdown link or picture, or of a tag."""
    for link, line in content.links:
        yield Address(link.target, link.target, line, picture=False)
    for picture in content.pictures:
        yield Address(picture.target, picture.target, picture.line, picture=True)
    for tag in tags_in(content):
        for name in ("href", "src"):
            if name in tag.attributes or (tag.name, name) == ("img", "src"):
                yield Address(tag.attributes.get(name, ""), tag.written, tag.line, picture=tag.name == "img")


class _Tags(HTMLParser):
    def __init__(self, pieces: Iterable[tuple[str, int]]) -> None:
        super().__init__()
        self.found: list[Tag] = []
        self._opened: set[str] = set()
        for text, line in pieces:
            self._above = line - self.getpos()[0]
            self.feed(text)
            self.close()
            self.clear_cdata_mode()  # an author's script is never more than the piece that Markdown took for HTML

    def _note(self, name: str, attributes: Mapping[str, str], written: str) -> None:
        self._opened.add(name)
        self.found.append(Tag(name, attributes, written, self.getpos()[0] + self._above))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._note(tag, {name: value or "" for name, value in attrs}, self.get_starttag_text() or f"<{tag}")

    def handle_endtag(self, tag: str) -> None:
        if tag not in self._opened:
            self._note(tag, {}, f"</{tag}")

    def handle_decl(self, decl: str) -> None:
        self._note("!", {}, f"<!{decl}")

    def unknown_decl(self, data: str) -> None:
        self._note("!", {}, f"<![{data}")

    def handle_pi(self, data: str) -> None:
        self._note("?", {}, f"<?{data}")
