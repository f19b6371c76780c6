"""Markdown as people write it, with headings a strict reader would not see, as lines."""

from __future__ import annotations

import re
from pathlib import Path

from ...model.old_plans import OldPlanLimits
from .lines import PlanBlock, PlanLine, PlanTable, Unreadable
from .unpack import read_bytes

_HEADING = re.compile(r"#{1,6}\s*(?P<words>.*?)\s*#*")
_ITEM = re.compile(r"(?P<indent>\s*)(?:(?P<bullet>[-*+])|\d{1,3}[.)])\s+(?P<words>.*)")
_UNDERLINE = re.compile(r"\s{0,3}(?:=+|-{3,})\s*")
_ROW = re.compile(r"\s*\|.*\|\s*")
_RULE = re.compile(r"[\s|:-]+")
_BOLD = re.compile(r"\s*(\*\*|__)(?P<words>[^*_]+)\1:?\s*")
_MARKS = re.compile(r"\*\*|__|`")


def read_markdown(path: Path, limits: OldPlanLimits) -> list[PlanBlock]:
    """Its text. Raises ``Unreadable``."""
    try:
        text = read_bytes(path, limits).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise Unreadable("It is not plain text (UTF-8). Save it again as text.") from None
    if "\0" in text:
        raise Unreadable("It is not plain text (UTF-8). Save it again as text.")
    blocks: list[PlanBlock] = []
    lines = text.splitlines()
    head = lines.index("---", 1) if lines[:1] == ["---"] and "---" in lines[1:] else 0
    for at, line in enumerate(lines):
        if not line.strip() or (at in (0, head) and head):
            continue
        if at < head:  # what another program wrote for itself: kept, and no heading
            blocks.append(PlanLine(line.strip(), depth=1))
            continue
        if _UNDERLINE.fullmatch(line):
            if blocks and isinstance(blocks[-1], PlanLine) and not blocks[-1].depth:
                blocks[-1] = PlanLine(blocks[-1].text, heading=True)
        elif _ROW.fullmatch(line):
            _add_row(blocks, line)
        else:
            blocks.append(_line(line))
    return blocks


def _add_row(blocks: list[PlanBlock], line: str) -> None:
    if _RULE.fullmatch(line):
        return
    row = tuple((PlanLine(_MARKS.sub("", cell).strip()),) for cell in line.strip().strip("|").split("|"))
    last = blocks[-1] if blocks else None
    if isinstance(last, PlanTable):
        blocks[-1] = PlanTable((*last.rows, row))
    else:
        blocks.append(PlanTable((row,)))


def _line(line: str) -> PlanLine:
    if bold := _BOLD.fullmatch(line):
        return PlanLine(bold["words"].strip(), bold=True)
    if item := _ITEM.fullmatch(line):
        return PlanLine(_MARKS.sub("", item["words"]), depth=1 + len(item["indent"]) // 2, numbered=not item["bullet"])
    if heading := _HEADING.fullmatch(line):
        return PlanLine(_MARKS.sub("", heading["words"]), heading=True)
    return PlanLine(_MARKS.sub("", line).strip().removeprefix("> "))
