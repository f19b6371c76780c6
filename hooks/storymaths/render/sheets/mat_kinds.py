"""The mats there are: what each is drawn from, and which materials and drawings call for it."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

Data = Mapping[str, Any]
_STRETCH = re.compile(r"\b(\d{1,4}) to (\d{1,4})\b")
_CENTIMETRES = re.compile(r"\b([12]) cm\b")
_SQUARES = {10: (18, 25), 20: (9, 12)}
"""Squares across and down a page by their side in millimetres."""
_LONGEST_LINE = 30


@dataclass(frozen=True, slots=True)
class Mat:
    """A mat: its name in the address, its heading, what it is, what is drawn, and the drawing in words."""

    name: str
    heading: str
    says: str
    alt: str
    data: Data = field(default_factory=dict)
    on_a_page: int = 1
    noun: str = "mat"
    """What a page holds ``on_a_page`` of."""


def _balance(_: Data) -> Mat:
    return Mat(
        "balance-mat",
        "Balance mat",
        "Two sides that hang level, and a place for a sign between them.",
        "A level beam with a side to the left and a side to the right, and an empty circle for a sign between them.",
    )


def _part_whole(data: Data) -> Mat:
    parts = max(2, min(4, len(data.get("parts", ())) or 2))
    return Mat(
        "part-whole-mat",
        "Part–whole mat",
        f"A whole above and {parts} parts below, for cards, counters or numbers.",
        f"A large empty circle for the whole, joined by lines to {parts} empty circles for its parts.",
        {"parts": parts},
    )


def _venn(data: Data) -> Mat:
    return Mat(
        "sorting-rings",
        "Sorting rings",
        "Two rings that cross, with their headings.",
        "Two large rings that cross, in a frame. There is room in each ring, where they cross, and outside both.",
        {"rings": 2, "labels": [str(label) for label in data["labels"]]},
    )


def _hoop(data: Data) -> Mat:
    return Mat(
        "sorting-ring",
        "Sorting ring",
        "One ring with its heading, and room outside it.",
        "A large ring in a frame. There is room inside the ring and outside it.",
        {"rings": 1, "labels": [str(label) for label in data["labels"]]},
    )


def _carroll(data: Data) -> Mat:
    across, down = ([str(data[kind][place]) for kind in ("labels", "otherwise")] for place in (0, 1))
    return Mat(
        "two-way-table",
        "Two-way table",
        "Four boxes with a heading for each column and each row.",
        "",
        {"across": across, "down": down},
    )


def _grid(data: Data) -> Mat | None:
    columns, rows = int(data["columns"]), int(data["rows"])
    if max(columns, rows) > 20:
        return None
    return Mat(
        "grid",
        "Grid",
        f"An empty grid, {columns} squares across and {rows} up.",
        f"An empty grid of {columns} squares across and {rows} up, numbered from the bottom left.",
        {"columns": columns, "rows": rows, "blocked": [list(square) for square in data.get("blocked", ())]},
    )


def _clocks(_: Data) -> Mat:
    return Mat(
        "clock-faces",
        "Clock faces",
        "Six clock faces without hands, to draw on or to cut out.",
        "Six clock faces with the numbers 1 to 12 and a mark for each minute, and no hands.",
        on_a_page=6,
        noun="face",
    )


def _tens_frames(_: Data) -> Mat:
    return Mat(
        "tens-frames",
        "Tens frames",
        "Two frames of ten boxes, for the numbers to 20.",
        "Two empty frames, one above the other. Each has two rows of five boxes.",
    )


def _hundred(_: Data) -> Mat:
    return Mat(
        "hundred-square", "Hundred square", "The numbers 1 to 100 in ten rows of ten.", "", {"from": 1, "to": 100}
    )


def _number_line(note: str, year: int) -> Mat:
    stretch = _STRETCH.search(note)
    first, last = (int(stretch[1]), int(stretch[2])) if stretch else (0, 10 if year == 0 else 20 if year < 2 else 100)
    step = next((one for one in (1, 2, 5, 10, 50, 100, 500, 1000) if (last - first) <= one * _LONGEST_LINE), 10_000)
    last = first + -(-max(1, last - first) // step) * step
    on_a_page = 4
    return Mat(
        "number-lines",
        f"Number lines, {first} to {last}",
        f"{on_a_page} number lines from {first} to {last} to cut apart, 260 mm long.",
        f"{on_a_page} number lines along the page, each from {first} to {last}"
        + (f" in steps of {step}." if step > 1 else "."),
        {"from": first, "to": last, "step": step, "lines": on_a_page},
        on_a_page,
        "line",
    )


def _squares(note: str, year: int) -> Mat:
    found = _CENTIMETRES.search(note)
    side = int(found[1]) * 10 if found else 20 if year <= 1 else 10
    across, down = _SQUARES[side]
    return Mat(
        "squared-paper",
        f"Squared paper, {side // 10} cm",
        f"{across} squares across and {down} down, {side} mm each.",
        f"Squared paper, {across} squares across and {down} down.",
        {"side": side, "columns": across, "rows": down},
        noun="page",
    )


def _blank_rings(_note: str, _year: int) -> Mat:
    return _venn({"labels": ["", ""]})


FROM_FIGURE: Mapping[str, Callable[[Data], Mat | None]] = {
    "balance": _balance,
    "part-whole": _part_whole,
    "sort-hoop": _hoop,
    "sort-venn": _venn,
    "sort-carroll": _carroll,
    "grid-route": _grid,
    "clock-face": _clocks,
    "bond-stairs": _tens_frames,
}
"""By the name of a drawing in an activity's task."""

FROM_MATERIAL: Mapping[str, Callable[[str, int], Mat | None]] = {
    "balance-mat": lambda note, year: _balance({}),
    "part-whole-mat": lambda note, year: _part_whole({}),
    "sorting-ring": _blank_rings,
    "tens-frame": lambda note, year: _tens_frames({}),
    "hundred-square": lambda note, year: _hundred({}),
    "number-line": _number_line,
    "squared-paper": _squares,
    "clock-face": lambda note, year: _clocks({}),
}
"""By the material's id; from the author's note and the year."""
