"""A sentence read by phrases: the values that stand in it, and where each phrase fits."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import cached_property
from types import MappingProxyType

from ..model.phrases import Choice, Phrase, Phrases, Row, SaidPhrases, Slot, Words
from .phrase_slots import SLOTS
from .phrase_values import MOST_THINGS, Value, Values
from .phrase_words import Word
from .phrase_worth import work_out

Told = Mapping[str, Value]
NONE: Told = MappingProxyType({})
_MARKS = frozenset(",:–—")
_JOINS = frozenset(("and", "with", "plus", "add", "&"))
_MOST_IN_LIST = 9
_DEEPEST = 2


class Ready:
    """Phrases by the word they may begin with, or that may follow the value they begin with."""

    def __init__(self, phrases: Phrases, told: tuple[SaidPhrases, ...]) -> None:
        self.by_word: dict[str, list[Phrase]] = defaultdict(list)
        self.after_value: dict[str, list[Phrase]] = defaultdict(list)
        self.by_slot: dict[str, list[Phrase]] = defaultdict(list)
        for phrase in phrases.ready(told):
            first = phrase.row[0]
            if first == Slot("A"):
                for word in phrase.firsts(1):
                    self.after_value[word].append(phrase)
                continue
            for word in phrase.firsts():
                (self.by_slot if len(word) == 1 and word.isupper() else self.by_word)[word].append(phrase)


class PhraseReader(Values):
    """The values and phrases of one sentence."""

    def __init__(self, sentence: str, words: list[Word], phrases: Phrases, values: Ready) -> None:
        super().__init__(words, phrases)
        self.sentence, self._ready = sentence, values
        self._found: dict[int, list[Value]] = {}
        self._deep = 0

    def values(self, at: int) -> list[Value]:
        """Every value that may stand from a word on."""
        if at not in self._found:
            self._found[at] = []  # what begins with itself has no end
            self._found[at] = list(dict.fromkeys(self._values(at)))
        return self._found[at]

    def _values(self, at: int) -> Iterator[Value]:
        if at >= len(self.words):
            return
        begun = [*self.plain(at), *self._begun(at)]
        for _ in range(_DEEPEST):
            yield from begun
            begun = [further for value in begun for further in self._gone_on(value)]
            if not begun:
                return
        yield from begun

    def _begun(self, at: int) -> Iterator[Value]:
        for phrase in self._ready.by_word.get(self.words[at].text, ()):
            for end, told in self.fits(phrase.row, at):
                value = work_out(phrase.told.holds, told, end)
                if value:
                    yield value

    def _gone_on(self, value: Value) -> Iterator[Value]:
        for phrase in self._ready.after_value.get(self.text(value.end), ()):
            for end, told in self.fits(phrase.row[1:], value.end, {"a": value}):
                further = work_out(phrase.told.holds, told, end)
                if further:
                    yield further

    def fits(self, row: Row, at: int, told: Told = NONE) -> Iterator[tuple[int, Told]]:
        """Where a row ends that begins at a word, and what it tells."""
        if not row:
            yield at, told
            return
        piece, rest = row[0], row[1:]
        match piece:
            case Words(any_of=words):
                text = self.text(at)
                if text in words:
                    yield from self.fits(rest, at + 1, told)
                elif text in _MARKS and self.text(at + 1) in words:
                    yield from self.fits(rest, at + 2, told)
            case Choice(rows=rows):
                for each in rows:
                    for end, further in self.fits(each, at, told):
                        yield from self.fits(rest, end, further)
            case Slot(letter="~"):
                yield from self.fits(rest, at, told)
                for end in self._things(at):
                    yield from self.fits(rest, end, told)
            case Slot(letter=letter):
                for value in self._slot(letter, at):
                    yield from self.fits(rest, value.end, {**told, letter.lower(): value})

    def _things(self, at: int) -> Iterator[int]:
        for end in range(at, min(at + MOST_THINGS, len(self.words))):
            word = self.words[end]
            if word.number is not None or not word.text[0].isalpha() or word.text in self._phrases.no_thing:
                return
            yield end + 1

    def _slot(self, letter: str, at: int) -> Iterator[Value]:
        if letter in "ABCDE":
            yield from self.values(at)
        elif letter in "LK":
            yield from self._lists(at, None, 0)
        elif at < len(self.words):
            yield from SLOTS[letter](self, at)

    def _lists(self, at: int, before: Value | None, many: int) -> Iterator[Value]:
        """Values told one after the other, as their sum."""
        for value in (*self.plain(at), *self._begun(at)) if at < len(self.words) else ():
            if before and before.kind != value.kind:
                continue
            noun = value.noun if not before or value.noun == before.noun else before.noun or value.noun
            number = value.number + (before.number if before else 0)
            each = (*(before.each if before else ()), value.number)
            so_far = Value(value.end, number, value.kind, noun, True, each)
            if before:
                yield so_far
            after = value.end + (self.text(value.end) == ",")
            joined = self.text(after) in _JOINS
            if many < _MOST_IN_LIST and (joined or after > value.end):
                yield from self._lists(after + joined + (self.text(after + 1) in ("another", "then") and joined), so_far, many + 1)

    @cached_property
    def number_places(self) -> frozenset[int]:
        """Which words are numbers."""
        return frozenset(at for at, word in enumerate(self.words) if word.number is not None)

    @property
    def sets(self) -> frozenset[str]:
        """Words for several things together."""
        return self._phrases.of_sets

    @property
    def general(self) -> frozenset[str]:
        """Words for things of several sorts."""
        return self._phrases.of_all_sorts
