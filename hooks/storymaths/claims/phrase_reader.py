"""A sentence read by phrases: the values that stand in it, and where each phrase fits."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property
from types import MappingProxyType
from typing import NamedTuple

from ..expression.number import Rational
from ..expression.number_words import PART_OF
from ..model.known_facts import KnownFacts
from ..model.phrases import Choice, Phrase, Phrases, Row, SaidPhrases, Slot, Words, commonness
from .phrase_slots import HINTS_OF_TIME, SLOTS, letters_held, letters_of
from .phrase_values import MIXED, MOST_THINGS, PLACES, Value, Values
from .phrase_words import Word
from .phrase_worth import work_out

Told = Mapping[str, Value]
NONE: Told = MappingProxyType({})
_MARKS = frozenset(",:–—")
_JOINS = frozenset(("and", "with", "plus", "add", "&"))
_MOST_IN_LIST = 9
_DEEPEST = 2


class Possible(NamedTuple):
    """The phrases that a sentence may hold, and the words and letters that they may begin with."""

    phrases: frozenset[int]
    firsts: frozenset[str]


NO_PHRASES = Possible(frozenset(), frozenset())


class Ready:
    """Phrases by the word they may begin with, or by the letter they begin with and the word that may follow what it tells."""

    def __init__(self, phrases: Phrases, told: tuple[SaidPhrases, ...]) -> None:
        self._by_need: dict[str, list[tuple[Phrase, frozenset[str], list[frozenset[str]]]]] = defaultdict(list)
        self.by_word: dict[str, list[Phrase]] = defaultdict(list)
        self.by_letter: dict[str, dict[str, list[Phrase]]] = {}
        for number, made in enumerate(phrases.ready(told)):
            phrase, firsts = made._replace(number=number), made.firsts()
            rarest, *others = sorted(phrase.needs, key=commonness) or [frozenset[str]()]
            for word in rarest:
                self._by_need[word].append((phrase, firsts, others))
            for word in firsts:
                if len(word) == 1 and word.isupper():
                    after = self.by_letter.setdefault(word, defaultdict(list))
                    for following in self._following(phrase, word):
                        after[following].append(phrase)
                else:
                    self.by_word[word].append(phrase)

    def possible(self, held: frozenset[str], numbers: int) -> Possible:
        """Which phrases a sentence may hold that holds words, letters and so many numbers."""
        found = [
            (phrase.number, firsts)
            for word in self._by_need.keys() & held
            for phrase, firsts, others in self._by_need[word]
            if numbers >= phrase.numbers and not (others and any(map(held.isdisjoint, others)))
        ]
        if not found:
            return NO_PHRASES
        return Possible(frozenset(each[0] for each in found), frozenset().union(*(each[1] for each in found)))

    def _following(self, phrase: Phrase, letter: str) -> frozenset[str]:
        """The words that may follow a first letter; none in particular where words may be left out before it."""
        return phrase.firsts(1) if phrase.row[0] == Slot(letter) else frozenset(("",))


class PhraseReader(Values):
    """The values and phrases of one sentence."""

    def __init__(self, sentence: str, words: list[Word], facts: KnownFacts, phrases: Phrases, values: Ready) -> None:
        super().__init__(words, phrases)
        self.shapes = facts.shapes
        self.sentence, self._ready = sentence, values
        self.held = frozenset(word.text for word in words)
        self._found: dict[int, list[Value]] = {}
        self._listed: dict[int, list[Value]] = {}

    def values(self, at: int) -> list[Value]:
        """Every value that may stand from a word on."""
        if at not in self._found:
            self._found[at] = []  # what begins with itself has no end
            self._found[at] = list(dict.fromkeys(self._values(at)))
        return self._found[at]

    def _values(self, at: int) -> Iterator[Value]:
        if at >= len(self.words):
            return
        begun = list(dict.fromkeys((*self.plain(at), *self._begun(at))))
        for _ in range(_DEEPEST):
            yield from begun
            begun = list(dict.fromkeys(further for value in begun for further in self._gone_on(value)))
            if not begun:
                return
        yield from begun

    def _begun(self, at: int) -> Iterator[Value]:
        for phrase in self._ready.by_word.get(self.words[at].text, ()):
            for end, told in self.fits(phrase.row, at) if phrase.number in self._possible else ():
                if value := self._worked(phrase, told, end):
                    yield value

    def _gone_on(self, value: Value) -> Iterator[Value]:
        for phrase in self._ready.by_letter["A"].get(self.text(value.end), ()):
            for end, told in (
                self.fits(phrase.row[1:], value.end, {"a": value}) if phrase.number in self._possible else ()
            ):
                if further := self._worked(phrase, told, end):
                    yield further

    def _worked(self, phrase: Phrase, told: Told, end: int) -> Value | None:
        if phrase.told.bare and any(value.noun for value in told.values()):
            return None
        value = work_out(phrase.told.holds, told, end)
        return value._replace(noun="") if value and value.noun in self.sets else value

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
            case Choice(by_word=by_word, others=others):
                text = self.text(at)
                begun = by_word.get(text, ())
                if text in _MARKS:
                    begun = (*begun, *by_word.get(self.text(at + 1), ()))
                for each in (*begun, *others):
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

    def lists(self, at: int) -> list[Value]:
        """Every list of two values or more that may stand from a word on."""
        if at not in self._listed:
            self._listed[at] = list(dict.fromkeys(self._lists(at, None, True)))
        return self._listed[at]

    def possible(self, ready: Ready) -> Possible:
        """Which of some phrases the sentence may hold."""
        return ready.possible(*self._can_tell)

    @cached_property
    def _can_tell(self) -> tuple[frozenset[str], int]:
        return self.held | letters_held(self, self.held), self.most_numbers()

    @cached_property
    def _possible(self) -> frozenset[int]:
        return self.possible(self._ready).phrases

    def letters(self, at: int) -> str:
        """The letters that a word may be told by."""
        word = self.words[at]
        if word.number is not None:
            return "SABCLKHTU" if word.kind == "size" or self._has_times else "ABCLKH"
        return letters_of(word.text)

    def told_by(self, letter: str, at: int) -> Iterable[Value]:
        """What a letter may tell from a word on."""
        return self._slot(letter, at)

    def _slot(self, letter: str, at: int) -> Iterator[Value]:
        if letter in "ABCDE":
            yield from self.values(at)
        elif letter in "LK":
            yield from self.lists(at)
        elif letter == "H":
            yield from self._run(at)
        elif at < len(self.words):
            yield from SLOTS[letter](self, at)

    def _run(self, at: int) -> Iterator[Value]:
        """Three numbers or more, one after the other, as they are counted or put in order."""
        each, end, kind = list[Rational](), at, ""
        while end < len(self.words) and (value := next(self.plain(end), None)) and (not each or value.kind == kind):
            each.append(value.number)
            end, kind = value.end, value.kind
            after = end + (self.text(end) == ",")
            after += self.text(after) in ("and", "then", "or")
            if len(each) > 2:
                yield Value(end, 0, kind, "", True, tuple(each))
            if after == end or next(self.plain(after), None) is None:
                break
            end = after

    def _lists(self, at: int, before: Value | None, by_commas: bool) -> Iterator[Value]:
        """Values told one after the other, the last after an "and", as their sum."""
        for value in (*self.plain(at), *self._begun(at)) if at < len(self.words) else ():
            if before and before.kind != value.kind:
                continue
            if not before and value.noun in self.sets and self.text(value.end) == ",":
                continue  # two bars, 9 and 7
            each = (*(before.each if before else ()), value.number)
            noun = "" if value.noun in PLACES else value.noun
            noun = noun if not before or noun == before.noun else MIXED
            number = value.number + (before.number if before else 0)
            so_far = Value(value.end, number, value.kind, noun, True, each)
            if before and not by_commas:
                yield so_far
                if self.text(value.end) not in _JOINS:
                    continue
            after = value.end
            if (comma := self.text(after) == ",") and by_commas:
                after += 1
            joined = self.text(after) in _JOINS
            if len(each) < _MOST_IN_LIST and (after > value.end or joined) and not (comma and joined and len(each) < 2):
                after += joined and 1 + (self.text(after + 1) in ("another", "then"))
                yield from self._lists(after, so_far, by_commas and not joined)

    @cached_property
    def number_places(self) -> frozenset[int]:
        """Which words are numbers."""
        return frozenset(at for at, word in enumerate(self.words) if word.number is not None or word.text in PART_OF)

    @cached_property
    def _has_times(self) -> bool:
        """Whether a time of day may be told."""
        return ":" in self.sentence or not HINTS_OF_TIME.isdisjoint(self._texts)

    @property
    def sets(self) -> frozenset[str]:
        """Words for several things together."""
        return self._phrases.of_sets

    @property
    def general(self) -> frozenset[str]:
        """Words for things of several sorts."""
        return self._phrases.of_all_sorts
