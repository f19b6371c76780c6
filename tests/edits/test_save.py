"""A page is saved whole or not at all, in the collection, and never over what somebody else wrote."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from storymaths.edits import save as saving
from storymaths.edits.edit import EditRefused
from storymaths.edits.save import ChangedOutside, read_file, save


@pytest.fixture
def content(tmp_path: Path) -> Path:
    folder = tmp_path / "content" / "books" / "a-book"
    folder.mkdir(parents=True)
    (folder / "session-1.md").write_bytes(b"\xef\xbb\xbf---\r\nkind: page\r\n---\r\n")
    (tmp_path / "secret.md").write_text("outside")
    return tmp_path / "content"


PAGE = "books/a-book/session-1.md"


def test_what_is_read_is_saved_to_the_byte_with_the_mode_of_the_file(content: Path) -> None:
    (content / PAGE).chmod(0o640)
    before = (content / PAGE).read_bytes()
    text, mark = read_file(content, PAGE)
    assert save(content, PAGE, mark, text) == mark
    assert (content / PAGE).read_bytes() == before
    again = save(content, PAGE, mark, text + "More.\r\n")
    assert read_file(content, PAGE) == (text + "More.\r\n", again)
    assert (content / PAGE).stat().st_mode & 0o777 == 0o640
    assert [path.name for path in (content / PAGE).parent.iterdir()] == ["session-1.md"]


def test_a_file_changed_outside_is_left_and_both_texts_are_told(content: Path) -> None:
    _, mark = read_file(content, PAGE)
    (content / PAGE).write_text("theirs")
    with pytest.raises(ChangedOutside) as told:
        save(content, PAGE, mark, "ours")
    assert (told.value.theirs, told.value.ours) == ("theirs", "ours")
    assert (content / PAGE).read_text() == "theirs"


def test_a_save_that_is_cut_short_leaves_the_old_file(content: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text, mark = read_file(content, PAGE)

    def fail(*_: object) -> None:
        raise OSError("no room")

    with monkeypatch.context() as patch:
        patch.setattr(os, "fsync", fail)
        with pytest.raises(OSError, match="no room"):
            save(content, PAGE, mark, "new")
    assert read_file(content, PAGE) == (text, mark)
    (content / PAGE).with_name(".session-1.md.saving").write_text("left by a killed run")
    save(content, PAGE, mark, "new")
    assert [path.name for path in (content / PAGE).parent.iterdir()] == ["session-1.md"]


@pytest.mark.parametrize(
    "source", ["../secret.md", "/etc/passwd", "books/../../secret.md", "books/a-book", "", "books/a-book/.hidden.md"]
)
def test_nothing_outside_the_collection_is_read_or_written(content: Path, source: str) -> None:
    with pytest.raises(EditRefused):
        read_file(content, source)
    with pytest.raises(EditRefused):
        save(content, source, saving.hash_of(b"outside"), "x")


def test_no_link_is_followed(content: Path, tmp_path: Path) -> None:
    (content / "books" / "link.md").symlink_to(tmp_path / "secret.md")
    (content / "out").symlink_to(tmp_path, target_is_directory=True)
    for source in ("books/link.md", "out/secret.md"):
        with pytest.raises(EditRefused, match="by a link"):
            save(content, source, saving.hash_of(b"outside"), "x")
    assert (tmp_path / "secret.md").read_text() == "outside"
