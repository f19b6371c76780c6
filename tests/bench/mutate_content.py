"""How much of what a collection says in numbers is held by the checks: each number changed by one, one at a time.

``python tests/bench/mutate_content.py [PROJECT] [--each N] [--list]`` reads every page of a project's books (default: this
repository), changes a number in digits or in words by one, checks again, and counts by where the number stood how often
a new problem was told. ``--each`` takes so many of a page, the same each time; ``--list`` prints each that nothing noticed.
Numbers in names of files, addresses, dates, codes of objectives and before the items of a list say nothing that could be
untrue, and are left. A number that is named, ``[[ram.mass]]``, is counted apart.

Of the rest, three sorts say nothing that could be untrue, unless something else repeats it, and are counted apart too:
what is *set*, the value of a field that is no sentence and names neither a page nor an answer (minutes, how many of a
material, the numbers an activity is made of); what is *chosen*, a number of a question, or of a sentence that tells the
class or the teacher what to do (its first word is such a verb, or the class is its subject), or that makes a task harder
or easier; and what is *wrong on purpose*, a misconception or a mark of one. Pages that are named always say something.
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


_SAID_BY_FIELDS = frozenset("pages page answers counts statements maths_on_pages".split())
_FIELDS_OF_SENTENCES = frozenset(
    "title summary note ask hear listen_for says shows try harder easier access look_for answer alt numbers recording question "
    "why because see say_first if_hard if_easy stop_when what_it_is_for next put_out say notice text objects pictures symbols "
    "what rights_note name means stem_sentences rides_note sensitive".split()
)
"""Keys of front matter and activities whose values are sentences; all others hold what is set."""
_SETS_TASKS = frozenset("harder easier if_hard if_easy try question stop_when say ask put_out access".split())
_SENTENCE = re.compile(r"(?<=[.!?:])[\"”’)*_]*\s+|\n\s*\n|\n\s*(?=[-|#]|\d+\. )")
_TELLS_WHAT_TO_DO = re.compile(
    r"^[\W\d_]*(?:(?:then|now|next|last|first|so|and|or|in pairs|please|do not|on a sunday|in year \d|in reception)[,:]? )*(?:"
    r"add|agree|ask|begin|bring|build|buy|call|change|check|choose|clap|clear|climb|close|colour|come|compare|continue|copy|"
    r"count|cover|cut|deal|do|double|draw|end|feel|fetch|fill|find|finish|fold|gather|get|give|go|guess|halve|hand|hang|hear|"
    r"hide|hold|imagine|join|jump|keep|label|lay|leave|lend|let|lift|listen|look|make|mark|measure|mend|move|number|open|pick|"
    r"pin|place|play|point|pour|print|prove|push|put|read|repeat|roll|rub|rule|say|send|set|share|show|sit|slide|sort|stand|"
    r"start|stay|stick|stop|suppose|swap|take|talk|tap|tape|tear|tell|test|throw|tie|touch|try|turn|undo|use|wait|walk|watch|"
    r"weigh|whisper|work|write|"
    r"(?:the |two |three |four |five |six |some |other |both |all |these |more )*(?:children|pairs|groups|partners|neighbours)\b(?! (?:who|need))|"
    r"(?:each|every|one|a|another|your|the) (?:child|pair|group|table|partner)\b(?! who)|everyone|everybody|all (?:say|sit|stand|show|put|write)|they|"
    r"whoever|you|we|with)\b",
    re.IGNORECASE,
)  # fmt: skip


def sort_of(text: str, mutant: Mutant) -> str:
    """Whether a number says something, or is set, chosen or wrong on purpose."""
    *_, field = mutant.stands_in.split(": ")
    outer = mutant.stands_in.split(": ")[0]
    if outer in _SAID_BY_FIELDS and field in ("pages", "page") or field in _SAID_BY_FIELDS:
        return "said"
    is_text = field in ("text", "picture")
    if not is_text and field not in _FIELDS_OF_SENTENCES:
        return "set"
    if (
        field == "says"
        and outer == "misconceptions"
        or text[mutant.start : mutant.start + 80].split("\n")[0].find("]{wrong}") >= 0
    ):
        return "wrong on purpose"
    if re.search(r"\bpages? (?:\d+(?:, | and | to |–|-))*$", text[max(0, mutant.start - 30) : mutant.start]):
        return "said"
    begin = max((match.end() for match in _SENTENCE.finditer(text, 0, mutant.start)), default=0)
    begin = max(begin, text.rfind("\n", 0, mutant.start) + 1 if not is_text else begin)
    rest = _SENTENCE.search(text, mutant.start)
    end = rest.start() if rest else len(text)
    sentence = re.sub(
        r"^(?:\s*- )?(?:\{?\s*)?(?:[a-z_]+: )?",
        "",
        text[begin:end].split(": ", 1)[-1] if not is_text else text[begin:end],
    )
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
    given = parser.parse_args(arguments)
    checked = Checked(given.project)
    noticed, tried, tied = Counter[str](), Counter[str](), 0
    for folder in sorted({page.path.split("/")[2] for page in checked.whole.documents if "/books/" in page.path}):
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
                tried[one.stands_in] += 1
                noticed[one.stands_in] += told
                if given.list and not told:
                    line = text.count("\n", 0, one.start)
                    print(f"{page}:{line + 1}: {one.old} -> {one.new}: {text.splitlines()[line].strip()[:150]}")
    for place, number in tried.most_common():
        print(f"{place:24} {noticed[place]:5} of {number:5} noticed, {noticed[place] / number:.0%}")
    print(f"{'all':24} {noticed.total():5} of {tried.total():5} noticed, {noticed.total() / max(1, tried.total()):.0%}")
    print(f"tied by name, which follow by themselves and were not changed: {tied}")


if __name__ == "__main__":
    main(sys.argv[1:])
