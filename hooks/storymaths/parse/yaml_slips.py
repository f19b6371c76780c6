"""Why a text is not YAML, and what mends it, in words for somebody who knows no YAML.

The loader says where it could not go on, which is at the slip or on a later line. The commonest slips are looked for
there and above; where none is found, it is said only that the line does not fit.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple


class Slip(NamedTuple):
    """What is wrong on a line (counted from 1), and what mends it."""

    line: int
    reason: str
    fix: str


_VALUE = re.compile(r"^[ ]*(?:-[ ]+)*(?:[\w-]+:[ ]+)?(?=\S)")
_BEGINS = re.compile(r"^[ ]*(?:-[ ]+|-$|[\w-]+:(?:[ ]|$))")
_FIELD_WITHOUT_SPACE = re.compile(r"^[ ]*(?:-[ ]+)?([a-z_]+):([^\s:/].*)$")
_FIELD_WITHOUT_COLON = re.compile(r"^[ ]*([a-z_]+)[ ]+([^:]+)$")
_HYPHEN_WITHOUT_SPACE = re.compile(r"^[ ]*-[^\s-]")
_QUOTES = "put the whole sentence in double quotes."
_CLOSES = {"[": "]", "{": "}"}


def find_slip(text: str, line: int) -> Slip:
    """The slip that made reading stop on a line, counted from 1."""
    lines = text.split("\n")
    stopped = min(line, len(lines)) - 1
    near = [stopped, *(at for at in range(stopped - 1, -1, -1) if lines[at].strip())][:2]
    for at in near:
        for reason, fix in _on_line(lines[at], at == stopped):
            return Slip(at + 1, reason, fix)
    for at in range(stopped + 1):
        if _goes_on_unclosed(lines, at):
            return Slip(at + 1, "a quotation mark that opens on this line is not closed", 'put " at the end as well.')
    for at in near:
        if bracket := _open_bracket(lines[at]):
            end = _CLOSES[bracket]
            return Slip(at + 1, f"the {bracket} on this line is not closed", f"put {end} where the list ends.")
    return Slip(
        stopped + 1,
        "this line does not line up with those it belongs to",
        "begin it in the same column as they do, with spaces.",
    )


def _on_line(line: str, is_where_it_stopped: bool) -> Iterator[tuple[str, str]]:
    """What is wrong with a line for itself, the surest first."""
    if "\t" in line[: len(line) - len(line.lstrip())]:
        yield (
            "a tab stands at the beginning of this line",
            "put spaces in its place, as many as the lines beside it have.",
        )
    value = line[match.end() :] if (match := _VALUE.match(line)) else ""
    first = value[:1]
    if first in ('"', "'"):
        closed = re.match(r'"(?:[^"\\]|\\.)*"|' + r"'(?:[^']|'')*'", value)
        after = value[closed.end() :].strip() if closed else ""
        if after and not after.startswith("#") and not after.startswith(":"):
            yield "words stand after the closing quotation mark", _QUOTES.replace(".", ", and write “ ” within it.")
        return
    if first in _CLOSES:
        end = value.rfind(_CLOSES[first])
        after = value[end + 1 :].strip() if end > 0 else ""
        if value.count('"') % 2:
            yield "a quotation mark on this line has no second one", 'put " on both sides.'
        elif after and not after.startswith("#"):
            yield f"words stand after the {_CLOSES[first]}", _QUOTES
        return
    if first and first in "*&!%@`|>" and value.strip() not in (">", ">-", "|", "|-"):
        yield f"a sentence begins with {first}, which means something else here", _QUOTES
    elif re.search(r":(?:\s|$)", value) and _VALUE.match(line) and _is_sentence(line, value):
        yield "there is a colon within the sentence", _QUOTES
    elif _HYPHEN_WITHOUT_SPACE.match(line):
        yield "there is no space after the hyphen", "put one there."
    elif match := _FIELD_WITHOUT_SPACE.match(line):
        yield "there is no space after the colon", f'write "{match[1]}: {match[2]}".'
    elif not is_where_it_stopped and (match := _FIELD_WITHOUT_COLON.match(line)):
        yield "there is no colon after the name of the field", f'write "{match[1]}: {match[2]}".'


def _is_sentence(line: str, value: str) -> bool:
    """Whether a value stands after a field or a hyphen, and is not itself a field with its value."""
    return len(line) - len(value) > len(line) - len(line.lstrip()) and not re.match(r"[\w-]+:(?:\s|$)", value)


def _goes_on_unclosed(lines: Sequence[str], at: int) -> bool:
    """Whether a quotation opens on a line and a new field or entry begins on the next."""
    value = lines[at][match.end() :] if (match := _VALUE.match(lines[at])) else ""
    unclosed = value[:1] == '"' and not re.match(r'"(?:[^"\\]|\\.)*"', value)
    return unclosed and at + 1 < len(lines) and _BEGINS.match(lines[at + 1]) is not None


def _open_bracket(line: str) -> str:
    """The bracket that opens on a line more often than it closes; empty for none."""
    return next((one for one, end in _CLOSES.items() if line.count(one) > line.count(end)), "")
