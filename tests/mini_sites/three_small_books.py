"""Three books, four sessions and a framework of eight objectives, with the tables worked out by hand in comments.

What each session does (made up):

    bells 1 (Year 1, 40 minutes)   teaches 1A           bends to Year 2: 2B
    boats 1 (Year 2, 50 minutes)   teaches 2A           takes up 1A again; bends to Year 1: 1B, and to Year 3: 3A
    boats 2 (Year 2, 45 minutes)   teaches 2A and 2C    bends to Year 1: 1B
    bones 1 (Year 2, 30 minutes)   teaches 2B and 2C    takes up 1A again

2C has four parts, long, short, wide and deep, of which deep is in doubt and not asked for. boats 2 teaches long and short of
it, bones 1 short alone; wide is taught by none, so 2C is taught in part wherever it is.

What the whole collection covers, by hand:

    code  strand   taught             taken up again     touched in a bend   so it is
    1A    Number   bells 1            boats 1, bones 1   –                   taught
    1B    Measure  –                  –                  boats 1, boats 2    touched
    1C    Measure  –                  –                  –                   a gap
    2A    Number   boats 1, boats 2   –                  –                   taught
    2B    Number   bones 1            –                  bells 1             taught
    2C    Measure  boats 2, bones 1   –                  –                   taught in part
    2D    Measure  –                  –                  –                   a gap
    3A    Number   –                  –                  boats 1             touched

What the series of bells and boats, for Years 1 and 2, covers, by hand:

    1A    taught in bells 1, again in boats 1     2A  taught in boats 1 and boats 2
    1B    touched in boats 1 and boats 2          2B  touched in bells 1
    1C    a gap                                   2C  taught in part in boats 2
                                                  2D  a gap
    and of another year: 3A, touched in boats 1

The shortest shelf for Year 2: 2A is in boats alone and 2B is taught in bones alone, so both stand on it, 50 + 45 + 30 = 125
minutes; of 2C they teach long and short, and 2D is beyond it. For Year 1: bells, 40 minutes; 1B and 1C are beyond it, since
touching is not teaching.

What the series needs for 30 children (counters come back, paper is used up, each book needs its own copy):

    counters      bells 1: 2 a child, 60. boats 1: 10 a pair, 150, and 20 for the class, 170 in all. Most at one time: 170
    plain paper   bells 1: 1 a child, 30. boats 2: 1 a group of 5, 6. Used up: 36
    books         one each: 2

Words: bells 1 has "sum" new. boats 1 has "share" new and uses "sum" and "count" again. boats 2 uses "share" again and has
"row" new. So in the series "count" is known before, "row" is taught once and never used again.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

import yaml
from project import reference
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.objective import Framework
from storymaths.model.page_fields import PageFields
from storymaths.model.reference import Reference
from storymaths.parse.document import parse_document
from storymaths.parse.yaml_text import YamlLocator

_STRANDS = {"N": "Number", "M": "Measure"}
_OBJECTIVES = {"1A": "N", "1B": "M", "1C": "M", "2A": "N", "2B": "N", "2C": "M", "2D": "M", "3A": "N"}
_PARTS = [
    {"id": "long", "says": "says how long"}, {"id": "short", "says": "says how short"},
    {"id": "wide", "says": "says how wide"}, {"id": "deep", "says": "says how deep", "asked": False},
]  # fmt: skip
FORMULA = "=1+1 opens as a formula in a spreadsheet"
"""What the words of 2D say: nobody would write it, and nothing may come of it."""
MINI = Framework.model_validate({
    "id": "mini",
    "name": "A framework of eight",
    "short_name": "Mini",
    "status": "statutory",
    "standing": "Made up.",
    "taught_from": "2026-09-01",
    "revised": "2026-09-01",
    "sources": [{"title": "Made up", "publisher": "Nobody", "date": "2026"}],
    "strands": _STRANDS,
    "objectives": [
        {
            "code": code, "year": int(code[0]), "strand": strand, "says": FORMULA if code == "2D" else f"Can do {code}",
            "parts": _PARTS if code == "2C" else [],
        }
        for code, strand in _OBJECTIVES.items()
    ],
})  # fmt: skip


def a_session(book: str, number: int, year: int, **fields: Any) -> Document[PageFields]:
    """A session with a valid value in every field that is not said."""
    said = "Said so that it is there."
    return _page(
        f"content/books/{book}/session-{number}.md",
        {
            "kind": "session", "book": book, "title": f"{book.title()} {number}", "number": number, "year": year, "minutes": 45,
            "summary": said, "objectives": {}, "concepts": ["equality"], "reads": [{"pages": 1}],
            "steps": [{"name": "Read", "minutes": 45}],
            "task": {"objects": said, "pictures": said, "symbols": said}, "stem_sentences": [said],
            "misconceptions": [{"says": said, "shows": said, "try": said}], "easier": [said], "harder": [said],
            "look_for": [said], "exit_question": {"ask": said, "answer": said},
        } | fields,
    )  # fmt: skip


def a_book(book: str, year: int) -> Document[PageFields]:
    """A book's record."""
    return _page(
        f"content/books/{book}/index.md",
        {
            "kind": "book", "title": f"The {book.title()}", "story_by": "A", "pictures_by": "B", "rights": "own",
            "rights_note": "Ours.", "pages": 8, "themes": ["helping"], "years": {"best": year}, "summary": "A tale.",
            "cover": {"picture": "cover.svg", "alt": "A cover."},
            "maths_on_pages": [{"pages": 1, "see": "Two.", "concepts": ["equality"]}],
            "cast": [{"id": "a", "name": "A", "picture": "a.svg", "alt": "A."}],
        },
    )  # fmt: skip


def bend(*codes: str) -> Mapping[str, Any]:
    """A bend that touches some objectives."""
    return {"objectives": {"mini": list(codes)}, "numbers": "n", "recording": "r", "question": "q", "why": "w"}


def mini_reference() -> Reference:
    """The project's reference data with the framework of eight in place of all others; 2D teaches equality, 1C nothing."""
    whole = reference()
    ideas = {
        name: idea.model_copy(update={"objectives": {"mini": ("2D",)} if name == "equality" else {}})
        for name, idea in whole.concepts.items()
    }
    objectives = {("mini", objective.code): objective for objective in MINI.objectives}
    places = {"curricula/mini.yaml": YamlLocator("site_data/curricula/mini.yaml", "objectives: []")}
    return replace(whole, frameworks={"mini": MINI}, concepts=ideas, objectives=objectives, locators=places)


def three_small_books() -> Collection:
    """The collection."""
    pages = (
        a_book("bells", 1),
        a_session(
            "bells", 1, 1, minutes=40, objectives={"mini": ["1A"]}, bends={2: bend("2B")}, words={"new": ["sum"]},
            symbols={"new": ["+", "="]},
            task={"objects": "Put counters on paper.", "pictures": "Draw them.", "symbols": "Write 2 + 3 = 5."},
            materials=[
                {"item": "picture-book"}, {"item": "counter", "count": 2, "per": "child"}, {"item": "plain-paper", "per": "child"},
            ],
            cautions=[{"risk": "small-parts", "note": "Count them back."}],
        ),
        a_book("boats", 2),
        a_session(
            "boats", 1, 2, minutes=50, objectives={"mini": ["2A"]}, revisits={"mini": ["1A"]},
            bends={1: bend("1B"), 3: bend("3A")}, words={"new": ["share"], "again": ["sum", "count"]},
            task={"objects": "Share them.", "pictures": "Draw them.", "symbols": "Write how many: 10."},
            materials=[
                {"item": "picture-book"}, {"item": "counter", "count": 10, "per": "pair"}, {"item": "counter", "count": 20},
            ],
            cautions=[{"risk": "small-parts", "note": "Keep them off the floor."}],
        ),
        a_session(
            "boats", 2, 2, objectives={"mini": ["2A", {"2C": ["long", "short"]}]}, bends={1: bend("1B")}, needs=[1],
            words={"new": ["row"], "again": ["share"]},
            materials=[{"item": "picture-book"}, {"item": "plain-paper", "per": "group"}],
        ),
        a_book("bones", 2),
        a_session("bones", 1, 2, minutes=30, objectives={"mini": ["2B", {"2C": ["short"]}]}, revisits={"mini": ["1A"]}),
        _page(
            "content/series/both.md",
            {
                "kind": "series", "title": "Bells and boats", "year": 1, "also": [2], "summary": "Two.", "for_whom": "All.",
                "books": ["bells", "boats"], "licence": "Copy it.", "contact": "Write.", "version": "1.10",
                "changes": [
                    {"version": "1.10", "date": "2026-11-03", "what": ["Ten."]},
                    {"version": "1.9", "date": "2026-11-02", "what": ["Nine."]},
                    {"version": "1.0", "date": "2026-11-01", "what": ["First."]},
                ],
            },
        ),
    )  # fmt: skip
    return Collection(pages, (), frozenset(page.path for page in pages), mini_reference())


def _page(path: str, fields: Mapping[str, Any]) -> Document[PageFields]:
    text = yaml.safe_dump(dict(fields), sort_keys=False, allow_unicode=True)
    page = parse_document(path, f"---\n{text}---\n")
    assert isinstance(page, Document), page.faults
    return page
