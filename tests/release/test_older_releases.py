"""A site published before the folder beside it had its present name: it goes on in the folder it has."""

from __future__ import annotations

import os
from pathlib import Path

from storymaths.release.publishing import go_back
from storymaths.release.releases import Releases

from .tiny_site import published, shown


def as_it_was_before(dest: Path) -> None:
    """Two releases in a folder of the older name."""
    published(dest, "one")
    published(dest, "two")
    dest.with_name("lessons.releases").rename(dest.with_name("lessons.editions"))
    dest.unlink()
    dest.symlink_to("lessons.editions/2", target_is_directory=True)


def test_the_next_release_joins_the_older_ones(tmp_path: Path) -> None:
    dest = tmp_path / "lessons"
    as_it_was_before(dest)
    assert published(dest, "three").release == 3
    assert (os.readlink(dest), shown(dest)) == ("lessons.editions/3", "three")
    assert go_back(Releases(dest), False, lambda: None) == 2
    assert shown(dest) == "two"
    assert {path.name for path in tmp_path.iterdir()} == {"lessons", "lessons.editions"}


def test_a_folder_of_somebody_elses_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "lessons.editions").mkdir()
    (tmp_path / "lessons.editions/mine.txt").write_text("mine", encoding="utf-8")
    published(tmp_path / "lessons", "one")
    assert os.readlink(tmp_path / "lessons") == "lessons.releases/1"
    assert [path.name for path in (tmp_path / "lessons.editions").iterdir()] == ["mine.txt"]
