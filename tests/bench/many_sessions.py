"""Makes a project folder with as many made-up sessions as wanted, for measuring.

From ``tests/``: ``python -m bench.many_sessions FOLDER SESSIONS``.
"""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

from storymaths.model.reference import Reference
from storymaths.parse.reference import read_reference

from .many_pages import a_tale, book_page, home_page, session_page

OUR_PROJECT = Path(__file__).resolve().parents[2]
SESSIONS_A_BOOK = 4
_COVER = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 180 240"><path d="M0 0H180V240H0Z" fill="#d5e8e6"/>'
    '<circle cx="90" cy="120" r="50" fill="#a63f29"/></svg>\n'
)


def make_project(folder: Path, sessions: int) -> None:
    """Writes a project into ``folder``, which is made if need be: four sessions and a home activity a book.

    It is the same every time, and passes ``storymaths check``. The build's own code is that of this project.
    """
    reference = read_reference(OUR_PROJECT)
    content = folder / "content"
    content.mkdir(parents=True, exist_ok=True)
    shutil.copytree(OUR_PROJECT / "site_data", folder / "site_data", dirs_exist_ok=True)
    settings = folder / "site_data" / "site.yaml"
    # Pages are what is measured; print sheets have a bench of their own.
    settings.write_text(settings.read_text("utf-8").replace("print_sheets: true", "print_sheets: false"), "utf-8")
    (folder / "mkdocs.yml").write_text(_settings(), encoding="utf-8")
    for number in range(-(-sessions // SESSIONS_A_BOOK)):
        run = min(SESSIONS_A_BOOK, sessions - number * SESSIONS_A_BOOK)
        _write_book(content / "books" / f"book-{number}", number, run, reference)


def _write_book(folder: Path, number: int, sessions: int, reference: Reference) -> None:
    folder.mkdir(parents=True, exist_ok=True)
    tale, taught = a_tale(number, reference), set[str]()
    (folder / "cover.svg").write_text(_COVER, encoding="utf-8")
    (folder / "index.md").write_text(book_page(tale), encoding="utf-8")
    (folder / "home-1.md").write_text(home_page(tale), encoding="utf-8")
    for session in range(1, sessions + 1):
        page = session_page(tale, session, reference, taught)
        (folder / f"session-{session}.md").write_text(page, encoding="utf-8")


def _settings() -> str:
    ours = (OUR_PROJECT / "mkdocs.yml").read_text(encoding="utf-8")
    hooks = (OUR_PROJECT / "hooks").as_posix()
    ours = ours.replace("custom_dir: hooks/theme", f"custom_dir: {hooks}/theme")
    ours = ours.replace("hooks: [hooks/site_build.py]", f"hooks: [{hooks}/site_build.py]")
    return "\n".join(line for line in ours.splitlines() if not line.startswith("watch:")) + "\n"


if __name__ == "__main__":
    make_project(Path(sys.argv[1]), int(sys.argv[2]))
