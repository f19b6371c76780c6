"""Fact families in words: what is asked, each family, why, how one knows that these are all, and the likely error."""

from __future__ import annotations

from collections.abc import Iterator

from ...model.activity import LikelyError
from ..saying import listed, written
from .filled import PLACES
from .tasks import Family, FamilyTask, write_sentence

_DOES = {"+": "adding and taking away", "×": "multiplying and dividing"}


def _is_missing(task: FamilyTask) -> bool:
    return len(task.known) < len(task.family)


def ask_for(task: FamilyTask) -> str:
    """What is asked."""
    shown = [written(number, PLACES) for number in task.family if not isinstance(number, str)]
    if not _is_missing(task):
        return f"Write every number sentence for {_DOES[task.family_of]} that {listed(shown)} make."
    ask = f"{listed(shown)} belong to a family of three. What is the third?"
    return f"{ask} Find every number it could be, and write the families."


def find_words(task: FamilyTask) -> Iterator[str]:
    """The words of the word bank it is about."""
    if task.family_of == "+":
        yield from ("part", "whole")
    if not _is_missing(task):
        yield "number sentence"


def say_family(family: Family) -> str:
    """The three numbers, and every sentence they make."""
    return f"{listed(_write_numbers(family))}: {', '.join(map(write_sentence, family.sentences()))}"


def explain(family: Family) -> str:
    """What is put together, and what it makes."""
    a, b, whole = _write_numbers(family)
    parts = f"The parts are {a} and {b}, the whole is {whole}: " if family.sign == "+" else ""
    return f"{parts}{a} {family.sign} {b} = {whole}."


def _write_numbers(family: Family) -> list[str]:
    return [written(number, PLACES) for number in family.numbers]


def explain_all(task: FamilyTask) -> str:
    """How one knows that these are all."""
    if task.family_of == "+":
        missing = "The missing number is either a part or the whole. "
        note = "Either part can come first, and either can be taken from the whole."
    else:
        missing = "The missing number is either the largest or one of the two that are multiplied. "
        note = "Either of the two that are multiplied can come first, and the largest can be divided by either."
    note += " Then each again with = near the front. Two that are equal give half as many."
    return missing + note if _is_missing(task) else note


def find_error(family: Family) -> LikelyError | None:
    """A part from which the whole is taken; None where it would be no error."""
    a, whole = family.parts[0], family.whole
    if family.sign == "×" or a in (0, whole):
        return None
    small, large = written(a, PLACES), written(whole, PLACES)
    return LikelyError(
        f"Takes the whole from a part: {small} − {large}.", f"{written(whole - a, PLACES)}, which is {large} − {small}."
    )
