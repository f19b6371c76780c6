"""An author's Markdown as it was read, once: blocks, and the runs of text in them, each with its line.

Everybody who asks what stands in a page's body, or in a text of its front matter, asks these: no one else reads Markdown.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from operator import itemgetter
from typing import Literal, TypeAlias, TypeVar

from .address import slug


@dataclass(frozen=True, slots=True)
class Mark:
    """What some runs of text share: a way of speaking, a link, or that it is wrong on purpose."""

    name: Literal["strong", "emphasis", "link", "wrong"]
    target: str = ""
    """Where a link leads, as written."""
    title: str = ""


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text of one sort: words, code, the words of a picture, HTML, or the end of a line (``break``)."""

    kind: Literal["words", "code", "picture", "html", "break"]
    text: str
    line: int
    marks: tuple[Mark, ...] = ()
    """The outermost first."""
    target: str = ""
    """Where a picture comes from, as written."""
    title: str = ""


Runs: TypeAlias = tuple[Run, ...]


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Some lines of text."""

    line: int
    runs: Runs


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading, and the name by which a link finds it."""

    line: int
    runs: Runs
    level: int
    anchor: str

    @property
    def words(self) -> str:
        """What it says, without marks."""
        return words_of_runs(self.runs)


@dataclass(frozen=True, slots=True)
class List:
    """Items, numbered from ``first`` if they are numbered; ``tight`` where they hold no paragraphs of their own."""

    line: int
    items: tuple[tuple[Block, ...], ...]
    first: int | None
    tight: bool


@dataclass(frozen=True, slots=True)
class Quotation:
    """What is quoted."""

    line: int
    blocks: tuple[Block, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table: its head and its rows, each of cells, and the side each column is set to."""

    line: int
    head: tuple[Runs, ...]
    rows: tuple[tuple[Runs, ...], ...]
    sides: tuple[Literal["", "left", "right", "center"], ...]


ACTIVITY = "maths"
"""How an activity is marked, after the three backticks."""


@dataclass(frozen=True, slots=True)
class Fence:
    """Data, or words shown as they are, between two fences; ``column`` is where the opening one stands."""

    line: int
    column: int
    info: str
    text: str
    closed: bool

    @property
    def is_activity(self) -> bool:
        """Whether the data is an activity, and be its mark misspelt."""
        return self.info.lower() in (ACTIVITY, "math")


@dataclass(frozen=True, slots=True)
class Markup:
    """Lines of HTML, comments among them."""

    line: int
    text: str


@dataclass(frozen=True, slots=True)
class Rule:
    """A line across the page."""

    line: int


Block: TypeAlias = Paragraph | Heading | List | Quotation | Table | Fence | Markup | Rule
B = TypeVar("B", bound=Block)
_RELATIONS = ("=", "≠", "<", ">", "≤", "≥", "≈")


@dataclass(frozen=True, slots=True)
class Section:
    """A heading of the second level and what stands under it."""

    heading: Heading
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Body:
    """The blocks of a text, in order."""

    blocks: tuple[Block, ...]

    def every(self, of: type[B]) -> Iterator[B]:
        """Every block of a sort, those inside others among them."""
        return (block for block in _deep(self.blocks) if isinstance(block, of))

    @cached_property
    def lines(self) -> tuple[Runs, ...]:
        """The runs of every block that holds text, in order."""
        return tuple(runs for block in _deep(self.blocks) for runs in _texts(block))

    @cached_property
    def activities(self) -> tuple[Fence, ...]:
        """The data of its activities."""
        return tuple(fence for fence in self.every(Fence) if fence.is_activity)

    @cached_property
    def runs(self) -> tuple[Run, ...]:
        """Every run of text."""
        return tuple(run for line in self.lines for run in line)

    @cached_property
    def pictures(self) -> tuple[Run, ...]:
        """Every picture that is shown the Markdown way."""
        return tuple(run for run in self.runs if run.kind == "picture")

    @cached_property
    def links(self) -> tuple[tuple[Mark, int], ...]:
        """Every link of the Markdown way, and its line."""
        marked = [(mark, run.line) for run in self.runs if run.marks for mark in run.marks if mark.name == "link"]
        return tuple({id(mark): (mark, line) for mark, line in reversed(marked)}.values())[::-1]

    @cached_property
    def markup(self) -> tuple[tuple[str, int], ...]:
        """Every piece of HTML, and its line."""
        found = [(run.text, run.line) for run in self.runs if run.kind == "html"]
        return tuple(sorted([*found, *((block.text, block.line) for block in self.every(Markup))], key=itemgetter(1)))

    @property
    def opening(self) -> tuple[Block, ...]:
        """What stands above the first section."""
        return self._parts[0]

    @property
    def sections(self) -> tuple[Section, ...]:
        """Its sections, in order."""
        return self._parts[1]

    @cached_property
    def _parts(self) -> tuple[tuple[Block, ...], tuple[Section, ...]]:
        starts = [at for at, block in enumerate(self.blocks) if isinstance(block, Heading) and block.level == 2]
        ends = [*starts, len(self.blocks)]
        found = []
        for at, end in pairwise(ends):
            heading = self.blocks[at]
            assert isinstance(heading, Heading)
            found.append(Section(heading, self.blocks[at + 1 : end]))
        return self.blocks[: ends[0]], tuple(found)


def words_of_runs(runs: Runs) -> str:
    """The words of some runs alone: no marks, no HTML."""
    return "".join(run.text for run in runs if run.kind != "html")


def name_headings(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
    """The blocks with a name of its own for each heading that has none."""
    taken: dict[str, int] = {}
    return tuple(_named(block, taken) if isinstance(block, Heading) else block for block in blocks)


def _named(heading: Heading, taken: dict[str, int]) -> Heading:
    return heading if heading.anchor else replace(heading, anchor=_free(slug(heading.words), taken))


def _free(name: str, taken: dict[str, int]) -> str:
    """The name, with a number after it if a heading above has it already. ``taken`` counts how often each was asked."""
    free = name
    while free in taken:
        taken[name] += 1
        free = f"{name}-{taken[name]}"
    taken[free] = 1
    return free


def _deep(blocks: tuple[Block, ...]) -> Iterator[Block]:
    for block in blocks:
        yield block
        if isinstance(block, List):
            for item in block.items:
                yield from _deep(item)
        elif isinstance(block, Quotation):
            yield from _deep(block.blocks)


def _texts(block: Block) -> Iterator[Runs]:
    if isinstance(block, (Paragraph, Heading)):
        yield block.runs
    elif isinstance(block, Table):
        for row in (block.head, *block.rows):
            yield from _cells(row)


def _cells(row: tuple[Runs, ...]) -> Iterator[Runs]:
    """The cells of a row; where a sign such as = has a cell of its own, the row is one line that says something."""
    if any(len(cell) == 1 and cell[0].text.strip() in _RELATIONS for cell in row):
        joined: list[Run] = []
        for cell in filter(None, row):
            joined += [Run("words", " | ", cell[0].line), *cell] if joined else cell
        yield tuple(joined)
    else:
        yield from row
