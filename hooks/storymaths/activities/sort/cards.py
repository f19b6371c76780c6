"""What is sorted: the characters with their facts, or numbers, each as a card with a case for the rules."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator

from ...model.activity import Context
from ..kind import Unsolvable
from ..rule_language.functions import LARGEST, within
from ..rule_language.tree import Gives

MOST_NUMBERS = 100
_STRETCH = re.compile(r"\s*([−-]?\d{1,8})\s*(?:to|–)\s*([−-]?\d{1,8})\s*")
_WRITTEN = re.compile(r"[−-]?(?:\d{1,8}(?:\.\d{1,6})?|\d{1,6}/\d{1,6})")


@dataclass(frozen=True, slots=True)
class Card:
    """One thing to sort."""

    id: str
    name: str
    case: Mapping[str, Any]
    """Its facts; for a number, the number as ``n``."""
    shown: Mapping[str, str] = field(default_factory=dict)
    """How its number is written: 9/12 stays 9/12."""
    called: Mapping[str, str] = field(default_factory=dict)
    """What its facts are called, where that is more than their names."""


@dataclass(frozen=True, slots=True)
class Cards:
    """All there is to sort, and what kind of value each fact has."""

    cards: tuple[Card, ...]
    gives: Mapping[str, Gives]
    """Facts that everyone has, all of one kind; ``n`` for numbers."""
    lacking: Mapping[str, str]
    """Facts that cannot be used, and why."""
    of: Literal["character", "number", "shape"] = "character"

    @property
    def of_numbers(self) -> bool:
        """Whether they are numbers."""
        return self.of == "number"

    @property
    def nobody(self) -> str:
        """What is said of an empty place."""
        return "nobody" if self.of == "character" else "none"


def _numbers(value: Any) -> tuple[str, ...]:
    if isinstance(value, str):
        ends = _STRETCH.fullmatch(value)
        if ends is None:
            raise ValueError("should be a list of numbers, or a stretch such as 10 to 99")
        first, last = (int(end.replace("−", "-")) for end in ends.groups())
        if not 0 <= last - first < MOST_NUMBERS:
            raise ValueError(f"should be a stretch of 1 to {MOST_NUMBERS} numbers, the smaller end first")
        return tuple(str(number).replace("-", "−") for number in range(first, last + 1))
    if not isinstance(value, (list, tuple)) or not 1 <= len(value) <= MOST_NUMBERS:
        raise ValueError(f"should be a list of 1 to {MOST_NUMBERS} numbers, or a stretch such as 10 to 99")
    return tuple(_one_number(item) for item in value)


def _one_number(item: Any) -> str:
    text = str(item).strip().replace(",", "")
    if isinstance(item, bool) or not _WRITTEN.fullmatch(text) or re.search(r"/0+$", text):
        raise ValueError(f"should hold numbers such as 7, 2.5 or 3/4, and not {text[:20]!r}")
    if abs(Fraction(text.replace("−", "-"))) > LARGEST:
        raise ValueError("should hold numbers within ten million")
    return text.replace("-", "−")


def _value(text: str) -> int | Fraction:
    return within(Fraction(text.replace("−", "-")))


WrittenNumbers = Annotated[tuple[str, ...], BeforeValidator(_numbers)]
"""Numbers as their author wrote them: whole, decimal or a fraction, at most a hundred; or ``10 to 99``."""


def number_cards(numbers: Sequence[str]) -> Cards:
    """A card for each number. Raises ``Unsolvable`` for one that is there twice."""
    for number in numbers:
        if numbers.count(number) > 1:
            raise Unsolvable(("numbers",), f"The number {number} is there twice.", "take one of them out.")
    cards = (Card(number, number, {"n": _value(number)}, {"n": number}) for number in numbers)
    return Cards(tuple(cards), {"n": "number"}, {}, of="number")


def cast_cards(context: Context) -> Cards:
    """A card for each character. Raises ``Unsolvable`` for an empty cast, and for wild facts."""
    if not context.characters:
        raise Unsolvable(("cast",), "There is nobody to sort.", "give a cast with facts, or numbers to sort.")
    facts = list(dict.fromkeys(fact for character in context.characters for fact in character.facts))
    gives: dict[str, Gives] = {}
    lacking: dict[str, str] = {}
    for fact in facts:
        kinds = {
            _kind(character.facts[fact], character.name, fact, context)
            for character in context.characters
            if fact in character.facts
        }
        without = [character.name for character in context.characters if fact not in character.facts]
        if without:
            lacking[fact] = f'{without[0]} has no fact "{fact}".'
        elif len(kinds) > 1:
            lacking[fact] = f'The fact "{fact}" is not the same kind of thing for everyone.'
        else:
            gives[fact] = kinds.pop()
    return Cards(
        tuple(Card(character.id, character.name, character.facts) for character in context.characters), gives, lacking
    )


def _kind(value: Any, name: str, fact: str, context: Context) -> Gives:
    if isinstance(value, bool):
        return "truth"
    if isinstance(value, str):
        return "text"
    if isinstance(value, int) and 0 <= value <= min(context.caps.number, LARGEST):
        return "number"
    message = f"The {fact} of {name} is {value!r:.30}."
    raise Unsolvable(
        ("cast",), message, f"write a whole number from 0 to {context.caps.number:,}, true, false, or words."
    )
