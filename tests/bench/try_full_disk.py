"""Publishes onto a disk that is nearly full: the error says so, and the old site is whole. As root, on Linux.

``python tests/bench/try_full_disk.py`` mounts a small tmpfs, publishes a small project there, and then fills the disk to
a little more each time, publishing again, until there is room enough. It ends with 1 if the site was ever not whole, if
the error was not in words, or if anything was left aside.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.many_sessions import make_project
from bench.try_kills import mark_of

ROOT = Path(__file__).resolve().parents[2]
ENVIRONMENT = {**os.environ, "PYTHONPATH": str(ROOT / "hooks")}
MEGABYTE = 1_000_000
SIZE = 40 * MEGABYTE
WORDS = "There is no room left on the disk to publish"


def main() -> int:
    """Mounts, fills, publishes; 0 if all was as it should be."""
    with tempfile.TemporaryDirectory() as made:
        disk, project = Path(made) / "disk", Path(made) / "project"
        disk.mkdir()
        make_project(project, 1)
        subprocess.run(["mount", "-t", "tmpfs", "-o", f"size={SIZE}", "tmpfs", str(disk)], check=True)
        try:
            return 1 if tried(project, disk) else 0
        finally:
            subprocess.run(["umount", str(disk)], check=True)


def publish(project: Path, dest: Path) -> subprocess.CompletedProcess[str]:
    """The command."""
    command = [sys.executable, "-m", "storymaths", "publish", str(dest)]
    return subprocess.run(command, cwd=project, env=ENVIRONMENT, capture_output=True, text=True, check=False)


def tried(project: Path, disk: Path) -> int:
    """How often something was not as it should be."""
    dest, wrong = disk / "lessons", 0
    done = publish(project, dest)
    assert done.returncode == 0, done.stderr
    whole = mark_of(dest)
    page = project / "content/books/book-0/home-1.md"
    page.write_text(page.read_text(encoding="utf-8") + "\nMore.\n", encoding="utf-8")
    for free in (0, 0.1, 1, 2, 4, 6, 8, 10, 12, 16, 20):
        room = fill(disk, int(free * MEGABYTE))
        done = publish(project, dest)
        (disk / "filler").unlink()
        left = [path.name for path in (disk / "lessons.releases").iterdir() if path.name.startswith(("being", "."))]
        if done.returncode == 0:
            print(f"{room / 1e6:5.1f} MB free: published")
            return wrong
        same, said = mark_of(dest) == whole, WORDS in done.stderr and "Traceback" not in done.stderr
        print(f"{room / 1e6:5.1f} MB free: {done.stderr.strip()} Whole: {same}. Left aside: {left or 'nothing'}.")
        wrong += not (same and said and not left)
    return wrong + 1


def fill(disk: Path, free: int) -> int:
    """Fills the disk up to so many bytes; returns how many are free."""
    about = os.statvfs(disk)
    with (disk / "filler").open("wb") as file:
        os.posix_fallocate(file.fileno(), 0, max(1, about.f_bavail * about.f_frsize - free))
    about = os.statvfs(disk)
    return about.f_bavail * about.f_frsize


if __name__ == "__main__":
    sys.exit(main())
