"""Words across a run of sessions: which are new where, which are used again, and which never come back."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ..model.concept import Word
from ..model.reference import Reference
from .taught import SessionPage


@dataclass(frozen=True, slots=True)
class WordsAcross:
    """The words of a run of sessions."""

    known_before: tuple[str, ...]
    """Used as known without having been new in an earlier session of the run."""
    new: tuple[str, ...]
    only_once: tuple[str, ...]
    """New in a session, and used again in no later one."""
    not_met: tuple[Word, ...]
    """Words the bank first names in the years asked about that no session has as new or again, everyday talk left out."""


@dataclass(frozen=True, slots=True)
class YearWords:
    """The words the bank first names in one year, everyday talk left out, and what some sessions do with them."""

    year: int
    new: tuple[Word, ...]
    """New in some session."""
    again: tuple[Word, ...]
    """New in none, but used as known in some."""
    not_met: tuple[Word, ...]


def words_by_year(sessions: Iterable[SessionPage], reference: Reference) -> list[YearWords]:
    """The word bank year by year."""
    new: set[str] = set()
    again: set[str] = set()
    for page in sessions:
        new.update(page.fields.words.new)
        again.update(page.fields.words.again)
    bank: dict[int, list[Word]] = {year: [] for year in reference.years}
    for word in reference.words.values():
        if not word.everyday:
            bank.setdefault(word.year, []).append(word)
    return [
        YearWords(
            year,
            tuple(word for word in words if word.word in new),
            tuple(word for word in words if word.word in again and word.word not in new),
            tuple(word for word in words if word.word not in new and word.word not in again),
        )
        for year, words in sorted(bank.items())
    ]


def words_across(sessions: Sequence[SessionPage], reference: Reference, years: Iterable[int]) -> WordsAcross:
    """The words of ``sessions``, which stand in the order they are taught."""
    new: dict[str, None] = {}
    known: dict[str, None] = {}
    again: set[str] = set()
    for page in sessions:
        words = page.fields.words
        for word in words.again:
            if word not in new:
                known.setdefault(word)
        again.update(words.again)
        new.update(dict.fromkeys(words.new))
    asked = {*years}
    met = {*new, *again}
    return WordsAcross(
        known_before=tuple(known),
        new=tuple(new),
        only_once=tuple(word for word in new if word not in again),
        not_met=tuple(
            word
            for word in reference.words.values()
            if word.year in asked and not word.everyday and word.word not in met
        ),
    )
