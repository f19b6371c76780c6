"""An OpenDocument text (ISO/IEC 26300) as lines."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from xml.etree.ElementTree import Element

from ...model.old_plans import OldPlanLimits
from .docx import lines_of
from .lines import PlanBlock, PlanLine, PlanTable, Unreadable
from .unpack import read_parts

_TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"
_TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
_BODY = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}body"
_INSTEAD = {f"{_TEXT}s": " ", f"{_TEXT}tab": "\t", f"{_TEXT}line-break": "\n"}


def read_odt(path: Path, limits: OldPlanLimits) -> list[PlanBlock]:
    """Its text, footnotes in brackets where they are. Raises ``Unreadable``."""
    (content,) = read_parts(path, ("content.xml",), limits)
    body = content.find(_BODY) if content is not None else None
    if body is None:
        raise Unreadable("There is no text in it. Is it a word processor's file?")
    return list(_blocks(body, 0))


def _blocks(parent: Element, depth: int) -> Iterator[PlanBlock]:
    for one in parent:
        if one.tag in (f"{_TEXT}p", f"{_TEXT}h"):
            for line in "".join(_words(one)).split("\n"):
                if line.strip():
                    yield PlanLine(line.strip(), heading=one.tag == f"{_TEXT}h", depth=depth)
        elif one.tag == f"{_TABLE}table":
            yield PlanTable(tuple(tuple(_cells(row)) for row in one.iter(f"{_TABLE}table-row")))
        elif one.tag != f"{_TEXT}tracked-changes":
            yield from _blocks(one, depth + (one.tag == f"{_TEXT}list"))


def _cells(row: Element) -> Iterator[tuple[PlanLine, ...]]:
    for cell in row:
        yield tuple(line for block in _blocks(cell, 0) for line in lines_of(block))


def _words(one: Element) -> Iterator[str]:
    if one.tag in _INSTEAD:
        yield _INSTEAD[one.tag]
    elif one.tag == f"{_TEXT}note":
        yield f" ({' '.join(line.text for block in _blocks(one, 0) for line in lines_of(block))})"
    else:
        yield one.text or ""
        for inner in one:
            # A box within a paragraph holds paragraphs of its own.
            apart = "\n" if inner.tag in (f"{_TEXT}p", f"{_TEXT}h") else ""
            yield from (apart, *_words(inner), apart, inner.tail or "")
