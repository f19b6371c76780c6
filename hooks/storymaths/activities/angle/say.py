"""Angles in words: what is asked, each answer, why, and the likely error."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError
from ...model.year import YearLimits
from ..saying import capital, counted, listed, written
from .tasks import AngleName, FindAround, MissingTask, Named, Turned

_IN_WORDS = {"acute": "less than a right angle", "obtuse": "greater than a right angle"}
_IN_WORDS |= {"straight": "two right angles", "reflex": "greater than two right angles"}
_WHY = {
    "acute": "less than one right angle",
    "right": "a quarter of a turn",
    "obtuse": "more than one right angle and less than two",
    "straight": "half a turn",
    "reflex": "more than half a turn",
}
_SHAPES = {3: "a triangle", 4: "a four-sided shape", 5: "a pentagon", 6: "a hexagon", 8: "an octagon"}
_PLACES = {
    "right angle": "make a right angle",
    "straight line": "make a straight line",
    "point": "go all the way round a point",
}
ONE_TOTAL = "Take what is known from the total."
HOW_NAMED = "Hold the corner of a sheet of paper in each: it is a right angle."
HOW_TURNED = "A whole turn is four right angles."


def ask_for_names(year: YearLimits) -> str:
    """What sort each is, as far as the year names them."""
    names = [name for name in ("acute", "right", "obtuse", "reflex") if name in year.practice.angle.names]
    if len(names) > 1:
        return f"Is each angle {listed(names, 'or')}?"
    return "Is each angle a right angle, less than one, or greater?"


def say_named(one: Named, year: YearLimits) -> str:
    """``Angle A is acute``."""
    return f"Angle {one.angle} is {sort_in_words(one.name, year)}"


def sort_in_words(name: AngleName, year: YearLimits) -> str:
    """``acute``, or what that means before a year has met the word."""
    return "a right angle" if name == "right" else name if name in year.practice.angle.names else _IN_WORDS[name]


def explain_name(one: Named, year: YearLimits) -> str:
    """Between which right angles it is."""
    size = f"{one.degrees}° is " if year.knows("°") else ""
    return f"{capital(size + _WHY[one.name])}."


def ask_for_turns(year: YearLimits) -> str:
    """In degrees, or in right angles before those are met."""
    return "How many degrees are in each turn?" if year.knows("°") else "How many right angles are in each turn?"


def name_turn(turn: str) -> str:
    """``1/2 of a turn``."""
    return "A whole turn" if turn == "1" else f"{turn} of a turn"


def say_turned(one: Turned, year: YearLimits) -> str:
    """``1/2 of a turn is 180°``, or two right angles."""
    size = f"{one.degrees}°" if year.knows("°") else counted(one.degrees // 90, "right angles")
    return f"{name_turn(one.turn)} is {size}"


def ask_for_missing(task: MissingTask) -> str:
    """The angles that are known, and where they are."""
    known = listed([f"{one}°" for one in task.known])
    missing = "the angle that is missing" if task.equal == 1 else f"each of the {task.equal} equal angles"
    if isinstance(task, FindAround):
        others = f"{known} and " if known else ""
        rest = "another angle" if task.equal == 1 else f"{task.equal} equal angles"
        return capital(f"{others}{rest} together {_PLACES[task.place]}. How large is {missing}?")
    shape = _SHAPES.get(task.sides, f"a shape with {task.sides} sides")
    have = f"has {counted(len(task.known), 'angles')} of {known}" if known else "has angles that are all equal"
    if len(task.known) > 1:
        have = f"has angles of {known}"
    return f"{capital(shape)} {have}. How large is {missing}?"


def say_missing(degrees: str, task: MissingTask) -> str:
    """``It is 55°``."""
    return f"It is {degrees}°" if task.equal == 1 else f"Each is {degrees}°"


def say_total(task: MissingTask) -> str:
    """What all come to."""
    if isinstance(task, FindAround):
        where = {"right angle": "In a right angle", "straight line": "On a straight line", "point": "Round a point"}
        return f"{where[task.place]} angles come to {task.total}°"
    return f"The angles of {_SHAPES.get(task.sides, f'a shape with {task.sides} sides')} come to {task.total}°"


def expect_other_total(wrong: int, gives: int) -> LikelyError:
    """Taking from another total."""
    return LikelyError(f"Takes from {written(wrong)} instead.", f"{written(gives)}°")


def describe_fan(letters: Sequence[str]) -> str:
    """The drawing in words, which do not give the size away."""
    return (
        f"Two arms that meet in angle {letters[0]}."
        if len(letters) == 1
        else f"Angles {listed(letters)}, side by side."
    )
