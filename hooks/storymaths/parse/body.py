"""Markdown into blocks and runs of text: the one place where an author's Markdown is read.

CommonMark 0.31.2 (https://spec.commonmark.org/0.31.2/) with tables, and three things of our own: ``[4 + 5 = 8]{wrong}``
is a mistake to talk about, ``___`` is a gap and never a mark, and lines that stand far in are no code.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Literal

from markdown_it import MarkdownIt
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token

from ..model.body import Block, Body, Fence, Heading, List, Mark, Markup, Paragraph, Quotation, Rule, Run, Runs, Table
from ..model.body import name_headings as _name_headings

_NEEDS_READING = re.compile(r"[*`\[<&\\]|^\s*(?:>|(?:[-+]|#{1,6}|\d+[.)])\s+\S)|\n")
"""What makes a line more than words; most have none of it."""
_ONE_NUMBER = re.compile(r"\A(\d+)([.)])(?=\s)(?!(?s:.*)\n\s*\d+[.)]\s)")
"""A number with a full stop at the start of a text that has no second one at the start of a line."""
_WRONG_ENDS = "]{wrong}"
_OWN_NAME = re.compile(r" *\{#([\w-]+)\} *$")
_MARKS = {"strong_open": Mark("strong"), "em_open": Mark("emphasis"), "wrong_open": Mark("wrong")}


def read_body(text: str, first_line: int = 1) -> Body:
    """A stretch of Markdown whose first line is ``first_line`` of its file."""
    tokens = _MARKDOWN.parse(text)
    blocks = _Blocks(tokens, text, first_line).read()
    return Body(_name_headings(blocks))


@lru_cache(maxsize=4096)  # the same fields are drawn on a page, on paper and in lists
def read_text(text: str) -> Body:
    """A text of front matter or data: mostly a line of plain words."""
    if _ONE_NUMBER.match(text):  # an answer such as "9. A child who says 15 has added" is no list of one
        text = _ONE_NUMBER.sub(r"\1\\\2", text)
    if _NEEDS_READING.search(text):
        return read_body(text)
    return Body((Paragraph(1, (Run("words", text, 1),)),))


def with_tables(body: Body, tables: Mapping[str, Table]) -> Body:
    """A body in which a paragraph that is no more than ``[[a name]]`` is the table of that name."""
    return Body(tuple(_in_its_place(block, tables) for block in body.blocks))


def _in_its_place(block: Block, tables: Mapping[str, Table]) -> Block:
    if isinstance(block, List):
        return replace(block, items=tuple(tuple(_in_its_place(one, tables) for one in item) for item in block.items))
    if isinstance(block, Quotation):
        return replace(block, blocks=tuple(_in_its_place(one, tables) for one in block.blocks))
    if not isinstance(block, Paragraph):
        return block
    named = tables.get("".join(run.text for run in block.runs).removeprefix("[[").removesuffix("]]"))
    if named is None:
        return block
    rows = tuple(_cells_moved(row, block.line) for row in named.rows)
    return replace(named, line=block.line, head=_cells_moved(named.head, block.line), rows=rows)


def _cells_moved(cells: Sequence[Runs], line: int) -> tuple[Runs, ...]:
    return tuple(tuple(replace(run, line=line) for run in cell) for cell in cells)


def words_of(text: str) -> str:
    """The words of a text alone, for data and for comparing: no marks, one space between words."""
    return " ".join(" ".join(_plain(runs) for runs in read_text(text).lines).split())


def _plain(runs: Runs) -> str:
    return "".join(" " if run.kind == "break" else run.text for run in runs if run.kind not in ("html", "picture"))


def _read_wrong(state: StateInline, silent: bool) -> bool:
    """The rule that reads ``[…]{wrong}``."""
    if state.src[state.pos] != "[":
        return False
    end = state.src.find(_WRONG_ENDS, state.pos, state.posMax)
    inside = state.src[state.pos + 1 : end]
    if end < 0 or not inside or "]" in inside or "\n" in inside:
        return False
    if not silent:
        last = state.posMax
        state.push("wrong_open", "", 1)
        state.pos, state.posMax = state.pos + 1, end
        state.md.inline.tokenize(state)
        state.push("wrong_close", "", -1)
        state.posMax = last
    state.pos = end + len(_WRONG_ENDS)
    return True


def _read_gap(state: StateInline, silent: bool) -> bool:
    """The rule that reads ``___`` as words."""
    end = state.pos
    while end < state.posMax and state.src[end] == "_":
        end += 1
    if end - state.pos < 3:
        return False
    if not silent:
        state.pending += state.src[state.pos : end]
    state.pos = end
    return True


class _Markdown(MarkdownIt):
    """Every address is read, and as it is written: what may lead where is for the rules and the gate to say."""

    def validateLink(self, url: str) -> bool:
        """Any."""
        return True

    def normalizeLink(self, url: str) -> str:
        """The same."""
        return url

    def normalizeLinkText(self, link: str) -> str:
        """The same."""
        return link


def _reader() -> MarkdownIt:
    reader = _Markdown("commonmark").enable("table").disable("code")
    reader.inline.ruler.before("link", "wrong", _read_wrong)
    reader.inline.ruler.before("emphasis", "gap", _read_gap)
    return reader


_MARKDOWN = _reader()


class _Blocks:
    """Walks the tokens of a text once."""

    def __init__(self, tokens: Sequence[Token], text: str, first_line: int) -> None:
        self._tokens, self._at, self._text, self._first = tokens, 0, text, first_line

    def read(self, closing: str = "") -> tuple[Block, ...]:
        """The blocks up to a closing token."""
        found = []
        while self._at < len(self._tokens):
            token = self._tokens[self._at]
            self._at += 1
            if token.type == closing:
                break
            found.append(self._block(token))
        return tuple(found)

    def _block(self, token: Token) -> Block:
        line = self._line(token)
        match token.type:
            case "heading_open":
                return _heading(line, self._runs(), int(token.tag[1]))
            case "bullet_list_open" | "ordered_list_open":
                return self._list(token, line)
            case "blockquote_open":
                return Quotation(line, self.read("blockquote_close"))
            case "table_open":
                return self._table(line)
            case "fence":
                return self._fence(token, line)
            case "html_block":
                return Markup(line, token.content)
            case "hr":
                return Rule(line)
            case _:
                return Paragraph(line, self._runs())

    def _line(self, token: Token) -> int:
        return self._first + (token.map[0] if token.map else 0)

    def _runs(self) -> Runs:
        """The runs of the block just opened, past its end."""
        inline = self._tokens[self._at]
        self._at += 2
        return tuple(_runs_of(inline.children or (), self._line(inline)))

    def _list(self, token: Token, line: int) -> List:
        items = []
        tight = False
        while self._tokens[self._at].type == "list_item_open":
            self._at += 1
            start = self._at
            items.append(self.read("list_item_close"))
            tight = tight or any(inner.hidden for inner in self._tokens[start : self._at])
        self._at += 1
        first = int(token.attrGet("start") or 1) if token.type == "ordered_list_open" else None
        return List(line, tuple(items), first, tight)

    def _table(self, line: int) -> Table:
        rows: list[tuple[Runs, ...]] = []
        sides: list[Literal["", "left", "right", "center"]] = []
        while (token := self._tokens[self._at]).type != "table_close":
            self._at += 1
            if token.type == "tr_open":
                rows.append(())
            elif token.type in ("th_open", "td_open"):
                rows[-1] = (*rows[-1], self._runs())
                if len(rows) == 1:
                    sides.append(_SIDES[str(token.attrGet("style") or "").rpartition(":")[2]])
        self._at += 1
        return Table(line, rows[0], tuple(rows[1:]), tuple(sides))

    def _fence(self, token: Token, line: int) -> Fence:
        assert token.map is not None, "a fence has lines"
        opening = self._lines[token.map[0]]
        lines = len(token.content.removesuffix("\n").split("\n")) if token.content else 0
        closed = token.map[1] - token.map[0] == lines + 2
        return Fence(line, opening.index(token.markup) + 1, token.info.strip(), token.content, closed)

    @property
    def _lines(self) -> list[str]:
        return self._text.split("\n")


_SIDES: dict[str, Literal["", "left", "right", "center"]] = {
    "": "", "left": "left", "right": "right", "center": "center"
}  # fmt: skip


def _heading(line: int, runs: Runs, level: int) -> Heading:
    own = _OWN_NAME.search(runs[-1].text) if runs and runs[-1].kind == "words" else None
    if own is None:
        return Heading(line, runs, level, "")
    last = runs[-1]
    kept = last.text[: own.start()]
    return Heading(line, (*runs[:-1], *((Run("words", kept, last.line, last.marks),) if kept else ())), level, own[1])


def _runs_of(tokens: Sequence[Token], line: int) -> Iterator[Run]:
    marks: tuple[Mark, ...] = ()
    for token in tokens:
        kind, text = token.type, token.content
        if kind == "text":
            if text:
                yield Run("words", text, line, marks)
        elif kind in ("softbreak", "hardbreak"):
            yield Run("break", "\n", line, marks, title="hard" if kind == "hardbreak" else "")
            line += 1
        elif kind in _MARKS:
            marks = (*marks, _MARKS[kind])
        elif kind == "link_open":
            marks = (*marks, Mark("link", str(token.attrGet("href") or ""), str(token.attrGet("title") or "")))
        elif token.nesting < 0:
            marks = marks[:-1]
        elif kind == "image":
            words = "".join(_alternative(token.children or ()))
            yield Run("picture", words, line, marks, str(token.attrGet("src") or ""), str(token.attrGet("title") or ""))
        elif kind == "code_inline":
            yield Run("code", text, line, marks)
        else:
            yield Run("html", text, line, marks)
            line += text.count("\n")


def _alternative(tokens: Sequence[Token]) -> Iterator[str]:
    """The words of a picture, without marks."""
    for token in tokens:
        if token.children:
            yield from _alternative(token.children)
        else:
            yield "\n" if token.type == "softbreak" else token.content
