"""The words of a page gathered into one string: those its schema says are a pupil's, and those of its body.

What it says to adults alone, such as notes on what to get ready, is gathered apart.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from itertools import accumulate
from typing import Any

from ..model.body import Body, Mark, Run, Runs
from ..model.fields import Audience
from ..model.names import PRINTS_NOTHING, Prints
from ..model.page_fields import PageFields
from ..model.prose import BODY, Loc, Passage, Prose
from .audience import Plan, plan_of
from .body import read_body, read_text, with_tables

_SEPARATOR = "\n\n"
_MARKS = ("](", "<", "`", "*", "&", "\\", "\n")
CODE = " ` "
"""What stands in prose for words shown as they are."""
BROKEN_LINE = "\u2028\n"
"""A line end that its author wants; any other is a space to a reader."""
_WRONG = {True: "[", False: "]{wrong}"}


class PageReader:
    """Reads the words of one page when they are first asked for."""

    def __init__(self, raw: Mapping[str, Any], schema: type[PageFields], prints: Prints = PRINTS_NOTHING) -> None:
        self._raw, self._schema, self._prints = raw, schema, prints

    def read_content(self, body: str, line: int) -> Body:
        """The blocks of a body that starts on a line of its file."""
        return with_tables(read_body(body, line), self._prints.tables) if self._prints.tables else read_body(body, line)

    @cached_property
    def front(self) -> list[str]:
        """The pupils' texts of the front matter as they are written."""
        return [text for _, texts in self._parts for text in texts]

    @cached_property
    def _parts(self) -> list[tuple[Passage, list[str]]]:
        """The texts of each field, and of each year of the bends."""
        plan, found = plan_of(self._schema), list[tuple[Passage, list[str]]]()
        for key, value in self._raw.items():
            if further := plan.under(key):
                years = value.items() if key == "bends" and value.__class__ is dict else ()
                parts = [(year_of_bend(name), bend, further.values or further) for name, bend in years]
                for year, part, inner in parts or [(None, value, further)]:
                    texts: list[str] = []
                    _take(part, inner, texts)
                    found.append((Passage(0, (key,), year), texts))
        return found

    def gather_prose(self, content: Body) -> Prose:
        """All prose of the page: its front matter, then its body."""
        front, parts, at = list[str](), list[Passage](), 0
        written = _SEPARATOR.join(self.front)
        marks = [mark for mark in _MARKS if mark in written]
        for part, texts in self._parts:
            parts.append(part._replace(start=at))
            read = [words_in(text, marks) for text in texts] if marks else texts
            front += read
            at += sum(map(len, read)) + len(_SEPARATOR) * len(read)
        parts.append(Passage(at, BODY, None))
        lines = [_prose_of(runs) for runs in content.lines]
        text = _SEPARATOR.join((*front, "", *lines))
        return Prose(text, parts, lambda: list(self._passages(front, content, lines)))

    def gather_notes(self) -> Prose:
        """What the front matter says to adults alone."""
        plan, texts = plan_of(self._schema, Audience.ADULTS), list[str]()
        _take(self._raw, plan, texts)
        words = [words_in(text) for text in texts]

        def passages() -> list[Passage]:
            starts = accumulate((len(text) + len(_SEPARATOR) for text in words), initial=0)
            return [
                Passage(start, loc, year)
                for start, (loc, year) in zip(starts, _locs(self._raw, plan, (), None), strict=False)
            ]

        return Prose(_SEPARATOR.join(words), [Passage(0, (), None)], passages)

    def _passages(self, front: Sequence[str], content: Body, lines: Sequence[str]) -> Iterator[Passage]:
        """Where each text starts in what they are joined to."""
        at = 0
        for (loc, year), text in zip(_locs(self._raw, plan_of(self._schema), (), None), front, strict=True):
            yield Passage(at, loc, year)
            at += len(text) + len(_SEPARATOR)
        at += len(_SEPARATOR)
        for runs, text in zip(content.lines, lines, strict=True):
            line = runs[0].line if runs else 0
            for part in text.split("\n"):
                yield Passage(at, BODY, None, line)
                at, line = at + len(part) + 1, line + 1
            at += len(_SEPARATOR) - 1


def words_in(text: str, marks: Sequence[str] = _MARKS) -> str:
    """A text of front matter or data without its marks, of which it may hold some."""
    if not any(mark in text for mark in marks):
        return text
    return _SEPARATOR.join(_prose_of(runs) for runs in read_text(text).lines)


def _prose_of(runs: Runs) -> str:
    """The words of a line; code and HTML are none, and what is wrong on purpose is marked as its author marks it."""
    if len(runs) == 1 and runs[0].kind == "words" and not runs[0].marks:
        return runs[0].text
    parts: list[str] = []
    wrong: Mark | None = None
    for run in runs:
        now = next((mark for mark in run.marks if mark.name == "wrong"), None)
        if now is not wrong:
            parts.append(_WRONG[now is not None])
            wrong = now
        parts.append(_words_of_run(run))
    return "".join(parts) + (_WRONG[False] if wrong else "")


def _words_of_run(run: Run) -> str:
    if run.kind in ("code", "html"):
        return (CODE if run.kind == "code" else " ") + "\n" * run.text.count("\n")
    return BROKEN_LINE if run.kind == "break" and run.title == "hard" else run.text


def _take(value: Any, plan: Plan, texts: list[str]) -> None:
    if value.__class__ is str:
        texts.append(value)
    elif value.__class__ is dict:
        for key, inner in value.items():
            if further := plan.under(key):
                _take(inner, further, texts)
    elif value.__class__ is list:
        for inner in value:
            _take(inner, plan, texts)


def _locs(value: Any, plan: Plan, loc: Loc, year: int | None) -> Iterator[tuple[Loc, int | None]]:
    """Where each text stands and the year it is written for, in the order ``_take`` finds them."""
    if value.__class__ is str:
        yield loc, year
    elif value.__class__ is dict:
        for key, inner in value.items():
            if further := plan.under(key):
                yield from _locs(inner, further, (*loc, key), year_of_bend(key) if loc == ("bends",) else year)
    elif value.__class__ is list:
        for index, inner in enumerate(value):
            yield from _locs(inner, plan, (*loc, index), year)


def year_of_bend(key: Any) -> int | None:
    """The year a key of ``bends`` names; None where it names none."""
    return 0 if key == "Reception" else key if isinstance(key, int) else None
