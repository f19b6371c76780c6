"""What differs on Windows and on a Mac, held here by standing in for it: programs that hold files, terminals, ports, files."""

from __future__ import annotations

import io
import os
import shutil
import socket
import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace

import pytest
from command import storymaths
from project import PROJECT, collection, reference
from storymaths.check import file_name_unusable
from storymaths.commands import terminal
from storymaths.commands.terminal import ProgressLine, say_why
from storymaths.desk import server
from storymaths.edits import in_place
from storymaths.edits.edit import EditRefused
from storymaths.edits.in_place import move_in_place
from storymaths.edits.save import read_file, save
from storymaths.parse.collection import read_collection

WINDOWS = SimpleNamespace(name="nt")


def refuse(times: int, monkeypatch: pytest.MonkeyPatch, system: str) -> list[float]:
    """Has a file's place refused so many times, as by a virus scanner that reads it; gives the waits."""
    left, waits, move = times, list[float](), Path.replace

    def held(path: Path, place: Path) -> Path:
        nonlocal left
        left -= 1
        if left >= 0:
            raise PermissionError(13, "Access is denied")
        return move(path, place)

    monkeypatch.setattr(Path, "replace", held)
    monkeypatch.setattr(in_place, "os", SimpleNamespace(name=system))
    monkeypatch.setattr(in_place, "time", SimpleNamespace(sleep=waits.append))
    return waits


def test_a_file_that_another_program_holds_for_a_moment_is_waited_for(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # ERROR_SHARING_VIOLATION, ERROR_ACCESS_DENIED: Microsoft, System Error Codes (0-499).
    (tmp_path / "aside").write_text("new")
    (tmp_path / "place").write_text("old")
    waits = refuse(3, monkeypatch, "nt")
    move_in_place(tmp_path / "aside", tmp_path / "place")
    assert (tmp_path / "place").read_text() == "new"
    assert len(waits) == 3


def test_elsewhere_what_may_not_be_written_is_told_at_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "aside").write_text("new")
    waits = refuse(1, monkeypatch, "posix")
    with pytest.raises(PermissionError):
        move_in_place(tmp_path / "aside", tmp_path / "place")
    assert waits == []


def test_a_page_that_stays_held_is_not_lost_and_its_author_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "page.md").write_bytes(b"---\r\nkind: page\r\n---\r\n")
    text, mark = read_file(tmp_path, "page.md")
    refuse(99, monkeypatch, "nt")
    with pytest.raises(EditRefused, match="another program holds it"):
        save(tmp_path, "page.md", mark, text + "More.\r\n")
    assert read_file(tmp_path, "page.md") == (text, mark)
    assert [path.name for path in tmp_path.iterdir()] == ["page.md"]


@pytest.mark.parametrize(
    "error", [PermissionError(13, "Access is denied", "site"), FileExistsError(17, "Exists", "site")]
)
def test_a_folder_of_which_a_file_is_open_says_so(error: OSError, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(terminal, "os", WINDOWS)
    assert "open in another program" in say_why(error)


def test_a_terminal_without_our_signs_gets_them_spelt_out(tmp_path: Path) -> None:
    # cp1252 and cp437 are what Windows gives a program whose output goes to a file or an old window.
    for encoding in ("cp1252", "cp437"):
        done = subprocess.run(
            [sys.executable, "-m", "storymaths", "explain", "symbol-not-introduced"],
            env={**os.environ, "PYTHONIOENCODING": encoding, "PYTHONUTF8": "0"}, capture_output=True, check=False,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        assert b"\\u2260" in done.stdout


def test_a_line_that_counts_is_taken_away_without_signs_that_act_on_the_screen() -> None:
    class Window(io.StringIO):
        def isatty(self) -> bool:
            return True

    out = Window()
    line = ProgressLine(out, every=1)
    line(2, 2)
    line.clear()
    assert "\033" not in out.getvalue()
    assert out.getvalue().endswith("\r")


def test_the_desk_lets_no_other_program_have_its_port(monkeypatch: pytest.MonkeyPatch) -> None:
    # Microsoft, Using SO_REUSEADDR and SO_EXCLUSIVEADDRUSE.
    exclusive, asked = ~socket.SO_REUSEADDR, list[int]()
    monkeypatch.setattr(socket, "SO_EXCLUSIVEADDRUSE", exclusive, raising=False)
    monkeypatch.setattr(server, "sys", SimpleNamespace(platform="win32"))
    port = SimpleNamespace(setsockopt=lambda level, name, on: asked.append(name), bind=lambda address: None)
    server.take_port(port, 0)  # type: ignore[arg-type] # a socket of this system would not take the option
    assert asked == [exclusive]


def test_what_systems_lay_into_folders_is_no_file_of_the_collection(tmp_path: Path) -> None:
    # Windows hides Thumbs.db and desktop.ini, a Mac .DS_Store and Icon; common practice, no source.
    shutil.copytree(PROJECT / "content", tmp_path / "content")
    for name in ("Thumbs.db", "desktop.ini", ".DS_Store", "Icon\r", "~$session-1.md", "ehthumbs.db"):
        (tmp_path / "content/books/ferry-fare" / name).write_bytes(b"\0")
    assert read_collection(tmp_path, reference()).files == collection().files


def test_an_id_with_a_page_of_its_own_can_be_a_file_everywhere() -> None:
    # Reserved names: Microsoft, Naming Files, Paths, and Namespaces.
    theme = next(iter(reference().themes.values())).model_copy(update={"id": "aux"})
    themes = {**reference().themes, "aux": theme}
    with_aux = replace(collection(), reference=replace(reference(), themes=themes))
    (problem,) = file_name_unusable.check(with_aux)
    assert "Windows keeps" in problem.message
    assert list(file_name_unusable.check(collection())) == []


def test_the_files_to_double_click_say_what_is_missing_and_stay_open(tmp_path: Path) -> None:
    storymaths("start", str(tmp_path / "mine"), "--name", "A", "--publisher", "B", "--licence", "reserved")
    opened = subprocess.run(
        ["/bin/sh", str(tmp_path / "mine/open-on-linux.sh")],
        env={"PATH": "/usr/bin:/bin", "HOME": str(tmp_path)}, input="\n", capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert "not installed on this computer" in opened.stdout
    assert opened.stdout.rstrip().endswith("Press Enter to close.")
    windows = (tmp_path / "mine/open-on-windows.bat").read_bytes()
    assert windows.count(b"\r\n") == windows.count(b"\n") > 0
    assert b"chcp 65001" in windows
