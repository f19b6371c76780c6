"""A tick and a cross, told apart by their shape and not by colour."""

from __future__ import annotations

from .pen import at, line, path


def tick(x: float, y: float, size: float) -> str:
    """A tick about ``x, y``."""
    course = ((-1, 0), (-1 / 3, 0.7), (1, -0.8))
    points = " L".join(f"{at(x + dx * size)} {at(y + dy * size)}" for dx, dy in course)
    return path(f"M{points}", "fig-tick fig-yes")


def cross(x: float, y: float, size: float) -> str:
    """A cross about ``x, y``."""
    reach = size * 0.7
    return line(x - reach, y - reach, x + reach, y + reach, "fig-mark fig-no") + line(
        x - reach, y + reach, x + reach, y - reach, "fig-mark fig-no"
    )
