"""An author's words for paper: Markdown turned into runs of text and blocks of them, as plain data.

A run is a text, or ``{"style", "text"}`` with ``strong``, ``emph`` or ``gap``. A block is a mapping with one of
``p``, ``h``, ``list``, ``table`` and ``picture``.
"""

from __future__ import annotations

import re
from html.parser import HTMLParser
from typing import Any

from ..body import markdown_to_html

Run = str | dict[str, str]
Runs = list[Run]
Block = dict[str, Any]

_NEEDS_MARKDOWN = re.compile(r"[*`\[<&]|^\s*(?:[-+>#]|\d+\.)|\n")
_GAP = re.compile(r"_{3,}")
_NUMBER = r"(?:£?\d[\d,.]*\w{0,2}|_{3,})"
_SUM = re.compile(rf"{_NUMBER}(?: [+−×÷=≠<>] {_NUMBER})+")
_UNIT = re.compile(r"(?<=\d) (?=(?:k?g|[kcm]?m|m?l|p)\b)")
_OPENS = re.compile(r"(^|[\s(\[“‘])([\"'])")
_LONGEST_UNBROKEN = 24
"""Signs of a number sentence that is kept on one line."""
_LONGEST_WORD = 14
_STYLES = {"strong": "strong", "b": "strong", "em": "emph", "i": "emph"}
_PARAGRAPHS = {"p": "p", "h1": "h", "h2": "h", "h3": "h", "h4": "h"}


def runs(text: str) -> Runs:
    """One line or paragraph of Markdown."""
    if not _NEEDS_MARKDOWN.search(text):
        return _with_gaps(text)
    found: Runs = []
    for block in blocks(text):
        for line in [block[name] for name in ("p", "h") if name in block] or block.get("list", []):
            found += [*([" "] if found else []), *line]
    return found


def plain(text: str) -> str:
    """A line without any mark-up, for titles and descriptions."""
    said = "".join(run if isinstance(run, str) else run["text"] for run in runs(text))
    return said.replace("\u00a0", " ").replace("\u200b", "")


def letters_in(data: Any) -> int:
    """Letters in runs, blocks, and lists and mappings of them: a quick guess at how much room they take."""
    if isinstance(data, str):
        return len(data)
    inner = data.values() if isinstance(data, dict) else data if isinstance(data, (list, tuple)) else ()
    return sum(map(letters_in, inner))


def blocks(markdown: str) -> list[Block]:
    """A stretch of Markdown as paragraphs, headings, lists, tables and pictures, in order."""
    reader = _Reader()
    reader.feed(markdown_to_html(markdown, ""))
    reader.close()
    return reader.blocks


def _with_gaps(text: str) -> Runs:
    text = _SUM.sub(_unbroken, _UNIT.sub("\u00a0", _quoted(text)))
    text = " ".join(breakable(word) for word in text.split(" "))
    found: Runs = []
    for place, piece in enumerate(_GAP.split(text)):
        if place:
            found.append({"style": "gap", "text": "___"})
        if piece:
            found.append(piece)
    return found


def _quoted(text: str) -> str:
    """With quotation marks that open and close, as the rest of the page has them."""
    if '"' not in text and "'" not in text:
        return text
    text = _OPENS.sub(lambda found: found[1] + ("“" if found[2] == '"' else "‘"), text)
    return text.replace('"', "”").replace("'", "’")


def _unbroken(match: re.Match[str]) -> str:
    found = match.group()
    return found.replace(" ", "\u00a0") if len(found) <= _LONGEST_UNBROKEN else found


def breakable(word: str) -> str:
    """A very long word with places where a line may end, should it have to."""
    if len(word) <= _LONGEST_WORD or "\u00a0" in word or _GAP.search(word):
        return word
    return "\u200b".join(word[at : at + 12] for at in range(0, len(word), 12))


class _Reader(HTMLParser):
    """Reads the HTML that the site's own Markdown gives; lists inside lists are read as one."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.blocks: list[Block] = []
        self._line: Runs = []
        self._styles: list[str] = []
        self._lists: list[list[Runs]] = []
        self._table: dict[str, Any] = {}
        self._unheard = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag in _STYLES:
            self._styles.append(_STYLES[tag])
        elif tag == "span" and (self._unheard or given.get("class") == "only-heard"):
            self._unheard += 1
        elif tag == "img":
            self.blocks.append({"picture": given.get("src") or "", "alt": given.get("alt") or ""})
        elif tag in ("ol", "ul"):
            self._end_item()
            if not self._lists:
                self.blocks.append({"list": [], "numbered": tag == "ol"})
            self._lists.append(self.blocks[-1]["list"] if not self._lists else self._lists[0])
        elif tag == "table":
            self._table = {"head": [], "rows": []}
            self.blocks.append({"table": self._table})
        elif tag == "tr":
            self._table["rows"].append([])

    def handle_endtag(self, tag: str) -> None:
        if tag in _STYLES and self._styles:
            self._styles.pop()
        elif tag == "span" and self._unheard:
            self._unheard -= 1
        elif tag in ("td", "th"):
            self._table["rows"][-1].append(self._taken())
        elif tag == "thead":
            self._table["head"] = self._table["rows"].pop()
        elif tag == "li":
            self._end_item()
        elif tag in ("ol", "ul") and self._lists:
            self._lists.pop()
        elif tag in _PARAGRAPHS and not self._lists and self._line:
            self.blocks.append({_PARAGRAPHS[tag]: self._taken()})

    def handle_data(self, data: str) -> None:
        if self._unheard or not (data.strip() or self._line):
            return
        text = re.sub(r"\s+", " ", data)
        if self._styles:
            self._line.append({"style": self._styles[-1], "text": text})
        else:
            self._line += _with_gaps(text)

    def _end_item(self) -> None:
        if self._lists and self._line:
            self._lists[-1].append(self._taken())

    def _taken(self) -> Runs:
        line, self._line = self._line, []
        if line and isinstance(line[-1], str):
            line[-1] = line[-1].rstrip(" ")
        return [run for run in line if run]
