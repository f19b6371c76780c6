"""Pieces laid to a shape: squares and half squares, each part with its outline; several pictures side by side."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ...model.figures.shapes import LaidPieces, PieceRows
from .pen import TEXT, at, line, path, svg, words

_WIDE, _GAP, _EDGE = 320.0, 18.0, 3.0
_LETTER = 0.6
_LARGEST = 80.0
"""The side of a square, where a shape of few is as large as the paper has room for."""
Corner = tuple[int, int]
"""Across and down in half squares."""
Rows = Sequence[Sequence[str]]


def draw(figure: LaidPieces) -> str:
    """The pictures, as many on a line as fit, all to one scale."""
    pictures = figure.pictures
    across = max(figure.across, *(picture.across for picture in pictures))
    side = min(20.0 if figure.small else _LARGEST, (_WIDE - 2 * _EDGE) / across)
    kind = "fig-fill" if any(picture.says for picture in pictures) else "fig-soft"
    pieces: list[str] = []
    top = _EDGE
    for row in _lines_of(pictures, side):
        left = (_WIDE - sum(_width(picture, side) for picture in row) - _GAP * (len(row) - 1)) / 2
        high = max(len(picture.rows) for picture in row) * side
        for picture in row:
            width = _width(picture, side)
            own = left + (width - picture.across * side) / 2
            foot = top + high - len(picture.rows) * side
            pieces += _picture(picture.rows, own, foot, side, kind, figure.squared)
            if picture.says:
                pieces.append(words(left + width / 2, top + high + TEXT + 4, picture.says))
            left += width + _GAP
        top += high + _EDGE + (TEXT + 16 if any(picture.says for picture in row) else 0)
    return svg(figure.NAME, _WIDE, top, *pieces)


def _width(picture: PieceRows, side: float) -> float:
    """What a picture and its words take."""
    return float(max(picture.across * side, len(picture.says) * TEXT * _LETTER))


def _lines_of(pictures: Sequence[PieceRows], side: float) -> Iterator[list[PieceRows]]:
    """As many on a line as fit."""
    row: list[PieceRows] = []
    taken = 0.0
    for picture in pictures:
        wide = _width(picture, side) + _GAP
        if row and taken + wide - _GAP > _WIDE - 2 * _EDGE:
            yield row
            row, taken = [], 0.0
        row.append(picture)
        taken += wide
    yield row


def _picture(rows: Rows, left: float, top: float, side: float, kind: str, squares: bool) -> Iterator[str]:
    for part in sorted({letter for row in rows for square in row for letter in square} - {"."}):
        course = " ".join(
            "M" + " L".join(f"{at(left + x * side / 2)} {at(top + y * side / 2)}" for x, y in ring) + " Z"
            for ring in _rings(rows, part)
        )
        yield path(course, kind)
    if not squares:
        return
    for r, row in enumerate(rows):
        for c, square in enumerate(row):
            x, y = left + c * side, top + r * side
            if c + 1 < len(row) and "." not in square[1] + row[c + 1][3]:
                yield line(x + side, y, x + side, y + side, "fig-hidden")
            if r + 1 < len(rows) and "." not in square[2] + rows[r + 1][c][0]:
                yield line(x, y + side, x + side, y + side, "fig-hidden")


def _rings(rows: Rows, part: str) -> Iterator[list[Corner]]:
    """The outlines of a part: edges its quarters do not share, end to end."""
    edges: set[tuple[Corner, Corner]] = set()
    for r, row in enumerate(rows):
        for c, square in enumerate(row):
            middle = (2 * c + 1, 2 * r + 1)
            corners = [(2 * c, 2 * r), (2 * c + 2, 2 * r), (2 * c + 2, 2 * r + 2), (2 * c, 2 * r + 2), (2 * c, 2 * r)]
            for quarter, (one, other) in zip(square, pairwise(corners), strict=True):
                if quarter == part:
                    for start, end in ((one, other), (other, middle), (middle, one)):
                        edges ^= {(start, end)} if (end, start) not in edges else {(end, start)}
    after: dict[Corner, list[Corner]] = {}
    for start, end in sorted(edges):
        after.setdefault(start, []).append(end)
    while after:
        ring = [min(after)]
        while ring[-1] in after:
            ends = after[ring[-1]]
            ring.append(ends.pop())
            if not ends:
                del after[ring[-2]]
        yield ring[:-1]
