"""An author's words for paper: Markdown turned into runs of text and blocks of them, as plain data.

A run is a text, or ``{"style", "text"}`` with ``strong``, ``emph`` or ``gap``. A block is a mapping with one of
``p``, ``h``, ``list``, ``table`` and ``picture``.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import Any

from ...model import body
from ...parse.body import read_text
from ..quotes import curl

Run = str | dict[str, str]
Runs = list[Run]
Block = dict[str, Any]

_GAP = re.compile(r"_{3,}")
_NUMBER = r"(?:£?\d[\d,.]*\w{0,2}|_{3,})"
_SUM = re.compile(rf"{_NUMBER}(?: [+−×÷=≠<>] {_NUMBER})+")
_UNIT = re.compile(r"(?<=\d) (?=(?:k?g|[kcm]?m|m?l|p)\b)")
_LONGEST_UNBROKEN = 24
"""Signs of a number sentence that is kept on one line."""
_LONGEST_WORD = 14
_STYLES = {"strong": "strong", "emphasis": "emph"}


def runs(text: str) -> Runs:
    """One line or paragraph of Markdown."""
    found: Runs = []
    for block in parts_of(read_text(text).blocks):
        for line in [block[name] for name in ("p", "h") if name in block] or block.get("list", []):
            found += [*([" "] if found else []), *line]
    return found


def ended(text: str) -> str:
    """With a full stop, unless it ends in a stop of its own."""
    return text if text.endswith((".", "?", "!", ".”", "?”", "!”", '."', '?"', '!"')) else f"{text}."


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


def parts_of(blocks: Iterable[body.Block]) -> list[Block]:
    """Blocks of a text as paragraphs, headings, lists, tables and pictures, in order; lists inside lists are one."""
    return [part for block in blocks for part in _parts(block)]


def _parts(block: body.Block) -> Iterator[Block]:
    match block:
        case body.Paragraph(runs=line) | body.Heading(runs=line):
            yield from ({"picture": run.target, "alt": run.text} for run in line if run.kind == "picture")
            if told := _told(line):
                yield {"h" if isinstance(block, body.Heading) else "p": told}
        case body.List(items=items, first=first):
            lines = [told for item in items for line in body.Body(item).lines if (told := _told(line))]
            yield {"list": lines, "numbered": first is not None}
        case body.Quotation(blocks=inner):
            yield from parts_of(inner)
        case body.Table(head=head, rows=rows):
            yield {"table": {"head": [_told(cell) for cell in head], "rows": [[*map(_told, row)] for row in rows]}}
        case _:
            return


def _told(line: body.Runs) -> Runs:
    """Runs of a line for paper, without space at its end."""
    found: Runs = []
    before = ""
    for run in line:
        text = " " if run.kind == "break" else curl(run.text, before) if run.kind == "words" else run.text
        style = next((_STYLES[mark.name] for mark in reversed(run.marks) if mark.name in _STYLES), "")
        if run.kind in ("words", "code", "break"):
            found += [{"style": style, "text": text}] if style else _with_gaps(text)
            before = text[-1:] or before
    if found and isinstance(found[-1], str):
        found[-1] = found[-1].rstrip(" ")
    return [run for run in found if run]


def _with_gaps(text: str) -> Runs:
    text = _SUM.sub(_unbroken, _UNIT.sub("\u00a0", text))
    text = " ".join(breakable(word) for word in text.split(" "))
    found: Runs = []
    for place, piece in enumerate(_GAP.split(text)):
        if place:
            found.append({"style": "gap", "text": "___"})
        if piece:
            found.append(piece)
    return found


def _unbroken(match: re.Match[str]) -> str:
    found = match.group()
    return found.replace(" ", "\u00a0") if len(found) <= _LONGEST_UNBROKEN else found


def breakable(word: str) -> str:
    """A very long word with places where a line may end, should it have to."""
    if len(word) <= _LONGEST_WORD or "\u00a0" in word or _GAP.search(word):
        return word
    if "-" in word:  # where a line may end already
        return "-".join(breakable(part) for part in word.split("-"))
    return "\u200b".join(word[at : at + 12] for at in range(0, len(word), 12))
