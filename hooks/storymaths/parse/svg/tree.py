"""A drawing's XML into parts: what the list lets through, with all that is wrong with the rest noted where it stands."""

from __future__ import annotations

from collections.abc import Callable
from xml.parsers import expat

from ...model.drawing_list import DrawingList
from .attributes import Attributes
from .part import ELSEWHERE, Part, Refused

SVG = "http://www.w3.org/2000/svg"
Note = Callable[[str, tuple[int, int]], None]
_WORDED = frozenset("text tspan textPath title desc style".split())
"""Elements whose text is of the drawing; between others it is only room."""


class Tree:
    """Reads a drawing once from end to end."""

    def __init__(self, allowed: DrawingList, attributes: Attributes, note: Note) -> None:
        self._allowed, self._attributes, self._take = allowed, attributes, note
        self._open: list[Part] = []
        self._left_out = 0
        """How deep it is within an element that is not served."""
        self._characters = 0
        self.parts: list[Part] = []
        """Every element, the root first."""
        parser = self._parser = expat.ParserCreate("utf-8", " ")
        parser.buffer_text = True
        parser.XmlDeclHandler = self._declared
        parser.EntityDeclHandler = self._entity
        parser.SkippedEntityHandler = self._skipped
        parser.ProcessingInstructionHandler = self._instruction
        parser.StartElementHandler = self._start
        parser.EndElementHandler = self._end
        parser.CharacterDataHandler = self._text

    def read(self, text: str) -> None:
        """Reads it into ``parts``. Raises ``Refused`` where reading must not go on."""
        try:
            self._parser.Parse(text.encode("utf-8", "surrogatepass"), True)
        except expat.ExpatError as error:
            reason = f"the drawing breaks off here: {expat.ErrorString(error.code)}"
            raise Refused(reason, (error.lineno, error.offset + 1)) from None

    @property
    def _here(self) -> tuple[int, int]:
        return self._parser.CurrentLineNumber, self._parser.CurrentColumnNumber + 1

    def _note(self, detail: str) -> None:
        self._take(detail, self._here)

    def _declared(self, version: str, encoding: str | None, standalone: int) -> None:
        if encoding and encoding.lower() not in ("utf-8", "us-ascii"):
            self._note(f"it says it is written in {encoding}, and drawings are read as UTF-8")

    def _entity(
        self, name: str, parameter: bool, value: str | None, base: object, system: str | None, *_: object
    ) -> None:
        if system is not None:
            raise Refused(ELSEWHERE, self._here)
        if parameter or value is None or "&" in value or "<" in value or len(value) > self._allowed.limits.entity:
            raise Refused(
                f'the word "{name}" in its document type stands for others, and can make it grow without end',
                self._here,
            )

    def _skipped(self, name: str, parameter: bool) -> None:
        self._note(f"nothing says what &{name}; stands for")

    def _instruction(self, target: str, data: str) -> None:
        if target.lower() == "xml-stylesheet":
            self._note(f"it takes its style from another file, <?{target}; save as plain SVG")

    def _count(self, characters: int) -> None:
        self._characters += characters
        if self._characters > self._allowed.limits.characters:
            raise Refused("it is too large once all that its words stand for is written out", self._here)

    def _start(self, tag: str, attributes: dict[str, str]) -> None:
        self._count(sum(map(len, attributes.values())))
        if len(self._open) + self._left_out >= self._allowed.limits.nested:
            raise Refused(f"its parts stand inside each other more than {self._allowed.limits.nested} deep", self._here)
        if not self.parts and tag != f"{SVG} svg":
            raise Refused(f'it does not open with <svg xmlns="{SVG}">', self._here)
        if self._left_out or not self._is_served(tag, attributes):
            self._left_out += 1
            return
        part = Part(tag.rpartition(" ")[2], self._here)
        if self._open:
            self._open[-1].content.append(part)
        self.parts.append(part)
        self._open.append(part)
        self._attributes.read_into(part, attributes, self._note)

    def _is_served(self, tag: str, attributes: dict[str, str]) -> bool:
        language, _, name = tag.rpartition(" ")
        if language != SVG:
            if language in self._allowed.refused_languages:
                self._note(f"<{name}> is {self._allowed.refused_languages[language]}; save as plain SVG")
            return False
        if _is_for_others(attributes):
            return False
        in_switch = bool(self._open) and self._open[-1].name == "switch"
        if in_switch and (name == "foreignObject" or any(self._open[-1].parts)):
            return False  # what else stands there is shown instead
        if name in self._allowed.refused_elements:
            self._note(f"<{name}> cannot stay, as {self._allowed.refused_elements[name]}")
        return name in self._allowed.elements

    def _end(self, tag: str) -> None:
        if self._left_out:
            self._left_out -= 1
            return
        part = self._open.pop()
        if part.name == "switch":
            part.name = "g"

    def _text(self, words: str) -> None:
        self._count(len(words))
        if self._open and not self._left_out and self._open[-1].name in _WORDED:
            self._open[-1].content.append(words)


def _is_for_others(attributes: dict[str, str]) -> bool:
    """Whether an element is for one program, or for readers of other languages."""
    languages = attributes.get("systemLanguage")
    if attributes.get("requiredExtensions", "").strip():
        return True
    return languages is not None and not any(one.strip().lower().startswith("en") for one in languages.split(","))
