"""The ways to make one change in a YAML text, the one a careful person would choose first; each gives the whole text."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

import yaml

from ..model.prose import Loc
from .edit import EditRefused
from .scalars import USUAL_WIDTH, forms_in_place
from .tree import Entry, content_end, entries, is_flow, line_end, line_start, node_at, past_colon
from .writing import STEP, after_dash, after_key, fits, in_brackets


def set_value(text: str, path: Loc, value: Any) -> Iterator[str]:
    """A value in place of what stands at a path."""
    node, above = node_at(text, path)
    if not above:
        raise EditRefused("The whole front matter cannot be set at once.")
    holder, number = above[-1]
    entry = entries(text, holder)[number]
    start, end = node.start_mark.index, content_end(text, node)
    in_flow = is_flow(holder)
    simple = not isinstance(value, dict | list)
    if isinstance(node, yaml.ScalarNode) and simple and start < end:
        source = text[start:end]
        indent = _indent_inside(source) or " " * (_column(text, entry) + STEP)
        for form in forms_in_place(source, node, value, indent, _width(text), in_flow):
            yield text[:start] + form + text[end:]
    if in_flow or (is_flow(node) and fits(value, start - line_start(text, start), _room(text))):
        yield text[:start] + (" " if start == end else "") + in_brackets(value) + text[end:]
    if not in_flow:
        yield _write_anew(text, entry, end, value)


def _write_anew(text: str, entry: Entry, end: int, value: Any) -> str:
    """What follows a key or a dash, written new; the note beside it stays there."""
    after = past_colon(text, entry.key) if entry.key else entry.start + 1
    end = max(end, after)
    head_end = line_end(text, after) - 1
    if end <= head_end:
        note, end = text[end:head_end].strip(), head_end
    else:
        note = text[after:head_end].strip()
        note = note if note.startswith("#") else ""
    write = after_key if entry.key else after_dash
    first, broken, lines = write(value, _column(text, entry), _room(text)).partition("\n")
    return text[:after] + first + (f" {note}" if note else "") + broken + lines + text[end:]


def add_key(text: str, path: Loc, value: Any, at: int) -> Iterator[str]:
    """A key that was not there, as the ``at``-th of its mapping."""
    node, _above = node_at(text, path[:-1])
    there, key = entries(text, node), path[-1]
    if not there:
        yield from set_value(text, path[:-1], {key: value})
    elif is_flow(node):
        yield _within_brackets(text, there, in_brackets({key: value}), at)
    else:
        column = _column(text, there[0])
        yield _on_lines(text, there, f"{in_brackets(key)}:{after_key(value, column, _room(text))}", at)


def add_item(text: str, path: Loc, value: Any, at: int | None) -> Iterator[str]:
    """An item more in a list."""
    node, _ = node_at(text, path)
    there = entries(text, node)
    at = len(there) if at is None else at
    if not there:
        yield from set_value(text, path, [value])
    elif is_flow(node):
        yield _within_brackets(text, there, in_brackets(value, inside_list=True), at)
    else:
        beside = there[min(max(at - 1, 0), len(there) - 1)].node
        like = (beside.style or "") if isinstance(beside, yaml.ScalarNode) else None
        braces = is_flow(beside) if isinstance(beside, yaml.MappingNode) else None
        item = after_dash(value, _column(text, there[0]), _room(text), like, braces)
        yield _on_lines(text, there, f"-{item}", at)


def _within_brackets(text: str, there: Sequence[Entry], piece: str, at: int) -> str:
    if piece.startswith("{") and there[0].key is not None:
        piece = piece[1:-1]
    between = text[there[-2].end : there[-1].start] if len(there) > 1 else ", "
    between = between if between.strip() == "," else ", "
    if at < len(there):
        return text[: there[at].start] + piece + between + text[there[at].start :]
    return text[: there[-1].end] + between + piece + text[there[-1].end :]


def _on_lines(text: str, there: Sequence[Entry], lines: str, at: int) -> str:
    indent = " " * _column(text, there[0])
    if at == 0:
        start = there[0].start
        return f"{text[:start]}{lines}\n{indent}{text[start:]}"
    after = line_end(text, there[at - 1].end)
    broken = "" if text[:after].endswith("\n") else "\n"
    return f"{text[:after]}{broken}{indent}{lines}\n{text[after:]}"


def remove(text: str, path: Loc) -> Iterator[str]:
    """An item or a key less."""
    _, above = node_at(text, path)
    if not above:
        raise EditRefused("The whole front matter cannot be taken out.")
    holder, number = above[-1]
    there = entries(text, holder)
    entry = there[number]
    if len(there) == 1:
        yield from set_value(text, path[:-1], {} if entry.key else [])
    elif is_flow(holder) and number == len(there) - 1:
        yield text[: there[number - 1].end] + text[entry.end :]
    elif is_flow(holder) or not _on_own_line(text, entry):
        yield text[: entry.start] + text[there[number + 1].start :]
    else:
        yield text[: line_start(text, entry.start)] + text[line_end(text, entry.end) :]


def move_item(text: str, path: Loc, to: int) -> Iterator[str]:
    """An item in another place of its list; what is between the items stays where it is, but a note above goes along."""
    _, above = node_at(text, path)
    holder, number = above[-1]
    there = entries(text, holder)
    if is_flow(holder):
        spans = [(entry.start, entry.end) for entry in there]
    elif all(_on_own_line(text, entry) for entry in there):
        spans = [(_with_notes(text, entry), line_end(text, entry.end)) for entry in there]
    else:
        raise EditRefused("This list begins on the line of another: move its items in the file.")
    pieces = [text[start:end] for start, end in spans]
    pieces.insert(to, pieces.pop(number))
    made, at = "", 0
    for (start, end), piece in zip(spans, pieces, strict=True):
        made += text[at:start] + piece
        at = end
    yield made + text[at:]


def _with_notes(text: str, entry: Entry) -> int:
    """Where an item begins with the lines of notes that stand right above it."""
    start = line_start(text, entry.start)
    while start:
        above = line_start(text, start - 1)
        line = text[above:start]
        if not line.lstrip().startswith("#") or len(line) - len(line.lstrip()) != _column(text, entry):
            break
        start = above
    return start


def _on_own_line(text: str, entry: Entry) -> bool:
    return not text[line_start(text, entry.start) : entry.start].strip()


def _column(text: str, entry: Entry) -> int:
    return entry.start - line_start(text, entry.start)


def _indent_inside(source: str) -> str:
    """How far in the second and later lines of a value stand."""
    lines = [line for line in source.split("\n")[1:] if line.strip()]
    return lines[0][: len(lines[0]) - len(lines[0].lstrip(" "))] if lines else ""


def _width(text: str) -> int:
    """How long lines are where a text is broken into lines; the usual length where none is."""
    node, _ = node_at(text, ())
    found = [len(line) for source in _broken_texts(text, node) for line in source.split("\n")[1:]]
    return max(found, default=USUAL_WIDTH)


def _room(text: str) -> int:
    """How long a line may be before it is broken."""
    return max(_width(text), USUAL_WIDTH)


def _broken_texts(text: str, node: yaml.Node) -> Iterator[str]:
    if isinstance(node, yaml.ScalarNode):
        if node.style != "|" and node.end_mark.line > node.start_mark.line:
            yield text[node.start_mark.index : content_end(text, node)]
    else:
        for entry in entries(text, node):
            yield from _broken_texts(text, entry.node)
