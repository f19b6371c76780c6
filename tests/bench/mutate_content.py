"""How much of what a collection says in numbers is held by the checks: each number changed by one, one at a time.

``python tests/bench/mutate_content.py [PROJECT] [--each N] [--list] [--book NAME …]`` reads every page of a project's
books (default: this repository), changes a number in digits or in words by one, checks again, and counts by where the
number stood how often a new problem was told. ``--each`` takes so many of a page, the same each time; ``--list`` prints
each that nothing noticed. Numbers in names of files, addresses, dates, codes of objectives and before the items of a
list say nothing that could be untrue, and are left. A number that is named, ``[[ram.mass]]``, is counted apart.

Of the rest, three sorts say nothing that could be untrue, unless something else repeats it, and are counted apart too:
what is *set*, the value of a field that is no sentence and names neither a page nor an answer (minutes, how many of a
material, the numbers an activity is made of); what is *chosen*, a number of a question, or of a sentence that tells the
class or the teacher what to do (its first word is such a verb, or the class is its subject), or that makes a task harder
or easier, or of an example, or of minutes; and what is *wrong on purpose*, a misconception or a mark of one. Pages that
are named always say something. What is left is *said*, a story's numbers and a child's right answers among it.
"""

from __future__ import annotations

import argparse
import random
import re
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from storymaths.activities.memory import Memory
from storymaths.activities.on_pages import check_activities, work_out_pages
from storymaths.activities.page_bends import check_bends
from storymaths.activities.told_claims import check_words
from storymaths.activities.work_out import WorkedOut
from storymaths.check.rules import check_all
from storymaths.expression.number_words import ONES
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.names import names_in
from storymaths.naming.print_names import print_names
from storymaths.parse.collection import read_collection, read_page
from storymaths.parse.reference import read_reference

ROOT = Path(__file__).resolve().parents[2]
_WORDS = [word for word, worth in ONES.items() if 2 <= worth <= 19]  # "one" is more often no number
_NUMBER = re.compile(rf"(?<![\w.\-/#])(?:\d+|{'|'.join(_WORDS)})(?![\w\-/]|\.\w)", re.IGNORECASE)
_SAYS_NOTHING = re.compile(
    r"^ *(?:-? *)?(?:picture|cover|id|isbn|published|changed|kind|needs|book|with|file|version)\b|^ *[\w-]+: \[[\d]+[A-Z]"
    r"|england-|\d{4}-\d\d-\d\d|\]\("
)
"""Lines whose numbers are names, dates and codes."""
_MARKER = re.compile(r"\d+\. ")
"""What numbers the items of a list, which are numbered anew when they are drawn."""
_KEY = re.compile(r"( *(?:- )?)\{?([a-z_]+):(?: |$)")
_KEY_WITHIN = re.compile(r"[{,] ?([a-z_]+): ")


_SAID_BY_FIELDS = frozenset("pages page answers".split())
_FIELDS_OF_SENTENCES = frozenset(
    "title summary note ask hear listen_for says shows try harder easier access look_for answer alt numbers recording question "
    "why because see say_first if_hard if_easy stop_when what_it_is_for next put_out say notice text objects pictures symbols "
    "what rights_note name means stem_sentences rides_note sensitive".split()
)
"""Keys of front matter and activities whose values are sentences; all others but pages and answers hold what is set."""
_SETS_TASKS = frozenset("harder easier if_hard if_easy try question stop_when say ask put_out access".split())
_SENTENCE = re.compile(r"(?<=[.!?:])[\"”’)*_]*\s+|\n\s*\n|\n\s*(?=[-|#]|\d+\. )")
_TELLS_WHAT_TO_DO = re.compile(
    r"^[\W\d_]*(?:(?:then|now|next|last|first|so|and|or|in pairs|please|do not|on a sunday|in year \d|in reception)[,:]? )*(?:"
    r"add|agree|ask|begin|bring|build|buy|call|change|check|choose|clap|clear|climb|close|colour|come|compare|continue|copy|"
    r"count|cover|cut|deal|do|double|draw|end|feel|fetch|fill|find|finish|fold|gather|get|give|go|guess|halve|hand|hang|hear|"
    r"hide|hold|imagine|join|jump|keep|label|lay|leave|lend|let|lift|listen|look|make|mark|measure|mend|move|number|open|pick|"
    r"pin|place|play|point|pour|print|prove|push|put|read|repeat|roll|rub|rule|say|send|set|share|show|sit|slide|sort|stand|"
    r"start|stay|stick|stop|suppose|swap|take|talk|tap|tape|tear|tell|test|throw|tie|touch|try|turn|undo|use|wait|walk|watch|"
    r"weigh|whisper|work|write|all (?:say|sit|stand|show|put|write)|(?:everyone|everybody|they|whoever|you|we|"
    r"(?:the |two |three |four |five |six |some |other |both |all |these |more )*"
    r"(?:children|pairs|groups|partners|neighbours)|"
    r"(?:each|every|one|a|another|your|the) (?:child|pair|group|table|partner))\b"
    r"(?! (?:who|need|are|is|were|was|has|have|makes?|can|knows?|sees?)\b))\b",
    re.IGNORECASE,
)  # fmt: skip

_IS_AN_EXAMPLE = re.compile(r"\b(?:such as|for example)(?: [^.;:?!]{0,30})?[ \"“]$")
_LASTS = re.compile(r"(?:\d+|[a-z]+) minutes?\b", re.IGNORECASE)


def sort_of(text: str, mutant: Mutant) -> str:
    """Whether a number says something, or is set, chosen or wrong on purpose."""
    *_, field = mutant.stands_in.split(": ")
    outer = mutant.stands_in.split(": ")[0]
    if field in _SAID_BY_FIELDS:
        return "said"
    is_text = field in ("text", "picture")
    if not is_text and field not in _FIELDS_OF_SENTENCES:
        return "set"
    after = text[mutant.start : mutant.start + 80].split("\n", maxsplit=1)[0]
    if (field == "says" and outer == "misconceptions") or "]{wrong}" in after:
        return "wrong on purpose"
    if re.search(r"\bpages? (?:\d+(?:, | and | to |–|-))*$", text[max(0, mutant.start - 30) : mutant.start]):
        return "said"
    if _IS_AN_EXAMPLE.search(text, max(0, mutant.start - 40), mutant.start) or _LASTS.match(text, mutant.start):
        return "chosen"
    begin = max((match.end() for match in _SENTENCE.finditer(text, 0, mutant.start)), default=0)
    begin = begin if is_text else max(begin, text.rfind("\n", 0, mutant.start) + 1)
    rest = _SENTENCE.search(text, mutant.start)
    sentence = text[begin : rest.start() if rest else len(text)]
    sentence = sentence if is_text else sentence.split(": ", 1)[-1]
    if field in _SETS_TASKS or sentence.rstrip('"”’)*_ ').endswith("?") or _TELLS_WHAT_TO_DO.match(sentence):
        return "chosen"
    return "said"


@dataclass(frozen=True, slots=True)
class Mutant:
    """A number of a page, and what it is changed to."""

    start: int
    old: str
    new: str
    stands_in: str


def mutants(text: str) -> Iterator[Mutant]:
    """Every number of a page that says something."""
    at, outer, key, fenced = 0, "", "", False
    front = text.find("\n---", 3)
    kind = re.search(r"^kind: (\w+)", text, re.MULTILINE)
    for line in text.splitlines(keepends=True):
        in_front = at < front
        if line.startswith("```"):
            fenced, outer, key = not fenced, "activity", ""
        opens = _KEY.match(line) if in_front or fenced else None
        if opens:
            key = opens[2]
            outer = key if in_front and not opens[1] else outer
        for number in () if _SAYS_NOTHING.search(line) else _NUMBER.finditer(line):
            if not in_front and not fenced and number.start() == 0 and _MARKER.match(line):
                continue
            within = [match[1] for match in _KEY_WITHIN.finditer(line, 0, number.start())] if in_front or fenced else []
            inner = within[-1] if within else key
            if in_front or fenced:
                place = outer if inner == outer else f"{outer}: {inner}"
            else:
                place = f"{kind[1] if kind else 'page'}: {'picture' if line.startswith('![') else 'text'}"
            yield Mutant(at + number.start(), number[0], _by_one(number[0]), place)
        at += len(line)


def _by_one(number: str) -> str:
    if number.isdigit():
        return str(int(number) + 1)
    worth = ONES[number.lower()] + 1
    word = next(word for word, other in ONES.items() if other == worth)
    return word.capitalize() if number[0].isupper() else word


class Checked:
    """A collection that is checked again with a page changed."""

    def __init__(self, project: Path) -> None:
        self.project = project
        self.reference = read_reference(project)
        self.memory: Memory[WorkedOut] = Memory()
        self.whole = read_collection(project, self.reference)

    def of_book(self, folder: str) -> Collection:
        """A book's pages, and those that belong to no book."""
        near = [page for page in self.whole.documents if f"/{folder}/" in page.path or "/books/" not in page.path]
        return replace(self.whole, documents=tuple(near))

    def told(self, collection: Collection) -> Counter[tuple[str, str]]:
        """How often each rule is broken by each page."""
        collection = print_names(collection, self.memory)
        activities = work_out_pages(collection, self.memory)
        found = {
            *check_all(collection),
            *check_activities(activities, collection.documents),
            *check_bends(collection, activities),
            *check_words(collection, activities),
        }
        return Counter((problem.rule, problem.message) for problem in found)

    def notices(self, book: Collection, before: Counter[tuple[str, str]], page: str, text: str) -> bool:
        """Whether something is told of the changed page, or of another because of it, that was not told before."""
        read = read_page(page, text.encode(), self.reference.limits.files)
        if not isinstance(read, Document):
            return True
        changed = tuple(read if one.path == page else one for one in book.documents)
        return bool(self.told(replace(book, documents=changed)) - before)


def main(arguments: Sequence[str]) -> None:
    """Prints how many of how many were noticed, by where they stood."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0] if __doc__ else "")
    parser.add_argument("project", nargs="?", type=Path, default=ROOT)
    parser.add_argument("--each", type=int, default=0)
    parser.add_argument("--list", action="store_true")
    parser.add_argument("--book", nargs="*", default=[], help="only these books, by the names of their folders")
    given = parser.parse_args(arguments)
    checked = Checked(given.project)
    noticed, tried, tied = Counter[tuple[str, str]](), Counter[tuple[str, str]](), 0
    for folder in sorted({page.path.split("/")[2] for page in checked.whole.documents if "/books/" in page.path}):
        if given.book and folder not in given.book:
            continue
        book = checked.of_book(folder)
        before = checked.told(book)
        for page in (one.path for one in book.documents if f"/{folder}/" in one.path):
            text = (given.project / page).read_text(encoding="utf-8")
            all_of_it = list(mutants(text))
            tied += sum(not name.endswith((": table", ": answers")) for name in names_in(text))
            few = random.Random(page).sample(all_of_it, min(given.each or len(all_of_it), len(all_of_it)))
            for one in sorted(few, key=lambda mutant: mutant.start):
                there = f"{text[: one.start]}{one.new}{text[one.start + len(one.old) :]}"
                told = checked.notices(book, before, page, there)
                sort = sort_of(text, one)
                tried[sort, one.stands_in] += 1
                noticed[sort, one.stands_in] += told
                if given.list and not told:
                    line = text.count("\n", 0, one.start)
                    print(f"{page}:{line + 1}: {sort}: {one.old} -> {one.new}: {text.splitlines()[line].strip()[:150]}")
    for (sort, place), number in tried.most_common():
        _print_share(f"{sort}: {place}", noticed[sort, place], number)
    for sort in sorted({sort for sort, _ in tried}):
        of_sort = [each for each in tried if each[0] == sort]
        _print_share(
            f"all that is {sort}", sum(noticed[each] for each in of_sort), sum(tried[each] for each in of_sort)
        )
    _print_share("all", noticed.total(), tried.total())
    print(f"tied by name, which follow by themselves and were not changed: {tied}")


def _print_share(what: str, some: int, of_all: int) -> None:
    print(f"{what:36} {some:5} of {of_all:5} noticed, {some / max(1, of_all):.0%}")


if __name__ == "__main__":
    main(sys.argv[1:])
