"""What an activity is in other years, moved from its own ``years:`` to the bends of its page."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import NamedTuple

import yaml

from ..edits.tree import content_end, line_end
from .spans import Edit, Yaml, child, front_matter_in, line_break_of, yaml_in

_ACTIVITY = re.compile(r"^```maths[ \t]*\r?\n(.*?)^```", re.DOTALL | re.MULTILINE)


class _Version(NamedTuple):
    """An activity in one year, in the words of its author."""

    name: str
    notes: list[str]
    """Lines that begin with #, and stand above it."""
    words: str
    column: int
    """Where its words stood in their line; 0 where they are a line's own."""


class ByHand(Exception):
    """What is to be moved cannot be; the message says why."""


def to_bends(text: str) -> list[Edit]:
    """The edits of a page. Raises ``ByHand`` where its author has to do it."""
    front = front_matter_in(text)
    if front is None:
        return []
    edits, by_year = list[Edit](), dict[str, list[_Version]]()
    for match in _ACTIVITY.finditer(text):
        block = yaml_in(text, match.start(1), match.end(1))
        years = child(block.root, "years") if block else None
        if block is None or years is None or not isinstance(years[1], yaml.MappingNode):
            continue
        if block.root.flow_style:
            raise ByHand("an activity in braces has years: of its own; write them under activities in the bends")
        name = _name(block)
        for year, version in _versions(block.words, years[0].end_mark.index + 1, years[1], name):
            by_year.setdefault(year, []).append(version)
        start = block.words.rfind("\n", 0, years[0].start_mark.index) + 1
        edits.append(Edit(block.at + start, block.at + line_end(block.words, content_end(block.words, years[1])), ""))
    home = (kind := child(front.root, "kind")) is not None and kind[1].value == "home"
    return [*edits, *_into_bends(front, by_year, home, line_break_of(text))]


def _name(block: Yaml) -> str:
    named = child(block.root, "id")
    if named:
        return str(named[1].value)
    titled = child(block.root, "title")
    if not titled:
        raise ByHand("an activity with years: has neither an id nor a title; give it an id first")
    return json.dumps(titled[1].value, ensure_ascii=False)


def _versions(words: str, before: int, years: yaml.MappingNode, name: str) -> Iterator[tuple[str, _Version]]:
    """Each year's version, with the notes that stand above it, after the spot ``before``."""
    for year, value in years.value:
        end = content_end(words, value)
        above = [] if years.flow_style else words[before : year.start_mark.index].splitlines()
        notes = [line.strip() for line in above if line.strip().startswith("#")]
        end = end if years.flow_style else line_end(words, end)
        before = end
        start = value.start_mark
        if isinstance(value, yaml.MappingNode) and value.value:
            column = 0 if value.flow_style else start.column
            yield year.value, _Version(name, notes, words[start.index : end].rstrip(), column)
        else:  # nothing was pinned: the program found its numbers
            yield year.value, _Version(name, notes, "find", 0)


def _into_bends(front: Yaml, by_year: dict[str, list[_Version]], home: bool, nl: str) -> Iterator[Edit]:
    bends = child(front.root, "bends")
    new = list[str]()
    for year, versions in sorted(by_year.items()):
        bend = child(bends[1], year) if bends else None
        if bend is None:
            if not home or bends is not None:
                raise ByHand(f"an activity has a version for year {year}, and the page has no bend to it; write one")
            new += [f"  {year}:", "    activities:", *_lines(versions, 6)]
            continue
        there = bend[1]
        if not isinstance(there, yaml.MappingNode) or there.flow_style or child(there, "activities"):
            raise ByHand(f"write what the activities are in year {year} under activities in the bend to it")
        column = there.value[-1][0].start_mark.column
        lines = [f"{' ' * column}activities:", *_lines(versions, column + 2)]
        at = front.at + line_end(front.words, content_end(front.words, bend[1]))
        yield Edit(at, at, "".join(line + nl for line in lines))
    if new:
        at = front.at + len(front.words)
        yield Edit(at, at, "".join(line + nl for line in ("bends:", *new)))


def _lines(versions: list[_Version], column: int) -> Iterator[str]:
    """The entries of a bend's activities, as lines that begin at a column."""
    for version in versions:
        yield from (" " * column + note for note in version.notes)
        first, *rest = version.words.splitlines()
        if not version.column:
            yield f"{' ' * column}{version.name}: {first}"
            yield from (" " * (column + 2) + line.strip() for line in rest)
            continue
        yield f"{' ' * column}{version.name}:"
        yield " " * (column + 2) + first
        yield from (" " * (column + 2) + line[version.column :] if line.strip() else "" for line in rest)
