"""What the story and the book's notes say in words, page by page; and the numbers, times, measures and shapes in it."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass

from ..claims.clock import TIME, minutes_of
from ..expression.noun import Noun, is_plural
from ..expression.spoken import read_spoken
from ..expression.spoken_signs import is_thing
from ..expression.tokens import Token
from ..model.body import Heading, Paragraph, Quotation, words_of_runs
from ..model.collection import Collection
from ..model.quantity import UNITS, UNITS_IN_WORDS
from .material import Counted, Grouped, Measured, TimeTold

_PAGE = re.compile(r"Page (\d+)")
_TIME = re.compile(TIME)
_SENTENCE = re.compile(r"[^.!?]+[.!?]?")
_LEADING_TIME = re.compile(rf"^(?:and |but |then |so )?(?:at|by) {TIME},? (?P<event>[^.,;:!?\"“”’]+)")
_LATE = re.compile(r"\b(?:afternoon|evening|night)\b")
_NOON = 12 * 60
_NO_THINGS = frozenset(
    "times pages ways sides turns words others pairs sets groups hands goes comes makes gets stands sits looks takes gives "
    "holds falls needs fits stays says was is has does this as".split()
)
"""Words that name no things that are counted, and verbs after a number that stands for one: eight goes on top."""
_PARTS = {
    2: "half(?! past)|halves",
    3: "(?:a|one) third|thirds",
    4: "quarters?(?! past| to)",
    5: "(?:a|one) fifth|fifths",
    8: "an eighth|eighths",
    10: "a tenth|tenths",
}
"""How parts are spoken of; the third is a place in a row."""
_MOST_WORDS, _MOST_EACH, _LONGEST_EVENT, _LARGEST = 3, 12, 40, 1000


@dataclass(frozen=True, slots=True)
class PageText:
    """Some words of the book, and the page they are of; 0 for what is said of the whole book."""

    page: int
    words: str


def texts_of(collection: Collection, book: str) -> list[PageText]:
    """The words of the story where the site has it, then of the notes on pages, then of the summary and synopsis."""
    record = collection.books[book]
    found = [*_story(collection, book)]
    found += [PageText(note.pages.first, note.see) for note in record.fields.maths_on_pages]
    found.append(PageText(0, record.fields.summary))
    return found + [PageText(0, text) for text in _paragraphs(record.content.blocks)]


def _story(collection: Collection, book: str) -> Iterator[PageText]:
    story = collection.stories.get(book)
    page = 0
    for block in story.content.blocks if story else ():
        if isinstance(block, Heading) and (match := _PAGE.match(block.words)):
            page = int(match[1])
        elif page:
            yield from (PageText(page, text) for text in _paragraphs((block,)))


def _paragraphs(blocks: Sequence[object]) -> Iterator[str]:
    for block in blocks:
        if isinstance(block, Paragraph):
            yield words_of_runs(tuple(run for run in block.runs if run.kind != "picture"))
        elif isinstance(block, Quotation):
            yield from _paragraphs(block.blocks)


def counted_in(texts: Sequence[PageText], known: Container[str]) -> list[Counted]:
    """Things counted with their number; those whose name is ``known`` from the cast first."""
    spoken = Counter(word for text in texts for word in re.findall(r"[a-z]+", text.words.lower()))
    pages: dict[tuple[int, str], list[int]] = {}
    for text in texts:
        tokens = read_spoken(_TIME.sub("then", text.words.replace("o'clock", "o’clock")))
        for at, token in enumerate(tokens):
            things = _things_after(tokens, at) if 1 < _whole(token) <= _LARGEST else ""
            if things and (things in known or spoken[things] > 1):
                pages.setdefault((_whole(token), things), []).append(text.page)
    found = [Counted(number, Noun(things), _told(on)) for (number, things), on in pages.items()]
    return sorted(found, key=lambda one: str(one.things) not in known)


def _whole(token: Token) -> int:
    """The whole number a piece of text is; 0 where it is none, or has a unit."""
    bare = token.kind == "number" and not token.unit and token.value.denominator == 1
    return int(token.value) if bare else 0


def _things_after(tokens: Sequence[Token], at: int) -> str:
    """The name of what a number counts, in the plural; empty where none follows."""
    if tokens[at].things:
        return tokens[at].things if is_plural(tokens[at].things) else ""
    for token in tokens[at + 1 : at + 1 + _MOST_WORDS]:
        if not is_thing(token) or token.text.lower() in UNITS_IN_WORDS:
            return ""
        if is_plural(token.text.lower()):
            return _thing(token)
    return ""


def _thing(token: Token) -> str:
    """Something that is counted, or holds what is, in the plural; empty for ways, times and other words that name no thing."""
    word = token.text.lower()
    return word if is_thing(token) and is_plural(word) and word not in _NO_THINGS else ""


def grouped_in(texts: Sequence[PageText]) -> list[Grouped]:
    """Boxes of four, lines of ten: what holds a group, and how many are in each."""
    pages: dict[tuple[str, int], list[int]] = {}
    for text in texts:
        tokens = read_spoken(text.words)
        for holder, of, size in zip(tokens, tokens[1:], tokens[2:], strict=False):
            if of.text == "of" and 1 < _whole(size) <= _MOST_EACH and (holders := _thing(holder)):
                pages.setdefault((holders, _whole(size)), []).append(text.page)
    return [Grouped(each, Noun(holders), _told(on)) for (holders, each), on in pages.items()]


def times_in(texts: Sequence[PageText]) -> list[TimeTold]:
    """The clock times told on pages, each once with the first few words that say what happens then.

    Where neither morning nor afternoon is said, a time comes after the one before it in the book.
    """
    found: dict[int, TimeTold] = {}
    last = 0
    for text in sorted((text for text in texts if text.page), key=lambda one: one.page):
        for sentence in _SENTENCE.findall(text.words):
            plain = sentence.strip().strip('"“”‘').replace("o'clock", "o’clock")
            late = _LATE.search(plain.lower()) is not None
            for match in _TIME.finditer(plain.lower()):
                told = minutes_of(match.group())
                if told is None:
                    continue
                minutes, known = told
                if not known and minutes < _NOON and minutes not in found:
                    minutes += _NOON if late or minutes < last or minutes + _NOON in found else 0
                last = last if late or minutes in found else minutes
                event = _event(plain)
                if minutes not in found or (event and not found[minutes].event):
                    found[minutes] = TimeTold(minutes, text.page, event)
    return list(found.values())


def _event(sentence: str) -> str:
    """What happens at the time a sentence opens with, where that takes a few words."""
    match = _LEADING_TIME.match(sentence[:1].lower() + sentence[1:])
    event = match["event"].strip() if match else ""
    return re.sub(r" and .*", "", event) if 0 < len(event) <= _LONGEST_EVENT else ""


def parts_in(texts: Sequence[PageText]) -> tuple[int, ...]:
    """The parts that are spoken of, halves, thirds and so on by their number, the most often first."""
    spoken = words_in(texts)
    told = {number: len(re.findall(rf"\b(?:{form})\b", spoken)) for number, form in _PARTS.items()}
    return tuple(sorted((number for number, times in told.items() if times), key=lambda number: -told[number]))


def measured_in(texts: Sequence[PageText]) -> list[Measured]:
    """Whole amounts in standard units, of money too."""
    pages: dict[tuple[int, str], list[int]] = {}
    for text in texts:
        for token in read_spoken(text.words):
            if token.kind == "number" and token.unit in UNITS:
                number = token.value / UNITS[token.unit][1]
                if number.denominator == 1 and 0 < number <= _LARGEST:
                    pages.setdefault((int(number), token.unit), []).append(text.page)
    return [Measured(number, unit, UNITS[unit][0], _told(on)) for (number, unit), on in pages.items()]


def _told(pages: Sequence[int]) -> tuple[int, ...]:
    return tuple(page for page in dict.fromkeys(pages) if page)


def words_in(texts: Sequence[PageText]) -> str:
    """All of it in small letters, to look names up in."""
    return "\n".join(text.words for text in texts).lower()
