"""The command, over a small project built by the real builder."""

from __future__ import annotations

import argparse
import os
import resource
import subprocess
import sys
from pathlib import Path

import pytest
from bench.many_sessions import make_project
from project import ROOT
from storymaths.commands import publish as publish_command
from storymaths.release.releases import Releases

RENAMED = "- {from: books/book-0/home-1.md, to: books/book-0/home-2.md, since: 2027-01-11}"


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("small")
    make_project(folder, 1)
    return folder


def storymaths(project: Path, *arguments: str, largest: int | None = None) -> subprocess.CompletedProcess[str]:
    """The command in a project; ``largest`` is the size of file beyond which the system refuses to write."""

    def limit() -> None:
        if largest is not None:
            resource.setrlimit(resource.RLIMIT_FSIZE, (largest, largest))

    return subprocess.run(
        [sys.executable, "-m", "storymaths", *arguments],
        cwd=project,
        env={**os.environ, "PYTHONPATH": str(ROOT / "hooks")},
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=limit,
    )


def test_a_site_is_published_renamed_and_put_back(project: Path, tmp_path: Path) -> None:
    lessons = tmp_path / "lessons"
    done = storymaths(project, "publish", str(lessons))
    assert done.returncode == 0, done.stdout + done.stderr
    assert "release 1" in done.stdout
    assert (lessons / "books/book-0/home-1.html.br").is_file()

    home = project / "content/books/book-0/home-1.md"
    home.rename(home.with_name("home-2.md"))
    vanished = storymaths(project, "publish", str(lessons))
    assert vanished.returncode == 1
    assert "page-vanished" in vanished.stdout
    assert RENAMED.split(", since", maxsplit=1)[0] in vanished.stdout
    assert "Nothing was published; the site is as it was." in vanished.stdout
    assert (lessons / "books/book-0/home-1.html").is_file()

    moved = project / "site_data/moved.yaml"
    moved.write_text(f"moved:\n  {RENAMED}\n", encoding="utf-8")
    renamed = storymaths(project, "publish", str(lessons))
    assert renamed.returncode == 0, renamed.stdout + renamed.stderr
    assert 'http-equiv="refresh" content="0; url=home-2.html"' in (lessons / "books/book-0/home-1.html").read_text(
        "utf-8"
    )

    assert "release 1 again" in storymaths(project, "publish", str(lessons), "--back").stdout
    assert "refresh" not in (lessons / "books/book-0/home-1.html").read_text("utf-8")
    assert "release 2 again" in storymaths(project, "publish", str(lessons), "--back").stdout


def test_without_room_the_site_is_as_it_was(project: Path, tmp_path: Path) -> None:
    done = storymaths(project, "publish", str(tmp_path / "lessons"), largest=20_000)
    assert done.returncode == 1
    assert "There is no room left on the disk" in done.stderr
    assert "Nothing was published; there is no site there yet." in done.stderr
    assert "Traceback" not in done.stderr
    assert not (tmp_path / "lessons").exists()


def test_what_is_misused_is_told_and_nothing_is_touched(project: Path, tmp_path: Path) -> None:
    taken = tmp_path / "taken"
    taken.mkdir()
    (taken / "mine.txt").write_text("mine", encoding="utf-8")
    done = storymaths(project, "publish", str(taken))
    assert (done.returncode, "publish did not make it" in done.stderr) == (2, True)
    inside = storymaths(project, "publish", "content/site")
    assert (inside.returncode, "is inside content/" in inside.stderr) == (2, True)
    back = storymaths(project, "publish", str(tmp_path / "lessons"), "--back")
    assert (back.returncode, "no earlier release" in back.stderr) == (2, True)
    assert (taken / "mine.txt").read_text(encoding="utf-8") == "mine"


def test_problems_in_the_content_stop_it_before_it_builds(project: Path, tmp_path: Path) -> None:
    page = project / "content/books/book-0/session-1.md"
    text = page.read_text(encoding="utf-8")
    page.write_text(f"{text}\n<script>alert(1)</script>\n", encoding="utf-8")
    done = storymaths(project, "publish", str(tmp_path / "lessons"))
    page.write_text(text, encoding="utf-8")
    assert done.returncode == 1
    assert "html-not-on-list" in done.stdout
    assert list(tmp_path.iterdir()) == []


def test_the_rules_of_the_finished_site_are_explained(project: Path) -> None:
    assert "moved.yaml" in storymaths(project, "explain", "page-vanished").stdout


def test_a_link_into_the_content_is_seen_through(project: Path, tmp_path: Path) -> None:
    link = tmp_path / "elsewhere"
    link.symlink_to(project, target_is_directory=True)
    done = storymaths(project, "publish", str(link / "content/site"))
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
