"""Something wrong in the content, told so that its author can put it right."""

from __future__ import annotations

from dataclasses import dataclass, field

from .program_version import FIRST_VERSION


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A spot in a file: path from the project root, line and column, both counted from 1."""

    path: str
    line: int = 1
    column: int = 1

    @classmethod
    def of(cls, path: str, text: str, at: int) -> Place:
        """The spot of a position in the text of a whole file."""
        before = text[:at]
        return cls(path, before.count("\n") + 1, len(before) - before.rfind("\n"))

    def __str__(self) -> str:
        return f"{self.path}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One thing to mend: where it is, which rule it breaks, what is wrong and what to do."""

    place: Place
    rule: str
    message: str
    fix: str
    since: str = field(default=FIRST_VERSION, compare=False)
    """The version that brought its rule."""

    def __str__(self) -> str:
        return f"{self.place}  {self.rule}\n  {self.message}\n  Fix: {self.fix}"

    def as_record(self) -> dict[str, str | int]:
        """The problem as plain data, for machines."""
        return {
            "path": self.place.path,
            "line": self.place.line,
            "column": self.place.column,
            "rule": self.rule,
            "message": self.message,
            "fix": self.fix,
        }
