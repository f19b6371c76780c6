"""A command: every value of every head set to another and back, and how many files are then the same bytes.

``.venv/bin/python tests/bench/bench_edits.py`` reads ``content/`` and the frozen collection; ``--every 5`` tries each
fifth value. The values tried are one word more, the same words backwards, and words that need quotes.
"""

from __future__ import annotations

import argparse
import datetime
import sys
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parent.parent.parent
sys.path[:0] = [str(ROOT / "hooks")]

from storymaths.edits.apply import apply  # noqa: E402
from storymaths.edits.edit import EditRefused, SetValue  # noqa: E402
from storymaths.parse.document import FENCE  # noqa: E402
from storymaths.parse.yaml_text import load  # noqa: E402

WAYS: dict[str, Callable[[str], str]] = {
    "one word more": lambda text: f"{text} more",
    "its words backwards": lambda text: " ".join(reversed(f"{text} more".split())),
    "words that need quotes": lambda text: f"{text}: so # much",
}


def scalars(raw: Any, above: tuple[str | int, ...] = ()) -> Iterator[tuple[tuple[str | int, ...], Any]]:
    """Every word and number, and its path."""
    if isinstance(raw, dict | list):
        for step, inner in raw.items() if isinstance(raw, dict) else enumerate(raw):
            yield from scalars(inner, (*above, step))
    else:
        yield above, raw


def another(value: Any, way: Callable[[str], str]) -> Any:
    """Another value of the same sort."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return value + 1
    return value + datetime.timedelta(days=1) if isinstance(value, datetime.date) else way(str(value))


def try_head(text: str, way: Callable[[str], str], every: int) -> Counter[str]:
    """What came of the values of one head."""
    found = FENCE.match(text)
    assert found
    told = Counter[str]()
    for path, value in list(scalars(load(found[1])[0]))[::every]:
        try:
            back = apply(apply(text, SetValue(path, another(value, way))), SetValue(path, value))
            told["same" if back == text else "other bytes"] += 1
        except EditRefused:
            told["refused"] += 1
    return told


def main() -> None:
    """Prints a line for each collection and way."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--every", type=int, default=1)
    every = parser.parse_args().every
    for folder in (ROOT / "content", ROOT / "tests" / "collections" / "plover-quay" / "content"):
        for name, way in WAYS.items():
            heads = [try_head(page.read_text("utf-8"), way, every) for page in sorted(folder.rglob("*.md"))]
            whole = sum(set(head) == {"same"} for head in heads)
            told = sum(heads, Counter[str]())
            print(f"{folder.relative_to(ROOT)}, {name}: {whole} of {len(heads)} heads; {dict(told)}", flush=True)


if __name__ == "__main__":
    main()
