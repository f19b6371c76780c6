"""Finds the parts of an old plan by what teachers call them: as headings, before a colon, or at the left of a table."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise, takewhile

from ...model.old_plans import OldPlanWords, PlanPart
from .docx import lines_of
from .lines import PlanBlock, PlanLine, PlanTable
from .times import minutes_in, starts_with_time, without_times

_LONGEST_HEADING = 12
"""Words of a heading that is one only by its look, or of a label before a colon."""
_LABELLED = re.compile(r"(?P<label>[^:\t]{1,70}?)\s*(?::|\t)\s*(?P<rest>.+)", re.DOTALL)
_NUMBER = re.compile(r"^\W*\d{1,2}[.)]\s")
_NO_LETTER = re.compile(r"[\W_]+")
_SHORTEST_IN_CAPITALS = 4
"""Letters of a heading that is one only by being in capitals."""
_OF_ROWS: tuple[PlanPart | None, ...] = (None, "step", "exit", "kept", "minutes", "questions", "title")
"""What a column holds that belongs to the step a row is of; all else is a part of its own."""


@dataclass(slots=True)
class PlanSection:
    """A stretch of an old plan: the part it is, if that can be told, what it is headed, and what stands in it."""

    part: PlanPart | None
    heading: str
    blocks: list[PlanBlock] = field(default_factory=list)

    @property
    def minutes(self) -> int | None:
        """How long it takes, by its heading, else by its own words where these name one length of time."""
        told = [found for line in self.lines if (found := minutes_in(line.text))]
        return minutes_in(self.heading) or (sum(told) or None if self.part in ("step", "exit") else None)

    @property
    def lines(self) -> list[PlanLine]:
        """All its lines, those of its tables too."""
        return [line for block in self.blocks for line in lines_of(block)]


def sections_of(blocks: Iterable[PlanBlock], words: OldPlanWords) -> list[PlanSection]:
    """The sections of a plan in order; the first has no heading, and may be empty."""
    finder = _Finder({name: part for part, names in words.parts.items() for name in names})
    for block, after in pairwise([*blocks, None]):
        if isinstance(block, PlanTable):
            finder.read_table(block)
        elif block is not None:
            finder.read_line(block, over=isinstance(after, PlanLine) and after.depth > block.depth > 0)
    return finder.found


class _Finder:
    def __init__(self, names: Mapping[str, PlanPart]) -> None:
        self._names = names
        self.found = [PlanSection(None, "")]

    def part_of(self, label: str, *, begins: bool) -> PlanPart | None:
        """The part a label names; ``begins`` if it is enough that it begins with the name of one."""
        words = _NO_LETTER.sub(" ", without_times(_NUMBER.sub("", label)).lower()).split()
        words = [word for word in words if not word.isdigit()]
        shortest = 1 if begins else len(words)
        for end in range(len(words), max(shortest, 1) - 1, -1):
            if part := self._names.get(" ".join(words[:end])):
                return part
        return None

    def read_line(self, line: PlanLine, *, over: bool = False) -> None:
        """A line: a heading, a label with its text, or more of what came before; ``over`` an item with others under it."""
        label, rest = _run_in(line.text)
        if rest and not line.depth and (part := self.part_of(label, begins=True) or self._timed(label)):
            self.found.append(PlanSection(part, label, [PlanLine(rest)]))
            return
        looks = line.heading or (not line.depth and _looks_like_heading(line))
        labelled = _LABELLED.fullmatch(line.text)
        if labelled and len(labelled["label"].split()) <= _LONGEST_HEADING:
            label, rest = labelled["label"], labelled["rest"]
            part = self.part_of(label, begins=True) or self._timed(label)
            if part and not (looks and part == "kept"):
                self.found.append(PlanSection(part, label, [PlanLine(rest)]))
                return
        part = self.part_of(line.text, begins=looks) if looks or not line.depth or over else None
        if looks or part or (over and minutes_in(line.text)):
            self.found.append(PlanSection(part or self._timed(line.text), line.text))
        elif minutes_in(line.text) and (line.numbered or starts_with_time(line.text)):
            self.found.append(PlanSection("step", line.text))
        else:
            self.found[-1].blocks.append(line)

    @staticmethod
    def _timed(label: str) -> PlanPart | None:
        """What has a length of time for a heading is a step of the lesson."""
        return "step" if minutes_in(label) else None

    def read_table(self, table: PlanTable) -> None:
        """A table of labels, of times, of cells that each hold a part, or one of its own."""
        rows = [[cell for cell in row if cell] for row in table.rows]
        rows = [row for row in rows if row]
        named = [row for row in rows if len(row) > 1 and self.part_of(row[0][0].text, begins=True)]
        timed = [row for row in rows if len(row) > 1 and minutes_in(row[0][0].text)]
        labelled = [line for row in rows for cell in row for line in cell if self._is_labelled(line)]
        if self._names_columns(table.rows):
            self._read_columns(*table.rows)
        elif (2 * len(named) >= len(rows) and len(named) > 1) or 2 * len(timed) > len(rows):
            for row in rows:
                self._read_row(row, timed=row in timed)
            self.found.append(PlanSection(None, ""))  # what comes after is not the last row's
        elif len(labelled) > 1 or all(len(row) == 1 for row in rows):
            for row in rows:
                for cell in row:
                    for line in cell:
                        self.read_line(line)
        else:
            self.found[-1].blocks.append(table)

    def _names_columns(self, rows: Sequence[Sequence[Sequence[PlanLine]]]) -> bool:
        """Whether the first row says what each column holds: most of its cells, and no other row's, name a part."""
        if len(rows) < 3 or len(rows[0]) < 3:
            return False
        head, *others = ([self.part_of(cell[0].text, begins=True) for cell in row if len(cell) == 1] for row in rows)
        return 2 * sum(map(bool, head)) > len(rows[0]) and not any(
            2 * sum(map(bool, row)) > len(head) for row in others
        )

    def _read_columns(self, head: Sequence[Sequence[PlanLine]], *rows: Sequence[Sequence[PlanLine]]) -> None:
        """A table with named columns: a row is a step, or a lesson; what belongs to neither goes where its column says."""
        labels = [" ".join(line.text for line in cell) for cell in head]
        self.found[-1].blocks.append(PlanLine(", ".join(labels)))
        for first, *cells in rows:
            name = " ".join(line.text for line in first)
            step = PlanSection("step", name if minutes_in(name) else f"{labels[0]} {name}")
            self.found.append(step)
            unnamed = [""] * (len(cells) + 1 - len(labels))
            for label, cell in zip([*labels[1:], *unnamed], cells, strict=False):
                part = self.part_of(label, begins=True)
                if part in _OF_ROWS or "/" in label:  # two parts in one
                    step.blocks += [PlanLine(f"{label}: {line.text}" if label else line.text) for line in cell]
                elif cell:
                    self.found.append(PlanSection(part, label, [*cell]))
        self.found.append(PlanSection(None, ""))

    def _is_labelled(self, line: PlanLine) -> bool:
        found = _LABELLED.fullmatch(line.text)
        return bool(found and self.part_of(found["label"], begins=True))

    def _read_row(self, row: list[tuple[PlanLine, ...]], *, timed: bool) -> None:
        head, *cells = row
        part = "step" if timed else self.part_of(head[0].text, begins=True)
        if part:
            self.found.append(PlanSection(part, head[0].text, [*head[1:]]))
        else:
            self.found[-1].blocks += head
        self.found[-1].blocks += [line for cell in cells for line in cell]


def _run_in(text: str) -> tuple[str, str]:
    """A heading in capitals and the text that goes on after it in its line; nothing after it where there is none such."""
    words = text.split()
    label = [*takewhile(lambda word: word.upper() == word, words)]
    letters = sum(sign.isalpha() for word in label for sign in word)
    return (" ".join(label), " ".join(words[len(label) :])) if letters >= _SHORTEST_IN_CAPITALS else (text, "")


def _looks_like_heading(line: PlanLine) -> bool:
    few = len(line.text.split()) <= _LONGEST_HEADING
    letters = [sign for sign in line.text if sign.isalpha()]
    return few and (line.bold or (len(letters) > 3 and line.text.isupper())) and bool(letters)


def texts(sections: Iterable[PlanSection]) -> Iterator[str]:
    """All there is to read, headings too."""
    for section in sections:
        yield section.heading
        yield from (line.text for line in section.lines)
