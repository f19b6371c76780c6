"""How a word or number is written in YAML: in the style that stands there, and lines broken where they were."""

from __future__ import annotations

import datetime
import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

import yaml

from ..parse.yaml_text import BrokenYaml, load

USUAL_WIDTH = 120
"""How long a line of a folded text becomes where the file has none to go by."""
_ESCAPES = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t", "\r": "\\r", "\0": "\\0"}
_UNSEEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff]")
_NOTHING_YET = '""'
"""What stands where something was begun: no style that anybody chose."""
_PARTS = re.compile(r"(\s+)")


def is_text(value: Any) -> bool:
    """Whether a value is words."""
    return isinstance(value, str)


def bare(value: Any) -> str:
    """A number, a day, true, false or nothing as YAML has it."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    return value.isoformat() if isinstance(value, datetime.date) else str(value)


def quote(text: str) -> str:
    """Words in double quotes."""
    return f'"{_in_double(text)}"'


def _in_double(text: str) -> str:
    plain = "".join(_ESCAPES.get(letter, letter) for letter in text)
    return _UNSEEN.sub(lambda found: f"\\u{ord(found[0]):04x}", plain)


def _in_single(text: str) -> str:
    return text.replace("'", "''")


def stands_bare(text: str, in_brackets: bool) -> bool:
    """Whether words can be written without quotes and mean the same."""
    if "\n" in text or not any(letter.isalnum() or letter == "_" for letter in text):  # = or ≠ alone looks like a slip
        return False
    forms: Mapping[str, Any] = (
        {f"[{text}, 1]": [text, 1], f"{{k: {text}, l: 1}}": {"k": text, "l": 1}}
        if in_brackets
        else {f"k: {text}\n": {"k": text}, f"- {text}\n": [text]}
    )
    try:
        return all(load(form)[0] == value and type(load(form)[0]) is type(value) for form, value in forms.items())
    except BrokenYaml:
        return False


def fold(text: str, indent: str, width: int) -> str | None:
    """Words as a folded block, from its ``>`` on; None where folding would change them."""
    if not text.strip() or re.search(r"  |(?:^|\n)[ \t]|[ \t](?:\n|$)|\n\n", text) or _UNSEEN.search(text):
        return None
    head = ">" if text.endswith("\n") else ">-"
    paragraphs = ("\n".join(_lines(part.split(" "), indent, width)) for part in text.removesuffix("\n").split("\n"))
    return f"{head}\n" + "\n\n".join(paragraphs)


def _literal(text: str, indent: str) -> str | None:
    if not text.strip() or text[0] in " \n" or _UNSEEN.search(text) or text.endswith("\n\n"):
        return None
    lines = text.removesuffix("\n").split("\n")
    return ("|\n" if text.endswith("\n") else "|-\n") + "\n".join(f"{indent}{line}" if line else "" for line in lines)


def _lines(words: list[str], indent: str, width: int) -> Iterator[str]:
    line = indent + words[0]
    for word in words[1:]:
        if len(line) + 1 + len(word) > width:
            yield line
            line = indent + word
        else:
            line += f" {word}"
    yield line


def forms_in_place(source: str, old: yaml.ScalarNode, value: Any, indent: str, width: int, flow: bool) -> Iterator[str]:
    """Ways to write a value in place of a scalar, the one most like it first; ``source`` is how that one is written.

    Whoever asks takes the first that is read as meant.
    """
    if not is_text(value):
        yield bare(value)
        return
    style = "" if source == _NOTHING_YET else old.style or ""
    if style in ("|", ">"):
        yield from _blocks(source, str(old.value), value, indent, width)
    else:
        mark = style if style in ("'", '"') else ""
        write: Callable[[str], str] = {"'": _in_single, '"': _in_double}.get(mark, str)
        if "\n" in source:
            inner = source[len(mark) : len(source) - len(mark)]
            again = _refill(inner, str(old.value), value, write, indent, width)
            if again is not None:
                yield mark + again + mark
        if mark == "'" and ("\n" in value or _UNSEEN.search(value)):
            write = str  # quotes of the other sort hold it
        elif mark:
            yield mark + write(value) + mark
        elif stands_bare(value, flow):
            yield value
        elif not flow and len(value) > USUAL_WIDTH and (block := fold(value, indent, width)):
            yield block
    yield quote(value)


def _blocks(source: str, old: str, value: str, indent: str, width: int) -> Iterator[str]:
    head, _, rest = source.partition("\n")
    sign = head[0]
    note = head[len(head.split(" ")[0]) :]
    if sign == ">" and old.endswith("\n") == value.endswith("\n"):
        again = _refill(rest.removeprefix(indent), old.rstrip("\n"), value.rstrip("\n"), str, indent, width)
        if again is not None:
            yield f"{head}\n{indent}{again}"
    written = fold(value, indent, width) if sign == ">" else _literal(value, indent)
    if written is None and sign == ">":
        written = _literal(value, indent)
    if written is not None:
        first, _, lines = written.partition("\n")
        yield f"{first}{note}\n{lines}"


def _refill(source: str, old: str, new: str, write: Callable[[str], str], indent: str, width: int) -> str | None:
    """Words over several lines with some of them changed: what stands before and after keeps its lines."""
    parts = _PARTS.split(source)
    words, gaps = parts[::2], parts[1::2]
    wanted = [write(word) for word in new.split(" ")]
    if words != [write(word) for word in old.split(" ")] or "\n" in new or not all(wanted):
        return None
    most = min(len(words), len(wanted))
    first = next((n for n in range(most) if words[n] != wanted[n]), most)
    last = next((n for n in range(most - first) if words[-1 - n] != wanted[-1 - n]), most - first)
    made, column = "", len(indent)
    for n, word in enumerate(wanted):
        from_end = len(wanted) - n
        if n == 0:
            gap = ""
        elif n < first:
            gap = gaps[n - 1]
        elif from_end < last:
            gap = gaps[len(words) - from_end - 1]
        else:
            gap = " " if column + 1 + len(word) <= width else f"\n{indent}"
        made += gap + word
        column = len(made) - made.rfind("\n") - 1 if "\n" in made else len(indent) + len(made)
    return made


def first_form(value: Any, like: str | None, indent: str, width: int, flow: bool, column: int) -> str:
    """A value that is new, in the style of those beside it (``like``), where it can be; ``column`` is where it begins."""
    if not is_text(value):
        return bare(value)
    if like in ("'", '"'):
        return quote(value)
    is_bare = stands_bare(value, flow)
    if is_bare and (flow or (like == "" and len(value) < 2 * width) or column + len(value) <= width):
        return str(value)
    block = None if flow else fold(value, indent, width)
    if block is not None and (like == ">" or column + len(value) + 2 > width):
        return block
    return str(value) if is_bare else quote(value)
