"""What an activity's own words claim, for the class and for other years: held as the words of its page are.

Its title, its task and its reason are read for sums, for claims in words and for facts of the cast; "put the six
friends in order" and "find both ways" are held to what is put in order and to the ways there are, and the numbers of
its question to those of its data.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any, NamedTuple

from ..check import book_fact_untrue, claim_untrue, lesson_contradicted
from ..check.mistake_is_true import mistakes_that_are_none
from ..check.number_sentence_untrue import untruths
from ..claims.amounts import says
from ..claims.cast_facts import BookFacts
from ..claims.find import find_false_claims
from ..claims.number_words import NUMBER_IN_WORDS, number_in_words
from ..claims.own_data import exchanged, nearly_told
from ..claims.ways import told_ways
from ..model.activity import Context
from ..model.collection import Collection
from ..model.document import Document, Loc
from ..model.known_facts import KnownFacts
from ..model.page_fields import PageFields
from ..model.problem import Place, Problem
from ..model.prose import Passage, PlacedText, Prose
from ..parse.body import read_text
from ..parse.prose import words_in
from .on_pages import PageActivities, PageActivity, texts_of
from .rules import CLAIM_WRONG, WAYS_MISCOUNTED

_SAID = ("title", "ask", "because")
_IN_ORDER = re.compile(rf"\b(?:put|lay|place) the (?P<count>\d+|{NUMBER_IN_WORDS}) [a-z]+(?: [a-z]+)? in order\b", re.I)


_OF_WAYS = frozenset(("way", "ways", "answer", "answers", "solutions", "there"))


class Said(NamedTuple):
    """Words of an activity with what holds for them: the answers there are, and how many things of each sort."""

    placed: PlacedText
    answers: int | None
    """None where it could not be worked out."""
    counts: frozenset[int]
    data: Mapping[str, Any] = {}
    """What its question is held to; nothing for other words."""


def check_words(collection: Collection, pages: PageActivities) -> Iterator[Problem]:
    """Every problem of what activities say in words, and bends in their place."""
    facts = collection.reference.facts
    books = {name: BookFacts(record.fields) for name, record in collection.books.items()}
    for page in collection.documents:
        book = books.get(page.book) if page.book is not None else None
        for activity in pages.get(page.path, ()):
            for said in _of_class(page, activity):
                yield from _untrue(said, facts, book)
            for said in _of_bends(page, activity):
                yield from untruths(said.placed)
                yield from mistakes_that_are_none(said.placed)
                yield from _untrue(said, facts, None)
        yield from _numbers_of_bends(page)


def _of_class(page: Document[PageFields], activity: PageActivity) -> Iterator[Said]:
    done = activity.worked.done
    counts = _counts(activity.worked.raw, activity.worked.context)
    for placed in texts_of(activity):
        written = PlacedText(placed.text, _as_written(page, placed.place))
        data = activity.worked.raw if placed.text == _question(activity.worked.raw) else {}
        yield Said(written, len(done.solution.answers) if done else None, counts, data)


def _question(data: Mapping[str, Any]) -> str:
    """An activity's question as it is read; empty where it has none of its own."""
    return words_in(ask) if isinstance(ask := data.get("ask"), str) else ""


def _as_written(page: Document[PageFields], place: Callable[[int, str], Place]) -> Callable[[int, str], Place]:
    return lambda offset, words: page.as_written(place(offset, words))


def _of_bends(page: Document[PageFields], activity: PageActivity) -> Iterator[Said]:
    """The words that bends pin for an activity."""
    fields, bends = activity.worked.fields, page.raw.get("bends")
    if fields is None or not isinstance(bends, dict):
        return
    for year, bend in bends.items():
        pinned = bend.get("activities") if isinstance(bend, dict) else None
        for name, pins in pinned.items() if isinstance(pinned, dict) else ():
            if not isinstance(pins, dict) or not isinstance(name, str) or not fields.is_called(name):
                continue
            version = activity.worked.versions.get(0 if year == "Reception" else year)
            data = {**activity.worked.raw, **pins}
            counts = _counts(data, version.context if version else None)
            for key in _SAID:
                if isinstance(text := pins.get(key), str):
                    place = _in_bend(page, ("bends", year, "activities", name, key))
                    answers = len(version.solution.answers) if version else None
                    yield Said(PlacedText(words_in(text), place), answers, counts, data if key == "ask" else {})


def _numbers_of_bends(page: Document[PageFields]) -> Iterator[Problem]:
    """The numbers that a bend tells of, and those that it pins."""
    bends = page.raw.get("bends")
    for year, bend in bends.items() if isinstance(bends, dict) else ():
        activities = bend.get("activities") if isinstance(bend, dict) else None
        pinned = (
            [pins for pins in activities.values() if isinstance(pins, dict)] if isinstance(activities, dict) else []
        )
        for key in ("numbers", "recording") if pinned else ():
            words = bend.get(key)
            pair = next(
                (pair for pins in pinned if isinstance(words, str) and (pair := nearly_told(words, pins))), None
            )
            if pair:
                tells, has = map(says, pair)
                message = f"The bend tells of {tells}, and what it pins has {has} in its place."
                yield lesson_contradicted.RULE.problem(page.place("bends", year, key), message, "make the two agree.")


def _in_bend(page: Document[PageFields], loc: Loc) -> Callable[[int, str], Place]:
    return lambda _, words: page.place(*loc, within=words)


def _counts(data: Mapping[str, Any], context: Context | None) -> frozenset[int]:
    """How many characters there are, and how many of whatever the data list."""
    own = {len(value) for value in data.values() if isinstance(value, list | dict)}
    return frozenset(own | ({len(context.characters)} if context else set()))


def _untrue(said: Said, facts: KnownFacts, book: BookFacts | None) -> Iterator[Problem]:
    placed = said.placed
    passages = [Passage(0, ("ask",), None)]
    prose = Prose(placed.text, passages, lambda: passages)
    yield from claim_untrue.problems(find_false_claims(prose, facts), prose, placed.place)
    if book:
        yield from book_fact_untrue.problems(book.find(prose), placed.place)
    for match in _IN_ORDER.finditer(placed.text) if " in order" in placed.text else ():
        count = match["count"]
        if said.counts and (int(count) if count.isdigit() else number_in_words(count.lower())) not in said.counts:
            yield CLAIM_WRONG.problem(
                placed.place(match.start(), match.group()),
                f'"{match.group()}" is not so: other numbers of things are put in order.',
                "put right the number, or the list.",
            )
    if said.data and (pair := exchanged(placed.text, said.data, said.counts)):
        asks, has = map(says, pair)
        message = f"The question says {asks}, and the activity's data say {has} in its place."
        yield lesson_contradicted.RULE.problem(placed.place(0, placed.text), message, "make the two agree.")
    may_count = said.answers is not None and not prose.words.isdisjoint(_OF_WAYS)
    for told in told_ways(read_text(placed.text).blocks) if may_count else ():
        if told.says != said.answers:
            yield WAYS_MISCOUNTED.problem(
                placed.place(max(0, placed.text.find(told.words)), told.words),
                f'"{told.words}" is not so: the activity finds {said.answers}.',
                "put right the number or the activity.",
            )
