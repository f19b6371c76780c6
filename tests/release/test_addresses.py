"""Every file that is built or kept can stand on Windows and macOS: in a folder, on a stick, in a zip.

Source: Microsoft, Naming Files, Paths, and Namespaces (reserved names and signs, no space or dot at an end, 260 signs of a
whole path; from memory); that macOS and Windows fold case, and macOS composed letters, is common knowledge, no source.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from pathlib import Path

from built import built_site, kept
from project import ROOT
from storymaths.publish.pack.limits import fault_of_name, same_place

RUN = "would be run by whoever opens it"
"""A fault of a file in a pack, and of none that belongs to the program."""
LONGEST = 200
"""Of an address, so that 60 signs are left for the folder it stands in."""


def names_in(folder: Path) -> list[str]:
    return [path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()]


def unfit(names: Iterable[str]) -> list[str]:
    """The names that some computer cannot have, each with why."""
    names = list(names)
    folders = {parent.as_posix() for name in names for parent in Path(name).parents if parent.name}
    many = Counter(same_place(name) for name in (*names, *folders))
    found = [f"{name} {fault}" for name in names if (fault := fault_of_name(name)) and fault != RUN]
    found += [f"{name} is too long" for name in names if len(name) > LONGEST]
    return found + [f"{name} is there twice but for case" for name in names if many[same_place(name)] > 1]


def test_names_that_cannot_be_are_told_apart() -> None:
    bad = ["aux.html", "a/con/b.md", "a:b", "what?.html", "end.", "end /a", "x" * 201, "A.html", "a.html", "b"]
    assert len(unfit([*bad, "B/c.html"])) == len(bad)


def test_every_address_of_a_built_site_can_stand_anywhere() -> None:
    assert unfit(names_in(built_site())) == []
    assert unfit(names_in(kept())) == []


def test_every_file_of_the_program_and_of_the_collections_can_stand_anywhere() -> None:
    for folder in ("hooks", "content", "site_data", "tests/collections"):
        assert unfit(name for name in names_in(ROOT / folder) if "__pycache__" not in name) == []
