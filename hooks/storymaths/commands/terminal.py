"""What the command shows: problems as text, JSON or annotations, and a progress line where a person watches."""

from __future__ import annotations

import errno
import json
import os
import re
import sys
from collections.abc import Sequence
from typing import TextIO

from ..model.problem import Problem
from ..model.program_version import WARNED

_ACTS = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028-\u202e\u2060-\u206f]")


def _spelt_out(sign: re.Match[str]) -> str:
    return f"<U+{ord(sign.group()):04X}>"


def spell_out(text: str) -> str:
    """A text with the signs that would act on the screen spelt out."""
    return _ACTS.sub(_spelt_out, text)


def as_text(problems: Sequence[Problem], warnings: Sequence[Problem] = ()) -> str:
    """The report for people, one problem below the other, its signs spelt out; then the warnings, under what they are."""
    told = [spell_out(str(problem)) for problem in problems]
    if warnings:
        told += [*([""] if told else []), f"{count_warnings(len(warnings))}. {WARNED}"]
        told += [spell_out(f"{warning}\n  New in: version {warning.since}") for warning in warnings]
    return "\n".join(told)


def as_json(problems: Sequence[Problem], warnings: Sequence[Problem] = ()) -> str:
    """A list of ``{path, line, column, rule, message, fix}``; a warning says so with ``warning`` and is listed last."""
    told = [problem.as_record() for problem in problems]
    told += [{**warning.as_record(), "warning": True, "since": warning.since} for warning in warnings]
    return json.dumps(told, ensure_ascii=False, indent=2)


def as_annotations(problems: Sequence[Problem], warnings: Sequence[Problem] = ()) -> str:
    """Workflow commands that a code host shows beside the line, as GitHub Actions documents them."""
    return "\n".join(
        f"::{level} file={_property(p.place.path)},line={p.place.line},col={p.place.column},"
        f"title={_property(p.rule)}::{_data(f'{p.message} Fix: {p.fix}')}"
        for level, found in (("error", problems), ("warning", warnings))
        for p in found
    )


def _data(text: str) -> str:
    return spell_out(text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A"))


def _property(text: str) -> str:
    return _data(text).replace(":", "%3A").replace(",", "%2C")


def count_problems(problems: int) -> str:
    """How many there are, in words."""
    return "1 problem" if problems == 1 else f"{problems} problems"


def say_why(error: OSError) -> str:
    """What a disk would not do, in a sentence."""
    if error.errno in (errno.ENOSPC, errno.EDQUOT, errno.EFBIG):
        return "There is no room left on the disk."
    file = spell_out(str(error.filename or "A file"))
    if os.name == "nt" and isinstance(error, (PermissionError, FileExistsError)):  # what is open there cannot be moved
        return (
            f"{file} cannot be changed. Is it, or a file in it, open in another program? Close it there, and try again."
        )
    return f"{file} cannot be used: {(error.strerror or str(error) or 'no reason was given').lower()}."


def in_megabytes(size: int) -> str:
    """A size as people read it; a megabyte is a million bytes."""
    return f"{size / 1_000_000:.1f} MB"


def count_warnings(warnings: int) -> str:
    """How many there are, in words."""
    return "1 warning" if warnings == 1 else f"{warnings} warnings"


FORMATS = {"text": as_text, "json": as_json, "github": as_annotations}


_WIDE = 40
"""More letters than the line that counts has."""


class ProgressLine:
    """A line that counts pages while they are read; silent where nobody watches."""

    def __init__(self, out: TextIO = sys.stderr, every: int = 25) -> None:
        self._out, self._every, self._shown = out, every, False

    def __call__(self, done: int, of: int) -> None:
        if self._out.isatty() and of > self._every and (done % self._every == 0 or done == of):
            self._out.write(f"\rReading page {done} of {of} ")
            self._shown = True
            self._out.flush()

    def clear(self) -> None:
        """Takes the line away."""
        if self._shown:
            self._out.write(f"\r{' ' * _WIDE}\r")  # not every terminal knows the sign that clears a line
            self._out.flush()
