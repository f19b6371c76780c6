"""Small pieces of drawing that several figures share; all colour comes from the stylesheet."""

from __future__ import annotations

from html import escape

from ..quotes import curl

TEXT = 16
_LETTER = 0.56
"""How wide a letter is about, as a part of its size."""


def svg(name: str, width: float, height: float, *pieces: str) -> str:
    """The whole drawing. It is described in words beside it, so it is itself presentation only."""
    return (
        f'<svg viewBox="0 0 {at(width)} {at(height)}" role="presentation" class="figure figure-{name}">'
        f"{''.join(pieces)}</svg>"
    )


def at(number: float) -> str:
    """A coordinate, to a hundredth."""
    return f"{round(number, 2):g}" if abs(number) < 1e5 else str(round(number))


def even(count: int, most: int) -> int:
    """How many of some things go to a row, so that rows are as few as can be and as long as each other."""
    return -(-count // -(-count // most)) if count else 1


def line(x1: float, y1: float, x2: float, y2: float, kind: str = "fig-line") -> str:
    """A straight line."""
    return f'<line class="{kind}" x1="{at(x1)}" y1="{at(y1)}" x2="{at(x2)}" y2="{at(y2)}"/>'


def box(x: float, y: float, width: float, height: float, kind: str = "fig-line", round_by: float = 0) -> str:
    """A rectangle."""
    corner = f' rx="{at(round_by)}"' if round_by else ""
    return f'<rect class="{kind}" x="{at(x)}" y="{at(y)}" width="{at(width)}" height="{at(height)}"{corner}/>'


def disc(x: float, y: float, radius: float, kind: str = "fig-line") -> str:
    """A circle."""
    return f'<circle class="{kind}" cx="{at(x)}" cy="{at(y)}" r="{at(radius)}"/>'


def path(course: str, kind: str = "fig-line") -> str:
    """Any outline."""
    return f'<path class="{kind}" d="{course}"/>'


def words(x: float, y: float, text: str, size: float = TEXT, anchor: str = "middle", kind: str = "fig-text") -> str:
    """Words on the drawing, at a size that can be read."""
    return f'<text class="{kind}" x="{at(x)}" y="{at(y)}" font-size="{at(size)}" text-anchor="{anchor}">{escape(curl(text))}</text>'


def words_inside(x: float, y: float, text: str, width: float, size: float = TEXT, kind: str = "fig-text") -> str:
    """Words about ``x``, moved in as far as they must be to stay inside a drawing of some width."""
    half = len(text) * size * _LETTER / 2
    return words(max(half, min(x, width - half)), y, text, size, kind=kind)


def arrow_down(x: float, y: float, length: float = 18) -> str:
    """An arrow that points down to ``x, y``."""
    head = f"M{at(x - 5)} {at(y - 9)} L{at(x)} {at(y)} L{at(x + 5)} {at(y - 9)} Z"
    return line(x, y - length, x, y - 6, "fig-mark") + path(head, "fig-mark")
