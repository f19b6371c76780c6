"""The command ``import``: an old lesson plan becomes a draft session, nothing lost; never overwrites."""

from __future__ import annotations

import argparse
from collections.abc import Callable, Mapping
from itertools import count
from pathlib import Path

from ..model.address import CONTENT
from ..model.old_plans import OldPlanLimits
from ..parse.old_plan.docx import read_docx
from ..parse.old_plan.lines import PlanBlock, Unreadable
from ..parse.old_plan.markdown import read_markdown
from ..parse.old_plan.odt import read_odt
from ..parse.old_plan.sections import sections_of
from ..parse.reference import ReferenceBroken, read_reference
from ..parse.suggestion import did_you_mean
from ..publish.starters import AlreadyThere, starters, write_page
from .command import FAILED, Command, Misused, in_project
from .old_plan import draft_of
from .terminal import spell_out

READERS: Mapping[str, Callable[[Path, OldPlanLimits], list[PlanBlock]]] = {
    ".docx": read_docx,
    ".odt": read_odt,
    ".md": read_markdown,
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The plan, and the book it is for."""
    parser.add_argument("plan", type=Path, help="the old plan: a .docx, .odt or .md file")
    parser.add_argument(
        "--book", default="", help="the book's folder name in content/books; needed if there are several"
    )


def run(root: Path, options: argparse.Namespace) -> int:
    """Writes the draft, and says what was recognised and what is missing. Raises ``Misused``."""
    book = _book(root, options.book)
    try:
        reference = read_reference(root)
    except ReferenceBroken:
        raise Misused("What stands in site_data/ cannot be used: storymaths check says why.", FAILED) from None
    words = reference.old_plans
    try:
        blocks = _reader(options.plan)(options.plan, words.limits)
        if not blocks:
            raise Unreadable("There are no words in it.")
    except Unreadable as error:
        raise Misused(f"{options.plan.name} was not read. {error} Nothing was written.", FAILED) from None
    folder = root / CONTENT / "books" / book
    number = next(number for number in count(1) if not (folder / f"session-{number}.md").exists())
    starter = starters()["session"][1].text.read_text(encoding="utf-8")
    about: dict[str, str | int] = {"book": book, "number": number, "title": options.plan.stem}
    draft = draft_of(sections_of(blocks, words), reference, starter, about)
    try:
        path = write_page(folder / f"session-{number}.md", draft.text)
    except AlreadyThere as error:
        raise Misused(f"{error.args[0]} is already there. Nothing was written.", FAILED) from None
    print(f"Wrote {path.relative_to(root)}, a draft: a build leaves it out until status: draft is taken out.")
    print("\nRecognised:", *(spell_out(f"  {line}") for line in draft.recognised), sep="\n")
    print(f"\nStill to write, marked in the page: {', '.join(draft.missing)}.")
    print("All other words of the old plan are kept in the page, before its first step.")
    return 0


def _book(root: Path, asked: str) -> str:
    books = sorted(path.parent.name for path in (root / CONTENT / "books").glob("*/index.md"))
    if not asked and len(books) == 1:
        return books[0]
    if asked not in books:
        what = (
            f'There is no book "{asked}" in content/books.' if asked else "Say which book the plan is for with --book."
        )
        known = did_you_mean(asked, books) if asked else f" There are: {', '.join(books)}."
        raise Misused(f"{what}{known}", FAILED)
    return asked


def _reader(plan: Path) -> Callable[[Path, OldPlanLimits], list[PlanBlock]]:
    if plan.suffix.lower() not in READERS:
        raise Unreadable(f"It is no {', '.join(READERS)} file. Save it as one of these in your word processor.")
    return READERS[plan.suffix.lower()]


COMMAND = Command(add_arguments, in_project(run))
