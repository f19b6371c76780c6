"""A command: the heads of sessions emptied, and how much of what their authors had there is proposed again, by field.

``.venv/bin/python tests/bench/bench_propose.py`` reads ``content/``. Every second book, from the first on, is what the
proposals were mended by; the others are held back. ``--missed`` prints, of the first sort of book only, what is not
given back and what is too much.

A misconception counts as given back where half its words are; a version where it is of the same sort (the same, other
numbers, left out); the time to prepare where it is within five minutes. All else must be equal.
"""

from __future__ import annotations

import argparse
import re
import sys
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parent.parent.parent
sys.path[:0] = [str(ROOT / "hooks")]

from storymaths.edits.apply import apply  # noqa: E402
from storymaths.edits.edit import EditRefused, RemoveItem  # noqa: E402
from storymaths.model.collection import Collection  # noqa: E402
from storymaths.model.document import Document  # noqa: E402
from storymaths.model.session import Session  # noqa: E402
from storymaths.parse.collection import read_collection  # noqa: E402
from storymaths.parse.document import FENCE  # noqa: E402
from storymaths.parse.reference import read_reference  # noqa: E402
from storymaths.parse.yaml_text import load  # noqa: E402
from storymaths.propose.table import proposals  # noqa: E402

EMPTIED = (
    "minutes", "objectives", "revisits", "words", "symbols", "stem_sentences", "misconceptions", "materials", "cautions",
)  # fmt: skip
_PREPARATION = re.compile(r"about (\d+) minutes")
_WORD = re.compile(r"[a-z]+")
Values = dict[str, set[Any]]


def emptied(text: str, raw: Mapping[str, Any]) -> str:
    """The session without what is proposed."""
    paths = [(name,) for name in EMPTIED if name in raw]
    more = [("bends", year, "activities") for year, bend in raw.get("bends", {}).items() if "activities" in bend]
    for path in (*paths, *more):
        try:
            text = apply(text, RemoveItem(path))
        except EditRefused as refused:
            print(f"{path}: {refused}")
    return _PREPARATION.sub("a while", text, count=1)


def values_of(raw: Mapping[str, Any], body: str) -> Values:
    """What stands in the fields that are emptied."""
    found: Values = {field: set() for field in FIELDS}
    found["minutes"] = {raw["minutes"]} if isinstance(raw.get("minutes"), int) else set()
    for framework, claims in (raw.get("objectives") or {}).items():
        for claim in claims:
            code, parts = next(iter(claim.items())) if isinstance(claim, dict) else (claim, [])
            found["objectives"].add((framework, code))
            found["objectives, parts"] |= {(code, part) for part in ([parts] if isinstance(parts, str) else parts)}
    for framework, codes in (raw.get("revisits") or {}).items():
        found["revisits"] |= {(framework, code if isinstance(code, str) else next(iter(code))) for code in codes}
    for name in ("words", "symbols"):
        for sort in ("new", "again"):
            found[f"{name}.{sort}"] = set((raw.get(name) or {}).get(sort) or ())
    for one in raw.get("materials") or ():
        found["materials"].add(one["item"])
        found["materials, with count"].add((one["item"], one.get("count", 1), one.get("per", "class")))
    found["cautions"] = {one["risk"] for one in raw.get("cautions") or ()}
    found["stem_sentences"] = {one.casefold().rstrip(".") for one in raw.get("stem_sentences") or ()}
    found["misconceptions"] = {f"{one['says']} {one['shows']}" for one in raw.get("misconceptions") or ()}
    titles = re.findall(r"```maths\n(.*?)```", body, re.DOTALL)
    for year, bend in (raw.get("bends") or {}).items():
        for title in titles:
            fields = load(title)[0]
            name = fields.get("id") or fields.get("title")
            choice = (bend.get("activities") or {}).get(name, "left out")
            found["bends"].add((year, name, choice if choice in ("same", "left out") else "numbers"))
    said = _PREPARATION.search(body.partition("\n## ")[0])
    found["preparation"] = {int(said[1])} if said else set()
    return found


FIELDS = (
    "minutes", "objectives", "objectives, parts", "revisits", "words.new", "words.again", "symbols.new", "symbols.again",
    "stem_sentences", "misconceptions", "materials", "materials, with count", "cautions", "bends", "preparation",
)  # fmt: skip


def raw_and_body(text: str) -> tuple[Mapping[str, Any], str]:
    """The front matter's data, and what stands under it."""
    found = FENCE.match(text)
    assert found
    return load(found[1])[0], text[found.end() :]


def filled(collection: Collection, page: Document[Session]) -> tuple[Values, Values]:
    """What the author has, and what is proposed."""
    text = (ROOT / page.path).read_text("utf-8")
    raw, body = raw_and_body(text)
    bare = emptied(text, raw)
    made = bare
    for one in proposals(collection, page.path, bare):
        if one.edit is not None:
            made = apply(made, one.edit)
    return values_of(raw, body), values_of(*raw_and_body(made))


def given_back(field: str, wanted: set[Any], got: set[Any]) -> tuple[int, int]:
    """How many of the author's values are given back, and how many of the proposed are hers."""
    if field == "preparation":
        near = any(abs(a - b) <= 5 for a in wanted for b in got)
        return int(near), int(near)
    if field == "misconceptions":
        back = [one for one in wanted if any(_alike(one, other) for other in got)]
        return len(back), sum(any(_alike(one, other) for other in wanted) for one in got)
    return len(wanted & got), len(wanted & got)


def _alike(one: str, other: str) -> bool:
    words, others = ({*_WORD.findall(text.lower())} for text in (one, other))
    return 2 * len(words & others) >= min(len(words), len(others))


def missed(path: str, wanted: Values, got: Values) -> Iterator[str]:
    """What is lacking and what is too much in one session."""
    for field in FIELDS:
        if wanted[field] != got[field]:
            yield f"{path} {field}: − {sorted(map(str, wanted[field] - got[field]))} + {sorted(map(str, got[field] - wanted[field]))}"


def told(name: str, sessions: Sequence[tuple[Values, Values]]) -> Iterator[str]:
    """The table of some sessions."""
    yield f"{name}: {len(sessions)} sessions"
    sums = [0, 0, 0, 0]
    for field in FIELDS:
        back = hers = authors = proposed = 0
        for wanted, got in sessions:
            one, other = given_back(field, wanted[field], got[field])
            back, hers = back + one, hers + other
            authors, proposed = authors + len(wanted[field]), proposed + len(got[field])
        yield _line(field, back, authors, hers, proposed)
        if "," not in field:
            sums = [a + b for a, b in zip(sums, (back, authors, hers, proposed), strict=True)]
    yield _line("all", *sums)


def _line(field: str, back: int, authors: int, hers: int, proposed: int) -> str:
    share, right = back / max(authors, 1), hers / max(proposed, 1)
    return f"  {field:24}{back:5} of {authors:4} ({share:4.0%}); {hers:4} of {proposed:4} proposed ({right:4.0%})"


def main() -> None:
    """Prints both tables."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--missed", action="store_true")
    parser.add_argument("--mended-only", action="store_true")
    options = parser.parse_args()
    collection = read_collection(ROOT, read_reference(ROOT))
    books = sorted(collection.books)
    for name, some in (("mended by", books[::2]), ("held back", books[1::2])):
        if name == "held back" and options.mended_only:
            continue
        pages = [page for book in some for page in collection.sessions_of(book)]
        sessions = [filled(collection, page) for page in pages]
        if options.missed and name == "mended by":
            for page, one in zip(pages, sessions, strict=True):
                print("\n".join(missed(page.path[14:-3], *one)))
        print("\n".join(told(f"{name} ({', '.join(some)})", sessions)))


if __name__ == "__main__":
    main()
