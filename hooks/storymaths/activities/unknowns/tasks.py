"""Number sentences with unknowns that have names: letters, or the things of a story."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar

from pydantic import AfterValidator, Field, StringConstraints

from ...model.plain import Plain
from ..given import Castless, each_once
from ..number_sentence.tasks import Gaps, OneOrMore

Unknown = Annotated[str, StringConstraints(pattern=r"^[a-z]{1,16}$", strict=True)]
Numbers = Mapping[str, int]


class UnknownsFields(Castless):
    """What every task may say."""

    lines: Annotated[OneOrMore, Field(min_length=1, max_length=6)]
    """What is known, such as ``[3 × t = 96, 2 × t + 2 × c = 100]``; each step of a problem is a line of its own."""
    unknowns: Annotated[tuple[Unknown, ...], Field(min_length=1, max_length=4), AfterValidator(each_once)]
    """The names that stand for numbers, in the order they are answered; one may stand in a line more than once."""
    gaps: Gaps = range(101)
    """The numbers that an unknown may be."""
    wanted: Annotated[tuple[Unknown, ...], AfterValidator(each_once)] = ()
    """The unknowns that are asked for; all of them when left out."""
    hidden: bool = False
    """Whether pupils are to find the lines for themselves, out of the author's own words for the task."""

    @property
    def asked(self) -> tuple[str, ...]:
        """The unknowns that are asked for."""
        return self.wanted or self.unknowns


class LettersTask(UnknownsFields):
    """The unknowns are single letters."""

    task_name: ClassVar[str] = "letters"


class ThingsTask(UnknownsFields):
    """The unknowns are words, such as ``star`` or ``left``."""

    task_name: ClassVar[str] = "things"


UnknownsTask = LettersTask | ThingsTask


@dataclass(frozen=True, slots=True)
class Found:
    """What each unknown is."""

    numbers: Numbers

    def as_plain(self) -> Plain:
        """``{t: 32, c: 18}``."""
        return dict(self.numbers)
