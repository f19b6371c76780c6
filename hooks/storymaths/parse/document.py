"""One file of content into the model: front matter split off, read with positions, and validated."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from pydantic import ValidationError

from ..model.document import Document, Fault, Loc, Unread, marked_up
from ..model.names import PRINTS_NOTHING, Prints, reveal
from ..model.page_fields import PageFields
from ..model.page_schemas import SCHEMAS
from ..model.problem import Place
from ..model.prose import BODY
from .cut_texts import cut_texts
from .prose import PageReader
from .schema_faults import faults_of, without_unknown
from .yaml_text import BrokenYaml, YamlLocator, load_with_nodes

FENCE = re.compile(r"\A---[ \t]*\n(.*?)^---[ \t]*(?:\n|\Z)", re.DOTALL | re.MULTILINE)
_LINES_ABOVE = 1  # the opening ``---``


class FileLocator:
    """Finds places in a content file: in its front matter by way of keys; of its body, where it starts."""

    def __init__(self, path: str, front: str, body_line: int, prints: Prints = PRINTS_NOTHING) -> None:
        self._front = YamlLocator(path, front, _LINES_ABOVE, prints)
        self._path, self._body_line = path, body_line

    def place(self, loc: Loc, within: str = "", before: str = "") -> Place:
        """See ``Locator.place``; ``("[body]",)`` is the text under the front matter."""
        if loc != BODY:
            return self._front.place(loc, within, before)
        return Place(self._path, self._body_line)


def parse_document(path: str, text: str, prints: Prints = PRINTS_NOTHING) -> Document[PageFields] | Unread:
    """A content file as a ``Document``, or as ``Unread`` when its front matter cannot be used.

    ``prints`` is what its names print, where that is known by now.
    """
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    match = FENCE.match(text)
    if match is None:
        return Unread(path, {}, (_no_front_matter(path, text),))
    front, body = match.group(1), text[match.end() :]
    body_line = text.count("\n", 0, match.end()) + 1
    try:
        raw, twice, tree = load_with_nodes(front)
        raw = prints.value(raw) if "[[" in text else raw
    except BrokenYaml as broken:
        place = Place(path, broken.line + _LINES_ABOVE, broken.column)
        return Unread(path, {}, (Fault("broken", place, "", broken.reason, fix=broken.fix),))
    locator = FileLocator(path, front, body_line, prints)
    faults = [Fault("duplicate", Place(path, t.line + _LINES_ABOVE, t.column), t.key) for t in twice]
    faults += [
        Fault(
            "cut", Place(path, node.start_mark.line + 1 + _LINES_ABOVE, node.start_mark.column + 1), sign, reveal(left)
        )
        for node, sign, left in cut_texts(front, tree)
    ]
    page = _validated(path, raw, prints.body(body) if "[[" in body else body, body_line, locator, faults, prints)
    # An escape such as \x3c can spell any mark.
    marked = "\\" in front or marked_up(front)
    return page if marked or isinstance(page, Unread) else replace(page, front_marked=False)


def _no_front_matter(path: str, text: str) -> Fault:
    if text.startswith("---"):
        reason = "the front matter that opens with --- is never closed with a second ---"
        return Fault("broken", Place(path), "", reason, fix="put a line of --- under the last field.")
    reason = "the file does not open with front matter between two lines of ---"
    fix = "make --- the very first line, and put another --- under the last field."
    return Fault("broken", Place(path), "", reason, fix=fix)


def _validated(
    path: str, raw: Any, body: str, body_line: int, locator: FileLocator, faults: list[Fault], prints: Prints
) -> Document[PageFields] | Unread:
    if not isinstance(raw, dict):
        fault = Fault("broken", locator.place(()), "", "it has no fields", fix="write lines such as title: About us.")
        return Unread(path, {}, (*faults, fault))
    schema = SCHEMAS.get(str(raw.get("kind", "")))
    if schema is None:
        fault = Fault("kind", locator.place(("kind",)), "kind", str(raw.get("kind", "")), tuple(SCHEMAS))
        return Unread(path, raw, (*faults, fault))
    try:
        fields = schema.model_validate(raw)
    except ValidationError as error:
        refused = faults_of(error, schema, raw, locator)
        faults += refused
        if any(fault.kind == "unknown" and " " in fault.field for fault in refused):
            return Unread(path, raw, tuple(faults))  # the end of a sentence: what is left of it is not what was meant
        # Where only unknown keys stand in the way they are left out, so that the other rules still speak.
        raw_known = without_unknown(raw, error)
        try:
            fields = schema.model_validate(raw_known)
        except ValidationError:
            return Unread(path, raw, tuple(faults))
        raw = raw_known
    reader = PageReader(raw, schema, prints)
    return Document(path, fields, raw, body, body_line, reader, locator, tuple(faults), prints=prints)
