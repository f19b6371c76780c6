"""A book's record and story into the material of ideas. Sessions and home activities are not looked at."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from posixpath import dirname

from ..activities.shape.set import FLATS, SOLIDS
from ..claims.clock import minutes_of
from ..expression.noun import noun_of, plural
from ..model.book import Book, Character, FactAbout, FactValue
from ..model.collection import Collection
from ..model.quantity import MEASURES, UNITS_IN_WORDS
from ..model.reference import Reference
from .material import BY_WORDS, Counted, Material, NamedFact, NumberFact, TimeTold, YesNoFact
from .story_text import PageText, counted_in, grouped_in, measured_in, parts_in, texts_of, times_in, words_in

_FEWEST = 2
_OF_ONE_PAGE = re.compile(r"\bpage \d+")
_OF_A_THING = re.compile(
    r"how (?:long|tall|high|wide|heavy|much) (?:(?:is|are) )?(?:a|an|the|their|his|her) (?P<thing>[a-z]+(?: can)?)\b"
)
"""A fact that measures what somebody brings or has, and not them."""
_CLOCK_TIME = re.compile(r"\d{1,2}:\d\d")


def material_of(collection: Collection, book: str) -> Material:
    """What a book, by its id, has to make activities of."""
    record = collection.books[book]
    texts = texts_of(collection, book)
    numbers = tuple(_numbers(record.fields, collection.reference))
    spoken, named, times = words_in(texts), tuple(_named(record.fields)), times_in(texts)
    return Material(
        id=book,
        folder=dirname(record.source),
        book=record.fields,
        numbers=numbers,
        yes_no=tuple(_yes_no(record.fields)),
        named=named,
        counted=tuple(_counted(texts, numbers)),
        grouped=tuple(grouped_in(texts)),
        times=(*times, *_times_of_cast(named, {one.minutes for one in times})),
        measured=tuple(measured_in(texts)),
        shapes=tuple(name for name in (*FLATS, *SOLIDS) if _speaks_of(spoken, name)),
        parts=parts_in(texts),
        coins=collection.reference.money.worths,
        noted=_noted(record.fields),
    )


def _counted(texts: list[PageText], numbers: tuple[NumberFact, ...]) -> Iterator[Counted]:
    """What is counted in words, and what everyone who has a fact that counts has together."""
    own = {(value, str(fact.things)) for fact in numbers for value in fact.values.values()}
    told = counted_in(texts, {str(fact.things) for fact in numbers})
    yield from (one for one in told if (one.number, str(one.things)) not in own)
    known = {(one.number, str(one.things)) for one in told}
    for fact in numbers:
        total = sum(fact.values.values())
        if (
            fact.of == "count"
            and not fact.of_body
            and not _OF_ONE_PAGE.search(fact.means)
            and (total, str(fact.things)) not in known
        ):
            yield Counted(total, fact.things, ())


def _about(book: Book, fact: str) -> FactAbout:
    return book.facts.get(fact) or FactAbout(means=fact.replace("_", " ").replace("-", " "))


def _facts(book: Book) -> Iterator[tuple[str, dict[str, FactValue], tuple[Character, ...]]]:
    """Each fact with what those who have it have, as the first of the cast lists them."""
    for fact in dict.fromkeys(name for character in book.cast for name in character.facts):
        who = tuple(character for character in book.cast if fact in character.facts)
        yield fact, {character.id: character.facts[fact] for character in who}, who


def _numbers(book: Book, reference: Reference) -> Iterator[NumberFact]:
    found: list[NumberFact] = []
    for fact, values, who in _facts(book):
        whole = {id_: value for id_, value in values.items() if isinstance(value, int) and not isinstance(value, bool)}
        if len(whole) == len(values) >= _FEWEST:
            about = _about(book, fact)
            measure, body = _measure(fact, about, reference), _is_of_body(fact, about, reference)
            if measure == "count" and not about.unit:
                continue  # the floor they live on is a label, and no amount
            of_thing = _OF_A_THING.search(about.means)
            bearer = of_thing["thing"] if of_thing and measure in BY_WORDS else ""
            found.append(NumberFact(fact, about.means, noun_of(about), measure, body, who, whole, bearer))
    # What is so of one page only comes after what is always so.
    yield from sorted(found, key=lambda one: (_OF_ONE_PAGE.search(one.means) is not None, -len(one.who)))


def _is_of_body(fact: str, about: FactAbout, reference: Reference) -> bool:
    return not {about.unit, fact}.isdisjoint(reference.practised_by.bodies)


def _measure(fact: str, about: FactAbout, reference: Reference) -> str:
    """What a fact measures, by its unit or by the words that say what it means."""
    unit = UNITS_IN_WORDS.get(about.unit.lower(), about.unit)
    if unit in MEASURES:
        return MEASURES[unit][0]
    for word in re.findall(r"[a-z]+", f"{fact} {about.means}".lower()):
        known = reference.words.get(word)
        if known and known.concept in BY_WORDS:
            return known.concept
    return "count"


def _yes_no(book: Book) -> Iterator[YesNoFact]:
    for fact, values, who in _facts(book):
        if (
            len(who) == len(book.cast)
            and set(values.values()) == {True, False}
            and all(isinstance(value, bool) for value in values.values())
        ):
            yield YesNoFact(fact, _about(book, fact).means)


def _named(book: Book) -> Iterator[NamedFact]:
    for fact, values, who in _facts(book):
        words = {id_: value for id_, value in values.items() if isinstance(value, str)}
        if len(words) == len(values) >= _FEWEST:
            yield NamedFact(fact, _about(book, fact).means, who, words)


def _times_of_cast(named: tuple[NamedFact, ...], told: set[int]) -> Iterator[TimeTold]:
    """Times of the clock among the facts of the cast, those the book does not tell already."""
    for written in dict.fromkeys(value for fact in named for value in fact.values.values()):
        time = minutes_of(written) if _CLOCK_TIME.fullmatch(written) else None
        if time is not None and time[0] not in told:
            yield TimeTold(time[0], 0, "")


def _speaks_of(spoken: str, name: str) -> bool:
    return any(re.search(rf"\b{re.escape(form)}\b", spoken) for form in (name, plural(name)))


def _noted(book: Book) -> Mapping[str, tuple[str, ...]]:
    pages: dict[str, list[str]] = {}
    for note in book.maths_on_pages:
        first, last = note.pages.first, note.pages.last
        for concept in note.concepts:
            pages.setdefault(concept, []).append(str(first) if first == last else f"{first}–{last}")
    return {concept: tuple(on) for concept, on in sorted(pages.items(), key=lambda item: -len(item[1]))}
