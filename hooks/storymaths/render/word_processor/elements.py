"""A drawn page as a tree of elements, so that a document is made from the very words and order of the page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from html.parser import HTMLParser

_EMPTY = frozenset("area base br col embed hr img input link meta source track wbr".split())


@dataclass(slots=True)
class Element:
    """An element, its attributes, and the elements and texts in it."""

    tag: str
    attributes: Mapping[str, str] = field(default_factory=dict)
    inner: list[Element | str] = field(default_factory=list)

    @property
    def classes(self) -> set[str]:
        """Its classes."""
        return set(self.attributes.get("class", "").split())

    def elements(self) -> Iterator[Element]:
        """All the elements in it, at any depth, in order."""
        for one in self.inner:
            if isinstance(one, Element):
                yield one
                yield from one.elements()

    def holds(self, *tags: str) -> bool:
        """Whether one of these is in it at any depth."""
        return any(one.tag in tags for one in self.elements())

    @property
    def words(self) -> str:
        """Its text, spaces as a browser shows them."""
        return " ".join("".join(one if isinstance(one, str) else one.words_within() for one in self.inner).split())

    def words_within(self) -> str:
        """Its text as it is written."""
        return "".join(one if isinstance(one, str) else one.words_within() for one in self.inner)


def read_elements(html: str) -> Element:
    """The elements of a page drawn here, under one that stands for the whole."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    return reader.open[0]


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open = [Element("main")]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, {name: value or "" for name, value in attrs})
        self.open[-1].inner.append(element)
        if tag not in _EMPTY:
            self.open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].inner.append(Element(tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        at = next((at for at in range(len(self.open) - 1, 0, -1) if self.open[at].tag == tag), 0)
        if at:
            del self.open[at:]

    def handle_data(self, data: str) -> None:
        self.open[-1].inner.append(data)
