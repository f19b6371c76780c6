"""The command ``propose``: what could still be put into a session, as a difference; put in only where that is asked for."""

from __future__ import annotations

import argparse
import difflib
import sys
from collections.abc import Iterable
from pathlib import Path

from ..edits.apply import apply
from ..edits.edit import EditRefused
from ..edits.save import ChangedOutside, read_file, save
from ..model.address import CONTENT
from ..naming.print_names import print_names
from ..parse.collection import read_collection
from ..parse.reference import ReferenceBroken, read_reference
from ..propose.draft import draft_of
from ..propose.proposal import Proposal
from ..propose.table import proposals_for
from .command import FAILED, Command, Misused, in_project


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which session, and whether to put it in."""
    parser.add_argument("page", metavar="PAGE", help="the file of a session in content")
    parser.add_argument("--write", action="store_true", help="put what is proposed into the file")


def run(root: Path, options: argparse.Namespace) -> int:
    """Prints each proposal with its reason, and then the difference it makes. Raises ``Misused``."""
    content = (root / CONTENT).resolve()
    path = Path(options.page).resolve()
    if not path.is_relative_to(content):
        raise Misused(f"{options.page} is not a page in {CONTENT}.")
    source = path.relative_to(content).as_posix()
    try:
        text, mark = read_file(content, source)
        collection = print_names(read_collection(root, read_reference(root)))
    except EditRefused as refused:
        raise Misused(str(refused)) from None
    except ReferenceBroken:
        raise Misused("The data in site_data cannot be used; `storymaths check` says why.") from None
    draft = draft_of(collection, CONTENT + source, text)
    if draft is None:
        raise Misused(f"{options.page} is no session that can be read; `storymaths check` says more.")
    found = proposals_for(draft)
    made, lines = _put_in(text, found)
    print("\n".join(lines) if lines else "Nothing is lacking that can be proposed.")
    if made == text:
        return 0
    print()
    sys.stdout.writelines(_difference(text, made, CONTENT + source))
    return _write(content, source, mark, made) if options.write else 0


def _put_in(text: str, found: Iterable[Proposal]) -> tuple[str, list[str]]:
    """The text with all that can be put in, and a line on each proposal."""
    lines = []
    for one in found:
        refused = ""
        if one.edit is not None:
            try:
                text = apply(text, one.edit)
            except EditRefused as error:
                refused = f" (Not put in: {error})"
        lines.append(f"{one.field}{'' if one.edit else ' (left as it is)'}: {one.reason}{refused}")
    return text, lines


def _difference(old: str, new: str, name: str) -> Iterable[str]:
    was, now = (text.splitlines(keepends=True) for text in (old, new))
    return (line if line.endswith("\n") else f"{line}\n" for line in difflib.unified_diff(was, now, name, name))


def _write(content: Path, source: str, mark: str, text: str) -> int:
    try:
        save(content, source, mark, text)
    except (ChangedOutside, EditRefused) as error:
        print(error, file=sys.stderr)
        return FAILED
    return 0


COMMAND = Command(add_arguments, in_project(run))
