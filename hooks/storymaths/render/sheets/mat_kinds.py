"""The mats there are: what each is drawn from, and which materials and drawings call for it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from ...model.figures import FigureData
from ...model.figures.amounts import BondStairs, PartWhole
from ...model.figures.measures import Balance, ClockFace
from ...model.figures.shapes import GridRoute, Square
from ...model.figures.sorting import SortCarroll, SortHoop, SortThreeRings, SortVenn
from .note_numbers import centimetres_in, stretch_in

_SQUARES = {1: (18, 25), 2: (9, 12)}
"""Squares across and down a page by their side in centimetres."""
_LONGEST_LINE = 30
_LARGEST_GRID = 20


@dataclass(frozen=True, slots=True)
class Parts:
    """Circles for so many parts below one for the whole."""

    parts: int


@dataclass(frozen=True, slots=True)
class Rings:
    """Rings with their headings; an empty one is a line to write on."""

    labels: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TwoWay:
    """The two headings of the columns and of the rows."""

    across: tuple[str, str]
    down: tuple[str, str]


@dataclass(frozen=True, slots=True)
class NumberLines:
    """Lines alike, each with a number at every step from the first to the last."""

    first: int
    last: int
    step: int
    lines: int


@dataclass(frozen=True, slots=True)
class SquaredPaper:
    """Squares with a side in millimetres."""

    side: int
    columns: int
    rows: int


@dataclass(frozen=True, slots=True)
class NamedGrid:
    """Squares as large as fit, with letters and numbers along the edges; ``blocked`` ones are grey."""

    columns: int
    rows: int
    blocked: tuple[Square, ...]


Drawn = Parts | Rings | TwoWay | NumberLines | SquaredPaper | NamedGrid


@dataclass(frozen=True, slots=True)
class Mat:
    """A mat: its name in the address, its heading, what it is, the drawing in words, and what is drawn."""

    name: str
    heading: str
    says: str
    alt: str
    drawn: Drawn | None = None
    """What differs from one mat of the name to another, if anything does."""
    on_a_page: int = 1
    noun: str = "mat"
    """What a page holds ``on_a_page`` of."""


def mat_for_figure(figure: FigureData) -> Mat | None:
    """The mat that a drawing in an activity's task calls for; none for one that is only looked at."""
    match figure:
        case Balance():
            return _balance()
        case PartWhole():
            return _part_whole(max(2, min(4, len(figure.parts) or 2)))
        case SortHoop():
            return _hoop(figure.label)
        case SortVenn():
            return _venn(figure.labels)
        case SortThreeRings():
            return _three_rings(figure.labels)
        case SortCarroll():
            return _carroll(figure)
        case GridRoute():
            return _grid(figure) if max(figure.columns, figure.rows) <= _LARGEST_GRID else None
        case ClockFace():
            return _clocks()
        case BondStairs():
            return _tens_frames()
        case _:
            return None


def _balance() -> Mat:
    return Mat(
        "balance-mat",
        "Balance mat",
        "Two sides that hang level, and a place for a sign between them.",
        "A level beam with a side to the left and a side to the right, and an empty circle for a sign between them.",
    )


def _part_whole(parts: int) -> Mat:
    return Mat(
        "part-whole-mat",
        "Part–whole mat",
        f"A whole above and {parts} parts below, for cards, counters or numbers.",
        f"A large empty circle for the whole, joined by lines to {parts} empty circles for its parts.",
        Parts(parts),
    )


def _venn(labels: tuple[str, str]) -> Mat:
    return Mat(
        "sorting-rings",
        "Sorting rings",
        "Two rings that cross, with their headings.",
        "Two large rings that cross, in a frame. There is room in each ring, where they cross, and outside both.",
        Rings(labels),
    )


def _three_rings(labels: tuple[str, str, str]) -> Mat:
    return Mat(
        "sorting-rings",
        "Sorting rings",
        "Three rings that cross, with their headings.",
        "Three large rings that cross, in a frame. There is room in each ring, where two and where all three cross, and "
        "outside them.",
        Rings(labels),
    )


def _hoop(label: str) -> Mat:
    return Mat(
        "sorting-ring",
        "Sorting ring",
        "One ring with its heading, and room outside it.",
        "A large ring in a frame. There is room inside the ring and outside it.",
        Rings((label,)),
    )


def _carroll(figure: SortCarroll) -> Mat:
    (across, down), (not_across, not_down) = figure.labels, figure.otherwise
    return Mat(
        "two-way-table",
        "Two-way table",
        "Four boxes with a heading for each column and each row.",
        "",
        TwoWay((across, not_across), (down, not_down)),
    )


def _grid(figure: GridRoute) -> Mat:
    columns, rows = figure.columns, figure.rows
    return Mat(
        "grid",
        "Grid",
        f"An empty grid, {columns} squares across and {rows} up.",
        f"An empty grid of {columns} squares across and {rows} up, numbered from the bottom left.",
        NamedGrid(columns, rows, figure.blocked),
    )


def _clocks() -> Mat:
    return Mat(
        "clock-faces",
        "Clock faces",
        "Six clock faces without hands, to draw on or to cut out.",
        "Six clock faces with the numbers 1 to 12 and a mark for each minute, and no hands.",
        on_a_page=6,
        noun="face",
    )


def _tens_frames() -> Mat:
    return Mat(
        "tens-frames",
        "Tens frames",
        "Two frames of ten boxes, for the numbers to 20.",
        "Two empty frames, one above the other. Each has two rows of five boxes.",
    )


def _hundred() -> Mat:
    return Mat("hundred-square", "Hundred square", "The numbers 1 to 100 in ten rows of ten.", "")


def _number_lines(note: str, year: int) -> Mat:
    first, last = stretch_in(note) or (0, 10 if year == 0 else 20 if year < 2 else 100)
    step = next((one for one in (1, 2, 5, 10, 50, 100, 500, 1000) if (last - first) <= one * _LONGEST_LINE), 10_000)
    last = first + -(-max(1, last - first) // step) * step
    on_a_page = 4
    return Mat(
        "number-lines",
        f"Number lines, {first} to {last}",
        f"{on_a_page} number lines from {first} to {last} to cut apart, 260 mm long.",
        f"{on_a_page} number lines along the page, each from {first} to {last}"
        + (f" in steps of {step}." if step > 1 else "."),
        NumberLines(first, last, step, on_a_page),
        on_a_page,
        "line",
    )


def _squared_paper(note: str, year: int) -> Mat:
    side = centimetres_in(note) or (2 if year <= 1 else 1)
    across, down = _SQUARES[side]
    return Mat(
        "squared-paper",
        f"Squared paper, {side} cm",
        f"{across} squares across and {down} down, {side * 10} mm each.",
        f"Squared paper, {across} squares across and {down} down.",
        SquaredPaper(side * 10, across, down),
        noun="page",
    )


FROM_MATERIAL: Mapping[str, Callable[[str, int], Mat]] = {
    "balance-mat": lambda note, year: _balance(),
    "part-whole-mat": lambda note, year: _part_whole(2),
    "sorting-ring": lambda note, year: _venn(("", "")),
    "tens-frame": lambda note, year: _tens_frames(),
    "hundred-square": lambda note, year: _hundred(),
    "number-line": _number_lines,
    "squared-paper": _squared_paper,
    "clock-face": lambda note, year: _clocks(),
}
"""By the material's id; from the author's note and the year."""
