"""Names of files and folders that are not the same everywhere."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.address import CONTENT, source_of
from ..model.collection import Collection
from ..model.problem import Place, Problem
from ..model.rule import Rule

RULE = Rule(
    name="file-name-unusable",
    says="Files and folders are named in small letters, digits and single hyphens, with one dot before the ending.",
    why="Names become addresses; some systems take Page-1 and page-1 for one, and some will not open a file called con.",
    source="Reserved names: Microsoft, Naming Files, Paths, and Namespaces. The rest is a rule of the program, storymaths.",
    wrong="Session 1 (new).md",
    right="session-1.md",
)
_PART = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_RESERVED = re.compile(r"(?:con|prn|aux|nul|com[0-9]|lpt[0-9])\Z")
_LONGEST = 80


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each file whose own name, or the name of a folder it is in, cannot be used; and for each id of a list
    that has a page of its own."""
    for path in sorted(collection.files):
        *folders, file = source_of(path).split("/")
        name, dot, ending = file.rpartition(".")
        for part in (*folders, name if dot else file, *([ending] if dot else ())):
            if wrong := wrong_with_name(part):
                yield RULE.problem(
                    Place(path),
                    f'"{part}" {wrong}.',
                    f"rename it under {CONTENT}: small letters, digits and hyphens, such as session-1.md.",
                )
                break
    reference = collection.reference
    for file, ids in (("concepts", reference.concepts), ("themes", reference.themes)):
        for index, name in enumerate(ids):
            if wrong := wrong_with_name(name):
                yield RULE.problem(
                    reference.locators[f"{file}.yaml"].place((file, index, "id")),
                    f'The page of "{name}" would have that name, and it {wrong}.',
                    "give it another id.",
                )


def wrong_with_name(part: str) -> str:
    """What is wrong with the name of a file or folder, without its ending; nothing if it can be used."""
    if _RESERVED.match(part):
        return "is a name that Windows keeps for itself"
    if len(part) > _LONGEST:
        return f"is longer than {_LONGEST} letters"
    return "" if _PART.fullmatch(part) else "is not a name made of small letters, digits and single hyphens"
