"""Values no author means to write, and changes of plain data at any place in it."""

from __future__ import annotations

import copy
import random
from collections.abc import Iterator
from typing import Any

HUGE = (0, -1, -3, 1, 2, 10**3, 10**7, 10**7 + 1, 10**9, 10**18, 10**30, -(10**9), 0.5, -2.5, 1e300, 99999999)
WORDS = (
    "", " ", "  ", "-", "x", "=", "?", "0", "1", "two", "null", "yes", "a" * 300, "word " * 400, "a-b", "A", "-a", "Кот", "😀", "é",
    "ﬁ", "１２", "²", "½", "3/0", "0/0", "1e9", "1e400", "nan", "inf", "12:75", "24:00", "half past", "5 kg", "£5", "-£1", "5p", "50%",
    "1,000,000", "___", "? + ? = ?", "1 + 1 = 2", "((1))", "(" * 40 + "1" + ")" * 40, "9 - 4 - 4 - 4", "4 ÷ 0", "a = a", "<b>x</b>",
    "[x](y.md)", "![](n.svg)", "`", "```", "{wrong}", "{{ x }}", "{% x %}", "$title", "\\", "\"", "'", "#", "##", "|", "~", "&", "&amp;",
    "../x", "/etc", "con", "CON.md", "a/b", "2027-02-30", "2027-01-11", "1-0", "0-4", "7-3", "4-9999999", "all", "any", "Reception",
)  # fmt: skip
OTHERS: tuple[Any, ...] = (
    None,
    True,
    False,
    [],
    {},
    [[]],
    [{}],
    {"": ""},
    {"a": {"b": ["c"]}},
    [1, "a", None],
    [0],
    [1, 1],
    ["", ""],
)
Path = tuple[str | int, ...]


def odd_value(chance: random.Random) -> Any:
    """A value of any type."""
    return copy.deepcopy(chance.choice(chance.choice((HUGE, WORDS, WORDS, OTHERS))))


def near(value: Any, chance: random.Random) -> Any:
    """A value of the same type, not far off."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return chance.choice((value + 1, value - 1, value * 2, value * 10, -value, 0, value // 2, chance.choice(HUGE)))
    if isinstance(value, float):
        return chance.choice((value * 2, -value, 0.0, round(value)))
    if isinstance(value, str):
        return chance.choice(
            (value.upper(), value * 2, value[: len(value) // 2], f"{value} {value}", value[::-1], chance.choice(WORDS))
        )
    if isinstance(value, list) and value:
        return chance.choice((value[:1], value[::-1], value * 2, value + value[:1], value[1:], value * 20))
    return odd_value(chance)


def paths(value: Any, at: Path = ()) -> Iterator[Path]:
    """The way to every part of plain data but the whole."""
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, part in parts:
        yield (*at, key)
        yield from paths(part, (*at, key))


def holder(value: Any, path: Path) -> Any:
    """What holds the part at ``path``."""
    for step in path[:-1]:
        value = value[step]
    return value


def change(value: Any, chance: random.Random) -> str:
    """Changes plain data in one place, in place; says how."""
    every = list(paths(value))
    if not every:
        return "nothing"
    path = chance.choice(every)
    inside, key = holder(value, path), path[-1]
    how = chance.choice(("near", "near", "near", "odd", "odd", "delete", "double", "move", "nest", "key"))
    if how == "near":
        inside[key] = near(inside[key], chance)
    elif how == "odd":
        inside[key] = odd_value(chance)
    elif how == "delete":
        del inside[key]
    elif how == "double" and isinstance(inside, list):
        inside.insert(int(key), copy.deepcopy(inside[int(key)]))
    elif how == "move":
        other = chance.choice(every)
        inside[key] = copy.deepcopy(holder(value, other)[other[-1]])
    elif how == "nest":
        for _ in range(chance.choice((1, 2, 40))):
            inside[key] = chance.choice(([inside[key]], {"a": inside[key]}))
    elif isinstance(inside, dict):
        inside[chance.choice((str(key) + "s", "", " ", 7, None, str(key).upper()))] = inside.pop(key)
    return f"{how} {'.'.join(map(str, path))}"
