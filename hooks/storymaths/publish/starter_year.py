"""A session's starter as its year needs it: no longer than a class sits together, and with what is set out for the week."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from ..edits.apply import apply
from ..edits.edit import SetValue
from ..parse.yaml_text import BrokenYaml, load

_SET_OUT = re.compile(r"^# (set_out:).*\n((?:#   .*\n)+)", re.MULTILINE)


def for_year(root: Path, year: str, text: str) -> str:
    """A started page with ``set_out`` offered as a field, and minutes shared among its steps, where the year asks for it."""
    limits = _limits(root, year)
    data = load(text.split("---\n")[1])[0]
    if limits.get("sets_out"):
        text = _SET_OUT.sub(lambda found: f"{found[1]}\n{found[2].replace('#   ', '  ')}", text)
    longest, minutes, steps = limits.get("longest_together"), data.get("minutes"), data.get("steps", ())
    if isinstance(longest, int) and isinstance(minutes, int) and minutes > longest:
        text = apply(text, SetValue(("minutes",), longest))
        for at in range(len(steps)):
            share = longest // len(steps) + (at < longest % len(steps))
            text = apply(text, SetValue(("steps", at, "minutes"), share))
    return text


def _limits(root: Path, year: str) -> Mapping[str, Any]:
    """What ``years.yaml`` says of a year; nothing where it cannot be read, which ``check`` tells."""
    try:
        rows = load((root / "site_data" / "years.yaml").read_text(encoding="utf-8"))[0]["years"]
        return next((row for row in rows if str(row["year"]) == year), {})
    except (OSError, UnicodeError, BrokenYaml, LookupError, TypeError):
        return {}
