"""What the checks say of prose that nobody wrote for them: sentences, lines of teaching prose, and dangers.

The texts were invented for this project by somebody who had not seen the reader: a second mind, and no published source.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import TypedDict

import pytest
from project import problems_with, text_of
from yaml_files import read_yaml

HERE = Path(__file__).parent
SETS = ("as_written", "as_written_again")
READ = {name: read_yaml(HERE / f"prose_{name}.yaml") for name in SETS}
DANGERS = {name: read_yaml(HERE / f"dangers_{name}.yaml") for name in SETS}
LINES = {name: (HERE / f"prose_{name}.txt").read_text(encoding="utf-8").splitlines() for name in SETS}
EACH_SET = pytest.mark.parametrize("name", SETS)
PAGE = "---\nkind: page\ntitle: As written\nsummary: Words to be read.\n---\n\n"
UNTRUE = {"number-sentence-untrue", "claim-untrue"}
CALLED_FOR = {"caution-missing", "small-parts-unnoted", "allergen-unnoted", "phrase-forbidden"}


class Sentence(TypedDict, total=False):
    text: str
    unread: bool


def told_untrue(texts: Sequence[str]) -> dict[int, list[str]]:
    """What is told of each text, by its place in the list; all stand in one page, a paragraph each."""
    body, at = PAGE, dict[int, int]()
    for place, text in enumerate(texts):
        line = body.count("\n") + 1
        at |= {line + further: place for further in range(text.count("\n") + 1)}
        body += f"{text}\n\n"
    told = defaultdict(list)
    for problem in problems_with({"as-written.md": body}):
        if problem.rule in UNTRUE and problem.place.path.endswith("as-written.md"):
            told[at[problem.place.line]].append(problem.message)
    return told


@cache
def told_of_false(name: str) -> dict[int, list[str]]:
    return told_untrue([each["text"] for each in READ[name]["untrue"]])


@EACH_SET
def test_nothing_true_is_refused(name: str) -> None:
    holds = READ[name]["holds"]
    told = told_untrue([each["text"] for each in holds])
    assert {holds[at]["text"]: words for at, words in told.items()} == {}


@EACH_SET
def test_what_is_false_is_found_but_for_what_is_marked_unread(name: str) -> None:
    told = told_of_false(name)
    rows: list[Sentence] = READ[name]["untrue"]
    assert [row["text"] for at, row in enumerate(rows) if at not in told and not row.get("unread")] == []
    assert [row["text"] for at, row in enumerate(rows) if at in told and row.get("unread")] == []


@EACH_SET
def test_one_mistake_is_told_once(name: str) -> None:
    rows = READ[name]["untrue"]
    assert {rows[at]["text"]: words for at, words in told_of_false(name).items() if len(words) > 1} == {}


@EACH_SET
def test_ordinary_teaching_prose_is_left_alone(name: str) -> None:
    assert {LINES[name][at]: words for at, words in told_untrue(LINES[name]).items()} == {}


@EACH_SET
def test_dangers_call_for_their_note_and_what_is_only_spoken_of_does_not(name: str) -> None:
    front, body = text_of("books/ferry-fare/session-1.md").split("\n---\n", 1)
    for key in ("cautions", "materials"):
        front = re.sub(rf"(?m)^{key}:.*\n(?:[ -].*\n)*", "", f"{front}\n").rstrip("\n")
    heading = body.index("\n## ")
    end = body.index("\n", heading + 1)
    before = f"{front}\nmaterials: []\ncautions: []\n---\n{body[:end]}\n\n"
    pages = {
        f"books/ferry-fare/session-{100 + at}.md": f"{before}{each['text']}\n{body[end:]}"
        for at, each in enumerate(DANGERS[name])
    }
    called = {
        problem.place.path.removeprefix("content/") for problem in problems_with(pages) if problem.rule in CALLED_FOR
    }
    missed = [
        each["text"]
        for path, each in zip(pages, DANGERS[name], strict=True)
        if (path in called) == (each["danger"] == "none")
    ]
    assert missed == []
