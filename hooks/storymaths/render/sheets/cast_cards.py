"""Cast cards: a picture, a name and, where it is asked for, a number."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from ...model.activity import CastMember, Shown
from ...model.book import Book, FactValue
from ...model.document import Document
from ...model.fields import year_name
from ...model.session import Needed, Session
from .card_sizes import SIZE_FOR, SIZES, cards_part, sets_on_a_page
from .paper import for_adult, in_sets
from .sheet import SheetData
from .sheet_context import SheetActivity, SheetContext, SheetPictures

_ASKS_FOR_NUMBER = re.compile(r"\bnumbers?\b", re.IGNORECASE)
Cast = tuple[tuple[CastMember, ...], tuple[Shown, ...]]
"""Who is on the cards, and what each card carries."""


def session_cards(
    sheets: SheetContext, page: Document[Session], activities: Sequence[SheetActivity]
) -> SheetData | None:
    """The cast cards a session gets out of the cupboard; none if it needs none."""
    session = page.fields
    needed = next((one for one in session.materials if one.item == "cast-card"), None)
    if needed is None:
        return None
    book = sheets.collection.books[session.book]
    casts = _casts(activities, book, needed)
    pictures, size = SheetPictures(sheets.drawings), SIZE_FOR[needed.per]
    largest = max(len(characters) for characters, _ in casts.values())
    use = in_sets(needed, largest, "card", sheets.children, session.group_size)
    copies = sets_on_a_page(size, largest, use.sets)
    return SheetData(
        "cast-cards",
        f"Cast cards: {session.title}",
        f"Cards of the cast for an adult to cut out, {size} each.",
        tuple(
            cards_part(f"Cast cards{label}", size, pictures.characters(characters, shows), copies)
            for label, (characters, shows) in casts.items()
        ),
        replace(use, on_a_page=copies, versions=len(casts)),
        pictures.kept,
    )


def _casts(activities: Sequence[SheetActivity], book: Document[Book], needed: Needed) -> Mapping[str, Cast]:
    """The whole cast as the author asks for it, then those whose cards carry other numbers in an activity or a year."""
    whole = _cast_by_note(book, needed)
    found = {"": whole}
    seen = [_carried(whole)]
    for activity in activities:
        for year in sorted(activity.by_year, key=lambda year: (year != activity.year, year)):
            task = activity.by_year[year].task
            if not (task.shows and any(character.picture for character in task.characters)):
                continue
            cast: Cast = (task.characters, task.shows)
            if year == activity.year:
                cast = _with_the_others(cast, book, activity.fact, needed.count)
            if not any(_carried(cast) <= known for known in seen):
                seen.append(_carried(cast))
                label = " with numbers" if len(found) == 1 else f" for “{activity.title}”"
                found[f"{label}, {year_name(year)}" if year != activity.year else label] = cast
    return found


def _carried(cast: Cast) -> frozenset[tuple[str, str]]:
    """Who carries which number, whatever is counted."""
    characters, shows = cast
    carried = shows or (Shown(""),) * len(characters)
    return frozenset(
        (character.id, str(shown.number if shown.number is not None else shown.says))
        for character, shown in zip(characters, carried, strict=True)
    )


def _with_the_others(cast: Cast, book: Document[Book], fact: str, wanted: int) -> Cast:
    """The rest of the book's cast as well, where the session asks for more cards than the activity has characters."""
    characters, shows = cast
    if len(characters) >= wanted:
        return cast
    known = {character.id for character in characters}
    others = tuple(character for character in characters_of(book) if character.id not in known)
    return (*characters, *others), (*shows, *(numbers_shown(book.fields, others, fact) or (Shown(""),) * len(others)))


def _cast_by_note(book: Document[Book], needed: Needed) -> Cast:
    """The whole cast, with a number if the author's note asks for one: by the name of the fact, or as a number."""
    characters, note = characters_of(book), needed.note or ""
    if told := _in_words(book, needed):
        return told
    facts = counting_facts(book.fields)
    asked = next((fact for fact in facts if fact in note), facts[0] if facts and _ASKS_FOR_NUMBER.search(note) else "")
    return characters, numbers_shown(book.fields, characters, asked)


def _in_words(book: Document[Book], needed: Needed) -> Cast | None:
    """Those who have a fact in words that the note names, such as a parcel, where as many cards are got out."""
    for fact in book.fields.facts:
        has = [one for one in characters_of(book) if isinstance(one.facts.get(fact), str)]
        if has and len(has) == needed.count and re.search(rf"\b{re.escape(fact)}\b", needed.note or ""):
            return tuple(has), tuple(Shown(str(one.facts[fact])) for one in has)
    return None


def book_cards(sheets: SheetContext, book: Document[Book], fact: str = "") -> SheetData:
    """The whole cast in every size: names only, or with a number for a fact."""
    pictures, characters = SheetPictures(sheets.drawings), characters_of(book)
    cards = pictures.characters(characters, numbers_shown(book.fields, characters, fact))
    about = fact.replace("_", " ").replace("-", " ")
    heading = f"Cast cards with {about}" if fact else "Cast cards"
    return SheetData(
        f"cast-cards-{about.replace(' ', '-')}" if fact else "cast-cards",
        f"{heading}: {book.fields.title}",
        f"The whole cast for an adult to cut out, in three sizes: {', '.join(map(str, SIZES))}.",
        tuple(cards_part(heading, size, cards) for size in SIZES),
        for_adult("Print the pages of the size you want."),
        pictures.kept,
    )


def characters_of(book: Document[Book]) -> tuple[CastMember, ...]:
    """The whole cast of a book."""
    return tuple(
        CastMember(
            one.id,
            one.name,
            one.plural or one.name,
            one.facts,
            book.beside(book.fields.picture_of(at)),
            book.fields.alt_of(at),
            book.fields.notches_of(at),
        )
        for at, one in enumerate(book.fields.cast)
    )


def numbers_shown(book: Book, characters: Sequence[CastMember], fact: str) -> tuple[Shown, ...]:
    """What each card carries for a fact, such as ``6 bricks``; nothing without a fact."""
    about = book.facts.get(fact)
    return (
        tuple(_amount(character.facts.get(fact), about.unit if about else "") for character in characters)
        if fact
        else ()
    )


def counting_facts(book: Book) -> list[str]:
    """Facts that are whole numbers for everybody in the cast."""
    return [fact for fact in book.facts if all(type(one.facts.get(fact)) is int for one in book.cast)]


def _amount(value: FactValue | None, unit: str) -> Shown:
    if type(value) is not int:
        return Shown("")
    said = f"{value}\u00a0{unit[:-1] if value == 1 and unit.endswith('s') else unit}".rstrip()
    return Shown(said, Fraction(value))
