"""A cover set in type: title, what the story is about, who made it, over a land that is the book's own.

The land is cut from its id: the same for the same book, whatever else changes. It keeps its own paper by day and night,
as drawn covers do, and its sky and its nearest ground differ enough in light for ink and for paper-white letters.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from hashlib import sha256

from ...model.book import Book
from .letters import lines_of, outline, width

WIDE, HIGH = 360, 480
INK, LIGHT = "#2b2a33", "#fffdf7"
LANDS: Sequence[tuple[str, str, tuple[str, str, str]]] = (
    ("#f3e4cd", "#e3a62f", ("#a9cbc6", "#5b999a", "#1c4f57")),
    ("#f2e3ea", "#ecb974", ("#cfabc3", "#93628a", "#4f2f4d")),
    ("#eef0d8", "#dfa23f", ("#bccb97", "#7b955a", "#38502e")),
    ("#f9e6d8", "#f2c14e", ("#e3b094", "#b86a4c", "#6b3424")),
    ("#e2e7f3", "#f3d58a", ("#b0bddd", "#6478a8", "#2c3a61")),
    ("#f4ecc8", "#c9694a", ("#dcc784", "#a98a3c", "#574617")),
    ("#e3efee", "#f0b09a", ("#b0cfce", "#6f8f9a", "#2f4654")),
)
"""Sky, sun, and the ground from far to near."""
_MARGIN, _ROOM = 30, WIDE - 60
_TITLE_TOP, _TITLE_HIGH = 32, 166
_SIZES = (58, 52, 46, 41, 36, 32, 28, 24, 20, 16)
_SMALL = 16
_TOPS = (318, 362, 410)
"""Where the three grounds begin."""
_Choose = Callable[[int], int]
Point = tuple[float, float]


def cover_in_type(book: str, fields: Book, themes: Sequence[str]) -> str:
    """The drawing, as SVG; ``themes`` are the names of what the story is about."""
    choose = _chooser(book)
    sky, sun, grounds = LANDS[choose(len(LANDS))]
    x, radius = 70 + choose(12) * 20, 30 + choose(4) * 5
    shapes = [f'<path fill="{sky}" d="M0 0H{WIDE}V{HIGH}H0Z"/>']
    shapes.append(f'<circle cx="{x}" cy="{_TOPS[0] - 4 + choose(3) * 8}" r="{radius}" fill="{sun}" {_LINE}/>')
    first, step = choose(len(_EDGES)), (1, 2, 4, 5)[choose(4)]
    edges = [_EDGES[(first + at * step) % len(_EDGES)] for at in range(3)]
    for top, ground, edge in zip(_TOPS, grounds, edges, strict=True):
        course = " ".join(f"{px:.1f} {py:.1f}" for px, py in edge(top, choose))
        shapes.append(f'<path fill="{ground}" {_LINE} d="M-9 {HIGH + 9}L{course}L{WIDE + 9} {HIGH + 9}Z"/>')
    words = f'<path fill="{INK}" d="{"".join(_title(fields.title, themes))}"/>'
    by = f'<path fill="{LIGHT}" d="{"".join(_made_by(fields))}"/>'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE} {HIGH}" width="{WIDE}" height="{HIGH}">'
        f"{''.join(shapes)}{words}{by}</svg>\n"
    )


_LINE = f'stroke="{INK}" stroke-width="2.5" stroke-linejoin="round"'


def _chooser(book: str) -> _Choose:
    """Picks among so many things, each time by the next part of what the book's id comes to."""
    rest = int(sha256(book.encode()).hexdigest(), 16)

    def choose(number: int) -> int:
        nonlocal rest
        rest, chosen = divmod(rest, number)
        return chosen

    return choose


def _title(title: str, themes: Sequence[str]) -> Iterator[str]:
    size = next((size for size in _SIZES if _fits(title, size)), _SIZES[-1])
    y = float(_TITLE_TOP)
    for line in lines_of(title, size, _ROOM):
        y += size * 1.1
        yield outline(line, _MARGIN, y, size)
    y += 14
    if not themes:
        return
    about = f"A story about {_listed([name[:1].lower() + name[1:] for name in themes[:3]])}"
    for line in lines_of(about, _SMALL, _ROOM)[:2]:
        y += _SMALL * 1.35
        yield outline(line, _MARGIN, y, _SMALL)


def _fits(title: str, size: float) -> bool:
    lines = lines_of(title, size, _ROOM)
    return len(lines) * size * 1.1 <= _TITLE_HIGH and all(width(line, size) <= _ROOM for line in lines)


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def _made_by(fields: Book) -> Iterator[str]:
    same = fields.story_by == fields.pictures_by
    lines = (fields.story_by,) if same else (f"Story: {fields.story_by}", f"Pictures: {fields.pictures_by}")
    for at, line in enumerate(lines):
        size = min(_SMALL, _SMALL * _ROOM / max(1.0, width(line, _SMALL)))
        yield outline(line, _MARGIN, HIGH - 20 - (len(lines) - 1 - at) * _SMALL * 1.35, size)


def _waves(top: float, choose: _Choose) -> Iterator[Point]:
    long, at = 36 + choose(3) * 12, choose(6) * 8
    for step in range(-9, WIDE + 10, 3):
        yield step, top + 7 * abs(math.sin(math.pi * (step + at) / long))


def _hills(top: float, choose: _Choose) -> Iterator[Point]:
    long, at, high = 200 + choose(4) * 50, choose(9) * 40, 14 + choose(3) * 4
    for step in range(-9, WIDE + 10, 3):
        yield step, top + high * math.sin(2 * math.pi * (step + at) / long)


def _roofs(top: float, choose: _Choose) -> Iterator[Point]:
    wide, at = 44 + choose(3) * 10, choose(4) * 12
    for place in range(-1, WIDE // wide + 2):
        left, high = place * wide - at, (place * 7 + at) % 3 * 5
        yield from (
            (left, top - high),
            (left + wide / 2, top - high - 17),
            (left + wide, top - high),
        )


def _steps(top: float, choose: _Choose) -> Iterator[Point]:
    wide, up = 36 + choose(3) * 12, choose(2) * 2 - 1
    for place in range(-1, WIDE // wide + 2):
        y = top + up * 6 * (abs((place % 6) - 3) - 1.5)
        yield from ((place * wide, y), ((place + 1) * wide, y))


def _arches(top: float, choose: _Choose) -> Iterator[Point]:
    radius = 18 + choose(4) * 6
    at = choose(5) * 7
    for step in range(-9, WIDE + 10, 2):
        along = (step + at) % (2 * radius) - radius
        yield step, top + 6 - math.sqrt(max(0, radius * radius - along * along)) * 0.8


def _peaks(top: float, choose: _Choose) -> Iterator[Point]:
    at = choose(7) * 9
    for place in range(-1, 9):
        yield place * 54 - at, top + (12 if place % 2 else -14 - (place * 5 + at) % 3 * 7)


_EDGES = (_waves, _hills, _roofs, _steps, _arches, _peaks)
