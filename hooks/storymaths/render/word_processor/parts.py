"""What a document holds, as plain data: headings, paragraphs, lists, tables and pictures in the order of the page."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from .elements import Element

_BLOCKS = (
    "address article aside blockquote details div dl dt dd figure figcaption footer header h1 h2 h3 h4 h5 h6 hr li main nav "
    "ol p pre section summary table ul"
).split()
_HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
_LEFT_OUT = frozenset(("to-print", "answers-apart", "masthead-cover", "button"))
"""Parts of a page that lead elsewhere, or say again what a document has in its own place."""
_ANSWERS = frozenset(("answer", "answers"))
GAP = "______"


@dataclass(frozen=True, slots=True)
class Words:
    """Words of one look."""

    text: str
    bold: bool = False
    italic: bool = False


Line = tuple[Words, ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """A paragraph: a heading of a level from 1, an item of a list of a depth from 1, or neither."""

    line: Line
    heading: int = 0
    depth: int = 0
    list_number: int = 0
    """Which numbered list it is an item of, from 1; 0 for bullets and for none."""
    item: bool = False
    """Whether it begins an item; otherwise it goes on with one."""


@dataclass(frozen=True, slots=True)
class Table:
    """A table: how many of its rows head it, and each cell's words."""

    caption: str
    head: int
    rows: tuple[tuple[Line, ...], ...]


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture, by the words that do its job."""

    alt: str


Part = Paragraph | Table | Picture


@dataclass(slots=True)
class Parts:
    """The parts of a page, the answers apart from the rest."""

    told: list[Part] = field(default_factory=list)
    answers: list[Part] = field(default_factory=list)


def parts_of_page(page: Element) -> Parts:
    """The parts of a drawn page. Answers folded away on it come under the heading they stood below, by themselves."""
    walk = _Walk()
    walk.blocks(page, 0, 0)
    return walk.parts


@dataclass(slots=True)
class _Walk:
    parts: Parts = field(default_factory=Parts)
    lists: int = 0
    headings: list[str] = field(default_factory=lambda: [""])
    """Those that stand over what comes next, from the title on."""
    year: str = ""
    """The other year whose version is being read; empty outside one."""

    def blocks(self, element: Element, depth: int, number: int) -> None:
        """What an element holds, block by block; text between blocks is a paragraph of its own."""
        run: list[Element | str] = []
        for one in element.inner:
            if isinstance(one, Element) and (one.tag in _BLOCKS or one.holds(*_BLOCKS) or _alt(one)):
                self._paragraph(run, depth, number)
                run = []
                self._block(one, depth, number)
            else:
                run.append(one)
        self._paragraph(run, depth, number)

    def _paragraph(self, inner: Sequence[Element | str], depth: int, number: int, *, bold: bool = False) -> None:
        if line := _line(inner, bold=bold):
            self.parts.told.append(Paragraph(line, depth=depth, list_number=number))

    def _block(self, one: Element, depth: int, number: int) -> None:
        if _is_left_out(one):
            return
        if alt := _alt(one):
            self.parts.told.append(Picture(alt))
        elif one.tag == "details" and one.classes & _ANSWERS:
            self._apart(one)
        elif one.tag in _HEADINGS:
            self._heading(one, int(one.tag[1]))
        elif one.tag == "details" and "other-year" in one.classes:
            self._other_year(one)
        elif one.tag == "summary":
            # What opens a fold is paper's too, since nothing is folded there.
            self._paragraph(one.inner, depth, number, bold=True)
        elif one.tag in ("ul", "ol"):
            self._list(one, depth)
        elif one.tag == "table":
            self.parts.told.append(_table(one))
        elif one.tag == "div" and any(isinstance(two, Element) and two.tag == "dt" for two in one.inner):
            self._meaning(one, depth, number)
        elif one.tag == "p":
            inner = _spread(one) if one.classes & {"facts", "concepts"} else one.inner
            self._paragraph(inner, depth, number, bold=bool(one.classes & {"ask", "label", "stop-page"}))
        else:
            self.blocks(one, depth, number)

    def _heading(self, one: Element, level: int) -> None:
        del self.headings[level - 1 :]
        self.headings += [*[""] * (level - 1 - len(self.headings)), one.words]
        if line := _line(one.inner):
            self.parts.told.append(Paragraph(line, heading=level))

    def _other_year(self, one: Element) -> None:
        """What another year does: folded on the page, a part under its own heading here."""
        level = len(self.headings) + 1
        for inner in one.inner:
            if isinstance(inner, Element) and inner.tag == "summary":
                self._heading(inner, level)
            elif isinstance(inner, Element):
                self.year = self.headings[-1]
                self._block(inner, 0, 0)
        self.year = ""
        del self.headings[level - 1 :]

    def _apart(self, one: Element) -> None:
        """Answers, under what they answer."""
        told, self.parts.told = self.parts.told, []
        self.blocks(one, 0, 0)
        title = f"{self.headings[-2]} ({self.year})" if self.year else self.headings[-1]
        self.parts.answers += [Paragraph((Words(title),), heading=2), *self.parts.told]
        self.parts.told = told

    def _list(self, one: Element, depth: int) -> None:
        number = 0
        if one.tag == "ol":
            self.lists += 1
            number = self.lists
        for item in one.inner:
            if not isinstance(item, Element):
                continue
            if item.holds(*_HEADINGS):
                self.blocks(item, depth, 0)
                continue
            start = len(self.parts.told)
            self.blocks(item, depth + 1, number)
            for at, part in enumerate(self.parts.told[start:], start):
                if isinstance(part, Paragraph) and not part.heading and part.depth == depth + 1:
                    self.parts.told[at] = replace(part, item=True)
                    break

    def _meaning(self, one: Element, depth: int, number: int) -> None:
        """A name and what it stands for, on one line."""
        terms = [two for two in one.inner if isinstance(two, Element) and two.tag == "dt"]
        rest = [two for two in one.inner if isinstance(two, Element) and two.tag == "dd"]
        line = (*_line([*terms], bold=True), *(words for two in rest for words in (Words(": "), *_line(two.inner))))
        self.parts.told.append(Paragraph(line, depth=depth, list_number=number))


def _spread(one: Element) -> list[Element | str]:
    """A row of short facts, a dot between them."""
    facts = [fact for fact in one.inner if isinstance(fact, Element)]
    return [part for at, fact in enumerate(facts) for part in ((" · ", fact) if at else (fact,))]


def _is_left_out(one: Element) -> bool:
    return one.tag == "nav" or one.attributes.get("aria-hidden") == "true" or bool(one.classes & _LEFT_OUT)


def _alt(one: Element) -> str:
    """The words for a picture; empty for what is no picture."""
    if one.tag == "img":
        return one.attributes.get("alt", "")
    shown = one.attributes.get("role") == "img" and (one.tag == "svg" or one.holds("svg"))
    return one.attributes.get("aria-label", "") if shown else ""


def _line(inner: Sequence[Element | str], *, bold: bool = False) -> Line:
    """Text of a line, spaces as a browser shows them."""
    found: list[Words] = []
    for words in _runs(inner, Words("", bold)):
        text = re.sub(r"[ \n\t]+", " ", words.text)
        if not found or found[-1].text.endswith(" "):
            text = text.lstrip(" ")
        if text and found and replace(found[-1], text="") == replace(words, text=""):
            found[-1] = replace(words, text=found[-1].text + text)
        elif text:
            found.append(replace(words, text=text))
    if found:
        found[-1] = replace(found[-1], text=found[-1].text.rstrip(" "))
    return tuple(words for words in found if words.text)


def _runs(inner: Sequence[Element | str], look: Words) -> Iterator[Words]:
    for one in inner:
        if isinstance(one, str):
            yield replace(look, text=one)
        elif one.tag in ("svg", "script", "style", "img") or _is_left_out(one):
            continue
        elif "gap" in one.classes:
            yield replace(look, text=GAP)
        elif one.tag == "br":
            yield replace(look, text=" ")
        else:
            bold = look.bold or one.tag in ("strong", "b", "dt") or "label" in one.classes
            within = replace(look, bold=bold, italic=look.italic or one.tag in ("em", "i", "cite"))
            before, after = next(
                (signs for name, signs in _AROUND.items() if name in (one.tag, *one.classes)), ("", "")
            )
            yield replace(look, text=before)
            yield from _runs(one.inner, within)
            yield replace(look, text=after)


_AROUND = {
    "q": ("“", "”"),
    "minutes": (" (", ")"),
    "note": (" (", ")"),
    "new": (" (", ")"),
    "count": (" (", ")"),
    "answer-worked": (" (", ")"),
    "player-number": (": ", ""),
} | dict.fromkeys(("label", "only-parts", "sign"), (" ", " "))
"""What stands for the room a stylesheet gives: without it words run into one another."""


def _table(one: Element) -> Table:
    rows, head, caption = [], 0, ""
    for part in one.elements():
        if part.tag == "caption":
            caption = part.words
        elif part.tag == "tr":
            cells = [cell for cell in part.inner if isinstance(cell, Element) and cell.tag in ("th", "td")]
            rows.append(tuple(_line(cell.inner, bold=cell.tag == "th") for cell in cells))
        elif part.tag == "thead":
            head = sum(row.tag == "tr" for row in part.elements())
    return Table(caption, head, tuple(rows))
