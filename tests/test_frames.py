"""The two frames a site is built in, MkDocs and the core by itself: the same bytes, and nothing lost when a build fails."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest
from built import OLD_CLOCK, built_site, copy_that_was_built, mkdocs_build
from command import storymaths
from project import PROJECT, copy_of_project
from storymaths.build import Build
from storymaths.model.problem import ProblemsFound
from storymaths.pipeline import build_site, start_build
from storymaths.reading import ProjectReader
from storymaths.release.staging import Staging

SITE = "site_data/site.yaml"


def change(file: Path, old: str, new: str) -> None:
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new), encoding="utf-8")


def files_in(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.fixture
def project(tmp_path: Path) -> Path:
    """A copy of the project. Print sheets have tests of their own."""
    folder = copy_of_project(tmp_path / "project")
    change(folder / SITE, "print_sheets: true", "print_sheets: false")
    return folder


def test_both_frames_give_the_same_files_byte_for_byte_everywhere(tmp_path: Path) -> None:
    """In another folder and process, time zone and locale, with another clock and umask, and names hashed otherwise."""
    copy = copy_that_was_built(tmp_path / "elsewhere é")
    shutil.rmtree(copy / ".cache/letterforms")
    for sheet in sorted((copy / ".cache/sheets").iterdir())[::20]:  # some are set again
        sheet.unlink()
    (tmp_path / "sitecustomize.py").write_text(OLD_CLOCK, encoding="utf-8")
    before = os.umask(0o027)
    try:
        done = mkdocs_build(
            copy,
            PYTHONHASHSEED="77",
            TZ="Pacific/Kiritimati",
            LC_ALL="C",
            SOURCE_DATE_EPOCH="86400",
            PYTHONPATH=str(tmp_path),
        )
    finally:
        os.umask(before)
    assert done.returncode == 0, done.stdout + done.stderr
    by_mkdocs, by_the_core = files_in(copy / "site"), files_in(built_site())
    assert by_mkdocs.keys() == by_the_core.keys()
    assert [name for name, content in by_mkdocs.items() if by_the_core[name] != content] == []
    assert len(by_mkdocs) > 100


def test_the_core_builds_nothing_of_what_has_problems(project: Path, tmp_path: Path) -> None:
    change(project / "content/about-the-quay.md", "kind: page", "kynd: page")
    with pytest.raises(ProblemsFound, match="kind-unknown"):
        build_site(project, tmp_path / "site")
    assert not (tmp_path / "site").exists()


def test_a_build_that_fails_on_the_way_leaves_the_last_site(project: Path) -> None:
    (project / "site").mkdir()
    (project / "site/index.html").write_text("as it was", encoding="utf-8")
    (project / ".cache").write_text("a file where a folder is needed", encoding="utf-8")
    done = mkdocs_build(project)
    assert done.returncode != 0
    assert files_in(project / "site") == {"index.html": b"as it was"}
    assert [path.name for path in project.glob(".site*")] == []


def test_what_passes_the_check_and_cannot_be_built_is_told_and_leaves_the_last_site(
    project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A fault of the program, on the way to the pages and on the way to what stands beside them."""
    (project / "site").mkdir()
    (project / "site/index.html").write_text("as it was", encoding="utf-8")

    def stumble(*_: object) -> None:
        raise IndexError("tuple index out of range")

    for what, place in (("theme_files", "content/:1:1"), ("kind_of", "content/about-the-quay.md:1:1")):
        with monkeypatch.context() as broken:
            broken.setattr(f"storymaths.build.{what}", stumble)
            broken.setattr("storymaths.build.Build.pages", ["about-the-quay.md"])
            done = storymaths("build", folder=project)
        assert done.returncode == 1
        assert "program-fault" in done.stderr
        assert place in done.stderr
        assert done.stderr.endswith("Nothing was built; the site is as it was.\n")
        assert (project / "site/index.html").read_text(encoding="utf-8") == "as it was"
        assert [path.name for path in project.glob(".site*")] == []


def test_the_name_of_the_site_and_where_it_stands_are_in_its_settings(project: Path) -> None:
    change(project / SITE, "name: Plover Quay", """name: 'Kelp <b>" & Co</b>'""")
    change(project / SITE, "https://ploverquay.example/", "https://ploverquay.example/maths")
    build = start_build(project)
    name = "Kelp &lt;b&gt;&#34; &amp; Co&lt;/b&gt;"
    assert f" · {name}</title>" in build.page("find.md")
    assert f"{name}</a>" in build.page("find.md")
    assert 'href="/maths/look/site.css"' in str(build.files()["404.html"])
    assert "<loc>https://ploverquay.example/maths/</loc>" in str(build.files()["sitemap.xml"])


def test_what_one_build_solved_the_next_does_not_solve_again(monkeypatch: pytest.MonkeyPatch) -> None:
    reader = ProjectReader(PROJECT)
    drawn_whole(start_build(PROJECT, reader=reader))

    def solve_again(asked: object) -> object:
        raise AssertionError(f"{asked} was solved again")

    monkeypatch.setattr("storymaths.activities.work_out._work_out", solve_again)
    assert drawn_whole(start_build(PROJECT, reader=reader)).reading.problems == ()


def drawn_whole(build: Build) -> Build:
    """A build with the pages of the kinds' examples drawn, and every activity worked out."""
    for source in ("activities.md", "activities-screen.md"):
        build.draw(source)
    return build


def test_what_is_made_aside_takes_its_place_or_nothings(tmp_path: Path) -> None:
    out = tmp_path / "site"
    for words in ("first", "second"):
        staging = Staging(out)
        (staging.folder / "index.html").write_text(words, encoding="utf-8")
        staging.put_in_place()
        assert files_in(tmp_path) == {"site/index.html": words.encode()}
    cut_short = Staging(out)
    (cut_short.folder / "index.html").write_text("half", encoding="utf-8")
    staging = Staging(out)  # the next run finds what that one left
    assert list(staging.folder.iterdir()) == []
    staging.discard()
    assert files_in(tmp_path) == {"site/index.html": b"second"}


def test_a_run_killed_between_the_last_site_and_the_new_one_is_mended_by_the_next(tmp_path: Path) -> None:
    out = tmp_path / "site"
    (tmp_path / ".site.last").mkdir()
    (tmp_path / ".site.last" / "index.html").write_text("as it was", encoding="utf-8")
    Staging(out).discard()
    assert files_in(tmp_path) == {"site/index.html": b"as it was"}


def test_what_cannot_be_put_in_place_leaves_what_was_there(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    out = tmp_path / "site"
    out.mkdir()
    (out / "index.html").write_text("as it was", encoding="utf-8")
    staging, rename = Staging(out), Path.rename

    def refuse(path: Path, target: Path) -> Path:
        if path == staging.folder:
            raise OSError("no")
        return rename(path, target)

    monkeypatch.setattr("storymaths.release.staging.exchange", lambda *_: False)  # as on a disk that cannot
    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(OSError, match="no"):
        staging.put_in_place()
    assert files_in(out) == {"index.html": b"as it was"}
