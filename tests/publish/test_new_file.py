"""What is written beside its place and then put there: what a killed run left of it goes with the next."""

from __future__ import annotations

import os
import time
from pathlib import Path

from storymaths.publish.new_file import beside, write_new


def test_what_a_killed_run_left_goes_and_what_another_is_writing_stays(tmp_path: Path) -> None:
    page, long_ago = tmp_path / "session-1.md", time.time() - 3600
    left, busy, other = beside(page, "4"), beside(page, "5"), beside(tmp_path / "session-2.md", "4")
    for part in (left, busy, other):
        part.write_text("half of", encoding="utf-8")
    for part in (left, other):
        os.utime(part, (long_ago, long_ago))
    write_new(page, b"whole")
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted([busy.name, other.name, page.name])
    assert page.read_bytes() == b"whole"
