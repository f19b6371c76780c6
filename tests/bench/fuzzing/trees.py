"""Trees of files: the deeds of an input done to a copy of a small content."""

from __future__ import annotations

import ast
import os
import shutil
import socket
from collections.abc import Callable, Mapping
from pathlib import Path

from project import PROJECT

BOOK = "books/cliff-house-lift"


def grow_tree(deeds: str, root: Path) -> None:
    """Makes a project of one book at ``root`` and does the deeds to its content; what cannot be done is left."""
    shutil.copytree(PROJECT / "content" / BOOK, root / "content" / BOOK)
    (root / "content" / "series").mkdir()
    shutil.copy(PROJECT / "content" / "about-the-quay.md", root / "content")
    for line in deeds.split("\n"):
        deed, name, old = ast.literal_eval(line)
        new, there = root / "content" / name, root / "content" / old
        try:
            _DEEDS[deed](new, there)
        except OSError:  # a name too long, or two deeds to one file
            continue


def _socket(new: Path, _: Path) -> None:
    with socket.socket(socket.AF_UNIX) as opened:
        opened.bind(str(new))


def _deep(new: Path, _: Path) -> None:
    folder = Path(new, *["deep"] * 60)
    folder.mkdir(parents=True)
    (folder / "page.md").write_text("---\nkind: page\n---\n")


_DEEDS: Mapping[str, Callable[[Path, Path], object]] = {
    "link": lambda new, old: new.symlink_to(old),
    "link to itself": lambda new, _: new.symlink_to(new.name),
    "link to the folder above": lambda new, _: new.symlink_to(".."),
    "dangling link": lambda new, _: new.symlink_to("nowhere"),
    "pipe": lambda new, _: os.mkfifo(new),
    "socket": _socket,
    "folder": lambda new, _: new.mkdir(),
    "empty file": lambda new, _: new.touch(),
    "bytes": lambda new, _: new.write_bytes(bytes(range(256))),
    "large file": lambda new, _: os.truncate(new.open("w").fileno(), 10**9),
    "deep folders": _deep,
    "take out": lambda _, old: old.unlink(),
    "take the folder out": lambda _, old: shutil.rmtree(old.parent),
    "rename": lambda new, old: old.rename(new),
    "copy": lambda new, old: shutil.copy(old, new),
    "make unreadable": lambda _, old: old.chmod(0),
}
