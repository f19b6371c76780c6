"""Words of the word bank where they stand."""

from __future__ import annotations

import re

import pytest
from project import reference
from storymaths.model.concept import Word
from storymaths.render.word_links import WordFinder


def a_word(word: str, *also: str, everyday: bool = False) -> Word:
    return Word(word=word, year=1, concept="equality", means="Worth the same.", also=also, everyday=everyday)


FINDER = WordFinder.of(
    [a_word("equal", "equals"), a_word("equal to"), a_word("share", "shared"), a_word("big", everyday=True)]
)


def test_the_first_use_is_linked_and_the_longest_form_wins() -> None:
    html, found = FINDER.mark("<p>It is equal to this, and equal to that; it equals it.</p>")
    assert html.count("<a ") == 2
    assert '<a class="word" href="#word-equal-to">equal to</a> this' in html
    assert [word.word for word in found] == ["equal to", "equal"]


def test_links_headings_and_attributes_are_left_alone() -> None:
    html = '<h2>Share</h2><a href="x">share</a><img alt="share">'
    assert FINDER.mark(html) == (html, [])


def test_what_is_said_of_care_on_every_page_explains_no_word_of_the_lesson() -> None:
    html = '<dl class="usual-care"><div><dt>Food</dt><dd>Share it in equal parts.</dd></div></dl>'
    assert FINDER.mark(html) == (html, [])


def test_everyday_words_and_parts_of_words_are_left_alone() -> None:
    assert FINDER.mark("<p>A big shareholder.</p>")[1] == []


@pytest.mark.parametrize(
    ("text", "marked"),
    [
        # Everyday talk, and the same words of the subject; common practice, no source.
        ("Show the little ones the tens and the ones.", ["tens", "ones"]),
        ("Give the red ones to the class.", []),
        ("The ones that are left go back.", []),
        ("The whole cast comes, and the whole class claps.", []),
        ("The whole is 7 and one part is 3.", ["whole"]),
        ("Even the goose came, and even if it rained.", []),
        ("Is 8 an even number?", ["even"]),
        ("Which is the odd one out? Wait half an hour.", []),
        ("Half of 8 is 4, an hour on the clock.", ["Half", "hour"]),
        ("Read for ten minutes, in a circle.", []),
        ("The little\nones sat down. Tens first.", ["Tens"]),
    ],
)
def test_everyday_talk_is_not_explained(text: str, marked: list[str]) -> None:
    html = WordFinder.of(reference().words.values()).mark(f"<p>{text}</p>")[0]
    assert re.findall(r'<a class="word"[^>]*>([^<]*)</a>', html) == marked
