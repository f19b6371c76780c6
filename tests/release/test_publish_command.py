"""The command, over a small project built by the real builder."""

from __future__ import annotations

import argparse
import os
import resource
import signal
import subprocess
import sys
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import cast

import brotli  # type: ignore[import-untyped] # it comes without types
import pytest
from bench.many_sessions import make_project
from command import storymaths
from project import ROOT
from storymaths.commands import publish as publish_command
from storymaths.release import packed
from storymaths.release.releases import Releases

RENAMED = "- {from: books/book-0/home-1.md, to: books/book-0/home-2.md, since: 2027-01-11}"


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("small")
    make_project(folder, 1)
    return folder


@pytest.fixture(autouse=True)
def _within_this_process(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Gives back how the process ends; and packs at brotli's quickest, since ``test_packed`` holds how well it packs."""
    monkeypatch.setitem(cast("dict[str, object]", packed._FORMS), ".br", partial(brotli.compress, quality=0))
    before = signal.getsignal(signal.SIGTERM)
    yield
    signal.signal(signal.SIGTERM, before)


def publish_with_files_of(largest: int, project: Path, dest: Path) -> subprocess.CompletedProcess[str]:
    """The command as a program, where the system refuses to write a file beyond a size."""
    return subprocess.run(
        [sys.executable, "-m", "storymaths", "publish", str(dest)],
        cwd=project,
        # What Python compiles would be cut off too, and kept for the next.
        env={**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONDONTWRITEBYTECODE": "1"},
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (largest, largest)),
    )


def test_a_site_is_published_renamed_and_put_back(project: Path, tmp_path: Path) -> None:
    lessons = tmp_path / "lessons"
    done = storymaths("publish", str(lessons), folder=project)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "release 1" in done.stdout
    assert (lessons / "books/book-0/home-1.html.br").is_file()

    home = project / "content/books/book-0/home-1.md"
    home.rename(home.with_name("home-2.md"))
    vanished = storymaths("publish", str(lessons), folder=project)
    assert vanished.returncode == 1
    assert "page-vanished" in vanished.stdout
    assert RENAMED.split(", since", maxsplit=1)[0] in vanished.stdout
    assert "Nothing was published; the site is as it was." in vanished.stdout
    assert (lessons / "books/book-0/home-1.html").is_file()

    moved = project / "site_data/moved.yaml"
    moved.write_text(f"moved:\n  {RENAMED}\n", encoding="utf-8")
    renamed = storymaths("publish", str(lessons), folder=project)
    assert renamed.returncode == 0, renamed.stdout + renamed.stderr
    assert 'http-equiv="refresh" content="0; url=home-2.html"' in (lessons / "books/book-0/home-1.html").read_text(
        "utf-8"
    )

    assert "release 1 again" in storymaths("publish", str(lessons), "--back", folder=project).stdout
    assert "refresh" not in (lessons / "books/book-0/home-1.html").read_text("utf-8")
    assert "release 2 again" in storymaths("publish", str(lessons), "--back", folder=project).stdout


def test_without_room_the_site_is_as_it_was(project: Path, tmp_path: Path) -> None:
    done = publish_with_files_of(20_000, project, tmp_path / "lessons")
    assert done.returncode == 1
    assert "There is no room left on the disk" in done.stderr
    assert "Nothing was published; there is no site there yet." in done.stderr
    assert "Traceback" not in done.stderr
    assert not (tmp_path / "lessons").exists()


def test_what_is_misused_is_told_and_nothing_is_touched(project: Path, tmp_path: Path) -> None:
    taken = tmp_path / "taken"
    taken.mkdir()
    (taken / "mine.txt").write_text("mine", encoding="utf-8")
    done = storymaths("publish", str(taken), folder=project)
    assert (done.returncode, "publish did not make it" in done.stderr) == (2, True)
    inside = storymaths("publish", "content/site", folder=project)
    assert (inside.returncode, "is inside content/" in inside.stderr) == (2, True)
    back = storymaths("publish", str(tmp_path / "lessons"), "--back", folder=project)
    assert (back.returncode, "no earlier release" in back.stderr) == (2, True)
    assert (taken / "mine.txt").read_text(encoding="utf-8") == "mine"


def test_problems_in_the_content_stop_it_before_it_builds(project: Path, tmp_path: Path) -> None:
    page = project / "content/books/book-0/session-1.md"
    text = page.read_text(encoding="utf-8")
    page.write_text(f"{text}\n<script>alert(1)</script>\n", encoding="utf-8")
    done = storymaths("publish", str(tmp_path / "lessons"), folder=project)
    page.write_text(text, encoding="utf-8")
    assert done.returncode == 1
    assert "html-not-on-list" in done.stdout
    assert list(tmp_path.iterdir()) == []


def test_the_rules_of_the_finished_site_are_explained(project: Path) -> None:
    assert "moved.yaml" in storymaths("explain", "page-vanished", folder=project).stdout


def test_a_link_into_the_content_is_seen_through(project: Path, tmp_path: Path) -> None:
    link = tmp_path / "elsewhere"
    link.symlink_to(project, target_is_directory=True)
    done = storymaths("publish", str(link / "content/site"), folder=project)
    assert (done.returncode, "is inside content/" in done.stderr) == (2, True)


def test_stopped_while_tidying_up_it_says_that_the_site_is_published(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    releases = Releases(tmp_path / "lessons")

    def publish_and_stop(*_: object) -> int:
        releases.open()
        staging = releases.staging()
        releases.show(releases.keep(staging, {}))
        raise KeyboardInterrupt

    monkeypatch.setattr(publish_command, "_publish", publish_and_stop)
    options = argparse.Namespace(dest=tmp_path / "lessons", way="server", back=False, dry_run=False, wait=False)
    assert publish_command.run(tmp_path, options) == 1
    assert "published all the same: release 1 is shown" in capsys.readouterr().err
