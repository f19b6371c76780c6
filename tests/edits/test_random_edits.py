"""Edits in any order on the frozen pages: the data is as it was but for what was edited, and so is what stands around it.

What the data must be is worked out here a second way, and the text is read by PyYAML as it comes.
"""

from __future__ import annotations

import copy
from collections import Counter
from collections.abc import Iterator
from typing import Any

import yaml
from hypothesis import event, given, settings
from hypothesis import strategies as st
from project import FROZEN
from storymaths.edits.apply import apply
from storymaths.edits.edit import AddItem, EditRefused, MoveItem, RemoveItem, SetValue, ValueEdit
from storymaths.parse.document import FENCE
from storymaths.parse.yaml_text import load

PAGES = tuple(sorted((FROZEN / "content" / "books").rglob("*.md")))
WORDS = st.one_of(
    st.sampled_from(
        [
            "Plain words",
            "Two: with a colon",
            "Is it #2, or # 3?",
            "yes",
            "2026-11-27",
            "12:30",
            "=",
            "- a dash",
            '"Quoted" words',
            "It's so, [really]",
            "first\nsecond",
            "  far in  ",
            "___ and ___ make ten.",
            "Words that go on until they are longer than a line of a page is, " * 3 + "and then end",
        ]
    ),
    st.text(st.characters(codec="utf-8"), max_size=12),
)
VALUES = st.one_of(
    WORDS,
    st.integers(-5, 5000),
    st.booleans(),
    st.lists(WORDS, max_size=3),
    st.dictionaries(st.sampled_from(["item", "count", "note", "per"]), WORDS, max_size=3),
)


def front_and_body(text: str) -> tuple[str, str]:
    found = FENCE.match(text)
    assert found
    return found[1], text[found.end() :]


def paths(raw: Any, above: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Every path in data."""
    yield above
    steps = raw.items() if isinstance(raw, dict) else enumerate(raw) if isinstance(raw, list) else ()
    for step, inner in steps:
        yield from paths(inner, (*above, step))


def at(raw: Any, path: tuple[str | int, ...]) -> Any:
    for step in path:
        raw = raw[step]
    return raw


def edit_of(draw: st.DrawFn, raw: Any) -> tuple[ValueEdit, tuple[str | int, ...]]:
    """An edit, and the path of what it touches."""
    path = draw(st.sampled_from([path for path in paths(raw) if path and path != ("kind",)]))
    holder, value = at(raw, path[:-1]), at(raw, path)
    ways = ["set", "remove"] + ["move"] * isinstance(holder, list) + ["add"] * isinstance(value, list)
    match draw(st.sampled_from(ways)):
        case "set":
            return SetValue(path, draw(VALUES)), path
        case "add":
            return AddItem(path, draw(VALUES), draw(st.integers(0, len(value)))), (*path, "new")
        case "move":
            return MoveItem(path, draw(st.integers(0, len(holder) - 1))), (*path, "moved")
    return RemoveItem(path), path


def changed(raw: Any, edit: ValueEdit) -> Any:
    """The data after an edit, by the plainest means."""
    made = copy.deepcopy(raw)
    holder, last = at(made, edit.path[:-1]), edit.path[-1]
    if isinstance(edit, SetValue):
        holder[last] = edit.value
    elif isinstance(edit, AddItem):
        holder[last].insert(len(holder[last]) if edit.at is None else edit.at, edit.value)
    elif isinstance(edit, MoveItem):
        holder.insert(edit.to, holder.pop(last))
    else:
        del holder[last]
    return made


def sources(text: str) -> Iterator[tuple[tuple[str, ...], str]]:
    """Each word and number as it is typed, with the keys above it."""

    def walk(node: yaml.Node, above: tuple[str, ...]) -> Iterator[tuple[tuple[str, ...], str]]:
        if isinstance(node, yaml.ScalarNode):
            yield above, text[node.start_mark.index : node.end_mark.index].rstrip()
        elif isinstance(node, yaml.SequenceNode):
            for number, item in enumerate(node.value):
                yield from walk(item, (*above, str(number)))
        elif isinstance(node, yaml.MappingNode):
            for key, value in node.value:
                yield from walk(value, (*above, str(key.value)))

    return walk(yaml.compose(text, Loader=yaml.CSafeLoader), ())


def notes(text: str) -> Counter[str]:
    """Lines that are nothing but a note of the author's."""
    return Counter(line for line in text.split("\n") if line.lstrip().startswith("# "))


@settings(max_examples=15, deadline=None)
@given(st.data(), st.sampled_from(PAGES))
def test_an_edit_changes_what_it_says_and_nothing_else(data: st.DataObject, page: Any) -> None:
    text = page.read_text(encoding="utf-8")
    for _ in range(3):
        front, body = front_and_body(text)
        raw = load(front)[0]
        edit, touched = edit_of(data.draw, raw)
        try:
            made = apply(text, edit)
        except EditRefused:
            event("refused")
            continue
        now, same_body = front_and_body(made)
        assert load(now)[0] == changed(raw, edit)
        assert same_body == body
        kept = Counter(source for path, source in sources(front) if path[: len(touched)] != tuple(map(str, touched)))
        assert kept <= Counter(source for _, source in sources(now))
        assert isinstance(edit, RemoveItem) or notes(front) <= notes(now)
        text = made
