"""Drawings to try: hostile ones, and ordinary ones by the habits of several drawing programs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from yaml_files import read_yaml

OPEN = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 9 9">'
_LISTS = Path(__file__).parent / "parse"


@dataclass(frozen=True, slots=True)
class Tried:
    """A drawing, and what is to come of it: words of the problem, and what is in what is served and what is not."""

    name: str
    text: str
    says: str = ""
    shows: str = ""
    drops: str = ""


def hostile(hear: str = "http://127.0.0.1:9") -> list[Tried]:
    """Drawings that would do harm, where they can by asking the listener at the address ``hear``."""
    return [_tried(row, hear) for row in _rows("drawings_hostile.yaml")]


def ordinary() -> list[Tried]:
    """Drawings as people make them."""
    return [_tried(row, "") for row in _rows("drawings_ordinary.yaml")]


@lru_cache(maxsize=2)
def _rows(name: str) -> list[dict[str, str | int]]:
    rows: list[dict[str, str | int]] = read_yaml(_LISTS / name)
    return rows


def _tried(row: Mapping[str, str | int], hear: str) -> Tried:
    one, times = str(row.get("many", "")), int(row.get("times", 0))
    many = "".join(one.replace("{n}", str(n)).replace("{before}", str(n - 1)) for n in range(1, times + 1))
    text = str(row["whole"]).replace("OPEN", OPEN, 1) if "whole" in row else f"{OPEN}\n  {row['svg']}\n</svg>"
    text = text.replace("MANY", many).replace("HEAR", hear)
    return Tried(str(row["name"]), text, *(str(row.get(name, "")) for name in ("says", "shows", "drops")))
