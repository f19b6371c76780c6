"""What finds the place of a value in a file."""

from __future__ import annotations

from typing import Protocol

from .problem import Place
from .prose import Loc


class Locator(Protocol):
    """Finds the line and column of values; made by the parser, asked only when a problem needs it."""

    def place(self, loc: Loc, within: str = "", before: str = "") -> Place:
        """The place of a value, or of some words that stand within it after the words ``before``."""


def find_words(source: str, words: str, before: str = "") -> int:
    """Where some words start in what an author typed, after the words ``before``; −1 where they are not there.

    The source has all the letters of the words in their order, and marks between them: of emphasis, links, quotations.
    """
    at = 0
    for letter in before:
        if not letter.isspace():
            at = 1 + max(source.find(letter, at), at - 1)
    for wanted in (words, words.partition(" ")[0]):
        for start in (at, 0):
            if (found := source.find(wanted, start)) >= 0:
                return found
    return -1
