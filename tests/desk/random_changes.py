"""Changes that somebody who tries everything would make at the desk."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Any

from storymaths.desk.control import Control
from storymaths.desk.page_text import ActivityForm, PageText

WORDS = (
    "Two words", "it's: a colon", "# a note?", "- a dash", "yes", "12", "0.5", "null", "“quoted” 'both' \"ways\"", "a, b and c",
    "{brace}", "[list, of]", "é ≠ ½ 🙂", "a long sentence " * 12, "&anchor *alias", "%", "@at", "| bar", "> more", "tab\there",
    "first\n\nsecond", "  spaces  ", "!tag", "?", "---", "...", "1, 2, 3", "2027-01-11", "~",
)  # fmt: skip
PARAGRAPHS = (
    "Some words.\n\nAnd more.",
    "- one\n- two",
    '**Say:** "How many?"',
    "| a | b |\n| - | - |\n| 1 | 2 |",
    "",
    "1. first\n2. then",
)


def random_change(choose: Random, page: PageText) -> dict[str, Any]:
    """One change to a page, of any sort that its form offers."""
    forms = [
        (None, page.controls),
        *((number, ActivityForm(part).controls) for number, part in page.activities.items()),
    ]
    if not any(controls for _, controls in forms):
        return {"do": "type", "activity": None, "loc": ["title"], "text": "No form"}
    activity, controls = choose.choice([one for one in forms if one[1]])
    every = list(_deep(controls))
    kind = choose.random()
    if kind < 0.12:
        return _in_text(choose, page)
    one = choose.choice(every)
    asked = {"activity": activity, "loc": list(one.loc)}
    if one.sort == "list" and kind < 0.9:
        return {
            "do": "add",
            **asked,
            "text": choose.choice(WORDS) if one.shape.inner and not one.shape.inner.fields else None,
        }
    if one.loc and isinstance(one.loc[-1], int) and kind < 0.5:
        length = sum(1 for other in every if other.loc[:-1] == one.loc[:-1])
        return {"do": "move", **asked, "to": choose.randrange(length + 1)} if kind < 0.35 else {"do": "remove", **asked}
    if one.sort in ("group", "map"):
        return (
            {"do": "type", **asked, "text": ""}
            if kind < 0.2
            else {"do": "add", **asked, "key": choose.choice(("1", "3", "x y"))}
        )
    return {"do": "type", **asked, "text": "" if kind > 0.97 else choose.choice(WORDS)}


def _in_text(choose: Random, page: PageText) -> dict[str, Any]:
    at = choose.randrange(len(page.sections))
    if choose.random() < 0.2:
        return {"do": "move-section", "section": at, "to": choose.randrange(len(page.sections))}
    part = choose.choice([n for n, part in enumerate(page.sections[at].parts) if part.number is None])
    return {"do": "write", "section": at, "part": part, "text": choose.choice(PARAGRAPHS)}


def _deep(controls: tuple[Control, ...]) -> Iterator[Control]:
    for one in controls:
        yield one
        yield from _deep(one.inner)
