"""Fact families in words: what is asked, each family, why, how one knows that these are all, and the likely error."""

from __future__ import annotations

from collections.abc import Iterator

from ...model.activity import LikelyError
from ..saying import listed, written
from .filled import PLACES
from .tasks import UNDOES, Family, FamilyTask, write_sentence

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
    yield from ("part", "whole")
    if not _is_missing(task):
        yield "number sentence"


def say_family(family: Family) -> str:
    """The three numbers, and every sentence they make."""
    return f"{listed(_write_numbers(family))}: {', '.join(map(write_sentence, family.sentences()))}"


def explain(family: Family) -> str:
    """What is put together, and what it makes."""
    a, b, whole = _write_numbers(family)
    return f"The parts are {a} and {b}, the whole is {whole}: {a} {family.sign} {b} = {whole}."


def _write_numbers(family: Family) -> list[str]:
    return [written(number, PLACES) for number in family.numbers]


def explain_all(task: FamilyTask) -> str:
    """How one knows that these are all."""
    sign = task.family_of
    note = f"Each part comes first once with {sign}, and each is taken from the whole once with {UNDOES[sign]}."
    note += " Then the same with = near the front. Equal parts give half as many."
    return f"The missing number is either a part or the whole. {note}" if _is_missing(task) else note


def find_error(family: Family) -> LikelyError | None:
    """A part from which the whole is taken; None where it would be no error."""
    a, whole = family.parts[0], family.whole
    if family.sign == "×" or a in (0, whole):
        return None
    small, large = written(a, PLACES), written(whole, PLACES)
    return LikelyError(
        f"Takes the whole from a part: {small} − {large}.", f"{written(whole - a, PLACES)}, which is {large} − {small}."
    )
