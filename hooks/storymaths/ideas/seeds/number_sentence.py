"""Number sentences from the numbers of two or three characters, or from equal groups in the story."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from ...activities.saying import counted
from ...model.book import Character
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..material import Counted, Material
from ..number_sets import NumberSet, number_sets
from ..wording import WEIGHS
from .groups import Groups, groups_of
from .seed import Seed

_MOST_WHOLES, _MOST_SPLIT, _GAP = 4, 2, "___"


def _plant(material: Material, limits: YearLimits) -> Candidates:
    if not limits.knows("="):
        return
    for numbers in number_sets(material, limits):
        yield from _who_makes_whom(numbers)
        yield from _missing(numbers, limits)
    for whole in [one for one in material.counted if 10 < one.number < 100 and one.number % 10][:_MOST_SPLIT]:
        yield _tens_and_the_rest(whole)
    if limits.knows("×"):
        for groups in groups_of(material)[:2]:
            yield _multiplied(groups)


def _tens_and_the_rest(whole: Counted) -> Candidate:
    """A number of the story as tens and what is left, in several ways where it has several tens."""
    number = whole.number
    tens = range(number // 10 * 10, 0, -10)
    sentences: list[Plain] = [f"{number} = {ten} + {_GAP}" for ten in tens[:3]]
    if len(tens) == 1:
        sentences += [f"{number} = {_GAP} + {number - 10}", f"10 + {number - 10} = {_GAP}"]
    told = counted(number, whole.things)
    ask = f"There are {told}. Take whole tens out of {number}. What number is missing each time?"
    lines = activity("number-sentence", f"Tens in {told}", ask, sentences=sentences)
    return Candidate(lines, (from_counted(number, whole.things, whole.pages),))


def _who_makes_whom(numbers: NumberSet) -> Iterator[Candidate]:
    """One worth two others, with the cast in the gaps."""
    values = numbers.values
    wholes = [
        one
        for one in reversed(numbers.rising)
        if any(
            values[a.id] + values[b.id] == values[one.id] for a, b in combinations(numbers.who, 2) if one not in (a, b)
        )
    ][:_MOST_WHOLES]
    if wholes:
        words = numbers.words
        level = "are as heavy" if numbers.fact.of == WEIGHS else f"have as many {numbers.fact.things}"
        level = "have as much money" if numbers.fact.of == "money" else level
        ask = f"There is one on the left of each line. Which two together {level}? Find every way."
        sentences: list[Plain] = [f"{one.name} = {_GAP} + {_GAP}" for one in wholes]
        yield numbers.with_cast(
            "number-sentence", f"One and two: {words.things}", ask,
            finds=True, sentences=sentences, gaps="cast", each_once=True, swapped="same",
        )  # fmt: skip


def _missing(numbers: NumberSet, limits: YearLimits) -> Iterator[Candidate]:
    """What two have together, and one of them without the other, with a number missing each time."""
    pairs = sorted(combinations(reversed(numbers.rising), 2), key=lambda pair: -_together(numbers, pair))
    within = [pair for pair in pairs if _together(numbers, pair) <= limits.largest_calculated]
    told = [pair for pair in within if numbers.values[pair[0].id] != numbers.values[pair[1].id]][:1]
    for one, other in told:
        a, b, whole = numbers.values[one.id], numbers.values[other.id], _together(numbers, (one, other))
        words = numbers.words
        story = f"{words.tells(one.name, a)} and {words.tells(other.name, b)}."
        adding: list[Plain] = [f"{a} + {b} = {_GAP}", f"{a} + {_GAP} = {whole}", f"{whole} = {b} + {_GAP}"]
        ask = f"{story} What number is missing each time?"
        yield numbers.with_numbers("number-sentence", f"{one.name} and {other.name} together", ask, sentences=adding)
        taking: list[Plain] = [f"{whole} − {b} = {_GAP}", f"{whole} − {_GAP} = {b}", f"{whole} − {_GAP} = {a}"]
        ask = f"{story} Put them together, then take some away. What number is missing each time?"
        yield numbers.with_numbers(
            "number-sentence", f"{one.name} and {other.name}, and one taken away", ask, sentences=taking
        )
        ask = f"{story} Write every number sentence these three numbers make."
        yield numbers.with_numbers(
            "number-sentence", f"A family of numbers: {one.name} and {other.name}", ask, family=[a, b, whole]
        )


def _together(numbers: NumberSet, pair: tuple[Character, ...]) -> int:
    return sum(numbers.values[one.id] for one in pair)


def _multiplied(groups: Groups) -> Candidate:
    many, each = groups.many, groups.each
    sentences: list[Plain] = [
        f"{many} × {each} = {_GAP}",
        f"{_GAP} × {each} = {groups.total}",
        f"{groups.total} ÷ {many} = {_GAP}",
    ]
    ask = f"There are {groups.told}. What number is missing each time?"
    lines = activity("number-sentence", f"Groups of {each}, times and divided", ask, sentences=sentences)
    return Candidate(lines, groups.uses, groups.changes)


SEED = Seed("two characters or more with a number each, and a year that writes sums", _plant)
