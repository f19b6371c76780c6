"""Where pages are, and how one leads to another."""

from __future__ import annotations

import pytest
from project import collection
from storymaths.model.address import link, objective_page, slug


@pytest.mark.parametrize(
    ("target", "here", "href"),
    [
        ("words.md", "index.md", "words.html"),
        ("words.md#equal", "books/a/session-1.md", "../../words.html#equal"),
        ("books/a/cast/otter.svg", "books/a/index.md", "cast/otter.svg"),
        ("#top", "index.md", "#top"),
    ],
)
def test_link(target: str, here: str, href: str) -> None:
    assert link(target, here) == href


def test_no_two_generated_pages_share_an_address() -> None:
    pages = collection().generated_pages
    assert len(pages) == len(set(pages))


def test_codes_with_a_stroke_have_an_address() -> None:
    assert objective_page("england-ready-to-progress", "6AS/MD-1") == "objectives/england-ready-to-progress/6as-md-1.md"


@pytest.mark.parametrize(
    ("words", "slugged"), [("Equal to", "equal-to"), ("o'clock", "o-clock"), ("The Café!", "the-cafe")]
)
def test_slug(words: str, slugged: str) -> None:
    assert slug(words) == slugged
