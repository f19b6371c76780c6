"""One change to the text of a page: all but what it changes is the same after it, to the byte, or nothing is changed."""

from __future__ import annotations

import re
from collections.abc import Sequence
from difflib import SequenceMatcher
from functools import partial

from ..model.prose import Loc
from ..parse.document import FENCE
from ..parse.yaml_text import BrokenYaml, load
from .edit import AddItem, Edit, EditRefused, InBlock, MoveItem, RemoveItem, SetBlock, SetValue
from .order import page_keys
from .sections import block_text, change_sections, set_block
from .values import change_value

_BOM = "\ufeff"
_KIND = re.compile(r"^kind:[ \t]*['\"]?([a-z]+)", re.MULTILINE)


def apply(text: str, edit: Edit) -> str:
    """The text of a file with one change made. Raises ``EditRefused``, and then nothing is changed."""
    try:
        return _apply(text, edit)
    except UnicodeEncodeError:
        raise EditRefused("The text holds half of a sign: take out what was pasted last.") from None


def _apply(text: str, edit: Edit) -> str:
    plain = text.removeprefix(_BOM).replace("\r\n", "\n")
    found = FENCE.match(plain)
    if found is None:
        raise EditRefused(
            "The page does not open with front matter between two lines of ---: put that right in its file first."
        )
    front, body = found[1], plain[found.end() :]
    if isinstance(edit, SetValue | AddItem | RemoveItem | MoveItem):
        kind = _KIND.search(front)
        front = change_value(front, edit, partial(page_keys, kind[1] if kind else ""))
    elif isinstance(edit, SetBlock):
        body = set_block(body, edit.number, edit.text)
    elif isinstance(edit, InBlock):
        inside = block_text(body, edit.number)
        body = set_block(body, edit.number, change_value(inside, edit.edit, partial(_block_keys, inside)))
    else:
        body = change_sections(body, edit)
    made = plain[: found.start(1)] + front + plain[found.end(1) : found.end()] + body
    again = FENCE.match(made)
    if again is None or again[1] != front:
        raise EditRefused("A line of --- ends the front matter: it cannot stand in a value.")
    return _BOM * text.startswith(_BOM) + _with_line_ends_of(text.removeprefix(_BOM), made)


def apply_all(text: str, edits: Sequence[Edit]) -> str:
    """The text with several changes made one after the other, or none of them. Raises ``EditRefused``."""
    for edit in edits:
        text = apply(text, edit)
    return text


def _block_keys(text: str, path: Loc) -> Sequence[str]:
    from ..activities.table import KINDS  # noqa: PLC0415 - the kinds take half a second to load
    from ..parse.schema_faults import keys_at  # noqa: PLC0415 - as above

    try:
        raw = load(text)[0]
    except BrokenYaml:
        return ()
    kind = KINDS.get(str(raw.get("kind"))) if isinstance(raw, dict) else None
    return keys_at(kind.schema_for(raw), path) if kind else ()


def _with_line_ends_of(old: str, new: str) -> str:
    """A text whose lines end as those of the old one did; new lines as most of it."""
    if "\r\n" not in old:
        return new
    was = re.split(r"(?<=\n)", old)
    lines = re.split(r"(?<=\n)", new)
    usual = "\r\n" if 2 * old.count("\r\n") >= old.count("\n") else "\n"
    made = list[str]()
    for tag, a, b, c, d in SequenceMatcher(
        None, [w.replace("\r\n", "\n") for w in was], lines, autojunk=False
    ).get_opcodes():
        made += was[a:b] if tag == "equal" else [line.replace("\n", usual) for line in lines[c:d]]
    return "".join(made)
