"""The table of commands: each by its name, with what its help says. Its module has the same name, and is loaded when asked for."""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module

from .command import Command

COMMANDS: Mapping[str, str] = {
    "start": "make a collection of your own in a new folder",
    "desk": "write the collection in your own browser, on this machine alone",
    "serve": "show the collection in a browser, drawn again as you write",
    "build": "make the whole site, in the folder site",
    "check": "check every page, or the pages named, without building the site",
    "upgrade": "bring a collection of an earlier version to this one; shows the difference, and writes when told to",
    "new": "start a book, session, home activity, series or idea for any book; never overwrites",
    "import": "make a draft session of an old plan (.docx, .odt, .md); nothing is lost, nothing overwritten",
    "explain": "why a rule exists, its source, and an example",
    "words": "list where each word is taught",
    "where": "list every line in which a fact of a character stands, by name or by its number",
    "ideas": "what maths is in a book: activities it can carry, best first",
    "solve": "work out one activity: every answer, and the years it fits",
    "tune": "propose numbers with which an activity comes out",
    "propose": "what could still be put into a session, as a difference; --write puts it in",
    "publish": "put the site in place in one step, or the last one back",
    "plan": "lay the sessions of a series on the days of a school",
    "pack": "make one file with all of a series, to open without a server",
    "licences": "list what the program stands on, with versions and licences",
    "verify": "check a pack: nothing changed, missing or added, nothing that can harm",
}


def load(name: str) -> Command:
    """A command of the table. What the others need is not loaded: a check is run most, and needs no templates."""
    command: Command = import_module(f".{name}", __package__).COMMAND
    return command
