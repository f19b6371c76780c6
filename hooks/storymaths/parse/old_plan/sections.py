"""Finds the parts of an old plan by what teachers call them: as headings, before a colon, or at the left of a table."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field

from ...model.old_plans import OldPlanWords, PlanPart
from .docx import lines_of
from .lines import PlanBlock, PlanLine, PlanTable
from .times import minutes_in, starts_with_time, without_times

_LONGEST_HEADING = 12
"""Words of a heading that is one only by its look, or of a label before a colon."""
_LABELLED = re.compile(r"(?P<label>[^:\t]{1,70}?)\s*(?::|\t)\s*(?P<rest>.+)", re.DOTALL)
_NUMBER = re.compile(r"^\W*\d{1,2}[.)]\s")
_NO_LETTER = re.compile(r"[\W_]+")


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
    for block in blocks:
        if isinstance(block, PlanTable):
            finder.read_table(block)
        else:
            finder.read_line(block)
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

    def read_line(self, line: PlanLine) -> None:
        """A line: a heading, a label with its text, or more of what came before."""
        looks = line.heading or (not line.depth and _looks_like_heading(line))
        labelled = _LABELLED.fullmatch(line.text)
        if labelled and len(labelled["label"].split()) <= _LONGEST_HEADING:
            label, rest = labelled["label"], labelled["rest"]
            part = self.part_of(label, begins=True) or self._timed(label)
            if part and not (looks and part == "kept"):
                self.found.append(PlanSection(part, label, [PlanLine(rest)]))
                return
        part = self.part_of(line.text, begins=looks) if looks or not line.depth else None
        if looks or part:
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
        if (2 * len(named) >= len(rows) and len(named) > 1) or 2 * len(timed) > len(rows):
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


def _looks_like_heading(line: PlanLine) -> bool:
    few = len(line.text.split()) <= _LONGEST_HEADING
    letters = [sign for sign in line.text if sign.isalpha()]
    return few and (line.bold or (len(letters) > 3 and line.text.isupper())) and bool(letters)


def texts(sections: Iterable[PlanSection]) -> Iterator[str]:
    """All there is to read, headings too."""
    for section in sections:
        yield section.heading
        yield from (line.text for line in section.lines)
