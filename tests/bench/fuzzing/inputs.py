"""Pages, activities and files of site data, changed at random: what is put into the program to see whether it breaks."""

from __future__ import annotations

import copy
import random
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from string import Template
from typing import Any

import yaml
from project import PROJECT, text_of
from storymaths.activities.table import KINDS
from storymaths.publish.starters import starters

from .values import WORDS, change, odd_value

_FRONT = re.compile(r"\A---\n(.*?)^---\n", re.DOTALL | re.MULTILINE)
_FENCE = re.compile(r"^```maths\n(.*?)^```$", re.DOTALL | re.MULTILINE)
_TAGS = (
    "timestamp x",
    'int ""',
    "bool x",
    'float ""',
    "null x",
    "binary x",
    "set {a}",
    "str 5",
    "omap [a]",
    "python/none x",
)
_LINES = (
    "```maths", "```", "~~~", "```math", "```Maths", "<!--", "-->", "## ", "## A heading", "---", "***", "> > > x", "- " * 30 + "x",
    "[x][y]", "[y]: nowhere.md 'a'", "[x](<nowhere.md>)", "[x](nowhere.md 'a')", "<a href=nowhere.md>x</a>", "<b>", "</b>", "![](x.svg)",
    "| a | b |\n|-|-|\n| 1 |", "5 + 5 = 11", "(" * 330 + "1" + ")" * 330 + " = 1", "&#xE000;1&#xE001;", "\\", "    code", "1. x\n1. y",
    "{wrong}", "[4 + 5 = 8]{wrong}", "Page 999 of the book", "half past 25", "١ + ١", "a" * 7000, "kind: bonds", "term\n: meaning",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Input:
    """One thing to put in."""

    of: str
    """``page``, ``activity``, ``site data``, ``drawing`` or ``tree``."""
    path: str
    """The file it stands in, from ``content/`` or ``site_data/``; of a tree, empty."""
    text: str
    """What is in the file; of a tree, what is done, a line each."""


@lru_cache(maxsize=1)
def page_texts() -> Mapping[str, str]:
    """The frozen collection's pages, and what a new page of each kind starts with."""
    content = PROJECT / "content"
    texts = {(name := path.relative_to(content).as_posix()): text_of(name) for path in sorted(content.rglob("*.md"))}
    for name, (_, starter) in starters().items():
        told = {
            "title": "A title",
            "slug": "a-title",
            "date": "2027-01-11",
            "book": "ferry-fare",
            "number": 9,
            "year": 2,
            "needs": "[]",
        }
        path = Template(starter.path).substitute(told)
        texts[path if path.startswith("books/ferry-fare") else f"started-{name}.md"] = Template(
            starter.text.read_text()
        ).substitute(told)
    return texts


@lru_cache(maxsize=1)
def _examples() -> Mapping[str, Sequence[Mapping[str, Any]]]:
    return {name: [_loaded(text) for text in (kind.example, *kind.more_examples)] for name, kind in KINDS.items()}


@lru_cache(maxsize=1)
def _values_seen() -> Mapping[str, Sequence[Any]]:
    """What stands in each field of every example."""
    seen: dict[str, list[Any]] = {}
    for examples in _examples().values():
        for example in examples:
            for field, value in example.items():
                seen.setdefault(field, []).append(value)
    return seen


def make_page(chance: random.Random) -> Input:
    path = chance.choice(sorted(page_texts()))
    text = page_texts()[path]
    for _ in range(chance.choice((1, 1, 1, 2, 3))):
        text = chance.choice(
            (_front_changed, _front_changed, _line_changed, _line_changed, _tagged, _activity_changed, _section_dropped)
        )(text, chance)
    return Input("page", path, text)


def _front_changed(text: str, chance: random.Random) -> str:
    front = _FRONT.match(text)
    data = _loaded(front[1]) if front else None
    if front is None or not isinstance(data, dict):
        return text
    change(data, chance)
    return f"---\n{_as_yaml(data)}---\n{text[front.end() :]}"


def _loaded(text: str) -> Any:
    try:
        return yaml.load(text, Loader=yaml.CSafeLoader)
    except Exception:  # a change before this one broke it, in one of the many ways that PyYAML has
        return None


def _as_yaml(data: Any) -> str:
    return str(yaml.dump(data, Dumper=yaml.CSafeDumper, sort_keys=False, allow_unicode=True, width=1000))


def _line_changed(text: str, chance: random.Random) -> str:
    lines = text.split("\n")
    at, other = chance.randrange(len(lines)), chance.randrange(len(lines))
    how = chance.choice(("out", "twice", "swap", "put", "put", "join", "word"))
    if how == "out":
        del lines[at]
    elif how == "twice":
        lines.insert(at, lines[at])
    elif how == "swap":
        lines[at], lines[other] = lines[other], lines[at]
    elif how == "put":
        lines.insert(at, chance.choice(_LINES))
    elif how == "join":
        lines[at : at + 2] = ["".join(lines[at : at + 2])]
    else:
        words = lines[at].split(" ")
        words[chance.randrange(len(words))] = chance.choice(WORDS)
        lines[at] = " ".join(words)
    return "\n".join(lines)


def _tagged(text: str, chance: random.Random) -> str:
    values = list(re.finditer(r"(?<=: )[^\n\[{|>-][^\n]*$", text, re.MULTILINE))
    if not values:
        return text
    match = chance.choice(values)
    return f"{text[: match.start()]}!!{chance.choice(_TAGS)}{text[match.end() :]}"


def _section_dropped(text: str, chance: random.Random) -> str:
    parts = re.split(r"(?m)^(?=## )", text)
    if len(parts) > 1:
        at = chance.randrange(1, len(parts))
        if chance.random() < 0.5:
            del parts[at]
        else:
            parts[at] = parts[at].split("\n")[0] + chance.choice(("\n", "\n\n<!-- nothing -->\n\n"))
    return "".join(parts)


def _activity_changed(text: str, chance: random.Random) -> str:
    fences = list(_FENCE.finditer(text))
    if not fences:
        return text
    fence = chance.choice(fences)
    data = _loaded(fence[1])
    if not isinstance(data, dict):
        return text
    _vary(data, chance)
    return f"{text[: fence.start(1)]}{_as_yaml(data)}{text[fence.end(1) :]}"


def _vary(data: dict[str, Any], chance: random.Random) -> None:
    """Changes an activity: a field of its kind's schemas put in, taken from another example, or changed."""
    kind = KINDS.get(str(data.get("kind")))
    how = chance.choice(("change", "change", "change", "put", "another"))
    if kind is None or how == "change":
        change(data, chance)
        return
    fields = sorted({field.alias or name for task in kind.tasks for name, field in task.model_fields.items()})
    name = chance.choice(fields)
    seen = _values_seen().get(name, ())
    if how == "another" and seen:
        data[name] = copy.deepcopy(chance.choice(seen))
    else:
        data[name] = odd_value(chance)


PLAIN, SESSION = "about-the-quay.md", "books/cliff-house-lift/session-1.md"
"""Where a made-up activity stands."""
_PROMISES = ("up_to", "signs", "cast", "units", "clock", "written")


@lru_cache(maxsize=1)
def hosts() -> Mapping[str, str]:
    """Short pages for an activity to stand on: a plain one, and a session that bends and promises nothing."""
    front = _FRONT.match(page_texts()[SESSION])
    assert front
    session = _loaded(front[1])
    session["bends"] = {
        year: {name: value for name, value in bend.items() if name not in _PROMISES} | {"activities": {"tried": "same"}}
        for year, bend in session["bends"].items()
    }
    body = "".join(f"\n## {step['name']}\n\nSay what you see.\n" for step in session["steps"])
    plain = "---\nkind: page\ntitle: About the quay\nsummary: What is on the quay.\n---\n\nThe quay is long.\n"
    return {PLAIN: plain, SESSION: f"---\n{_as_yaml(session)}---\n{body}"}


def make_activity(chance: random.Random) -> Input:
    """An example of a kind, varied, for its own year or with versions for others; on a plain page or in a session that bends."""
    data = copy.deepcopy(dict(chance.choice(_examples()[chance.choice(sorted(KINDS))])))
    data.pop("years", None)
    for _ in range(chance.choice((0, 1, 1, 1, 2, 3))):
        _vary(data, chance)
    if chance.random() < 0.5:
        years = chance.sample(["Reception", 1, 2, 3, 4, 5, 6], chance.choice((0, 1, 2, 4, 6)))
        pins = {year: _pins(data, chance) for year in years}
        return Input("activity", PLAIN, hosts()[PLAIN] + _fenced(data | ({"years": pins} if pins else {})))
    data["id"] = "tried"
    versions = {year: chance.choice(("same", "find", "left out", _pins(data, chance))) for year in (1, 3)}
    text = hosts()[SESSION]
    for version in versions.values():
        shown = version if isinstance(version, str) else _as_yaml(version).replace("\n", "\n        ").rstrip()
        text = text.replace(
            "tried: same",
            f"tried: {shown}" if isinstance(version, str) or not version else f"tried:\n        {shown}",
            1,
        )
    return Input("activity", SESSION, text + _fenced(data))


def _fenced(data: Mapping[str, Any]) -> str:
    return f"\n```maths\n{_as_yaml(data)}```\n"


def _pins(data: Mapping[str, Any], chance: random.Random) -> dict[str, Any]:
    """What an author might pin for another year."""
    names = [name for name in data if name not in ("kind", "id", "years", "year")]
    pins = {
        name: copy.deepcopy(data[name]) for name in chance.sample(names, min(len(names), chance.choice((0, 1, 1, 2))))
    }
    if pins:
        change(pins, chance)
    if chance.random() < 0.2:
        pins["largest"] = chance.choice((1, 5, 10, 20, 100, 10**6, 0, -1, "x"))
    return pins


def make_site_data(chance: random.Random) -> Input:
    folder = PROJECT / "site_data"
    path = chance.choice(sorted(folder.rglob("*.yaml")))
    data = _loaded(path.read_text(encoding="utf-8"))
    for _ in range(chance.choice((1, 1, 2))):
        change(data, chance)
    return Input("site data", path.relative_to(folder).as_posix(), _as_yaml(data))
