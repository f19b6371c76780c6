"""An author's words, as they were read, into HTML, with links between sources turned into links between pages."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from html import escape

from ..model.address import link, resolve
from ..model.body import Block, Fence, Heading, List, Mark, Markup, Paragraph, Quotation, Rule, Run, Runs, Table
from .cleaning import cleaned
from .quotes import curl

DrawFence = Callable[[Fence], str | None]
"""The HTML of data between fences; None for words to be shown as they are."""
_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//|#|/", re.IGNORECASE)
_TABLE_FRAME = '<div class="table-frame" tabindex="0" role="region" aria-label="Table">'
_TAGS = {"strong": "strong", "emphasis": "em"}
_WRONG = '<span class="wrong"><span class="only-heard">Wrong on purpose: </span>'
"""A mistake to talk about, said to be one to those who only hear it."""


def draw_blocks(blocks: Sequence[Block], here: str, draw_fence: DrawFence = lambda fence: None) -> str:
    """Blocks as HTML, cleaned. ``here`` is the source they stand in; what ``draw_fence`` gives is taken as it is."""
    return _Drawing(here, draw_fence).blocks(blocks)


def draw_runs(runs: Runs, here: str) -> str:
    """Runs of one line or paragraph as HTML, cleaned, without a paragraph's tags around them."""
    if len(runs) == 1 and runs[0].kind == "words" and not runs[0].marks:
        return escape(curl(runs[0].text), quote=False)  # most lines; there is nothing to clean
    return cleaned(_Drawing(here, lambda fence: None).line(runs))


class _Drawing:
    """Draws one text."""

    def __init__(self, here: str, draw_fence: DrawFence) -> None:
        self._here, self._draw_fence = here, draw_fence

    def blocks(self, blocks: Sequence[Block]) -> str:
        """Blocks with the data among them drawn; all that comes from the author is cleaned."""
        parts: list[str] = []
        own: list[str] = []  # what stands between two pieces of data is cleaned as one: a tag may be closed further on
        for block in blocks:
            drawn = self._with_data(block)
            if drawn is None:
                own.append(self._plain(block))
            else:
                parts += [cleaned("\n".join(own)), drawn] if own else [drawn]
                own = []
        return "\n".join([*parts, cleaned("\n".join(own))] if own else parts)

    def _with_data(self, block: Block) -> str | None:
        """A block that is data, or holds some; None for any other."""
        match block:
            case Fence():
                return self._draw_fence(block)
            case List() if any(self._holds_data(item) for item in block.items):
                items = "\n".join(f"<li>{self.blocks(item)}</li>" for item in block.items)
                return f"<{_list_tag(block)}>\n{items}\n</{_list_tag(block)[:2]}>"
            case Quotation() if self._holds_data(block.blocks):
                return f"<blockquote>\n{self.blocks(block.blocks)}\n</blockquote>"
            case _:
                return None

    def _holds_data(self, blocks: Sequence[Block]) -> bool:
        return any(self._with_data(block) is not None for block in blocks)

    def _plain(self, block: Block) -> str:
        match block:
            case Paragraph(runs=runs):
                return f"<p>{self.line(runs)}</p>"
            case Heading(runs=runs, level=level, anchor=anchor):
                name = f' id="{escape(anchor)}"' if anchor else ""
                return f"<h{level}{name}>{self.line(runs)}</h{level}>"
            case List():
                items = "\n".join(f"<li>{self._item(item, block.tight)}</li>" for item in block.items)
                return f"<{_list_tag(block)}>\n{items}\n</{_list_tag(block)[:2]}>"
            case Quotation(blocks=blocks):
                return "\n".join(("<blockquote>", *map(self._plain, blocks), "</blockquote>"))
            case Table():
                return self._table(block)
            case Fence(text=text):
                return f"<pre><code>{escape(text, quote=False)}</code></pre>"
            case Markup(text=text):
                return text.rstrip("\n")
            case Rule():
                return "<hr>"

    def _item(self, blocks: Sequence[Block], tight: bool) -> str:
        if not tight:
            return "\n".join(("", *map(self._plain, blocks), ""))
        return "\n".join(self.line(b.runs) if isinstance(b, Paragraph) else self._plain(b) for b in blocks)

    def _table(self, table: Table) -> str:
        head = self._row(table.head, table, "th")
        rows = "\n".join(self._row(row, table, "td") for row in table.rows)
        told = f"<tbody>\n{rows}\n</tbody>\n" if rows else ""
        return f"{_TABLE_FRAME}<table>\n<thead>\n{head}\n</thead>\n{told}</table></div>"

    def _row(self, cells: Sequence[Runs], table: Table, tag: str) -> str:
        # Columns are set by class: the page's policy allows no style of its own.
        sides = [f' class="set-{side}"' if side in ("right", "center") else "" for side in table.sides]
        drawn = (f"<{tag}{side}>{self.line(cell)}</{tag}>" for cell, side in zip(cells, sides, strict=False))
        return "\n".join(("<tr>", *drawn, "</tr>"))

    def line(self, runs: Runs) -> str:
        """Runs as HTML, each mark opened before the first run that has it and closed after the last."""
        parts: list[str] = []
        now: tuple[Mark, ...] = ()
        before = ""
        for run in runs:
            kept = 0
            while kept < min(len(now), len(run.marks)) and now[kept] is run.marks[kept]:
                kept += 1
            parts += [_closed(mark) for mark in reversed(now[kept:])]
            parts += [self._opened(mark) for mark in run.marks[kept:]]
            parts.append(self._run(run, before))
            now, before = run.marks, run.text[-1:] or before
        return "".join((*parts, *(_closed(mark) for mark in reversed(now))))

    def _run(self, run: Run, before: str) -> str:
        match run.kind:
            case "words":
                return escape(curl(run.text, before), quote=False)
            case "code":
                return f"<code>{escape(run.text, quote=False)}</code>"
            case "picture":
                title = f' title="{escape(run.title)}"' if run.title else ""
                return f'<img alt="{escape(run.text)}" src="{escape(run.target)}"{title}>'
            case "break":
                return "<br>\n" if run.title else "\n"
            case "html":
                return run.text

    def _opened(self, mark: Mark) -> str:
        if mark.name == "wrong":
            return _WRONG
        if mark.name != "link":
            return f"<{_TAGS[mark.name]}>"
        title = f' title="{escape(mark.title)}"' if mark.title else ""
        return f'<a href="{escape(self._leads_to(mark.target))}"{title}>'

    def _leads_to(self, target: str) -> str:
        """``.md`` turned into ``.html``, from the page that is drawn."""
        if not target or _ELSEWHERE.match(target):
            return target
        path, mark, place = target.partition("#")
        return link(resolve(path, self._here), self._here) + mark + place


def _closed(mark: Mark) -> str:
    return {"link": "</a>", "wrong": "</span>"}.get(mark.name) or f"</{_TAGS[mark.name]}>"


def _list_tag(block: List) -> str:
    if block.first is None:
        return "ul"
    return "ol" if block.first == 1 else f'ol start="{block.first}"'
