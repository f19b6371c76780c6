"""Values of attributes and of style in a drawing, read as CSS has them and written again in one spelling."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from urllib.parse import unquote

import tinycss2
from tinycss2 import ast

from ...model.drawing_list import DrawingList
from .part import ELSEWHERE

_A_NUMBER = r"-?(?:\d{1,6}(?:\.\d{1,9})?|\.\d{1,9})"
_PLAIN = re.compile(
    rf"#\w+|[A-Za-z][\w-]*|{_A_NUMBER}(?:[ ,] ?{_A_NUMBER})*"
    rf"|(?:(?:translate|rotate|scale|matrix)\({_A_NUMBER}(?:[ ,] ?{_A_NUMBER})*\)(?: (?=[a-z])|$))+",
    re.ASCII,
)
"""Most values: a name, a colour, numbers, a turn. They stay as they are, and need no reader of CSS."""
_COURSE = re.compile(r"[MmZzLlHhVvCcSsQqTtAa0-9eE+.,\s-]*")
_OUT_OF_MEASURE = re.compile(r"[eE]\+?0*(?:[6-9]|[1-9]\d)|\d{10}")
_BRACKET = re.compile(r"[(\[{}\])]")
_DEEPEST = 12
DEEP = "brackets in its style stand inside each other too deep"
_ID = re.compile(r"(?!part-)[A-Za-z_][\w.:-]*", re.ASCII)
_SIGNS = frozenset(",/+-")


@dataclass(frozen=True, slots=True)
class Value:
    """A value as it is written again, empty where it is not understood; what it refers to; what is wrong with it."""

    text: str
    refers: tuple[str, ...] = ()
    fault: str = ""


class _NotUnderstood(Exception):
    """Any browser passes the value over, and so do we."""


class _Fault(Exception):
    """The value may not stand in a drawing: the words for its author."""


class Values:
    """Reads the values of one drawing; ids that are no plain names get one."""

    def __init__(self, allowed: DrawingList) -> None:
        self._allowed = allowed
        self._ids: dict[str, str] = {}
        self._read: dict[str, Value] = {}

    def id(self, written: str) -> str:
        """The id that stands for one as it is written."""
        plain = unquote(written)
        return plain if _ID.fullmatch(plain) else self._ids.setdefault(plain, f"part-{len(self._ids) + 1}")

    def course(self, text: str) -> Value:
        """The way a line goes: ``d`` or ``points``."""
        if not _COURSE.fullmatch(text):
            return Value("", fault="a line of it is not made of numbers and letters of a path")
        return Value("", fault="a number in it is out of all measure") if _OUT_OF_MEASURE.search(text) else Value(text)

    def value(self, text: str) -> Value:
        """Any other value, written as text."""
        if _PLAIN.fullmatch(text):
            return Value(text)
        if is_deep(text):
            return Value("", fault=DEEP)
        if text not in self._read:
            self._read[text] = self.of_tokens(tinycss2.parse_component_value_list(text, skip_comments=True))
        return self._read[text]

    def of_tokens(self, tokens: Sequence[ast.Node]) -> Value:
        """A value read into tokens."""
        refers: list[str] = []
        try:
            return Value("".join(self._written(tokens, refers)).strip(), tuple(refers))
        except _NotUnderstood:
            return Value("", fault=ELSEWHERE if self.loads(tokens) else "")
        except _Fault as fault:
            return Value("", fault=str(fault))

    def loads(self, tokens: Iterable[ast.Node]) -> bool:
        """Whether anything in tokens would be fetched, however deep it stands and wherever."""
        for token in tokens:
            if isinstance(token, ast.URLToken) and not token.value.strip().startswith("#"):
                return True
            if isinstance(token, ast.ParseError) and token.kind == "bad-url":
                return True
            if isinstance(token, ast.FunctionBlock):
                if token.lower_name in self._allowed.loading and not _within(token):
                    return True
                if self.loads(token.arguments):
                    return True
            elif isinstance(
                token, ast.CurlyBracketsBlock | ast.SquareBracketsBlock | ast.ParenthesesBlock
            ) and self.loads(token.content):
                return True
        return False

    def _written(self, tokens: Iterable[ast.Node], refers: list[str]) -> Iterator[str]:
        for token in tokens:
            match token:
                case ast.WhitespaceToken():
                    yield " "
                case ast.LiteralToken() if token.value in _SIGNS:
                    yield token.value
                case ast.IdentToken() | ast.HashToken() | ast.StringToken():
                    yield token.serialize()
                case ast.NumberToken() | ast.PercentageToken() | ast.DimensionToken():
                    yield self._number(token)
                case ast.URLToken():
                    yield self._reference(token.value, refers)
                case ast.FunctionBlock() if token.lower_name == "url":
                    yield self._reference(_within(token), refers)
                case ast.FunctionBlock():
                    yield self._function(token, refers)
                case _:
                    raise _NotUnderstood

    def _number(self, token: ast.NumberToken | ast.PercentageToken | ast.DimensionToken) -> str:
        if not math.isfinite(token.value) or abs(token.value) > self._allowed.limits.number:
            raise _Fault("a number in it is out of all measure")
        if isinstance(token, ast.DimensionToken) and token.lower_unit not in self._allowed.units:
            raise _NotUnderstood
        return token.serialize()

    def _reference(self, address: str, refers: list[str]) -> str:
        if not address.strip().startswith("#"):
            raise _Fault(ELSEWHERE)
        refers.append(self.id(address.strip()[1:]))
        return f"url(#{refers[-1]})"

    def _function(self, token: ast.FunctionBlock, refers: list[str]) -> str:
        if token.lower_name in self._allowed.loading:
            raise _Fault(ELSEWHERE)
        if token.lower_name not in self._allowed.functions:
            raise _Fault(f"{token.lower_name}( ) in its style is not for drawings; write the colour or the size itself")
        return f"{token.name}({''.join(self._written(token.arguments, refers))})"


def is_deep(text: str) -> bool:
    """Whether brackets stand inside each other further than any style needs, and a reader could follow."""
    depth = 0
    for bracket in _BRACKET.finditer(text):
        depth += 1 if bracket.group() in "([{" else -1
        if depth > _DEEPEST:
            return True
    return False


def _within(token: ast.FunctionBlock) -> str:
    """Where ``url("#a")`` leads, if that is within the drawing; else empty."""
    words = [one for one in token.arguments if not isinstance(one, ast.WhitespaceToken | ast.Comment)]
    only = words[0] if len(words) == 1 and token.lower_name == "url" else None
    return only.value if isinstance(only, ast.StringToken) and only.value.strip().startswith("#") else ""
