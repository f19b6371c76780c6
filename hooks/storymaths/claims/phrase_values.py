"""Numbers and amounts as sentences tell them: 3 red cubes, half of 8, five more than 4, two 5p coins, an hour and a quarter."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from ..expression.number import Rational
from ..expression.number_words import PART_OF, SO_MANY_OF
from ..model.phrases import Phrases
from ..model.quantity import MEASURES, UNITS_IN_WORDS
from .phrase_words import Word, unit_of

MOST_THINGS = 3
MIXED = "+"
"""What a list of unlike things counts."""
_ARTICLES = frozenset(("a", "an", "the", "another", "one", "each", "every", "only", "just", "exactly", "number"))
_NOTHING = frozenset(("nothing", "none", "no", "nought", "zero"))
_ALONE = {"dozen": 12, "hundred": 100, "thousand": 1000, "million": 1_000_000, "half-dozen": 6}
PLACES = frozenset(
    ("one", "ones", "unit", "units", "ten", "tens", "hundred", "hundreds", "thousand", "thousands", "millions")
)
_HOLDERS = frozenset(
    "part piece bar group box pile tower jump strip tray line row set bag stack section block rod train whole sack ribbon"
    " rope string length".split()
)
_TIMES = ("noon", "midday", "midnight")
_MONEY = frozenset(("coin", "coins", "piece", "pieces", "note", "notes"))


_TELL_NUMBERS = frozenset((*_NOTHING, *_ALONE, *PART_OF, *_TIMES, "whole", *UNITS_IN_WORDS, *MEASURES))
"""Words without one of which, or a number, no number is told."""


_BEFORE_PLUS = frozenset(("than", "to", "from", "of"))
"""Words after which a plus belongs to a number."""
_CUT_SHORT = frozenset(("pound", "pounds", "metre", "metres"))
"""Units of which so many hundredths may follow without their unit: two pounds fifty."""


class Value(NamedTuple):
    """What some words tell: up to which word, how much, of which kind, and of what."""

    end: int
    number: Rational
    kind: str = ""
    """What it measures; ``part`` for a fraction or percentage that stands alone."""
    noun: str = ""
    worked: bool = False
    """Whether it has to be worked out."""
    each: tuple[Rational, ...] = ()
    """The numbers of a list, one by one."""


class Values:
    """The numbers of a sentence that need no phrase to be read."""

    def __init__(self, words: list[Word], phrases: Phrases) -> None:
        self.words, self._phrases = words, phrases
        self._texts = [*(word.text for word in words), *("",) * 8]

    def text(self, at: int) -> str:
        """The word at a place; no word after the last."""
        return self._texts[at]

    def most_numbers(self) -> int:
        """How many numbers may be told at most."""
        tell = _TELL_NUMBERS | self._phrases.words_of_measures
        return len([word for word in self.words if word.number is not None or word.text in tell or ":" in word.text])

    def _number(self, at: int) -> Rational | None:
        """A bare number at a place."""
        if at < len(self.words) and not self.words[at].kind:
            return self.words[at].number
        return None

    def plain(self, at: int) -> Iterator[Value]:
        """What may be told from a word on."""
        if at >= len(self.words):
            return
        word = self.words[at]
        if word.number is not None and word.kind != "size":
            yield from self._from_number(at, word)
        elif word.text in _ARTICLES and at + 1 < len(self.words):
            yield from self._after_article(at)
        elif word.text in _NOTHING:
            if at:  # nothing is more than ten
                yield Value(at + 1, 0)
                yield from self._with_things(Value(at + 1, 0)) if word.text == "no" else ()
        elif word.text in _ALONE:
            yield Value(at + 1, _ALONE[word.text])
        elif (
            word.text in ("plus", "positive")
            and self.text(at - 1) in _BEFORE_PLUS
            and (number := self._number(at + 1)) is not None
        ):
            yield from self._measured(Value(at + 2, number))
        elif word.text in ("minus", "negative") and (number := self._number(at + 1)) is not None:
            yield from self._measured(Value(at + 2, -number))
        elif word.text == "half":
            yield Value(at + 1, Fraction(1, 2), "part")

    def _after_article(self, at: int) -> Iterator[Value]:
        following = self.words[at + 1]
        if following.number is not None and following.kind != "size":
            yield from self._from_number(at + 1, following)
        elif f"{following.text} {self.text(at + 2)}" in self._phrases.measures and (unit := self._unit(at + 1)):
            yield Value(unit[0], unit[2], unit[1])
        elif following.text in PART_OF:
            yield Value(at + 2, PART_OF[following.text], "part")
        elif following.text == "whole" and self.text(at + 2) != "of":
            yield Value(at + 2, 1, "part")
        elif self.text(at + 2) == "of" and at + 3 < len(self.words) and (of := self.words[at + 3]).number is not None:
            if following.text in _HOLDERS:  # a part of 6, a sack of 5 kg
                yield from self._from_number(at + 3, of)
        elif following.text == "hundred" and self.text(at + 2) == "per":
            yield Value(at + 4, 1, "part")
        elif following.text in _ALONE:
            yield Value(at + 2, _ALONE[following.text])
            yield from self._with_things(Value(at + 2, _ALONE[following.text]))
        elif unit := self._unit(at + 1):
            yield from self._and_parts(Value(unit[0], unit[2], unit[1]))

    def _unit(self, at: int) -> tuple[int, str, Fraction] | None:
        """The end, kind and size of a unit that is named at a place."""
        for length in (2, 1):
            told = " ".join(self.text(at + further) for further in range(length))
            if told in self._phrases.measures:
                kind, size = self._phrases.measures[told]
                return at + length, kind, Fraction(size)
        unit = unit_of(self.text(at))
        return (at + 1, *unit) if unit else None

    def _from_number(self, at: int, word: Word) -> Iterator[Value]:
        number, text = word.number or 0, self.text(at + 1)
        if word.kind:
            value = Value(at + 1, number, word.kind)
            if word.kind == "money" and text in _MONEY:
                yield value._replace(end=at + 2)
                return
            yield from self._and_parts(value)
            if word.kind == "money":
                yield from self._with_things(value)
            return
        if text in ("percent", "per") and (text != "per" or self.text(at + 2) == "cent"):
            yield Value(at + (3 if text == "per" else 2), Fraction(number) / 100, "part")
            return
        coin = self.words[at + 1] if at + 1 < len(self.words) else None
        if coin and coin.kind == "money" and self.text(at + 2) in _MONEY and coin.number is not None:
            yield Value(at + 3, number * coin.number, "money", "", True)
            return
        size = PART_OF.get(text)
        if size is not None and (number < 20 or size <= Fraction(1, 20)):
            yield Value(at + 2, number * size, "part")
            return
        if text in ("whole", "wholes"):
            yield Value(at + 2, number, "part")
        if text == "and" and (part := next(self.plain(at + 2), None)) and part.kind == "part" and part.number < 1:
            yield from self._measured(Value(part.end, number + part.number))
        if coin and (coin.kind == "size" or text in SO_MANY_OF) and text not in ("one", "whole", "wholes"):
            many = coin.number if coin.kind == "size" else SO_MANY_OF[text]
            value = Value(at + 2, number * (many or 0), "", text if text in PLACES else "", True)
            yield Value(at + 1, number)
            yield from self._more_places(value) if text in PLACES else (value,)
            yield from self._with_things(value)
            return
        yield from self._measured(Value(at + 1, number))

    def _more_places(self, value: Value) -> Iterator[Value]:
        """So many tens, and so many ones."""
        at = value.end
        at += self.text(at) == ","
        at += self.text(at) in ("and", "with", "plus")
        number, place = self._number(at), self.text(at + 1)
        if number is None and self.text(at) == "no":
            number = 0
        if number is not None and place in PLACES and at > value.end:
            size = SO_MANY_OF[place.replace("unit", "one")]
            yield from self._more_places(Value(at + 2, value.number + number * size, "", place, True))
        yield value

    def _measured(self, value: Value) -> Iterator[Value]:
        """A number with its unit, or with what it counts."""
        if unit := self._unit(value.end):
            yield from self._and_parts(Value(unit[0], value.number * unit[2], unit[1]))
            return
        yield value
        yield from self._with_things(value)

    def _and_parts(self, value: Value) -> Iterator[Value]:
        """An amount, and so much of a smaller unit: 1 hour 50 minutes, a pound and 20 pence, an hour and a quarter."""
        yield value
        hundredths = self._number(value.end) if self.text(value.end - 1) in _CUT_SHORT else None
        if hundredths in range(10, 100) and not self._unit(value.end + 1):
            yield Value(value.end + 1, value.number + Fraction(hundredths or 0) / 100, value.kind)
        at = value.end + (self.text(value.end) == "and")
        if at >= len(self.words) or (value.kind in ("part", "money") and at == value.end):
            return
        for further in self.plain(at):
            if further.kind == value.kind and 0 < further.number < value.number and not further.worked:
                yield Value(further.end, value.number + further.number, value.kind)
            elif further.kind == "part" and further.number < 1 and at > value.end and self.text(at) == "a":
                yield Value(further.end, value.number * (1 + further.number), value.kind)

    def _with_things(self, value: Value) -> Iterator[Value]:
        for at in range(value.end, min(value.end + MOST_THINGS, len(self.words))):
            word = self.words[at]
            if word.number is not None or not word.text[0].isalpha() or word.text in self._phrases.no_thing:
                return
            yield value._replace(end=at + 1, noun=word.text)
