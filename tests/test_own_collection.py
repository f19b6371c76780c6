"""A collection of one's own: what ``start`` makes, and the program from its wheel alone, in a folder of its own."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
import yaml
from command import storymaths
from hatchling.builders.wheel import WheelBuilder
from project import ROOT
from storymaths.commands.start import _PLACES
from storymaths.model.carried import carried
from storymaths.model.imprint import EachBook
from storymaths.reading import read_and_check

SAID = ("--name", 'Quill & "Co": maths', "--publisher", "Ada Quill", "--contact", "ada@quill.example")


def started(folder: Path, *licence: str) -> Path:
    done = storymaths("start", str(folder), *SAID, *licence, folder=folder.parent)
    assert done.returncode == 0, done.stderr
    return folder


def test_what_is_made_is_in_order_and_says_who_speaks(tmp_path: Path) -> None:
    folder = started(tmp_path / "a place for é", "--licence", "each-book")
    reading = read_and_check(folder)
    assert reading.problems == ()
    assert reading.collection is not None
    assert reading.collection.reference.site.name == 'Quill & "Co": maths'
    imprint = reading.collection.reference.imprint
    assert (imprint.publisher, imprint.contact) == ("Ada Quill", "ada@quill.example")
    assert isinstance(imprint.licence, EachBook)
    assert sorted(str(path.relative_to(folder)) for path in folder.rglob("*") if path.is_file()) == sorted(
        _PLACES.values()
    )


@pytest.mark.parametrize(
    ("licence", "name"),
    [
        (("open", "--licence-name", "Quarry: 2", "--licence-url", "https://quarry.example/2"), "Quarry: 2"),
        (("paid", "--licence-name", "Whole school", "--licence-says", "Write to us."), "Whole school"),
        (("reserved",), "All rights reserved"),
    ],
)
def test_a_licence_is_as_it_was_asked_for(tmp_path: Path, licence: tuple[str, ...], name: str) -> None:
    reading = read_and_check(started(tmp_path / "mine", "--licence", *licence))
    assert reading.problems == ()
    assert reading.collection is not None
    assert reading.collection.reference.imprint.licence.terms.name == name


def test_two_collections_are_never_taken_for_one(tmp_path: Path) -> None:
    identities = set()
    for name in ("one", "two"):
        settings = started(tmp_path / name, "--licence", "reserved") / "site_data/site.yaml"
        identities.add(yaml.safe_load(settings.read_text(encoding="utf-8"))["identity"])
    assert len(identities) == 2


def test_nothing_is_written_where_something_is(tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine/plan.txt").write_text("mine", encoding="utf-8")
    done = storymaths("start", str(tmp_path / "mine"), *SAID, "--licence", "reserved", folder=tmp_path)
    assert done.returncode == 1
    assert "Nothing was written" in done.stderr
    assert [path.name for path in (tmp_path / "mine").iterdir()] == ["plan.txt"]


@pytest.mark.parametrize(
    ("said", "asks"), [(SAID, "--licence"), ((*SAID, "--licence", "paid"), "--licence-name"), ((), "--name")]
)
def test_what_is_not_said_is_asked_for(tmp_path: Path, said: tuple[str, ...], asks: str) -> None:
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks")}
    command = [sys.executable, "-m", "storymaths", "start", str(tmp_path / "mine"), *said]
    done = subprocess.run(
        command, env=environment, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False
    )
    assert done.returncode == 2
    assert asks in done.stderr
    assert not (tmp_path / "mine").exists()


def test_a_book_and_a_session_can_be_started_and_the_site_built(tmp_path: Path) -> None:
    folder = started(tmp_path / "mine", "--licence", "reserved")
    assert storymaths("new", "book", "A Kite", folder=folder).returncode == 0
    assert storymaths("new", "session", "a-kite", "Up", folder=folder).returncode == 0
    assert "No problems in 2 pages" in storymaths("check", folder=folder).stdout
    assert storymaths("build", folder=folder).returncode == 0
    assert "Ada Quill" in (folder / "site/index.html").read_text(encoding="utf-8")
    assert not (folder / "site/books/a-kite").exists()  # a draft


def test_the_wheel_carries_all_that_the_program_reads_and_nothing_of_the_demonstration(tmp_path: Path) -> None:
    """Without a network: the tool that builds it is asked for directly."""
    made = next(iter(WheelBuilder(str(ROOT)).build(directory=str(tmp_path), versions=["standard"])))
    with zipfile.ZipFile(made) as zipped:
        zipped.extractall(tmp_path / "installed")
        names = set(zipped.namelist())
    for name in ("theme", "scripts", "site_data"):
        for path in carried(name).rglob("*.*"):  # type: ignore[arg-type]
            if path.name not in ("site.yaml", "moved.yaml", "tsconfig.json"):
                assert f"storymaths/carried/{name}/{path.relative_to(carried(name)).as_posix()}" in names  # type: ignore[arg-type]
    code = [path for path in (ROOT / "hooks/storymaths").rglob("*.*") if "__pycache__" not in path.parts]
    assert [str(path) for path in code if path.relative_to(ROOT / "hooks").as_posix() not in names] == []
    texts = {
        name: (tmp_path / "installed" / name).read_text("utf-8", "ignore") for name in names if not name.endswith("/")
    }
    assert [name for name, text in texts.items() if "cockle" in text.lower() and "dist-info" not in name] == []
    environment = {**os.environ, "PYTHONPATH": str(tmp_path / "installed")}
    where = "import storymaths.model.carried as c; print(c.carried('site_data'))"
    done = subprocess.run(
        [sys.executable, "-c", where], env=environment, cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert Path(done.stdout.strip()) == tmp_path / "installed/storymaths/carried/site_data"
