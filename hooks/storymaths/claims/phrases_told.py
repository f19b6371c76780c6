"""Sums, shares, comparisons and facts told in the phrases of ``site_data/phrases.yaml``."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from ..expression.number_words import SO_MANY_OF
from ..model.known_facts import KnownFacts
from ..model.once_for import once_for
from ..model.phrases import Phrase, Phrases
from .claim_class import ClaimClass, Untrue
from .form import Form
from .number_words import WORDS_OF_NUMBERS
from .phrase_checks import CHECKS, judge_shape
from .phrase_reader import PhraseReader, Possible, Ready, Told
from .phrase_slots import DAYS, MONTHS
from .phrase_values import MIXED
from .phrase_words import words_of
from .phrase_worth import UNLIKE, Judged, judge_letters

NUMBERS = Form(
    r"\d+|\b(?:"
    + "|".join(sorted(WORDS_OF_NUMBERS))
    + r"|half|halves|quarters?|thirds?|fifths?|double|twice|nothing|dozen|hundred"
    r"|thousand|pound|(?:kilo|centi|milli)?(?:metre|litre|gram)s?|hour|week|year|days?|month|odd|even|sides|corners|faces|edges|parallel|radius|rectangles?|squares?|triangles?|circle|sphere|ending|angles?|turn|roman|sums?|"
    + "|".join((*DAYS, *MONTHS))
    + r")\b"
)
"""What two of which a sentence must hold to be read."""
ALONE = Form(
    r"\b(?:parallel|radius|diameter|isosceles|rectangles?|noon|midday|multiple|remainder|doubl(?:es|ing)|roman)\b"
)
"""What is read where it stands with one number, or another of these."""
ALL_ALONE = frozenset(("parallel", "radius", "rectangle", "rectangles", "noon", "midday", "doubles", "doubling"))
"""What is read where it stands with none."""
_OVER = frozenset((".", ";", ":", "!", "?", ")", "”", '"', "]", "|", "*", "–", "—", ""))
_GOES_ON = frozenset("so because but while since as which whereas then if when where though although just".split())
_WITHOUT_NUMBER = frozenset(
    "on with by for at in from when without to altogether after before again today now exactly using during between and or"
    " every each per among whatever however here there together also once whichever whoever".split()
)
_BEGINS_AFTER = frozenset(
    "so that then because since while but as know knows see say says said remember shows means therefore hence "
    "altogether together always and think thinks notice agree answer".split()
)
_BEFORE = _BEGINS_AFTER | frozenset((*".,;:!?()[]|*\"“”‘’'–—…•", "and", ""))
_FAR = 3
_OF_SIZE = frozenset("bigger smaller larger heavier lighter thicker thinner shorter longer taller wider across".split())

_GOES_WITH = frozenset("so and which because since but as".split())
_OTHERWISE = frozenset("back backwards down downwards countdown in by odd even multiple multiples table".split())
"""Words that say that it is counted otherwise than up in ones."""


class Found(NamedTuple):
    """A phrase that fits: up to which word, and what is so."""

    end: int
    judged: Judged
    by: str = ""
    """What has to hold."""
    letters: frozenset[str] = frozenset()
    """What is told."""

    def is_part_of(self, other: Found) -> bool:
        """Whether another reading takes in all that this one tells, and more."""
        return self.by == other.by and self.end < other.end and self.letters < other.letters


@dataclass(frozen=True)
class _Tables:
    values: Ready
    claims: Ready


@once_for
def _tables(phrases: Phrases) -> _Tables:
    """The phrases made ready, once for all pages."""
    return _Tables(Ready(phrases, phrases.values), Ready(phrases, phrases.claims))


def _find(sentence: str, facts: KnownFacts) -> Iterator[Untrue]:
    if facts.phrases is None:
        return
    tables = _tables(facts.phrases)
    words = words_of(sentence)
    reader = PhraseReader(sentence, words, facts, facts.phrases, tables.values)
    possible = reader.possible(tables.claims)
    if not possible.phrases:
        return
    before = ("", *(word.text for word in words))
    for start in (at for at in range(len(words)) if before[at] in _BEFORE and _begins(reader, at)):
        found = [
            each
            for each in dict.fromkeys(_fitting(reader, start, tables.claims, possible))
            if each.judged is not UNLIKE and _is_over(reader, each.end) and not _is_condition(reader, start, each.end)
        ]
        found = [each for each in found if not any(map(each.is_part_of, found))]
        if found and all(each.judged.holds is False for each in found):
            best = max(found, key=lambda each: each.end)
            yield Untrue(words[start].start, words[best.end - 1].end, best.judged.so, supposed=True)


def _begins(reader: PhraseReader, at: int) -> bool:
    """Whether a sentence, or a part of it, begins at a word."""
    if at == 0:
        return reader.text(0)[:1].isalnum() or reader.text(0)[:1] in "£−-"
    before = reader.text(at - 1)
    if not (reader.text(at)[:1].isalnum() or reader.text(at)[:1] in "£−"):
        return False
    if before == ":" and reader.words[at].start == reader.words[at - 1].end:
        return False  # in the ratio 3:1
    if before == "and" and reader.text(at - 2) != ",":
        return False
    if before in (",", "and"):
        return not any(low <= at - 1 < low + _FAR + 1 for low in reader.number_places)
    return before in _BEGINS_AFTER or (
        not before[:1].isalnum() and before not in ("£", "/", "+", "×", "÷", "=", "−", "-", "<", ">")
    )


def _is_condition(reader: PhraseReader, start: int, end: int) -> bool:
    """Whether what was told is supposed, and the sentence goes on with what would follow: if double 6 is 13, we are lost."""
    if reader.text(start) not in ("if", "suppose", "when"):
        return False
    return reader.text(end) == "then" or (reader.text(end) == "," and reader.text(end + 1) not in _GOES_WITH)


def _is_over(reader: PhraseReader, at: int) -> bool:
    """Whether nothing after a word belongs to what was told."""
    text = reader.text(at)
    if text in _OVER or text in _GOES_ON:
        return True
    if text == ",":
        return not (at + 1 in reader.number_places and reader.text(at + 2) in (",", "and", "or", "", "."))
    if text not in _WITHOUT_NUMBER:
        return False
    for place in range(at + 1, len(reader.words)):
        if reader.text(place) in _OVER or reader.text(place) in _GOES_ON or reader.text(place) == ",":
            return True
        if place in reader.number_places:
            return False
    return True


def _fitting(reader: PhraseReader, start: int, claims: Ready, possible: Possible) -> Iterator[Found]:
    if reader.text(start) in possible.firsts:
        for phrase in claims.by_word[reader.text(start)]:
            if phrase.number in possible.phrases:
                for end, told in reader.fits(phrase.row, start):
                    yield _found(phrase, end, told, reader)
    for letter in reader.letters(start):
        if letter not in possible.firsts:
            continue
        after = claims.by_letter[letter]
        for value in reader.told_by(letter, start):
            text = reader.text(value.end)
            texts = (text, reader.text(value.end + 1)) if text in (",", ":", "–", "—") else (text,)
            for phrase in (phrase for each in (*texts, "") for phrase in after.get(each, ())):
                if phrase.number in possible.phrases:
                    for end, told in reader.fits(phrase.row[1:], value.end, {letter.lower(): value}):
                        yield _found(phrase, end, told, reader)


def _found(phrase: Phrase, end: int, told: Told, reader: PhraseReader) -> Found:
    if phrase.told.check == "steps" and sum(word in SO_MANY_OF and word.endswith("s") for word in reader.held) > 1:
        return Found(end, Judged(None))  # in tens, then in ones
    if phrase.told.holds in ("a > b", "a < b") and told["a"].kind == "money" and not _OF_SIZE.isdisjoint(reader.held):
        return Found(end, Judged(None))  # a 10p is smaller than a 2p
    if phrase.told.worked and not any(value.worked for value in told.values()):
        return Found(end, Judged(None))
    if phrase.told.measured and len({value.kind or value.end for value in told.values()}) > 1:
        return Found(end, UNLIKE)
    if phrase.told.holds == "a × d = b × c" and len({told[each].noun.removesuffix("s") for each in "ac"} - {""}) > 1:
        return Found(end, UNLIKE)  # two boys, and then four girls
    if phrase.told.by_ones and not _OTHERWISE.isdisjoint(reader.held):
        return Found(end, Judged(None))
    if phrase.told.check == "shape parts":
        judged = judge_shape(told, reader.shapes)
    elif phrase.told.check:
        judged = CHECKS[phrase.told.check](told)
    else:
        judged = judge_letters(phrase.told.holds, told)
        if judged.holds is False and _of_something_else(phrase.told.holds, told, reader, end):
            judged = Judged(None) if any(value.worked for value in told.values()) else UNLIKE
    return Found(end, judged, phrase.told.check or phrase.told.holds, frozenset(told))


def _of_something_else(holds: str, told: Told, reader: PhraseReader, end: int) -> bool:
    """Whether what is told to be equal counts other things, or nothing was done: 3 boys and 4 girls make 2 teams; 6 bricks make 1 wall."""
    if holds not in ("a = b", "a = l", "l = a"):
        return False
    one, other = told["a"], told.get("b") or told["l"]
    if not (one.worked or other.worked):
        alike = one.kind == other.kind and one.kind and not one.noun and not other.noun
        if not alike or reader.text(end) in _WITHOUT_NUMBER:  # £3.89 is £4 to the nearest pound
            return True
    nouns = {value.noun for value in (one, other) if value.noun}
    if MIXED in nouns:
        return not nouns & reader.general
    return len(nouns) > 1 or bool(nouns & reader.sets)


CLASS = ClaimClass(
    name="numbers in words",
    reads="What the phrases of site_data/phrases.yaml tell: sums done and their result, shares, fractions of amounts, doubles, wholes "
    "and parts, places of a number, rounding, amounts in units and money, times, days and months, missing numbers, averages.",
    leaves="Whatever does not fit a phrase from the start of a part of a sentence to its end; sums of unlike things.",
    source="Common practice, no source: the four operations; units and the calendar as in site_data/facts.yaml.",
    cues=frozenset(),
    find=_find,
    numbers=0,
)
