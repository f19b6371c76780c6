"""What becomes of a book's pages when a fact of its cast changes: each number, time and word of each character, one at a time.

``python tests/bench/mutate_facts.py [PROJECT] [--book ID] [--list]``. A line hangs on a fact where it names it; where it has
the character and the number in one sentence; where a sum has the number among others of the cast; where it lists three
of the cast's numbers with it; or where it has the total of all. A number is one more, a time a minute
later, a word another word of the same fact; a line hangs on a time too where it has it with another of the cast's, or has the
minutes between two times of a character with its name, or of three characters. Each such line is then one of four: what it prints has
followed; ``check`` refuses it; ``where`` lists it; or it is false and silent. This reads lines by itself and knows nothing
of how ``where`` finds them. ``--list`` prints the silent ones.
"""

from __future__ import annotations

import argparse
import re
import sys
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import check_activities, work_out_pages
from storymaths.activities.page_bends import check_bends
from storymaths.activities.told_claims import check_words
from storymaths.activities.work_out import WorkedOut
from storymaths.check.rules import check_all
from storymaths.expression.number_words import ONES, TENS
from storymaths.model.book import Book, Character
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.naming.print_names import print_names
from storymaths.naming.where import lines_about
from storymaths.parse.collection import read_collection, read_page
from storymaths.parse.reference import read_reference

ROOT = Path(__file__).resolve().parents[2]
OUTCOMES = ("follows", "refused", "listed", "silent")
_WORTH = {**ONES, **TENS}
_NUMBERS = re.compile(
    rf"(?<![\w.\-/#:£])(?:\d+(?=(?:[kc]?m|k?g|mm|m?l|p)?(?![\w\-/:]|\.\d))|(?:{'|'.join(_WORTH)})(?![\w\-/:]|\.\d))",
    re.IGNORECASE,
)
_ONE = rf"\d+|{'|'.join(_WORTH)}"
_TIMES = re.compile(
    rf"\b(?:(\d\d?):(\d\d)|(half|quarter|{_ONE}) (?:minutes? )?(past|to) ({_ONE})|({_ONE}) o[’']clock)\b", re.IGNORECASE
)
_SUM = re.compile(r"\d+(?: [+−] \d+)+ [=≠<>] \d+(?: [+−] \d+)*|\d+ [=≠<>] \d+(?: [+−] \d+)+")
_NO_TEXT = re.compile(r"^ *(?:- )?\{?(?:minutes|pages?|number|date|year|also|group_size|picture|published)\b[^,}]*")
Told = Counter[tuple[str, str, int]]


def numbers(text: str) -> list[int]:
    """The numbers of a text, in digits and in words."""
    return [int(found) if found.isdigit() else _WORTH[found.lower()] for found in _NUMBERS.findall(text)]


def times(text: str) -> list[int]:
    """The times of a text, in minutes after twelve."""
    found = []
    for hours, minutes, part, way, hour, sharp in _TIMES.findall(text):
        told = {"half": 30, "quarter": 15}.get(part.lower()) or sum(numbers(part))
        at = (
            int(hours) * 60 + int(minutes)
            if hours
            else sum(numbers(hour or sharp)) * 60 + (-told if way == "to" else told)
        )
        found.append(at % 720)
    return found


def hangs(line: str, who: Character, fact: str, book: Book) -> bool:
    """Whether a line says something that is other when the fact is."""
    value = who.facts[fact]
    if re.search(rf"\[\[[^\]]*\b(?:{who.id}|all)\.{fact}\b", line):
        return True
    line = "" if line.lstrip().startswith("- { date:") else line  # what was changed once stays so
    line = _NO_TEXT.sub("", re.sub(r"\]\([^)]*\)|\[\[.*?\]\]", "", line))
    with_name = [part for part in re.split(r"[.!?;]", line) if who.name in part]
    if not isinstance(value, str):
        return _hangs_on_number(line, with_name, value, [one.facts.get(fact) for one in book.cast])
    if times(value):
        return _hangs_on_time(line, with_name, who, fact, book)
    return any(value.lower() in part.lower() for part in with_name)


def _hangs_on_number(line: str, with_name: Sequence[str], value: int, all_facts: Sequence[object]) -> bool:
    values = [one for one in all_facts if isinstance(one, int)]
    if any(value in numbers(part) for part in with_name):
        return True
    for found in _SUM.findall(line):
        there = numbers(found)
        if value in there and len(set(there) & set(values)) > 1:
            return True
    there = numbers(line)
    return (value in there and len(set(there) & set(values)) >= 3) or (sum(values) > 12 and sum(values) in there)


def _hangs_on_time(line: str, with_name: Sequence[str], who: Character, fact: str, book: Book) -> bool:
    (own,), there = times(str(who.facts[fact])), times(line)
    all_times = {time for one in book.cast for other in one.facts.values() for time in times(str(other))}
    if any(own in times(part) for part in with_name) or (own in there and len(set(there) & all_times) >= 2):
        return True
    long = _lengths(who, fact)
    if any(long & set(numbers(part)) for part in with_name):
        return True
    of_all = set().union(*(_lengths(one, fact) for one in book.cast if fact in one.facts))
    return bool(long & set(numbers(line))) and len(of_all & set(numbers(line))) >= 3


def _lengths(who: Character, fact: str) -> set[int]:
    """The minutes between a time of a character and its others."""
    (own,) = times(str(who.facts[fact]))
    return {abs(own - time) for other in who.facts.values() for time in times(str(other)) if time != own}


class Project:
    """A project that is read again with a page changed."""

    def __init__(self, root: Path) -> None:
        self.root, self.reference = root, read_reference(root)
        self.memory: Memory[WorkedOut] = Memory()
        self.whole = read_collection(root, self.reference)
        self.printed = print_names(self.whole, self.memory)

    def told(self, collection: Collection) -> Told:
        """What is told of each line, by rule."""
        activities = work_out_pages(collection, self.memory)
        found = {
            *check_all(collection), *check_activities(activities, collection.documents), *check_bends(collection, activities),
            *check_words(collection, activities),
        }  # fmt: skip
        return Counter((one.rule + one.message, one.place.path, one.place.line) for one in found)

    def of_book(self, book: str, record: str = "") -> Collection:
        """The pages of a book, with another record of it."""
        path = f"content/books/{book}/index.md"
        read = read_page(path, record.encode(), self.reference.limits.files) if record else None
        pages = [
            read if isinstance(read, Document) and page.path == path else page
            for page in self.whole.documents
            if f"/{book}/" in page.path or "/books/" not in page.path
        ]
        return print_names(replace(self.whole, documents=tuple(pages)), self.memory)


def place_of(path: str, text: str, number: int) -> str:
    """In what part of a book a line stands."""
    lines = text.split("\n")
    name = path.rpartition("/")[2].removesuffix(".md").rstrip("-0123456789")
    if lines[number - 1].startswith("!["):
        return "caption"
    front = next(at for at, line in enumerate(lines[1:], start=2) if line == "---")
    if number <= front:
        return f"{name}: front"
    fences = [line for line in lines[:number] if line.startswith("```")]
    return f"{name}: {'activity' if len(fences) % 2 else 'text'}"


def outcomes(project: Project, book: str) -> Iterator[tuple[str, str, str]]:
    """The place, the outcome and the line of everything that hangs on a number of a book's cast."""
    record = project.printed.books[book].fields
    folder = project.root / "content" / "books" / book
    texts = {
        f"content/books/{book}/{page.name}": page.read_text(encoding="utf-8") for page in sorted(folder.glob("*.md"))
    }
    before = project.told(project.of_book(book))
    for who in record.cast:
        for fact, value in who.facts.items():
            another = other_than(value, [one.facts.get(fact) for one in record.cast])
            if another is None:
                continue
            changed = changed_record(texts[f"content/books/{book}/index.md"], who, fact, another)
            new = project.told(project.of_book(book, changed)) - before
            refused = {(path, line) for _, path, line in new}
            listed = {(line.path, line.number): line.sort for line in lines_about(texts, record, who, fact)}
            yield from _of_fact(texts, record, who, fact, refused, listed)


def _of_fact(
    texts: Mapping[str, str],
    book: Book,
    who: Character,
    fact: str,
    refused: set[tuple[str, int]],
    listed: Mapping[tuple[str, int], str],
) -> Iterator[tuple[str, str, str]]:
    for path, text in texts.items():
        for number, line in enumerate(text.split("\n"), start=1):
            if ("facts: {" in line and path.endswith("/index.md")) or not hangs(line, who, fact, book):
                continue
            sort = listed.get((path, number), "")
            outcome = (
                "refused"
                if (path, number) in refused
                else "follows"
                if sort == "by name"
                else "listed"
                if sort
                else "silent"
            )
            yield place_of(path, text, number), outcome, f"{who.id}.{fact} {path}:{number}: {line.strip()[:150]}"


def other_than(value: int | str, of_all: Sequence[object]) -> int | str | None:
    """What a fact is changed to; None for true and false, and for a word where there is no other."""
    if isinstance(value, bool):
        return None
    if isinstance(value, int):
        return value + 1
    if times(value):
        hours, minutes = map(int, value.split(":"))
        return f"{hours}:{minutes + 1:02}"
    return next((one for one in of_all if isinstance(one, str) and one != value), None)


def changed_record(text: str, who: Character, fact: str, another: int | str) -> str:
    """The book's record with a fact of a character changed."""
    start = text.index(f"- id: {who.id}\n")
    said = re.compile(rf"\b{fact}: ((?:\"[^\"]*\"|'[^']*'|[^,}}]+))").search(text, start)
    assert said
    written = f'"{another}"' if isinstance(another, str) else str(another)
    return f"{text[: said.start(1)]}{written}{text[said.end(1) :]}"


def main(arguments: Sequence[str]) -> None:
    """Prints the shares by place."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("project", nargs="?", type=Path, default=ROOT)
    parser.add_argument("--book", default="")
    parser.add_argument("--list", action="store_true")
    given = parser.parse_args(arguments)
    project = Project(given.project)
    found: Counter[tuple[str, str]] = Counter()
    for book in [given.book] if given.book else sorted(project.printed.books):
        for place, outcome, line in outcomes(project, book):
            found[place, outcome] += 1
            found["all", outcome] += 1
            if given.list and outcome == "silent":
                print(line)
    places = sorted({place for place, _ in found}, key=lambda place: (place == "all", place))
    print(f"{'':20}" + "".join(f"{outcome:>16}" for outcome in OUTCOMES))
    for place in places:
        total = sum(found[place, outcome] for outcome in OUTCOMES)
        print(f"{place:20}" + "".join(f"{found[place, one]:>9} {found[place, one] / total:>5.0%} " for one in OUTCOMES))


if __name__ == "__main__":
    main(sys.argv[1:])
