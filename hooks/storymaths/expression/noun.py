"""Nouns in the singular and the plural: as their author gives them, else as a library has them."""

from __future__ import annotations

from functools import cache, lru_cache

from inflect import engine

from ..model.book import FactAbout
from ..model.quantity import UNITS

_OF_MATHS = {"vertex": "vertices", "axis": "axes", "penny": "pence"}
"""Where the library has another word: one axe, two axes."""
_ONE_WITH_S = ("ss", "us", "is")
"""Ends of words that stand for one, such as bus."""


class Noun(str):
    """A noun in the plural that knows its singular."""

    one: str

    def __new__(cls, many: str, one: str = "") -> Noun:
        """``one`` as its author gives it; the usual form where it is left out."""
        noun = super().__new__(cls, many)
        noun.one = one or singular(many)
        return noun


@cache
def _library() -> engine:
    library = engine()
    for one, many in _OF_MATHS.items():
        library.defnoun(one, many)
    return library


@lru_cache(maxsize=4096)  # a server of months meets many words
def singular(many: str) -> str:
    """``penny`` for ``pennies``, ``line of symmetry`` for ``lines of symmetry``; a word that is no plural as it is."""
    if many.endswith("ss"):
        return many
    found = _library().singular_noun(many) if many.strip() else False
    return str(found) if found else many


@lru_cache(maxsize=4096)  # a server of months meets many words
def plural(one: str) -> str:
    """``mice`` for ``mouse``."""
    return _library().plural_noun(one) if one[-1:].isalpha() else one


def is_plural(words: str) -> bool:
    """Whether the words name several: ``dogs``, ``mice``, and not ``bus`` or ``chess``."""
    return not words.endswith(_ONE_WITH_S) and singular(words) != words


def noun_of(about: FactAbout | None) -> Noun:
    """What a fact of the cast counts; empty where it says nothing of that."""
    return Noun(about.unit, about.singular or "") if about else Noun("")


def counted(count: int, about: FactAbout | None) -> str:
    """A number of the cast with its unit: ``6 bricks``, ``1 brick``, ``6 cm``; the number alone where there is none."""
    noun = noun_of(about)
    unit = str(noun) if noun in UNITS or count != 1 else noun.one
    return f"{count:,} {unit}".replace("-", "−").rstrip()


def number_in_words(count: int) -> str:
    """``six``, ``forty-six``, ``one hundred and one``; ``nought`` for 0."""
    return str(_library().number_to_words(count, zero="nought"))


def with_article(noun: str) -> str:
    """``a cube``, ``an oval``, ``an L-shaped hexagon``."""
    return str(_library().a(noun))
