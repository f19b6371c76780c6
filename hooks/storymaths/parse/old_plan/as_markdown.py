"""An old plan's lines as Markdown that says the same words: no sign of theirs is taken for mark-up."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

from .lines import PlanBlock, PlanLine

_MARKS = re.compile(r"([\\`*_\[\]{}<>#~|&])")
_START = re.compile(r"^(\d{1,9})([.)])|^([-+=:])")
_SUM = re.compile(r"\d+(?: ?[x*×] ?\d+| [-−+÷] \d+)+(?= ?=)")


def as_text(words: str) -> str:
    """A line. Sums typed with x, * and - get the signs they mean; invisible signs go."""
    seen = "".join(" " if unicodedata.category(sign) in ("Zs", "Cc") else sign for sign in words if _is_seen(sign))
    signed = _SUM.sub(lambda found: _with_signs(found.group()), " ".join(seen.split()))
    escaped = _MARKS.sub(r"\\\1", signed)
    return _START.sub(lambda found: f"{found[1]}\\{found[2]}" if found[1] else f"\\{found[3]}", escaped)


def _is_seen(sign: str) -> bool:
    return unicodedata.category(sign) not in ("Cf", "Co", "Cn", "Cs")


def _with_signs(typed: str) -> str:
    times = re.sub(r"(?<=\d) ?[x*×] ?(?=\d)", " × ", typed)
    return times.replace(" - ", " − ")


def as_blocks(blocks: Iterable[PlanBlock]) -> str:
    """Paragraphs, lists and tables."""
    told: list[str] = []
    before: PlanBlock | None = None
    for block in blocks:
        if isinstance(block, PlanLine):
            in_list = isinstance(before, PlanLine) and before.depth and block.depth
            mark = ("1. " if block.numbered else "- ") if block.depth else ""
            indent = " " * 3 * min(block.depth - 1, before.depth if isinstance(before, PlanLine) and in_list else 0)
            told += [("" if in_list else "\n") + indent + mark + as_text(block.text)]
        else:
            width = max(map(len, block.rows), default=0)
            rows = [[" ".join(as_text(line.text) for line in cell) for cell in row] for row in block.rows]
            lines = ["| " + " | ".join([*row, *[""] * (width - len(row))]) + " |" for row in rows]
            told += ["\n" + "\n".join([lines[0], "|" + " --- |" * width, *lines[1:]])] if lines else []
        before = block
    return "\n".join(told).strip("\n")
