"""``site_data/prose.yaml``: words by which a page's prose shows what is handled, and what is an adult's matter."""

from __future__ import annotations

from .fields import Id, Strict, Text
from .material import Allergen

Words = tuple[Text, ...]


class ThingNamed(Strict):
    """A thing that is no material of ours, and what it can do when somebody handles it."""

    name: Text
    plural: Text
    also: Words = ()
    small_part: bool = False
    food: bool = False
    allergens: tuple[Allergen, ...] = ()
    hazards: tuple[Id, ...] = ()


class Handling(Strict):
    """How it is known that somebody handles a thing."""

    source: Text
    verbs: Words
    eating: Words
    """Verbs by which food that is no small part, and holds none of the fourteen allergens, is food and not just a noun."""
    doers: Words
    harmless_before: Words
    harmless_after: Words
    things: tuple[ThingNamed, ...]


class AdultMatters(Strict):
    """How it is known that a number is an adult's."""

    source: Text
    sentences: Words
    paragraphs: Words
    """How a paragraph opens that is an adult's altogether."""
    before: Words
    """Words just before such a number: room 215."""
    after: Words
    """Words just after it: 300 dpi."""
    sized: Words
    """Words beside sizes of paper, in mm or per cent."""
    priced: Words
    """Words beside prices the school pays."""
    stored: Words
    """Where materials are kept."""


class Answering(Strict):
    """How it is known that a question is not answered in writing."""

    source: Text
    drawn: Words
    """In a question that is answered by drawing."""
    done: Words
    """A question is answered with the body or aloud where one of its sentences begins with one of these."""
    written: Words
    """In a question that is written an answer to all the same."""


class ProseWords(Strict):
    """The whole file."""

    handling: Handling
    adults: AdultMatters
    answering: Answering
