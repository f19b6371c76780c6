"""From real things to symbols: what a session's own words say children handle, draw with and write.

Every author must say what the main task is with objects, with pictures and with symbols. What can be counted is told
here: the things of the session's list that the task names, the signs it writes, and the kinds of activity on its page.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from ..model.body import Fence
from ..model.material import Material
from ..model.reference import Reference
from ..parse.yaml_text import BrokenYaml, load
from .taught import SessionPage

_SIGN = re.compile(r"[+−=<>×÷≠]")
_WORD = re.compile(r"[a-z]+")

Written = Literal["signs", "numbers", "words"]


@dataclass(frozen=True, slots=True)
class Stages:
    """What one session offers at each stage."""

    page: SessionPage
    things: tuple[Material, ...]
    """Things of its list that the task with objects names."""
    signs: tuple[str, ...]
    """Signs the task with symbols writes, and those the session names as new or used again."""
    written: Written
    """Whether children write signs, or numbers without signs, or words alone."""
    kinds: tuple[str, ...]
    """Kinds of activity on its page, in order, each once."""


@dataclass(frozen=True, slots=True)
class Balance:
    """The stages of many sessions counted up."""

    sessions: int
    with_things: int
    written: Counter[Written]
    signs: Counter[str]
    """In how many sessions each sign is written."""
    kinds: Counter[str]
    """On how many pages each kind of activity stands."""


def stages_of(page: SessionPage, reference: Reference) -> Stages:
    """The stages of one session."""
    task, symbols = page.fields.task, page.fields.symbols
    signs = tuple(dict.fromkeys((*_SIGN.findall(task.symbols), *symbols.new, *symbols.again)))
    numbered = any(letter.isdecimal() for letter in task.symbols)
    return Stages(
        page=page,
        things=_named(task.objects, page, reference),
        signs=signs,
        written="signs" if signs else "numbers" if numbered else "words",
        kinds=tuple(dict.fromkeys(filter(None, map(_kind_of, page.content.activities)))),
    )


def _kind_of(fence: Fence) -> str | None:
    try:
        data, _ = load(fence.text)
    except BrokenYaml:
        return None
    kind = data.get("kind") if isinstance(data, dict) else None
    return kind if isinstance(kind, str) else None


def balance_of(stages: Iterable[Stages]) -> Balance:
    """Many sessions' stages counted up."""
    found = list(stages)
    return Balance(
        sessions=len(found),
        with_things=sum(bool(one.things) for one in found),
        written=Counter(one.written for one in found),
        signs=Counter(sign for one in found for sign in one.signs),
        kinds=Counter(kind for one in found for kind in one.kinds),
    )


def _named(text: str, page: SessionPage, reference: Reference) -> tuple[Material, ...]:
    """The things of a session's list that a text names, by their whole name or by what they go by for short."""
    needed = dict.fromkeys(thing.item for thing in page.fields.materials)
    known = [reference.materials[item] for item in needed if item in reference.materials]
    names = sorted(
        ((name.lower(), thing.id) for thing in known for name in _names(thing)), key=lambda pair: -len(pair[0])
    )
    lowered, named = text.lower(), set[str]()
    for name, thing in names:
        if name in lowered:
            named.add(thing)
            lowered = lowered.replace(name, " ")  # a balance mat is no balance
    words = frozenset(_WORD.findall(lowered))
    return tuple(thing for thing in known if thing.id in named or _short_names(thing) & words)


def _names(material: Material) -> tuple[str, ...]:
    return material.name, material.plural, *material.also


def _short_names(material: Material) -> frozenset[str]:
    """``cubes`` for interlocking cubes; of apparatus the first word too, as ``clock`` for the clock face."""
    names = [words for name in _names(material) if (words := _WORD.findall(name.lower()))]
    short = {words[-1] for words in names}
    if material.apparatus and names:
        short.add(names[0][0])
    return frozenset(short)
