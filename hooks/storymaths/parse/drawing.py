"""Pictures as they are read: what makes one unusable, and a drawing as it is served.

Drawings are SVG 2 (W3C). Each stands by itself: on a page, on a card, on a class screen and in a print sheet. What is
served is not the author's file but what ``site_data/drawings.yaml`` lets through of it, written again.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

from ..model.carried import carried
from ..model.document import Fault
from ..model.drawing_list import DrawingList
from ..model.problem import Place
from .svg.attributes import Attributes
from .svg.chains import Chains
from .svg.part import Part, Refused
from .svg.styles import StyleRule, Styles
from .svg.tree import Tree
from .svg.values import Values
from .svg.writing import written
from .yaml_text import load

LIST = "drawings.yaml"
"""In ``site_data/``, and the program's own."""
_STARTS = {".png": b"\x89PNG\r\n\x1a\n", ".jpg": b"\xff\xd8\xff", ".jpeg": b"\xff\xd8\xff", ".webp": b"RIFF"}


@dataclass(frozen=True)
class Drawing:
    """A drawing that was read: what is wrong with it, and what may be shown of it; nothing where it cannot be read."""

    faults: tuple[Fault, ...]
    root: Part | None

    @cached_property
    def text(self) -> str:
        """All that the list lets through, written again."""
        return written(self.root) if self.root else ""

    @property
    def served(self) -> str | None:
        """The drawing as it is served; None for one with faults."""
        return None if self.faults else self.text


def faults_in_picture(path: str, data: bytes) -> list[Fault]:
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
    return faults_in_drawing(path, text)


def faults_in_drawing(path: str, text: str) -> list[Fault]:
    """What is wrong with the text of an SVG drawing, which stands in the file ``path``."""
    return [replace(fault, place=replace(fault.place, path=path)) for fault in read_drawing(text).faults]


def served_drawing(data: bytes) -> str | None:
    """What is served of the file of a drawing; None for one that is not as the list has it."""
    try:
        return read_drawing(data.decode("utf-8-sig")).served
    except UnicodeDecodeError:
        return None


@lru_cache(maxsize=1024)  # read to be checked, then to be served, and to be printed
def read_drawing(text: str) -> Drawing:
    """A drawing from its text. Its faults name no file."""
    return _Reader().drawing(text)


@lru_cache(maxsize=1)
def _drawing_list() -> DrawingList:
    value, _ = load((carried("site_data") / LIST).read_text("utf-8"))
    return DrawingList.model_validate(value)


class _Reader:
    """Reads one drawing."""

    def __init__(self) -> None:
        self._allowed = _drawing_list()
        self._values = Values(self._allowed)
        self._faults: list[Fault] = []

    def drawing(self, text: str) -> Drawing:
        try:
            tree = Tree(self._allowed, Attributes(self._allowed, self._values), self._note)
            tree.read(text)
            Chains(tree.parts, self._style(tree.parts), self._allowed).count()
            return Drawing(tuple(self._faults), tree.parts[0])
        except Refused as refused:
            self._note(refused.detail, refused.at or (1, 1))
            return Drawing(tuple(self._faults), None)

    def _note(self, detail: str, at: tuple[int, int]) -> None:
        self._faults.append(Fault("drawing", Place("", *at), "", detail))

    def _style(self, parts: Sequence[Part]) -> list[StyleRule]:
        """The rules of every ``<style>``, each left as it is served."""
        rules: list[StyleRule] = []
        if sum(len(part.words) for part in parts if part.name == "style") > self._allowed.limits.style:
            raise Refused(f"it holds more than {self._allowed.limits.style:,} characters of style; save as plain SVG")
        for part in parts:
            if part.name == "style":
                for_screens = part.attributes.pop("media", "all") in ("all", "screen", "")
                is_css = part.attributes.pop("type", "text/css") in ("text/css", "")
                read = Styles(self._allowed, self._values, lambda detail, at=part.at: self._note(detail, at))  # type: ignore[misc]
                own = list(read.sheet(part.words)) if for_screens and is_css else []
                part.content = ["\n".join(rule.text for rule in own)] if own else []
                rules += own
        return rules
