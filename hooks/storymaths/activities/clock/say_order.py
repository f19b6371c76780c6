"""The order of a day, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError, Line
from ..saying import capital, listed
from .time import long


def list_event(name: str, told: str) -> Line:
    """``tea: 5 o'clock``."""
    return Line((f"{name}: {told}",))


def say_order(names: Sequence[Sequence[str]]) -> str:
    """``Breakfast, then bath and tea``."""
    return capital(", then ".join(map(listed, names)))


def explain_order(told: Sequence[str], names: Sequence[Sequence[str]]) -> str:
    """``7 o'clock (breakfast), then 5 o'clock (bath and tea)``."""
    return capital(", then ".join(f"{when} ({listed(place)})" for when, place in zip(told, names, strict=True)))


def explain_whole(first: str, last: str, minutes: int) -> str:
    """How long it is from the first to the last."""
    return f"From “{first}” to “{last}” it is {long(minutes)}"


def expect_face(names: Sequence[str]) -> LikelyError:
    """Forgetting the half of the day."""
    return LikelyError("Looks at the clock and not at morning or afternoon.", listed(names))


def refuse_night(name: str) -> tuple[str, str]:
    """That it is no part of the day yet, and what to do."""
    message = f"{capital(name)} is before the day begins, so the parts of a day do not place it."
    return message, "choose a time after five in the morning."


def refuse_one_part(part: str, year: str) -> tuple[str, str]:
    """That there is no order to see, and what to do."""
    return f"All of these are {part}, and {year} tells the parts of the day, not the time.", "spread them over the day."
