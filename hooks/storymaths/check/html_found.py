"""The HTML tags, attributes and addresses in an author's words, each where it stands."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from html import unescape
from html.parser import HTMLParser

from ..model.document import Document, Loc
from ..model.page_fields import PageFields
from ..model.problem import Place
from ..model.prose import BODY

# As Markdown has it: a backtick after an odd number of backslashes opens nothing.
_CODE = re.compile(r"(?<!\\)(?:\\{2})*(`+)(?!`)[^\n]*?(?<!`)\1(?!`)")
_FENCE = re.compile(r"^[ ]*(```+|~~~+).*?(?:^[ ]*\1[`~]*[ ]*$|\Z)", re.MULTILINE | re.DOTALL)
_AUTOLINK = re.compile(r"<([A-Za-z][A-Za-z0-9+.-]*:[^<>\s]*)>")
_MAILBOX = re.compile(r"</?[^<> ]+@[^<> ]+>")
_LINK = re.compile(r"\]\(\s*<?([^)\s>]+)")
_LONGEST_NAME = 1000
"""Signs between the square brackets of a link or picture that are looked through for their start."""
_SHOWN_BY_NAME = re.compile(r"!\[([^\]\n]*)\](?:[ ]?\[([^\]\n]*)\])?(?!\()")
_DEFINED = re.compile(r"^[ ]{0,3}\[([^\]\n]+)\]:[ \t]*\n?[ \t]*<?([^\s>]+)", re.MULTILINE)
_LISTED = re.compile(r"\{:?([^{}\n]*)\}")
_SET = re.compile(r"(?:^|\s)([A-Za-z][\w:.-]*)=")
_UNSEEN = re.compile(r"[\x00-\x20\x7f-\xa0\u200b-\u200f\u2028\u2029]+")
_SCHEME = re.compile(r"([a-z][a-z0-9+.-]*):|[/\\]{2}", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Text:
    """One text of a page."""

    page: Document[PageFields]
    loc: Loc
    words: str
    """As written."""
    read: str
    """With what is shown as code blanked out, sign for sign."""

    def place(self, at: int, words: str) -> Place:
        """Where ``words``, found at ``at``, stand in the file."""
        return self.page.locator.place(self.loc, words, self.words.count(words, 0, at))


@dataclass(frozen=True, slots=True)
class Tag:
    """An HTML tag: its name and attributes in small letters, and how it is written."""

    name: str
    attributes: Mapping[str, str]
    written: str
    at: int


@dataclass(frozen=True, slots=True)
class Address:
    """Where a link leads or a picture comes from."""

    to: str
    written: str
    """The address, or the tag that holds it, as it stands in the text."""
    at: int
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
    """The texts of a page that hold any mark of HTML or of an address."""
    for loc, words in page.marked_up:
        yield Text(page, loc, words, _CODE.sub(_blank, words) if "`" in words else words)


def tags_in(text: Text) -> list[Tag]:
    """Every tag, declaration and instruction; comments are let pass."""
    if "<" not in text.read:
        return []
    found = _Tags(text.read).found
    return [tag for tag in found if not (_AUTOLINK.fullmatch(tag.written) or _MAILBOX.fullmatch(tag.written))]


def attributes_listed_in(text: Text) -> Iterator[tuple[str, int]]:
    """Every attribute set the Markdown way, ``{title="A rope"}``, and where; data between fences has braces of its own."""
    read = _FENCE.sub(_blank, text.read) if text.loc == BODY else text.read
    for block in _LISTED.finditer(read):
        for attribute in _SET.finditer(block.group(1)):
            yield attribute.group(1), block.start(1) + attribute.start(1)


def addresses_in(text: Text) -> Iterator[Address]:
    """Every address, of a Markdown link, picture or definition, or of a tag."""
    for link in _LINK.finditer(text.read):
        picture = _opened_by(text.read, link.start()) == "!"
        yield Address(link.group(1), link.group(1), link.start(1), picture)
    shown = {(name or alt).lower() for alt, name in _SHOWN_BY_NAME.findall(text.read)} if "![" in text.read else set()
    for defined in _DEFINED.finditer(text.read):
        name, to = defined.groups()
        yield Address(to, to, defined.start(2), picture=name.lower() in shown)
    for match in _AUTOLINK.finditer(text.read):
        yield Address(match.group(1), match.group(1), match.start(1), picture=False)
    for tag in tags_in(text):
        for name in ("href", "src"):
            if to := tag.attributes.get(name):
                yield Address(to, tag.written, tag.at, picture=tag.name == "img")


def _opened_by(text: str, closed: int) -> str:
    """The sign before the square bracket that the one at ``closed`` closes: ``!`` for a picture."""
    open_within = 0
    for at in range(closed - 1, max(0, closed - _LONGEST_NAME) - 1, -1):
        open_within += {"]": 1, "[": -1}.get(text[at], 0)
        if open_within < 0:
            return text[at - 1 : at]
    return ""


def _blank(match: re.Match[str]) -> str:
    return re.sub(r"[^\n]", " ", match.group())


class _Tags(HTMLParser):
    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[Tag] = []
        self._opened: set[str] = set()
        self._lines = [0, *(match.end() for match in re.finditer("\n", text))]
        self.feed(text)
        self.close()

    def _note(self, name: str, attributes: Mapping[str, str], written: str) -> None:
        line, column = self.getpos()
        self._opened.add(name)
        self.found.append(Tag(name, attributes, written, self._lines[line - 1] + column))

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
