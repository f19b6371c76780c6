"""Starting files for authors: each holds every field, filled or with a comment that says what to fill."""

from __future__ import annotations

from pathlib import Path
from string import Template

from ..model.address import slug

_FOLDER = Path(__file__).parent / "starters"
KINDS = ("book", "session", "home", "series")


class AlreadyThere(Exception):
    """The file to be written exists; nothing was changed."""


class NoSuchBook(Exception):
    """The book a session or home activity is for has no folder."""


def new_book(root: Path, title: str) -> list[Path]:
    """A book's record with a cover and one character drawn as placeholders."""
    folder = root / "content" / "books" / slug(title)
    if folder.exists():
        raise AlreadyThere(folder)
    (folder / "cast").mkdir(parents=True)
    picture = (_FOLDER / "picture.svg").read_text(encoding="utf-8")
    return [
        _write(folder / "index.md", "book.md", title=title),
        _write_text(folder / "cover.svg", picture),
        _write_text(folder / "cast" / "first.svg", picture),
    ]


def new_session(root: Path, book: str, title: str) -> list[Path]:
    """The next session of a book."""
    folder, number = _next(root, book, "session")
    needs = f"[{number - 1}]" if number > 1 else "[]"
    return [_write(folder / f"session-{number}.md", "session.md", title=title, book=book, number=number, needs=needs)]


def new_home(root: Path, book: str, title: str) -> list[Path]:
    """The next home activity of a book."""
    folder, number = _next(root, book, "home")
    return [_write(folder / f"home-{number}.md", "home.md", title=title, book=book, number=number)]


def new_series(root: Path, title: str, date: str) -> list[Path]:
    """A series that starts with the first book there is."""
    books = sorted(path.parent.name for path in (root / "content" / "books").glob("*/index.md"))
    path = root / "content" / "series" / f"{slug(title)}.md"
    return [_write(path, "series.md", title=title, date=date, book=books[0] if books else "name-of-a-book")]


def _next(root: Path, book: str, kind: str) -> tuple[Path, int]:
    folder = root / "content" / "books" / book
    if not (folder / "index.md").is_file():
        raise NoSuchBook(book)
    number = 1
    while (folder / f"{kind}-{number}.md").exists():
        number += 1
    return folder, number


def _write(path: Path, starter: str, **values: str | int) -> Path:
    text = (_FOLDER / starter).read_text(encoding="utf-8")
    quoted = {key: value.replace('"', "'") if isinstance(value, str) else value for key, value in values.items()}
    return _write_text(path, Template(text).substitute(quoted))


def _write_text(path: Path, text: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        # "x" refuses to open a file that is there, so an author's work cannot be overwritten.
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        raise AlreadyThere(path) from None
    return path
