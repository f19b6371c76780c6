"""Attributes of a drawing's parts: those on the list, each with its value written again."""

from __future__ import annotations

import re
from collections.abc import Callable

from ...model.drawing_list import DrawingList
from .part import ELSEWHERE, Part, Reference
from .styles import Styles
from .values import Value, Values

_XML, _XLINK = "http://www.w3.org/XML/1998/namespace", "http://www.w3.org/1999/xlink"
_NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?")
Note = Callable[[str], None]


class Attributes:
    """Reads the attributes of one drawing."""

    def __init__(self, allowed: DrawingList, values: Values) -> None:
        self._allowed, self._values = allowed, values
        self._side = 0.0
        """The longer side of the drawing, in its own units; known from its first element on."""

    def read_into(self, part: Part, written: dict[str, str], note: Note) -> None:
        """Gives a part its attributes; what is wrong with them is noted."""
        for full, text in written.items():
            language, _, name = full.rpartition(" ")
            if not language or (language == _XLINK and name == "href" and "href" not in written):
                self._read(part, name, text, note)
            elif language == _XML and name in ("space", "lang"):
                self._keep(part, f"xml:{name}", self._values.value(text), note)
        if not self._side:
            self._side = _size_of_root(part, note)
        if part.name == "filter":
            self._check_reach(part, note)

    def _read(self, part: Part, name: str, text: str, note: Note) -> None:
        own = self._allowed.elements[part.name]
        if name in ("d", "points"):
            if name in own:
                self._keep(part, name, self._values.course(text), note)
        elif name == "href":
            self._refer(part, text.strip(), note)
        elif name in own or name in self._allowed.properties:
            self._keep(part, name, self._values.value(text), note)
            part.sets.add(name)
            if name == "stroke-dasharray":
                self._check_dashes(text, note)
        elif name == "id":
            part.attributes[name] = self._values.id(text)
        elif name == "class":
            part.attributes[name] = " ".join(text.split())
        elif name == "style":
            self._style(part, text, note)
        elif name.lower().startswith("on"):
            note(f'the attribute "{name}" could run a script; take it out')
        elif part.name == "style" and name in ("type", "media"):
            part.attributes[name] = text.strip().lower()

    def _keep(self, part: Part, name: str, value: Value, note: Note) -> None:
        if value.fault:
            note(value.fault)
        elif value.text:
            part.attributes[name] = value.text
            part.refers += (Reference(name, to) for to in value.refers)

    def _refer(self, part: Part, address: str, note: Note) -> None:
        if "href" not in self._allowed.elements[part.name]:
            return
        if not address.startswith("#"):
            note(ELSEWHERE)
            return
        to = self._values.id(address[1:])
        part.attributes["href"] = f"#{to}"
        part.refers.append(Reference("href", to))

    def _style(self, part: Part, text: str, note: Note) -> None:
        found = Styles(self._allowed, self._values, note).attribute(text)
        if found.text:
            part.attributes["style"] = found.text
        part.sets |= found.sets
        part.refers += found.refers
        self._check_dashes(found.text.partition("stroke-dasharray:")[2].partition(";")[0], note)

    def _check_dashes(self, text: str, note: Note) -> None:
        """A line of a million dashes takes a browser and a printer as long as a million lines."""
        length = sum(abs(float(one)) for one in _NUMBER.findall(text))
        if 0 < length < self._side / self._allowed.limits.dashes:
            note("its dashes are too short to be seen; make them longer, or the line whole")

    def _check_reach(self, part: Part, note: Note) -> None:
        """A filter is worked out for every dot it may reach."""
        by_the_drawing = part.attributes.get("filterUnits") == "userSpaceOnUse"
        most = self._allowed.limits.filter_size * (self._side if by_the_drawing else 1)
        for name in ("x", "y", "width", "height"):
            text = part.attributes.get(name, "")
            number = _NUMBER.match(text)
            if number and abs(float(number.group())) / (100 if text.endswith("%") else 1) > most:
                note("a filter reaches far beyond what it is laid on; make its area smaller")
                return


_PIXELS = {"": 1.0, "px": 1.0, "pt": 4 / 3, "pc": 16.0, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96.0}
"""Units of the drawing in a unit of length (CSS Values 4, absolute lengths)."""


def _size_of_root(root: Part, note: Note) -> float:
    """The longer side of a drawing, which is given the ``viewBox`` that its width and height say if it has none."""
    sides = root.attributes.get("viewBox", "").replace(",", " ").split()
    if not sides:
        own = [_length(root.attributes.get(name, "")) for name in ("width", "height")]
        sides = ["0", "0", *(f"{one:.6g}" for one in own)] if all(own) else []
        root.attributes["viewBox"] = " ".join(sides)
    numbers = [float(side) for side in sides if _NUMBER.fullmatch(side)]
    if len(sides) != 4 or len(numbers) != 4 or min(numbers[2:]) <= 0:
        note('it has no size: viewBox="0 0 WIDTH HEIGHT" is missing or not four numbers; set the size of the page')
        return 1.0
    for name in ("width", "height"):
        if not 0 < (_length(root.attributes.get(name, "1")) or 1) <= _WIDEST:
            note(f"it is too large: its {name} is more than {_WIDEST:,} dots")
    return max(numbers[2:])


_WIDEST = 20_000


def _length(text: str) -> float:
    """A length in dots; 0 where it is none."""
    number = _NUMBER.match(text)
    unit = text[number.end() :].strip().lower() if number else "?"
    return float(number.group()) * _PIXELS[unit] if number and unit in _PIXELS else 0.0
