"""What is proposed for a session of the frozen collection whose head was emptied, and that nothing of hers is touched."""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

import pytest
from command import storymaths
from project import PROJECT, collection, copy_of_project, reference, text_of
from storymaths.activities.table import KINDS
from storymaths.edits.apply import apply, apply_all
from storymaths.edits.edit import Edit, RemoveItem, SetValue
from storymaths.model.document import Document
from storymaths.parse.document import FENCE, parse_document
from storymaths.parse.starter_words import starter_words
from storymaths.parse.yaml_text import load
from storymaths.propose.proposal import Proposal
from storymaths.propose.table import proposals

PAGE = "books/ferry-fare/session-3.md"
EMPTIED = ("minutes", "objectives", "words", "symbols", "stem_sentences", "materials", "cautions")


@lru_cache(maxsize=1)
def emptied() -> str:
    """The session without what can be proposed."""
    return apply_all(text_of(PAGE), [RemoveItem((name,)) for name in EMPTIED if name in raw_of(text_of(PAGE))])


def raw_of(text: str) -> dict[str, object]:
    found = FENCE.match(text)
    assert found
    raw = load(found[1])[0]
    assert isinstance(raw, dict)
    return raw


def proposed(text: str) -> tuple[Proposal, ...]:
    return proposals(collection(), f"content/{PAGE}", text)


@lru_cache(maxsize=1)
def proposed_for_emptied() -> tuple[Proposal, ...]:
    return proposed(emptied())


def edits_of(found: tuple[Proposal, ...]) -> list[Edit]:
    return [one.edit for one in found if one.edit is not None]


def test_what_is_lacking_is_proposed_each_with_its_reason() -> None:
    found = proposed_for_emptied()
    assert {"minutes", "stem_sentences", "materials", "cautions"} <= {one.field for one in found}
    assert all(one.reason.strip() for one in found)
    (minutes,) = [one.edit for one in found if one.field == "minutes"]
    assert isinstance(minutes, SetValue)
    assert minutes.path == ("minutes",)
    assert minutes.value == raw_of(text_of(PAGE))["minutes"]


def test_taking_all_of_it_makes_a_session_that_can_be_read_and_touches_nothing_of_hers() -> None:
    made = apply_all(emptied(), edits_of(proposed_for_emptied()))
    before, after = raw_of(emptied()), raw_of(made)
    assert {name: after[name] for name in before} == before
    assert isinstance(parse_document(f"content/{PAGE}", made), Document)


def test_what_is_there_is_not_proposed_again_and_what_differs_is_told() -> None:
    assert {one.field for one in proposed(text_of(PAGE))} <= {"words.again", "materials", "preparation", "bends"}
    wrong = apply(text_of(PAGE), SetValue(("minutes",), 7))
    (told,) = [one for one in proposed(wrong) if one.field == "minutes"]
    assert told.edit is None
    assert "the session says 7" in told.reason


def test_minutes_left_over_are_shared_among_the_steps_without_any() -> None:
    page = raw_of(text_of(PAGE))
    steps = page["steps"]
    assert isinstance(steps, list)
    text = apply_all(text_of(PAGE), [RemoveItem(("steps", at, "minutes")) for at in (0, len(steps) - 1)])
    made = apply_all(text, [one.edit for one in proposed(text) if one.field == "steps" and one.edit])
    shared = raw_of(made)["steps"]
    assert isinstance(shared, list)
    assert sum(step["minutes"] for step in shared) == page["minutes"]


def test_a_bend_says_in_the_words_of_the_starter_what_is_left_and_names_only_what_its_activities_practise() -> None:
    bare = apply_all(text_of(PAGE), [RemoveItem(("bends",)), SetValue(("concepts",), ["counting"])])
    for text, teaches in ((apply(text_of(PAGE), RemoveItem(("bends",))), True), (bare, False)):
        bends = [
            edit.value for edit in edits_of(proposed(text)) if isinstance(edit, SetValue) and edit.path[0] == "bends"
        ]
        assert bends
        for bend in bends:
            assert isinstance(bend, dict)
            assert {bend[name] for name in ("numbers", "recording", "question", "why")} <= starter_words("session")
        assert any("objectives" in bend for bend in bends) == teaches, "nothing of counting is practised there"


def test_the_first_sentence_takes_the_place_of_the_starters() -> None:
    unwritten = next(words for words in starter_words("session") if "___" in words)
    text = apply(emptied(), SetValue(("stem_sentences",), [unwritten]))
    made = apply_all(text, [one.edit for one in proposed(text) if one.field == "stem_sentences" and one.edit])
    stems = raw_of(made)["stem_sentences"]
    assert isinstance(stems, list)
    assert stems
    assert unwritten not in stems


@pytest.mark.parametrize(
    "text", ["", "---\nkind: page\n---\n", "---\nkind: [session\n---\n", "---\nkind: session\n---\n"]
)
def test_a_page_that_is_hardly_begun_is_no_trouble(text: str) -> None:
    assert proposed(text) == ()


def test_the_table_of_sentences_names_kinds_and_tasks_there_are() -> None:
    tasks = {name: {schema.task_name for schema in kind.tasks} for name, kind in KINDS.items()}
    stems = reference().proposals.stems
    assert [(kind, task) for kind in stems for task in stems[kind] if task not in tasks.get(kind, ())] == []


def test_the_command_shows_a_difference_and_writes_only_when_asked(tmp_path: Path) -> None:
    project = copy_of_project(tmp_path / "project")
    page = project / "content" / PAGE
    page.write_text(emptied(), encoding="utf-8")
    done = storymaths("propose", str(page), folder=project)
    assert done.returncode == 0
    assert "\n+minutes: " in done.stdout
    assert page.read_text(encoding="utf-8") == emptied()
    storymaths("propose", str(page), "--write", folder=project)
    assert page.read_text(encoding="utf-8") == apply_all(emptied(), edits_of(proposed_for_emptied()))


def test_the_command_says_what_is_no_session() -> None:
    done = storymaths("propose", str(PROJECT / "content" / "books" / "ferry-fare" / "index.md"))
    assert done.returncode == 2
    assert "is no session" in done.stderr


def test_the_cubes_of_base_ten_blocks_and_cards_of_numbers_are_no_other_things() -> None:
    words = "Give each pair base-ten blocks. Take ten cubes. Lay out number cards, and turn the cards."
    text = re.sub(r"\b(cubes?|cards?|tokens?)\b", "things", emptied())
    told = {one.reason.split(":")[0] for one in proposed(f"{text.rstrip()}\n\n{words}\n") if one.field == "materials"}
    assert {"base-ten-set", "number-card"} <= told
    assert told.isdisjoint({"interlocking-cube", "cast-card"})
