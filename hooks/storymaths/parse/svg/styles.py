"""Style in a drawing, of an attribute or of a ``<style>``: the properties that the list lets through."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field

import tinycss2
from tinycss2 import ast

from ...model.drawing_list import DrawingList
from .part import ELSEWHERE, Part, Reference
from .values import DEEP, Values, is_deep

Note = Callable[[str], None]
"""Takes down what is wrong with a style."""
_BETWEEN = frozenset(">+~,.*:")
_LAST = re.compile(
    r"(?:^|[\s>+~])(?P<name>\*|[A-Za-z][\w-]*|)(?P<names>(?:[.#][A-Za-z_-][\w-]*)*)(?::[a-z-]+)*$", re.ASCII
)


@dataclass(slots=True)
class Declarations:
    """The properties of a rule or an attribute as they are written again, and what they refer to."""

    text: str = ""
    sets: set[str] = field(default_factory=set)
    refers: list[Reference] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Chosen:
    """The last step of a selector: what an element must be, at the least, to be chosen by it."""

    name: str = ""
    ids: frozenset[str] = frozenset()
    classes: frozenset[str] = frozenset()

    @property
    def key(self) -> str:
        """One of what it must be: ``.class``, ``#id`` or a name; empty where it may be any."""
        if self.classes:
            return f".{min(self.classes)}"
        return f"#{min(self.ids)}" if self.ids else self.name

    def chooses(self, part: Part) -> bool:
        """Whether a rule that ends so may hold for an element."""
        return (
            (not self.name or self.name == part.name)
            and self.ids <= {part.attributes.get("id", "")}
            and self.classes <= set(part.attributes.get("class", "").split())
        )


@dataclass(frozen=True, slots=True)
class StyleRule:
    """A rule as it is written again."""

    text: str
    chosen: tuple[Chosen, ...]
    """The last step of each of its selectors: that alone is asked, so more are chosen rather than fewer."""
    refers: tuple[Reference, ...]


class Styles:
    """Reads the styles of one drawing."""

    def __init__(self, allowed: DrawingList, values: Values, note: Note) -> None:
        self._allowed, self._values, self._note = allowed, values, note

    def attribute(self, text: str) -> Declarations:
        """What ``style="…"`` says."""
        if is_deep(text):
            self._note(DEEP)
            return Declarations()
        return self._declarations(tinycss2.parse_blocks_contents(text, skip_comments=True, skip_whitespace=True))

    def sheet(self, text: str) -> Iterator[StyleRule]:
        """The rules of a ``<style>`` that a drawing may have."""
        if is_deep(text):
            self._note(DEEP)
            return
        for rule in tinycss2.parse_stylesheet(text, skip_comments=True, skip_whitespace=True):
            if isinstance(rule, ast.AtRule):
                self._at_rule(rule)
            elif isinstance(rule, ast.QualifiedRule):
                inner = tinycss2.parse_blocks_contents(rule.content, skip_comments=True, skip_whitespace=True)
                found, selector = self._declarations(inner), self._selector(rule.prelude)
                if selector and found.text:
                    yield StyleRule(f"{selector}{{{found.text}}}", tuple(_chosen(selector)), tuple(found.refers))

    def _at_rule(self, rule: ast.AtRule) -> None:
        """None is served; those that would load or move something are told."""
        if rule.lower_at_keyword == "import" or self._values.loads([*rule.prelude, *(rule.content or ())]):
            if rule.lower_at_keyword != "namespace":
                self._note(ELSEWHERE)
        elif rule.lower_at_keyword.endswith("keyframes"):
            self._note("its style moves something; draw it as it stands still")

    def _declarations(self, read: Sequence[ast.Node]) -> Declarations:
        found, written = Declarations(), list[str]()
        for one in read:
            if isinstance(one, ast.Declaration):
                text = self._value(one, found)
                if text:
                    found.sets.add(one.lower_name)
                    written.append(f"{one.lower_name}: {text}{' !important' if one.important else ''}")
            elif isinstance(one, ast.QualifiedRule | ast.AtRule) and self._values.loads(
                [*one.prelude, *(one.content or ())]
            ):
                self._note(ELSEWHERE)
        found.text = "; ".join(written)
        return found

    def _value(self, one: ast.Declaration, found: Declarations) -> str:
        name = one.lower_name
        if self._allowed.moves(name):
            self._note("its style moves something; draw it as it stands still")
            return ""
        if name not in self._allowed.properties:
            if self._values.loads(one.value):
                self._note(ELSEWHERE)
            return ""
        value = self._values.of_tokens(_without_notes(one.value))
        if value.fault:
            self._note(value.fault)
        found.refers += (Reference(name, to) for to in value.refers)
        return value.text

    def _selector(self, tokens: Sequence[ast.Node]) -> str:
        """A selector written again; empty where it turns on anything but what a drawing is."""
        written = list[str]()
        for token in _without_notes(tokens):
            text = self._step(token, written[-1] if written else "")
            if not text:
                return ""
            written.append(text)
        return "".join(written).strip()

    def _step(self, token: ast.Node, before: str) -> str:
        match token:
            case ast.WhitespaceToken():
                return " "
            case ast.LiteralToken() if token.value in _BETWEEN:
                return token.value
            case ast.IdentToken():
                return token.serialize() if before != ":" or token.lower_value in self._allowed.selectors else ""
            case ast.HashToken():
                return f"#{self._values.id(token.value)}"
            case _:
                return ""


def _without_notes(tokens: Sequence[ast.Node]) -> list[ast.Node]:
    return [token for token in tokens if not isinstance(token, ast.Comment)]


def _chosen(selector: str) -> Iterator[Chosen]:
    """The last step of each selector in a list; where its names are not plain, as if it chose all."""
    for one in selector.split(","):
        last = _LAST.search(one.strip())
        if last is None:
            yield Chosen()
            continue
        names = re.findall(r"[.#][\w-]+", last["names"])
        yield Chosen(
            "" if last["name"] == "*" else last["name"],
            frozenset(name[1:] for name in names if name[0] == "#"),
            frozenset(name[1:] for name in names if name[0] == "."),
        )
