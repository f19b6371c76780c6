"""Numbers as sentences write them, in figures or words, and whether one stands for itself there."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from ..expression.number import Rational, exact
from ..expression.say import PARTS, written
from .form import Form
from .number_words import NUMBER_IN_WORDS, WORDS_OF_NUMBERS, number_in_words

_FIGURES = r"\d+(?:,\d{3})*(?:\.\d+)?(?![\w/%°-]|[.,:]\d)"
N = rf"(?<![\w£−/.,:+-]){_FIGURES}"
"""The pattern of a number without a unit; those in words have become figures before a sentence is looked at."""
LIST = rf"{N}(?:(?:,? and |,? or |, ){N}){{1,40}}"
"""The pattern of two numbers or more; longer lists than anyone reads are none, so that no text takes long."""
NUMBER = Form(N)
_IN_WORDS = Form(rf"(?<!one )(?<!nearest )(?<!\d )\b{NUMBER_IN_WORDS}")
"""One ten is a ten of tens and ones, and stays in words."""
END = r"(?= ?(?:[.,;:!)\"”’\]—–]|$)| (?:so|because|but|while|since|as|which|whereas|then)\b)"
"""What follows where a claim is over."""
END_OR_AND = rf"(?:{END}|(?= (?:and|or)\b))"
_PARTS = {part: under for under, part in PARTS.items()}
_COUNTED = frozenset(
    (*WORDS_OF_NUMBERS, *_PARTS, *(f"{part}s" for part in _PARTS), "halves", "noon", "midday", "midnight")
)
_PART_WORDS = "|".join(("halves", *(f"{part}s?" for part in _PARTS)))
FRACTION_IN_WORDS = rf"(?<![\w-])(?:(?:an? |one |\d+[ -])?(?:{_PART_WORDS})(?![\w-]))"
"""The pattern of ``half``, ``a quarter``, ``three quarters``."""
_GOES_ON_BEFORE = Form(
    r"(?:\b(?:and|or|plus|minus|add|times|of|away|from|by|to|over|less|more|than|divided|shared|between|among|lots|groups"
    r"|double|twice|half|quarter|halfway|is|are|equals|makes?|pages?|sessions?|steps?|years?|lines?|rows?|cards?"
    r"|questions?|teams?|tables?|days?|per|point|last|first|about|nearly|almost|over|under|only)|[+−×÷=/*<>]|\d,?) $"
)

_BEGINS = Form(
    r"(?:[.,;:!?(\"“‘—–|*•-] ?|(?:^|[ (])(?:so|that|then|because|since|while|if|when|as|know|knows|see|say|says|but|remember|and so) )$"
)


def number(text: str) -> Rational:
    """What a match of ``N`` is worth."""
    return exact(text)


def numbers(text: str) -> list[Rational]:
    """Every number of a list, in order."""
    return [number(match.group()) for match in NUMBER.finditer(text)]


def fraction(text: str) -> Fraction:
    """What a match of ``FRACTION_IN_WORDS``, or such as 3/4, is worth. Nought under the line raises ``ZeroDivisionError``."""
    if "/" in text:
        return Fraction(exact(text))
    *many, part = text.replace("-", " ").split(" ")
    below = _PARTS.get(part) or _PARTS.get(part.removesuffix("s")) or 2
    count = 1 if not many or many[0] in ("a", "an") else number(" ".join(many))
    return Fraction(count) / below


@dataclass(frozen=True, slots=True)
class InFigures:
    """A sentence with its number words as figures, and where each piece of it stood."""

    text: str
    moved: tuple[tuple[int, int], ...]
    """From which place on in the new text how much is to be added to find the old place."""

    @classmethod
    def of(cls, sentence: str) -> InFigures:
        """A sentence in small letters."""
        parts, moved, length, last = list[str](), list[tuple[int, int]](), 0, 0
        for match in _IN_WORDS.finditer(sentence):
            figures = f"{number_in_words(match.group()):,}"
            parts += [sentence[last : match.start()], figures]
            length += match.start() - last + len(figures)
            last = match.end()
            moved.append((length, last - length))
        return cls("".join((*parts, sentence[last:])), tuple(moved))

    def place(self, at: int, end: bool = False) -> int:
        """Where a place of the new text, the start of something or its end, stands in the old one."""
        delta = 0
        for low, added in self.moved:
            if at < low or (at == low and not end):
                break
            delta = added
        return at + delta


def count_numbers(words: Iterable[str]) -> int:
    """How many words of a sentence are numbers or parts."""
    return len([word for word in words if word in _COUNTED or word.isdigit()])


def stands_alone(sentence: str, start: int) -> bool:
    """Whether nothing before a number makes it part of something else: a sum, a page, a card."""
    return not _GOES_ON_BEFORE.search(sentence, max(0, start - 16), start)


def stands_clear(sentence: str, start: int) -> bool:
    """Whether a sentence, or a part of it after a mark or a word such as "so", begins there."""
    return not start or _BEGINS.search(sentence, max(0, start - 16), start) is not None


def difference(one: Rational, other: Rational) -> Rational:
    """How far apart two numbers are."""
    return max(one, other) - min(one, other)


def says(value: Rational) -> str:
    """A number as a message writes it."""
    return written(value, places=3)
