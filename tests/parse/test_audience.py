"""Which texts of front matter are a pupil's is said by each schema, and nowhere else."""

from __future__ import annotations

import pytest
from project import collection
from storymaths.model.book import Book
from storymaths.model.home import Home
from storymaths.model.page import Page
from storymaths.model.page_fields import PageFields
from storymaths.model.series import Series
from storymaths.model.session import Session
from storymaths.model.story import Story
from storymaths.parse.audience import plan_of


def keys_of(schema: type[PageFields]) -> set[str]:
    return set(plan_of(schema).fields)


@pytest.mark.parametrize("schema", [Book, Home, Page, Series, Session, Story])
def test_titles_and_summaries_are_read_and_codes_and_names_are_not(schema: type[PageFields]) -> None:
    keys = keys_of(schema)
    assert {"title", "summary"} <= keys
    assert not keys & {"kind", "status", "book", "themes", "concepts", "objectives", "revisits", "published", "changed"}


def test_words_for_adults_alone_are_not_a_pupils() -> None:
    assert not keys_of(Session) & {"materials"}
    assert not keys_of(Home) & {"things"}
    assert not keys_of(Series) & {"licence", "contact", "version"}
    assert not keys_of(Book) & {"rights", "rights_note", "isbn"}
    character = plan_of(Book).under("cast")
    assert character is not None
    assert set(character.fields) == {"name", "alt", "facts"}


def test_what_stands_under_a_key_that_is_a_name_is_read() -> None:
    bends = plan_of(Session).under("bends")
    assert bends is not None
    year = bends.under(3)
    assert year is not None
    assert set(year.fields) == {"numbers", "recording", "question", "why"}


def test_each_text_that_is_gathered_has_its_place() -> None:
    for page in collection().documents:
        text = page.prose.text
        for part in page.reader.front:
            words = part.split()[0]
            if words.isalpha():
                place = page.place_in_prose(text.index(words), words)
                assert place.path == page.path
