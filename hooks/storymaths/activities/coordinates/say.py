"""Coordinates in words: what is asked, each answer and why."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError
from ..saying import listed, one_or_many, written
from .tasks import CoordinatesTask, FindCorner, FindTranslation, PlotPoints, PointAt, ReadPoints, ReflectPoints

READ = "Along first, then up."


def pair(at: tuple[int, int]) -> str:
    """``(2, −3)``."""
    return f"({written(at[0])}, {written(at[1])})"


def name_move(right: int, up: int) -> str:
    """``3 right and 2 down``."""
    across = f"{abs(right)} {'right' if right > 0 else 'left'}" if right else ""
    upright = f"{abs(up)} {'up' if up > 0 else 'down'}" if up else ""
    return " and ".join(filter(None, (across, upright))) or "no move at all"


def ask(task: CoordinatesTask) -> str:
    """What is asked."""
    letters = list(task.points)
    match task:
        case ReadPoints():
            return "What are the coordinates of each point?"
        case PlotPoints():
            return f"Mark each point{' and join them in order' if task.joined else ''}."
        case FindTranslation():
            return f"Point {letters[0]} moves to point {letters[1]}. How far does it move, and which way?"
        case ReflectPoints():
            what = "The shape" if task.joined else "Each point"
            return f"{what} is reflected in the {task.axis}-axis. What are the new coordinates?"
        case FindCorner():
            return f"{listed(letters)} are three corners of a {task.shape}, going round it. Where is the fourth?"
        case _:
            what = "The shape" if task.joined else "Each point"
            return f"{what} moves {name_move(*task.by)}. What are the new coordinates?"


def say_point(one: PointAt) -> str:
    """``A is at (2, 3)``."""
    return f"{one.point} is at {pair(one.at)}"


def explain_place(at: tuple[int, int]) -> str:
    """Along, then up."""
    return f"{name_move(*at)} from (0, 0)." if at != (0, 0) else "Where the two axes cross."


def explain_move(before: tuple[int, int], after: tuple[int, int]) -> str:
    """From where to where."""
    return f"From {pair(before)}: {name_move(after[0] - before[0], after[1] - before[1])}."


def expect_swapped(at: tuple[int, int]) -> LikelyError:
    """Up first, then along."""
    return LikelyError("Goes up first and then along.", f"{pair((at[1], at[0]))}.")


def describe(letters: Sequence[str], four: bool) -> str:
    """The drawing in words."""
    where = "with two axes that cross in the middle" if four else "with an axis along the foot and one up the side"
    points = f", and {one_or_many(len(letters), 'points')} {listed(letters)}" if letters else ""
    return f"Squared paper {where}{points}."
