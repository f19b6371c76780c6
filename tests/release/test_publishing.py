"""Publishing cannot half-happen: wherever it ends, there is one whole site or the other."""

from __future__ import annotations

import errno
import os
import random
import shutil
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

import pytest
from project import ROOT
from storymaths.release.lock import hold_lock
from storymaths.release.publishing import go_back, publish, rehearse
from storymaths.release.refused import Refused
from storymaths.release.releases import MARK, Releases

from .tiny_site import asked, pages_of, published, shown

NOT_WAITING: Callable[[], None] = lambda: None  # noqa: E731
STEPS = ("mkdir", "rename", "replace", "rmdir", "unlink", "symlink", "fsync", "sync", "utime")


@pytest.fixture
def dest(tmp_path: Path) -> Path:
    return tmp_path / "www" / "lessons"


@pytest.fixture(autouse=True)
def _folder(dest: Path) -> None:
    dest.parent.mkdir()


def around(dest: Path) -> set[str]:
    """What stands beside the site and among its releases."""
    releases = Releases(dest).folder
    return {path.name for path in dest.parent.iterdir()} | {path.name for path in releases.iterdir()}


def test_a_first_publishing_and_a_second(dest: Path) -> None:
    first = published(dest, "one")
    assert (shown(dest), first.release, first.changes.new) == ("one", 1, 31)
    assert os.readlink(dest) == "lessons.releases/1"
    second = published(dest, "two")
    assert (shown(dest), second.release) == ("two", 2)
    assert (second.changes.new, second.changes.changed, second.changes.gone) == (0, 31, 0)


def test_the_last_is_kept_and_no_more(dest: Path) -> None:
    for version in ("one", "two", "three"):
        published(dest, version)
    assert around(dest) == {"lessons", "lessons.releases", "lock", MARK, "2", "2.json", "3", "3.json"}


def test_back_and_back_again(dest: Path) -> None:
    published(dest, "one")
    published(dest, "two")
    assert go_back(Releases(dest), False, NOT_WAITING) == 1
    assert shown(dest) == "one"
    assert go_back(Releases(dest), False, NOT_WAITING) == 2
    assert shown(dest) == "two"
    go_back(Releases(dest), False, NOT_WAITING)
    published(dest, "three")
    assert Releases(dest).last == 1, "what was shown before is kept, not what was gone back from"
    go_back(Releases(dest), False, NOT_WAITING)
    assert shown(dest) == "one"


def test_there_is_nothing_to_go_back_to(dest: Path) -> None:
    published(dest, "one")
    with pytest.raises(Refused, match="no earlier release"):
        go_back(Releases(dest), False, NOT_WAITING)


def test_a_rehearsal_leaves_no_trace(dest: Path) -> None:
    assert rehearse(Releases(dest), asked(pages_of("one"))).release is None
    assert list(dest.parent.iterdir()) == []
    published(dest, "one")
    before = around(dest)
    assert rehearse(Releases(dest), asked(pages_of("two"))).changes.changed == 31
    assert (around(dest), shown(dest)) == (before, "one")


def test_what_is_the_same_keeps_its_date(dest: Path) -> None:
    published(dest, "one")
    page, packed = dest / "books/page-3.html", dest / "books/page-3.html.gz"
    for path in (page, packed):
        os.utime(path, (1_000_000_000, 1_000_000_000))
    published(dest, "one")
    assert (page.stat().st_mtime, packed.stat().st_mtime) == (1_000_000_000, 1_000_000_000)
    published(dest, "two")
    assert page.stat().st_mtime > 1_000_000_000


# What is not ours


def test_an_empty_folder_is_used(dest: Path) -> None:
    dest.mkdir()
    published(dest, "one")
    assert shown(dest) == "one"


@pytest.mark.parametrize("name", ["index.html", ".htaccess"])
def test_a_folder_with_anything_in_it_is_left_alone(dest: Path, name: str) -> None:
    dest.mkdir()
    (dest / name).write_text("mine", encoding="utf-8")
    with pytest.raises(Refused, match="publish did not make it"):
        published(dest, "one")
    assert [path.name for path in dest.parent.iterdir()] == ["lessons"]
    assert (dest / name).read_text(encoding="utf-8") == "mine"


def test_so_is_a_file_and_a_link_to_somewhere_else(dest: Path, tmp_path: Path) -> None:
    dest.write_text("mine", encoding="utf-8")
    with pytest.raises(Refused, match="a file"):
        published(dest, "one")
    dest.unlink()
    dest.symlink_to(tmp_path)
    with pytest.raises(Refused, match="is a link to"):
        published(dest, "one")
    assert dest.readlink() == tmp_path


def test_so_is_what_stands_where_the_editions_should(dest: Path) -> None:
    folder = dest.with_name("lessons.releases")
    folder.mkdir()
    (folder / "1").mkdir()
    with pytest.raises(Refused, match="something else stands there"):
        published(dest, "one")
    assert not dest.exists()


def test_there_must_be_a_folder_to_publish_in(tmp_path: Path) -> None:
    with pytest.raises(Refused, match="make it first"):
        published(tmp_path / "nowhere" / "lessons", "one")


# Two at once


def test_a_second_one_refuses_with_words(dest: Path) -> None:
    published(dest, "one")
    with hold_lock(Releases(dest).folder, False, NOT_WAITING), pytest.raises(Refused, match=f"process {os.getpid()}"):
        published(dest, "two")
    assert shown(dest) == "one"


def test_or_waits_if_it_is_asked_to(dest: Path) -> None:
    published(dest, "one")
    waiting, done = threading.Event(), threading.Event()

    def second() -> None:
        wanted = asked(pages_of("two"), wait=True)
        publish(Releases(dest), type(wanted)(**{**_fields(wanted), "waiting": waiting.set}))
        done.set()

    with hold_lock(Releases(dest).folder, False, NOT_WAITING):
        thread = threading.Thread(target=second)
        thread.start()
        assert waiting.wait(60)
        assert shown(dest) == "one"
    assert done.wait(60)
    thread.join()
    assert shown(dest) == "two"


def _fields(wanted: Any) -> dict[str, Any]:
    return {name: getattr(wanted, name) for name in wanted.__dataclass_fields__}


# Wherever it ends


class _Killed(BaseException):
    """The process is gone; what would have put things away never runs."""


@contextmanager
def killed_at(step: int, monkeypatch: pytest.MonkeyPatch) -> Iterator[list[str]]:
    """From the ``step``-th change to the disk on, nothing more is done. Yields the names of the changes made."""
    made: list[str] = []
    with monkeypatch.context() as patched:
        for name in STEPS:
            patched.setattr(os, name, _ending(getattr(os, name), name, step, made))
        patched.setattr(shutil, "rmtree", _ending(shutil.rmtree, "rmtree", step, made))
        yield made


def _ending(real: Callable[..., Any], name: str, step: int, made: list[str]) -> Callable[..., Any]:
    def act(*given: Any, **more: Any) -> Any:
        if len(made) >= step:
            raise _Killed
        made.append(name)
        return real(*given, **more)

    return act


FEW = 3


@pytest.mark.parametrize("before", ["", "one"])
def test_killed_at_any_step_the_site_is_whole_and_the_next_run_puts_all_in_order(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, before: str
) -> None:
    start = tmp_path / "start" / "lessons"
    start.parent.mkdir()
    for version in ("nought", before) if before else ():
        published(start, version, FEW)
    seen = []
    while True:
        dest = tmp_path / f"step-{len(seen)}" / "lessons"
        shutil.copytree(start.parent, dest.parent, symlinks=True)
        with killed_at(len(seen), monkeypatch) as made:
            try:
                published(dest, "two", FEW)
                break
            except _Killed:
                pass
        now = shown(dest, FEW) if dest.exists() else ""
        assert now in (before, "two"), f"after {made}"
        seen.append(now)
        published(dest, "three", FEW)
        assert shown(dest, FEW) == "three"
        releases = {name for name in around(dest) if name.isdecimal()}
        assert len(releases) == (2 if now else 1)
        assert around(dest) == {
            "lessons",
            "lessons.releases",
            "lock",
            MARK,
            *releases,
            *(f"{n}.json" for n in releases),
        }
    assert set(seen) == {before, "two"}
    assert seen == sorted(seen, key=[before, "two"].index), "once shown, shown for good"


def test_killed_while_going_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    start = tmp_path / "start" / "lessons"
    start.parent.mkdir()
    for version in ("one", "two"):
        published(start, version, FEW)
    seen = set()
    for step in range(8):
        dest = tmp_path / f"step-{step}" / "lessons"
        shutil.copytree(start.parent, dest.parent, symlinks=True)
        with killed_at(step, monkeypatch), suppress(_Killed):
            go_back(Releases(dest), False, NOT_WAITING)
        first = shown(dest, FEW)
        seen.add(first)
        go_back(Releases(dest), False, NOT_WAITING)
        assert {first, shown(dest, FEW)} == {"one", "two"}, "it can always be undone"
    assert seen == {"one", "two"}


def test_killed_by_the_system_at_random_moments(dest: Path) -> None:
    published(dest, "nought")
    allowed, moments = {"nought"}, random.Random(7)
    for number in range(5):
        child = subprocess.Popen(
            [sys.executable, "-m", "release.tiny_site", str(dest), f"v{number}"],
            cwd=ROOT / "tests",
            env={**os.environ, "PYTHONPATH": os.pathsep.join((str(ROOT / "hooks"), str(ROOT / "tests")))},
            stderr=subprocess.DEVNULL,
        )
        allowed.add(f"v{number}")
        time.sleep(moments.uniform(0.2, 1.2))
        child.send_signal(signal.SIGKILL)
        child.wait()
        assert shown(dest) in allowed
    published(dest, "last")  # the lock went with its holder
    assert shown(dest) == "last"
    assert not [name for name in around(dest) if name.startswith(("being", "."))]


# No room


def test_no_room_while_building(dest: Path) -> None:
    published(dest, "one")

    def full(folder: Path) -> None:
        (folder / "half.html").write_text("<p>", encoding="utf-8")
        raise OSError(errno.ENOSPC, "No space left on device")

    with pytest.raises(OSError, match="No space"):
        publish(Releases(dest), asked(full))
    assert shown(dest) == "one"
    assert not [name for name in around(dest) if name.startswith("being")]


@pytest.mark.parametrize("call", ["mkdir", "rename", "replace", "symlink", "fsync"])
def test_no_room_at_any_later_step(dest: Path, monkeypatch: pytest.MonkeyPatch, call: str) -> None:
    published(dest, "one")

    def full(*given: Any, **more: Any) -> Any:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patched:
        patched.setattr(os, call, full)
        with pytest.raises(OSError, match="No space"):
            published(dest, "two")
    assert shown(dest) == "one"
    published(dest, "two")
    assert shown(dest) == "two"


def test_what_stands_where_the_next_link_is_made_is_left_alone(dest: Path) -> None:
    mine = dest.with_name(f".{dest.name}.next")
    mine.write_text("mine", encoding="utf-8")
    with pytest.raises(Refused, match="something else stands there"):
        published(dest, "one")
    assert mine.read_text(encoding="utf-8") == "mine"


def test_there_is_no_going_back_to_nothing(dest: Path) -> None:
    with pytest.raises(Refused, match="no earlier release"):
        go_back(Releases(dest), False, NOT_WAITING)
    assert list(dest.parent.iterdir()) == []


def test_a_root_is_no_place_for_a_site() -> None:
    with pytest.raises(Refused, match="root of the disk"):
        Releases(Path("/"))
