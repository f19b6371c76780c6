"""Edits as an author sees them: each in the style that stands there, and all else to the byte."""

from __future__ import annotations

import pytest
from storymaths.edits.apply import apply, apply_all
from storymaths.edits.edit import (
    AddItem,
    AddSection,
    Edit,
    EditRefused,
    InBlock,
    MoveItem,
    MoveSection,
    RemoveItem,
    RemoveSection,
    RenameSection,
    SetBlock,
    SetSection,
    SetValue,
)

PAGE = """\
---
kind: session
title: "Two: a title" # the working title
number: 1
year: 2
summary: >-
  Words that are broken where the
  author broke them, and not at any
  width.
concepts: [equality, mass]
steps: # each has a section
  # reading comes first
  - name: Read
    minutes: 9
  - {name: Weigh, minutes: 18, alone: [bucket-balance]}
hear:
  - 'It''s so'
materials: [] # nothing yet
cautions:
  - risk: bodies # see the policy
    note: Only friends in the story.
---

Above all.

## Read

Read it.

```maths
kind: compare
statements: # three
  - 9 ? 6
```

## Weigh

Weigh them.
"""


def lines_changed(edit: Edit) -> tuple[list[str], list[str]]:
    """The lines that go and the lines that come."""
    old, new = PAGE.split("\n"), apply(PAGE, edit).split("\n")
    return [line for line in old if line not in new], [line for line in new if line not in old]


SETTING = {
    "a quoted text stays quoted, with its note": (
        SetValue(("title",), 'Say "so"'),
        ['title: "Say \\"so\\"" # the working title'],
    ),
    "single quotes stay single": (SetValue(("hear", 0), "It's not"), ["  - 'It''s not'"]),
    "a number": (SetValue(("steps", 1, "minutes"), 20), ["  - {name: Weigh, minutes: 20, alone: [bucket-balance]}"]),
    "bare words that would mean something else get quotes": (
        SetValue(("cautions", 0, "note"), "yes"),
        ['    note: "yes"'],
    ),
    "lines stay broken where they were": (
        SetValue(("summary",), "Words that are torn where the author broke them, and not at any width."),
        ["  Words that are torn where the"],
    ),
    "a list keeps the items it keeps": (SetValue(("concepts",), ["mass", "time"]), ["concepts: [mass, time]"]),
    "a key in its usual place": (SetValue(("minutes",), 27), ["minutes: 27"]),
    "an empty list becomes lines, and its note stays": (
        SetValue(("materials",), [{"item": "counter", "count": 2, "per": "pair"}]),
        ["materials: # nothing yet", "  - {item: counter, count: 2, per: pair}"],
    ),
    "an item as the one beside it": (
        AddItem(("steps",), {"name": "Finish", "minutes": 5}),
        ["  - {name: Finish, minutes: 5}"],
    ),
    "an item in lines": (
        AddItem(("cautions",), {"risk": "scissors", "note": "Count: out and in."}),
        ["  - risk: scissors", '    note: "Count: out and in."'],
    ),
    "a list that was not there": (AddItem(("needs",), 1), ["needs: [1]"]),
    "within a mapping that was not there": (SetValue(("words", "new"), ["equal to"]), ["words:", "  new: [equal to]"]),
    "within an activity": (InBlock(0, AddItem(("statements",), "4 ? 4")), ["  - 4 ? 4"]),
    "the words of a section": (SetSection("Weigh", "New words.\n"), ["New words."]),
    "the words above all": (SetSection("", "First."), ["First."]),
    "a section's name": (RenameSection("Weigh", "Put in order"), ["## Put in order"]),
}


@pytest.mark.parametrize("what", SETTING)
def test_an_edit_is_written_as_a_careful_person_would(what: str) -> None:
    edit, lines = SETTING[what]
    assert lines_changed(edit)[1] == lines


def test_what_is_taken_out_goes_with_its_lines_and_no_others() -> None:
    assert lines_changed(RemoveItem(("steps", 0)))[0] == ["  - name: Read", "    minutes: 9"]
    assert lines_changed(RemoveItem(("cautions", 0)))[1] == ["cautions: []"]
    assert "## Weigh" not in apply(PAGE, RemoveSection("Weigh"))
    assert lines_changed(RemoveSection("Weigh"))[1] == []


def test_what_is_moved_takes_the_note_above_it_along() -> None:
    moved = apply(PAGE, MoveItem(("steps", 0), 1))
    assert "alone: [bucket-balance]}\n  # reading comes first\n  - name: Read\n    minutes: 9\nhear" in moved
    assert apply(moved, MoveItem(("steps", 1), 0)) == PAGE
    sections = apply(PAGE, MoveSection("Weigh", 0))
    assert sections.index("## Weigh") < sections.index("## Read")
    assert apply(sections, MoveSection("Weigh", 1)) == PAGE


def test_a_section_and_its_step_come_and_go() -> None:
    new = [AddItem(("steps",), {"name": "Finish", "minutes": 5}), AddSection("Finish", "End it.")]
    gone = [RemoveItem(("steps", 2)), RemoveSection("Finish")]
    assert apply_all(PAGE, new).endswith("Weigh them.\n\n## Finish\n\nEnd it.\n")
    assert apply_all(apply_all(PAGE, new), gone) == PAGE


def test_an_activity_is_replaced_whole() -> None:
    assert "```maths\nkind: order\n```" in apply(PAGE, SetBlock(0, "kind: order"))


@pytest.mark.parametrize(
    ("edit", "why"),
    [
        (SetValue(("steps", 7, "minutes"), 1), "There is no"),
        (MoveItem(("steps", 0), 2), "beyond the ends"),
        (AddItem(("title",), "x"), "is not a list"),
        (SetSection("Weigh", "Words\n\n## Another\n"), "another section"),
        (SetSection("Read", "```\nnever closed"), "another section"),
        (SetSection("Nowhere", "x"), "There is no section"),
        (SetBlock(0, "kind: order\n```\n"), "end too early"),
        (SetBlock(1, "kind: order"), "There is no activity 2"),
        (SetValue(("title",), "half a sign \ud83d"), "half of a sign"),
    ],
)
def test_what_would_touch_something_else_is_refused(edit: Edit, why: str) -> None:
    with pytest.raises(EditRefused, match=why):
        apply(PAGE, edit)


@pytest.mark.parametrize(
    ("page", "why"),
    [
        ("No front matter.\n", "does not open with front matter"),
        ("---\ntitle: a\ntitle: b\n---\n", "written twice"),
        ("---\ntitle: [a\n---\n", "cannot be read at its line"),
        ("---\n---\n", "Nothing stands there yet"),
    ],
)
def test_a_page_that_cannot_be_read_is_left_alone(page: str, why: str) -> None:
    with pytest.raises(EditRefused, match=why):
        apply(page, SetValue(("title",), "x"))


def test_line_ends_and_the_mark_at_the_start_stay() -> None:
    edit = AddItem(("steps",), {"name": "Finish", "minutes": 5})
    windows = "\ufeff" + PAGE.replace("\n", "\r\n")
    assert apply(windows, edit) == "\ufeff" + apply(PAGE, edit).replace("\n", "\r\n")
    mixed = PAGE.replace("Above all.\n", "Above all.\r\n")
    assert apply(mixed, edit) == apply(PAGE, edit).replace("Above all.\n", "Above all.\r\n")


def test_what_was_begun_with_nothing_in_it_is_filled_in_without_quotes() -> None:
    begun = apply(PAGE, AddItem(("steps",), {"name": "", "minutes": 9}))
    assert 'name: ""' in begun
    filled = apply(begun, SetValue(("steps", 2, "name"), "Tell"))
    assert "name: Tell\n" in filled or "name: Tell," in filled
    assert apply(filled, SetValue(("steps", 2, "name"), "")) == begun
