"""Markdown into HTML, with links between sources turned into links between pages."""

from __future__ import annotations

import re
from html import escape
from xml.etree import ElementTree

import markdown
from markdown.extensions import Extension
from markdown.inlinepatterns import InlineProcessor
from markdown.treeprocessors import Treeprocessor

from ..model.address import link, resolve, slug
from .cleaning import cleaned

_HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//|#|/", re.IGNORECASE)


class _WrongMark(InlineProcessor):
    """``[4 + 5 = 8]{wrong}``: a mistake to talk about, said to be one to those who only hear it."""

    def handleMatch(self, m: re.Match[str], data: str) -> tuple[ElementTree.Element, int, int]:  # type: ignore[override]
        element = ElementTree.Element("span", {"class": "wrong"})
        note = ElementTree.SubElement(element, "span", {"class": "only-heard"})
        note.text = "Wrong on purpose: "
        note.tail = m.group(1)
        return element, m.start(0), m.end(0)


class _Links(Treeprocessor):
    """Turns ``.md`` into ``.html``, names headings, and frames tables so that they scroll on a narrow screen."""

    here = ""

    def run(self, root: ElementTree.Element) -> None:
        for anchor in root.iter("a"):
            target = anchor.get("href", "")
            if target and not _ELSEWHERE.match(target):
                path, mark, place = target.partition("#")
                anchor.set("href", link(resolve(path, self.here), self.here) + mark + place)
        for table in root.iter("table"):
            _line_up(table)
        taken: dict[str, int] = {}
        for index, child in enumerate(list(root)):
            if child.tag in _HEADINGS and "id" not in child.attrib:
                child.set("id", _free(slug("".join(child.itertext())), taken))
            if child.tag == "table":
                frame = ElementTree.Element(
                    "div", {"class": "table-frame", "tabindex": "0", "role": "region", "aria-label": "Table"}
                )
                root.remove(child)
                frame.append(child)
                root.insert(index, frame)


def _line_up(table: ElementTree.Element) -> None:
    """Columns set right or in the middle, by class: the converter's style attributes are against the page's policy."""
    for cell in (*table.iter("th"), *table.iter("td")):
        _, _, side = cell.attrib.pop("style", "").rstrip(";").rpartition(" ")
        if side in ("right", "center"):
            cell.set("class", f"set-{side}")


def _free(name: str, taken: dict[str, int]) -> str:
    """The name, with a number after it if a heading above has it already. ``taken`` counts how often each was asked."""
    free = name
    while free in taken:
        taken[name] += 1
        free = f"{name}-{taken[name]}"
    taken[free] = 1
    return free


class _Storymaths(Extension):
    def __init__(self) -> None:
        super().__init__()
        self.links = _Links()

    def extendMarkdown(self, md: markdown.Markdown) -> None:
        # Above the link pattern (160), or the square brackets would be taken for a reference.
        md.inlinePatterns.register(_WrongMark(r"\[([^\]\n]+)\]\{wrong\}", md), "wrong", 175)
        md.treeprocessors.register(self.links, "links", 5)


_EXTENSION = _Storymaths()
_MARKDOWN = markdown.Markdown(
    extensions=[_EXTENSION, "tables", "sane_lists", "attr_list", "smarty"],
    extension_configs={
        "smarty": {"smart_angled_quotes": False, "smart_dashes": False, "smart_ellipses": False},
    },
    output_format="html",
)


def markdown_to_html(text: str, here: str) -> str:
    """A stretch of Markdown as HTML, cleaned. One converter serves all: making one costs as much as a short page."""
    _EXTENSION.links.here = here
    try:
        return cleaned(_MARKDOWN.reset().convert(text))
    except RecursionError:  # lists inside lists without end, in a text that no rule reads as prose: shown as it is
        return f"<p>{escape(text)}</p>"


_SECTION = re.compile(r'<h2 id="([^"]*)">(.*?)</h2>', re.DOTALL)


def sections(html: str) -> tuple[str, list[tuple[str, str, str]]]:
    """What stands above the first heading, then each section: its anchor, heading and HTML."""
    parts = _SECTION.split(html)
    return parts[0], [(parts[i], parts[i + 1], parts[i + 2]) for i in range(1, len(parts), 3)]
