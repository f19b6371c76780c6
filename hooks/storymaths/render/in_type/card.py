"""A card that stands for a book without a picture: a label of ours with its title and who made it, and no cover of anything.

Colour and stitches go by the book's id: the same for the same book, whatever else changes. It keeps its own paper by day
and night, as drawings do.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from hashlib import sha256

from ...model.book import Book
from .letters import lines_of, outline, width

WIDE, HIGH = 360, 480
INK, LIGHT = "#2b2a33", "#fffdf7"
TINTS: Sequence[tuple[str, str]] = (
    ("#eaf2f0", "#1c4f57"), ("#f2e3ea", "#4f2f4d"), ("#eef0d8", "#38502e"), ("#f9e6d8", "#6b3424"),
    ("#e2e7f3", "#2c3a61"), ("#f4ecc8", "#574617"), ("#ecebe6", "#2f4654"),
)  # fmt: skip
"""The paper of the label, and the band that its last line stands on."""
_LABEL = f"M84 14H{WIDE - 84}L{WIDE - 24} 74V{HIGH - 14}H24V74Z"
"""Its upper corners cut, as those of a label that is tied to something."""
_HOLE_Y, _HOLE = 46, 12
_MARGIN, _ROOM = 48, WIDE - 96
_TITLE_TOP, _TITLE_HIGH = 92, 190
_SIZES = (50, 46, 41, 36, 32, 28, 24, 20, 16)
_SMALL, _TOLD = 17, 20
_BAND = HIGH - 104
_STITCHES = 20


def book_card(book: str, fields: Book) -> str:
    """The drawing, as SVG."""
    number = int(sha256(book.encode()).hexdigest(), 16)
    rest, tint = divmod(number, len(TINTS))
    paper, band = TINTS[tint]
    told = "A story of our own" if fields.rights == "own" else "A book you need to have"
    words = "".join((*_title(fields.title), *_made_by(fields)))
    last = outline(told, (WIDE - width(told, _TOLD)) / 2, HIGH - 53, _TOLD)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDE} {HIGH}" width="{WIDE}" height="{HIGH}">'
        f'<path fill="{paper}" d="{_LABEL}"/><path fill="{band}" d="M24 {_BAND}H{WIDE - 24}V{HIGH - 14}H24Z"/>'
        f'<path fill="none" stroke="{INK}" stroke-width="2.5" stroke-linejoin="round" d="{_LABEL}"/>'
        f'<circle cx="{WIDE / 2:g}" cy="{_HOLE_Y}" r="{_HOLE}" fill="{LIGHT}" stroke="{INK}" stroke-width="2.5"/>'
        f'<path fill="none" stroke="{band}" stroke-width="3" stroke-linecap="round" d="{"".join(_stitches(rest))}"/>'
        f'<path fill="{INK}" d="{words}"/><path fill="{LIGHT}" d="{last}"/></svg>\n'
    )


def _stitches(number: int) -> Iterator[str]:
    """A seam above the band, whose stitches are long and short as the number has it."""
    for at in range(_STITCHES):
        number, longer = divmod(number, 3)
        yield f"M{_MARGIN + at * _ROOM / _STITCHES:g} {_BAND - 14}h{(0.1, 4, 9)[longer]}"


def _title(title: str) -> Iterator[str]:
    size = next((size for size in _SIZES if _fits(title, size)), _SIZES[-1])
    for at, line in enumerate(lines_of(title, size, _ROOM), 1):
        yield outline(line, _MARGIN, _TITLE_TOP + at * size * 1.1, size)


def _fits(title: str, size: float) -> bool:
    lines = lines_of(title, size, _ROOM)
    return len(lines) * size * 1.1 <= _TITLE_HIGH and all(width(line, size) <= _ROOM for line in lines)


def _made_by(fields: Book) -> Iterator[str]:
    same = fields.story_by == fields.pictures_by
    lines = (f"by {fields.story_by}",) if same else (f"Story: {fields.story_by}", f"Pictures: {fields.pictures_by}")
    for at, line in enumerate(lines):
        size = min(_SMALL, _SMALL * _ROOM / max(1.0, width(line, _SMALL)))
        yield outline(line, _MARGIN, _BAND - 38 - (len(lines) - 1 - at) * _SMALL * 1.35, size)
