"""Changes to the text under a page's front matter: its sections, by their headings, and its activities, by their fences."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ..model.body import Body, Fence
from ..parse.body import read_body
from .edit import AddSection, EditRefused, MoveSection, RemoveSection, RenameSection, SectionEdit, SetSection


@dataclass(frozen=True, slots=True)
class _Piece:
    """A section as it is written: its heading with the blank lines after it, its text, and the blank lines after that."""

    name: str
    head: str
    text: str
    tail: str

    @property
    def whole(self) -> str:
        return self.head + self.text + self.tail


def change_sections(body: str, edit: SectionEdit) -> str:
    """The body with a section changed. Raises ``EditRefused``."""
    pieces = _pieces(body)
    made = _change(pieces, edit)
    ending = "\n" * (len(body) - len(body.rstrip("\n")))
    text = _with_blank_lines(made)
    text = text.rstrip("\n") + ending if ending else text
    if [(piece.name, piece.text) for piece in _pieces(text)] != [(piece.name, piece.text) for piece in made]:
        raise EditRefused(
            "The words would run into another section: within a section no line begins with ##, "
            "and what is opened with ``` is closed with it."
        )
    return text


def _change(pieces: Sequence[_Piece], edit: SectionEdit) -> list[_Piece]:
    made = list(pieces)
    if isinstance(edit, AddSection):
        at = len(made) if edit.at is None else edit.at + 1  # the first piece is what stands above all
        made.insert(at, _Piece(edit.name, f"## {edit.name}\n\n", _words(edit.text), "\n"))
        return made
    at = _number(pieces, edit.name)
    piece = made[at]
    match edit:
        case SetSection(_, text):
            made[at] = _Piece(piece.name, piece.head, _words(text), piece.tail)
        case RemoveSection():
            del made[at]
        case RenameSection(_, to):
            first, broken, rest = piece.head.partition("\n")
            made[at] = _Piece(to, first.replace(piece.name, to, 1) + broken + rest, piece.text, piece.tail)
        case MoveSection(_, to):
            if not 0 <= to < len(made) - 1:
                raise EditRefused(f'"{edit.name}" cannot be moved beyond the ends of the page.')
            made.insert(to + 1, made.pop(at))
    return made


def _words(text: str) -> str:
    lines = text.replace("\r\n", "\n").strip("\n")
    return f"{lines}\n" if lines.strip() else ""


def _number(pieces: Sequence[_Piece], name: str) -> int:
    found = [at for at, piece in enumerate(pieces) if piece.name == name and (at == 0) == (name == "")]
    if len(found) != 1:
        raise EditRefused(f'There is {"no" if not found else "more than one"} section "{name}" in the page.')
    return found[0]


def _with_blank_lines(pieces: Sequence[_Piece]) -> str:
    """The pieces one after the other, a blank line between any two."""
    made = ""
    for piece in pieces:
        if made.strip("\n") and not made.endswith("\n\n"):
            made += "\n" if made.endswith("\n") else "\n\n"
        made += piece.whole
    return made


def _pieces(body: str) -> list[_Piece]:
    """What stands above the first section, with no name, and each section."""
    read, lines = read_body(body), body.split("\n")
    starts = [section.heading.line - 1 for section in read.sections]
    names = ["", *(section.heading.words for section in read.sections)]
    texts = [
        "\n".join(lines[a:b]) + "\n" * (b < len(lines))
        for a, b in zip([0, *starts], [*starts, len(lines)], strict=True)
    ]
    return [_piece(name, text, 1 if at else 0) for at, (name, text) in enumerate(zip(names, texts, strict=True))]


def _piece(name: str, text: str, heading_lines: int) -> _Piece:
    lines = text.split("\n")
    head = heading_lines
    while head < len(lines) - 1 and not lines[head].strip():
        head += 1
    start = len("\n".join(lines[:head])) + (1 if head else 0)
    inner = text[start:]
    kept = inner.rstrip()
    kept = kept + "\n" if len(kept) < len(inner) and kept else kept
    return _Piece(name, text[:start], kept, inner[len(kept) :])


def set_block(body: str, number: int, text: str) -> str:
    """The body with the text of an activity replaced. Raises ``EditRefused``."""
    read = read_body(body)
    fence, lines = _block(read, number), body.split("\n")
    end = fence.line + fence.text.count("\n")
    text = _words(text)
    indented = [" " * (fence.column - 1) * bool(line) + line for line in text.split("\n")[:-1]]
    made = "\n".join([*lines[: fence.line], *indented, *lines[end:]])
    wanted = [text if at == number else block.text for at, block in enumerate(read.activities)]
    if [block.text for block in read_body(made).activities] != wanted:
        raise EditRefused("The activity's text would end too early: no line in it begins with ```.")
    return made


def block_text(body: str, number: int) -> str:
    """The text of an activity. Raises ``EditRefused``."""
    return _block(read_body(body), number).text


def _block(read: Body, number: int) -> Fence:
    if not 0 <= number < len(read.activities):
        raise EditRefused(f"There is no activity {number + 1} in the page any more.")
    fence = read.activities[number]
    if not fence.closed:
        raise EditRefused(f"Activity {number + 1} is never closed with ```: put that right in its file first.")
    return fence
