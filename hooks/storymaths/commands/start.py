"""The command ``start``: a collection of one's own, in a new folder, with nothing of the program in it."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Mapping
from pathlib import Path
from string import Template
from uuid import uuid4

import yaml

from ..model.program_version import VERSION
from .command import FAILED, Command, Misused

_FILES = Path(__file__).parent / "collection"
_PLACES: Mapping[str, str] = {
    "site.yaml": "site_data/site.yaml",
    "README.md": "README.md",
    "gitignore": ".gitignore",
    "keep": "content/books/.keep",
    "open-on-windows.bat": "open-on-windows.bat",
    "open-on-a-mac.command": "open-on-a-mac.command",
    "open-on-linux.sh": "open-on-linux.sh",
}
"""The files of ``collection/``, and where they go."""
_RUN_BY_DOUBLE_CLICK = (".command", ".sh")
_ASKED: Mapping[str, str] = {
    "name": "What is the collection called?",
    "publisher": "Who publishes it (you, or your company)?",
    "contact": "Where do readers write to (an e-mail address; may be left empty)?",
    "licence": "What may others do with it: open, paid, each-book or reserved?",
}
_LICENCES = ("open", "paid", "each-book", "reserved")
_MORE: Mapping[str, Mapping[str, str]] = {
    "open": {
        "licence_name": "What is the licence called?",
        "licence_url": "At which address (https://…) can it be read?",
    },
    "paid": {"licence_name": "What is the licence called?", "licence_says": "Who may use it, and how does one get it?"},
}
"""What else is asked of a licence."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Where, and answers to what is asked otherwise."""
    parser.add_argument("folder", type=Path, metavar="FOLDER", help="a folder that is not there yet, or is empty")
    for name, asks in _ASKED.items():
        parser.add_argument(f"--{name}", help=asks, choices=_LICENCES if name == "licence" else None)
    parser.add_argument("--licence-name", help="what the licence is called")
    parser.add_argument("--licence-url", help="the address where it can be read")
    parser.add_argument("--licence-says", help="what it lets people do, in a sentence")


def run(options: argparse.Namespace) -> int:
    """Makes the collection. Raises ``Misused``."""
    folder = options.folder
    if os.path.lexists(folder) and not (folder.is_dir() and not any(folder.iterdir())):
        raise Misused(f"{folder} is there already and is not an empty folder. Nothing was written.", FAILED)
    answers = _answers(dict(vars(options)))
    try:
        for name, place in _PLACES.items():
            _write(folder / place, (_FILES / name).read_text(encoding="utf-8"), answers)
    except OSError as error:
        raise Misused(f"{folder} could not be written: {error.strerror}.", FAILED) from None
    print(f"Made {folder}. README.md in it says how to go on; site_data/site.yaml says who you are.")
    print('Next: go into the folder, then: storymaths new book "The title of a book"')
    return 0


def _answers(given: dict[str, str | None]) -> dict[str, str]:
    """What fills the files; asked for where it was not given. Raises ``Misused``."""
    for name, asks in _ASKED.items():
        given[name] = _answer(given[name], name, asks, needed=name != "contact")
    if given["licence"] not in _LICENCES:
        raise Misused(f'"{given["licence"]}" is no licence: it is one of {", ".join(_LICENCES)}.')
    for name, asks in _MORE.get(given["licence"] or "", {}).items():
        given[name] = _answer(given[name], name.replace("_", "-"), asks, needed=True)
    licence = {"kind": given["licence"]} | {
        part: given[f"licence_{part}"] for part in ("name", "url", "says") if given[f"licence_{part}"]
    }
    lines = (f"  {_written(part)}: {_written(value)}" for part, value in licence.items())
    return {
        "name": _written(given["name"]),
        "title": given["name"] or "",
        "publisher": _written(given["publisher"]),
        "contact": f"contact: {_written(given['contact'])}" if given["contact"] else "# contact: you@your-school.org",
        "licence": "\n".join(lines),
        "identity": f"urn:uuid:{uuid4()}",
        "version": VERSION,
    }


def _answer(given: str | None, name: str, asks: str, needed: bool) -> str:
    ask = given is None and sys.stdin.isatty()
    answer = input(f"{asks} ") if ask else given or ""
    if needed and not answer.strip():
        raise Misused(f"{asks} Say so with --{name}.")
    return answer.strip()


def _written(value: str | None) -> str:
    """Words as they stand in a YAML file, whatever signs are in them."""
    return str(yaml.safe_dump(value, allow_unicode=True, width=1000)).removesuffix("...\n").strip()


def _write(file: Path, text: str, answers: Mapping[str, str]) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    end = "\r\n" if file.suffix == ".bat" else "\n"
    with file.open("x", encoding="utf-8", newline=end) as written:
        written.write(Template(text).safe_substitute(answers))
    if file.suffix in _RUN_BY_DOUBLE_CLICK:
        file.chmod(0o755)


COMMAND = Command(add_arguments, run)
