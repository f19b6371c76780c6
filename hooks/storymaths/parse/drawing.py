"""What makes a picture unusable: a drawing that is broken, reaches out, runs something or grows without end.

Drawings are SVG 1.1/2 (W3C). Each stands by itself: on a page, on a card, on a class screen and in a print sheet.
"""

from __future__ import annotations

import re
from xml.parsers import expat

from ..model.document import Fault
from ..model.problem import Place

DEEPEST = 64
_SVG = "http://www.w3.org/2000/svg"
_MOVING = {"animate", "animateColor", "animateMotion", "animateTransform", "set"}
_FORBIDDEN = {"script", "foreignObject", "image", "feImage", "iframe", "a", "audio", "video", "canvas", "object", "embed",
              "handler", "listener", *_MOVING}  # fmt: skip
_ELSEWHERE = re.compile(
    r"@import|@namespace|url\(\s*['\"]?\s*(?!#)|(?:src|image)\(|expression\(|javascript:", re.IGNORECASE
)
_COURSE = re.compile(r"[MmZzLlHhVvCcSsQqTtAa0-9eE+.,\s-]*")
_NUMBERS = re.compile(r"[\s,]+")
_STARTS = {".png": b"\x89PNG\r\n\x1a\n", ".jpg": b"\xff\xd8\xff", ".jpeg": b"\xff\xd8\xff", ".webp": b"RIFF"}


def faults_in_picture(path: str, data: bytes, deepest: int = DEEPEST) -> list[Fault]:
    """What is wrong with a picture file, each fault with its place. Photographs are only asked to be what they say."""
    ending = path[path.rfind(".") :]
    if ending != ".svg":
        fits = data.startswith(_STARTS[ending])
        return (
            [] if fits else [Fault("drawing", Place(path), "", f"it is not a {ending[1:]} picture, as its name says")]
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8", "replace")
        return [Fault("drawing", Place.of(path, before, len(before)), "", "a byte here is not plain UTF-8 text")]
    return faults_in_drawing(path, text, deepest)


def faults_in_drawing(path: str, text: str, deepest: int = DEEPEST) -> list[Fault]:
    """What is wrong with the text of an SVG drawing; elements may stand inside each other ``deepest`` levels."""
    return _Reader(path, deepest).faults_of(text)


class _Unusable(Exception):
    """Reading must not go on."""


class _Reader:
    """Reads a drawing once from end to end, noting what may not be in it."""

    def __init__(self, path: str, deepest: int) -> None:
        self._path, self._deepest = path, deepest
        self._open: list[tuple[str, str]] = []
        """Name and id of each element that is open."""
        self._used: dict[str, Place] = {}
        self._using: set[str] = set()
        """Ids of the elements that hold a ``use`` of another."""
        self._faults: list[Fault] = []
        self._parser = expat.ParserCreate(namespace_separator=" ")
        self._parser.buffer_text = True
        self._parser.XmlDeclHandler = self._declared
        self._parser.StartDoctypeDeclHandler = self._doctype
        self._parser.ProcessingInstructionHandler = self._instruction
        self._parser.StartElementHandler = self._start
        self._parser.EndElementHandler = self._end
        self._parser.CharacterDataHandler = self._text

    def faults_of(self, text: str) -> list[Fault]:
        try:
            self._parser.Parse(text.encode(), True)
        except _Unusable:
            return self._faults
        except expat.ExpatError as error:
            place = Place(self._path, error.lineno, error.offset + 1)
            return [
                *self._faults,
                Fault("drawing", place, "", f"the drawing breaks off here: {expat.ErrorString(error.code)}"),
            ]
        for name in sorted(self._used.keys() & self._using):
            self._note("a part that is used again holds another that is used again", self._used[name])
        return self._faults

    def _note(self, detail: str, place: Place | None = None) -> None:
        here = Place(self._path, self._parser.CurrentLineNumber, self._parser.CurrentColumnNumber + 1)
        self._faults.append(Fault("drawing", place or here, "", detail))

    def _declared(self, version: str, encoding: str | None, standalone: int) -> None:
        if encoding and encoding.lower() not in ("utf-8", "us-ascii"):
            self._note(f"it says it is written in {encoding}, and drawings are read as UTF-8")

    def _doctype(self, *_: object) -> None:
        self._note("it declares a document type, which can make it grow without end")
        raise _Unusable

    def _instruction(self, target: str, data: str) -> None:
        self._note(f"it holds an instruction, <?{target}")

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        name = tag.rpartition(" ")[2]
        if not self._open:
            self._check_root(tag, attributes)
        self._open.append((name, attributes.get("id", "")))
        if len(self._open) > self._deepest:
            self._note(f"its parts stand inside each other more than {self._deepest} deep")
            raise _Unusable
        if name in _FORBIDDEN:
            self._note(f"<{name}> is not drawing: it can run, move or load something")
        for attribute, value in attributes.items():
            self._check_attribute(name, attribute.rpartition(" ")[2], value)

    def _check_root(self, tag: str, attributes: dict[str, str]) -> None:
        if tag != f"{_SVG} svg":
            self._note(f'it does not open with <svg xmlns="{_SVG}">')
            return
        sides = _NUMBERS.split(attributes.get("viewBox", "").strip())
        if len(sides) != 4 or not all(map(_is_number, sides)) or min(map(float, sides[2:])) <= 0:
            self._note('it has no size: viewBox="0 0 WIDTH HEIGHT" is missing or not four numbers')

    def _check_attribute(self, name: str, attribute: str, value: str) -> None:
        if attribute.lower().startswith("on"):
            self._note(f'the attribute "{attribute}" could run a script')
        elif attribute == "href" and not value.strip().startswith("#"):
            self._note("it loads something from another place")
        elif attribute == "href" and name == "use":
            here = Place(self._path, self._parser.CurrentLineNumber, self._parser.CurrentColumnNumber + 1)
            self._used.setdefault(value.strip()[1:], here)
            self._using.update(id for _, id in self._open if id)
        elif attribute in ("d", "points"):
            if not _COURSE.fullmatch(value):
                self._note(f'the attribute "{attribute}" is not made of numbers and letters of a path')
        elif _reaches_out(value):
            self._note("it loads something from another place")

    def _end(self, tag: str) -> None:
        self._open.pop()

    def _text(self, words: str) -> None:
        if self._open and self._open[-1][0] == "style" and _reaches_out(words):
            self._note("its style loads something from another place")


def _reaches_out(words: str) -> bool:
    """Whether a style could load something. An escape could spell any word, and no drawing needs one."""
    return "\\" in words or bool(_ELSEWHERE.search(words))


def _is_number(text: str) -> bool:
    try:
        return abs(float(text)) < 1e6  # NaN is less than nothing
    except ValueError:
        return False
