"""The author's command, run as an author runs it."""

from __future__ import annotations

import errno
import json
import os
import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from command import storymaths, storymaths_as_a_program
from project import PROJECT, ROOT, copy_of_project
from storymaths.check.rules import rules
from storymaths.commands.table import COMMANDS


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return copy_of_project(tmp_path_factory.mktemp("project"))


@pytest.fixture(scope="module")
def fresh(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy for tests that leave nothing in it."""
    return copy_of_project(tmp_path_factory.mktemp("fresh"))


def plant_three(project: Path) -> Path:
    page = project / "content/books/cliff-house-lift/session-3.md"
    text = page.read_text(encoding="utf-8")
    page.write_text(
        text.replace("minutes: 50", "minutes: 51", 1).replace("kind: session", "kind: session\ncolour: red"),
        encoding="utf-8",
    )
    return page


def test_a_clean_collection_says_so_and_leaves_with_nought() -> None:
    done = storymaths_as_a_program("check")
    assert done.returncode == 0
    assert done.stdout.startswith("No problems in ")
    assert "\x1b" not in done.stdout + done.stderr


def test_problems_as_text_json_and_annotations(project: Path) -> None:
    page = plant_three(project)
    shown = page.relative_to(project).as_posix()
    text = storymaths("check", folder=project)
    assert text.returncode == 1
    assert f"{shown}:3:1  field-unknown" in text.stdout
    assert "Fix: " in text.stdout
    assert "Traceback" not in text.stdout + text.stderr
    records = json.loads(storymaths("check", "--format", "json", folder=project).stdout)
    assert {record["rule"] for record in records} == {"field-unknown", "minutes-do-not-add"}
    assert all(set(record) == {"path", "line", "column", "rule", "message", "fix"} for record in records)
    github = storymaths("check", "--format", "github", folder=project).stdout
    assert f"::error file={shown},line=3,col=1,title=field-unknown::" in github


def test_what_was_left_unread_is_listed_with_places_and_reasons(project: Path) -> None:
    page = project / "content/books/twenty-lamps/session-1.md"
    text = page.read_text(encoding="utf-8")
    page.write_text(f"{text.rstrip()}\n\nThen 7 + ___ = 9, and 3 hens + 4 ducks = 8.\n", encoding="utf-8")
    done = storymaths("check", "--unread", str(page), folder=project)
    page.write_text(text, encoding="utf-8")
    shown, line = page.relative_to(project).as_posix(), text.rstrip().count("\n") + 3
    assert done.returncode == 0
    assert f"{shown}:{line}:6  7 + ___ = 9  (it has a gap to fill)\n" in done.stdout
    assert f"{shown}:{line}:23  3 hens + 4 ducks = 8  (unlike things are counted)\n" in done.stdout
    assert {told.partition(":")[0] for told in done.stdout.splitlines()} == {shown}


def test_only_the_pages_asked_for_are_reported(project: Path) -> None:
    page = plant_three(project)
    other = storymaths("check", "content/books/twenty-lamps", folder=project)
    assert other.returncode == 0
    assert storymaths("check", str(page), folder=project).returncode == 1
    assert storymaths("check", "content/nowhere.md", folder=project).returncode == 2


def test_a_clean_json_report_is_an_empty_list() -> None:
    assert json.loads(storymaths("check", "--format", "json").stdout) == []


def test_started_files_pass_as_they_are_and_nothing_is_overwritten(tmp_path: Path) -> None:
    folder = copy_of_project(tmp_path)
    assert storymaths("new", "book", "The Kelp Kitchen", folder=folder).returncode == 0
    assert storymaths("new", "session", "the-kelp-kitchen", "Stir and count", folder=folder).returncode == 0
    assert storymaths("new", "session", "the-kelp-kitchen", 'Say "when"', folder=folder).returncode == 0
    assert storymaths("new", "home", "the-kelp-kitchen", "Spoons", folder=folder).returncode == 0
    assert storymaths("new", "series", "Kelp and lamps", folder=folder).returncode == 0
    done = storymaths("check", folder=folder)
    assert (done.returncode, done.stdout[:11]) == (0, "No problems"), done.stdout
    before = (folder / "content/books/the-kelp-kitchen/index.md").read_bytes()
    again = storymaths("new", "book", "The Kelp Kitchen", folder=folder)
    assert again.returncode == 1
    assert "is already there. Nothing was written." in again.stderr
    assert (folder / "content/books/the-kelp-kitchen/index.md").read_bytes() == before
    assert (folder / "content/books/the-kelp-kitchen/session-2.md").exists()


@pytest.mark.parametrize("kind", ["book", "session", "home", "series"])
def test_a_started_file_that_is_no_draft_is_told_what_is_to_be_written(fresh: Path, kind: str) -> None:
    folder = fresh
    before = {*folder.rglob("*.md")}
    of_book = ("ferry-fare",) if kind in ("session", "home") else ()
    assert storymaths("new", kind, *of_book, "Stir and count", folder=folder).returncode == 0
    (page,) = {*folder.rglob("*.md")} - before
    text = "".join(line for line in page.read_text(encoding="utf-8").splitlines(True) if not line.startswith("status"))
    page.write_text(text, encoding="utf-8")
    found = json.loads(storymaths("check", "--format", "json", folder=folder).stdout)
    shutil.rmtree(page.parent) if kind == "book" else page.unlink()
    told = {problem["line"] for problem in found if problem["rule"] == "starter-unfilled"}
    lines = text.splitlines()
    blocks = {number for number, line in enumerate(lines, start=1) if line.endswith(">-")}
    body = {
        number
        for number, line in enumerate(lines, start=1)
        if number > lines.index("---", 1) + 1 and line[:1].isalpha()
    }
    assert told == blocks | body


def test_a_session_for_a_book_that_is_not_there() -> None:
    done = storymaths("new", "session", "cliff-house-lif", "A title")
    assert done.returncode == 1
    assert 'Did you mean "cliff-house-lift"?' in done.stderr


@pytest.mark.parametrize(
    ("title", "says"),
    [
        ("", "A title is needed"),
        (" ", "A title is needed"),
        ("😀", "no letter from a to z"),
        ("Кот", "no letter from a to z"),
        ("Con", "a name that Windows keeps for itself"),
        ("long " * 1000, "longer than 80 letters"),
    ],
)
def test_a_title_that_makes_no_name_of_a_file_is_told_and_nothing_is_written(
    title: str, says: str, tmp_path: Path
) -> None:
    for name in ("content", "site_data"):
        (tmp_path / name).mkdir()
    done = storymaths("new", "book", title, folder=tmp_path)
    assert done.returncode == 2
    assert says in done.stderr
    assert "Nothing was written." in done.stderr
    assert len(done.stderr) < 400
    assert list((tmp_path / "content").iterdir()) == []


def test_what_comes_in_and_is_no_text_or_has_no_end_is_told(tmp_path: Path) -> None:
    (tmp_path / "picture.png").write_bytes(bytes(range(256)))
    (tmp_path / "long.yaml").write_bytes(b"y\n" * 60_000)
    assert "cannot be read as a text file" in storymaths("solve", str(tmp_path / "picture.png")).stderr
    assert "100,000 bytes is the most" in storymaths("solve", str(tmp_path / "long.yaml")).stderr


def test_what_the_disk_refuses_is_said_in_a_sentence(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("content", "site_data"):
        (tmp_path / name).mkdir()

    def refuse(file: Path, content: bytes) -> None:
        raise OSError(errno.ENOSPC, "No space left on device", str(file))

    monkeypatch.setattr("storymaths.publish.starters.write_new", refuse)
    done = storymaths("new", "book", "A title", folder=tmp_path)
    assert (done.returncode, done.stderr) == (1, "There is no room left on the disk.\n")


def test_ctrl_and_c_ends_it_without_a_traceback() -> None:
    """While it waits for its input it is loaded; before that it ends without a word."""
    command = [sys.executable, "-m", "storymaths", "solve", "-"]
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks")}
    with subprocess.Popen(
        command, cwd=PROJECT, env=environment, stdin=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as running:
        running.stdin.write("kind: bonds\n" * 6000)  # type: ignore[union-attr]  # more than a pipe holds: it is read by now
        running.send_signal(signal.SIGINT)
        said = running.communicate()[1]
    assert running.returncode in (130, -signal.SIGINT)
    assert "Traceback" not in said


@pytest.mark.parametrize("name", list(rules()))
def test_every_rule_is_explained(name: str) -> None:
    rule = rules()[name]
    assert rule.says.endswith(".")
    assert rule.why.endswith(".")
    assert rule.source
    assert rule.wrong
    assert rule.right


def test_explain() -> None:
    done = storymaths("explain", "small-parts-unnoted")
    assert done.returncode == 0
    assert "16 CFR 1501.4" in done.stdout
    wrong = storymaths("explain", "small-part-unnoted")
    assert wrong.returncode == 2
    assert 'Did you mean "small-parts-unnoted"?' in wrong.stderr


def test_words_says_where_each_word_is_taught() -> None:
    done = storymaths("words")
    line = next(line for line in done.stdout.splitlines() if line.startswith("array "))
    assert line.split() == ["array", "Year", "2", "twenty-lamps,", "session", "2"] or "twenty-lamps" in line


def test_help_names_every_command() -> None:
    text = storymaths("--help").stdout
    assert all(command in text for command in COMMANDS)


def test_outside_a_project_it_says_what_is_missing(tmp_path: Path) -> None:
    done = storymaths_as_a_program("check", folder=tmp_path)
    assert done.returncode == 2
    assert "No project here" in done.stderr


def test_broken_reference_data_is_a_problem_with_its_place(tmp_path: Path) -> None:
    folder = copy_of_project(tmp_path)
    words = folder / "site_data/words.yaml"
    words.write_text(
        words.read_text(encoding="utf-8").replace("concept: equality", "concept: equalitty", 1), encoding="utf-8"
    )
    done = storymaths("check", folder=folder)
    assert done.returncode == 1
    assert "site_data/words.yaml:" in done.stdout
    assert "reference-data-broken" in done.stdout
    assert "Traceback" not in done.stderr


def explained_to(reader: str) -> subprocess.CompletedProcess[str]:
    """Every rule told to a program of the shell, by a terminal that knows no more than ASCII."""
    command = f"{sys.executable} -m storymaths explain | {reader}"
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONIOENCODING": "ascii"}
    return subprocess.run(["sh", "-c", command], env=environment, capture_output=True, text=True, check=False)


def test_a_reader_that_reads_nothing_is_no_trouble() -> None:
    assert explained_to("true").stderr == ""


def test_an_old_terminal_is_told_everything() -> None:
    done = explained_to("cat")
    assert done.stderr == ""
    assert set(rules()) <= set(done.stdout.splitlines())
