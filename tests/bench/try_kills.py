"""Publishes and kills it, over and over: after every kill what is published is one whole site or the other.

``python tests/bench/try_kills.py [KILLS]`` (default 100) kills that many publishings, by SIGKILL at random moments,
twice over: of a small project built by the real builder, where most of the time is spent building; and of a site made
in a moment, where most of it is spent packing, keeping and swapping. A reader looks at the site all the while. Then
two publish at once, refusing and waiting. It ends with 1 if anything was ever not whole.
"""

from __future__ import annotations

import hashlib
import os
import random
import signal
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from collections.abc import Callable, Sequence
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.many_sessions import make_project
from release.tiny_site import published, shown

ROOT = Path(__file__).resolve().parents[2]
ENVIRONMENT = {**os.environ, "PYTHONPATH": os.pathsep.join((str(ROOT / "hooks"), str(ROOT / "tests")))}


class Reader:
    """Reads the first page without a pause; counts the times it was not there or cut short."""

    def __init__(self, page: Path) -> None:
        self._page, self._going, self.reads, self.misses = page, True, 0, 0
        self._thread = threading.Thread(target=self._read, daemon=True)
        self._thread.start()

    def _read(self) -> None:
        while self._going:
            try:
                whole = self._page.read_bytes().rstrip().endswith(b"</html>")
            except OSError:
                whole = False
            self.reads += 1
            self.misses += not whole
            time.sleep(0.0005)

    def stop(self) -> None:
        """Lets the reader go."""
        self._going = False
        self._thread.join()


def killed(command: Sequence[str], folder: Path, after: float) -> bool:
    """Runs a command and kills it; whether it was still running."""
    child = subprocess.Popen(command, cwd=folder, env=ENVIRONMENT, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        child.wait(after)
    except subprocess.TimeoutExpired:
        child.send_signal(signal.SIGKILL)
        child.wait()
        return True
    return False


def kill_over_and_over(
    name: str,
    kills: int,
    longest: float,
    dest: Path,
    command: Callable[[int], tuple[Sequence[str], Path]],
    whole: Callable[[], str],
) -> bool:
    """Kills ``kills`` publishings within ``longest`` seconds of their start. Whether the site was whole each time."""
    moments, seen, running, broken = random.Random(20270111), Counter[str](), 0, list[str]()
    reader = Reader(dest / "index.html")
    for number in range(kills):
        running += killed(*command(number), moments.uniform(0.05, longest))
        try:
            seen[whole()] += 1
        except (AssertionError, OSError) as error:
            broken.append(f"  kill {number}: {error}")
    reader.stop()
    left = [path.name for path in dest.with_name(f"{dest.name}.releases").iterdir() if path.name.startswith("being")]
    print(
        f"{name}: {kills} publishings, {running} killed while they ran, {len(seen)} versions seen, {len(broken)} not whole;"
    )
    print(
        f"  {reader.reads:,} reads of the first page meanwhile, {reader.misses} of it missing or cut; {len(left)} left aside"
    )
    print("\n".join(broken), end="\n" if broken else "")
    return not broken and not reader.misses


def real(kills: int, folder: Path) -> bool:
    """A small project, in two versions by turns."""
    project, dest = folder / "project", folder / "real"
    make_project(project, 1)
    page = project / "content/books/book-0/home-1.md"
    text = page.read_text(encoding="utf-8")
    publish = [sys.executable, "-m", "storymaths", "publish", str(dest)]
    known = {}
    for version in ("B", "A"):
        page.write_text(f"{text}\nThis is version {version}.\n", encoding="utf-8")
        started = time.perf_counter()
        subprocess.run(publish, cwd=project, env=ENVIRONMENT, check=True, stdout=subprocess.DEVNULL)
        took = time.perf_counter() - started
        known[mark_of(dest)] = version

    def command(number: int) -> tuple[Sequence[str], Path]:
        page.write_text(f"{text}\nThis is version {'AB'[number % 2]}.\n", encoding="utf-8")
        return publish, project

    def whole() -> str:
        mark = mark_of(dest)
        assert mark in known, "it is neither of the two sites"
        return known[mark]

    return kill_over_and_over(f"Real builder, {took:.1f} s a publishing", kills, took * 1.1, dest, command, whole)


def mark_of(dest: Path) -> str:
    """One mark for every byte of a site and its packed forms; the text index's own names may differ by the run."""
    mark = hashlib.sha256()
    for path in sorted(dest.rglob("*")):
        if path.is_file() and "pagefind" not in path.parts and not path.name.startswith(("sitemap", "text-rows")):
            mark.update(path.relative_to(dest).as_posix().encode() + path.read_bytes())
    return mark.hexdigest()


def tiny(kills: int, folder: Path) -> bool:
    """A site made in a moment."""
    dest = folder / "tiny"
    published(dest, "first")

    def command(number: int) -> tuple[Sequence[str], Path]:
        return [sys.executable, "-m", "release.tiny_site", str(dest), f"v{number}"], ROOT / "tests"

    started = time.perf_counter()
    subprocess.run(*command(0)[:1], cwd=ROOT / "tests", env=ENVIRONMENT, check=True)
    took = time.perf_counter() - started
    done = kill_over_and_over(f"Made in a moment, {took:.2f} s", kills, took * 1.1, dest, command, lambda: shown(dest))
    published(dest, "last")
    return done and shown(dest) == "last"


def two_at_once(folder: Path) -> bool:
    """Two of the real command: the second refuses, or waits and then publishes."""
    project, dest = folder / "project", folder / "two"
    publish = [sys.executable, "-m", "storymaths", "publish", str(dest)]
    first = subprocess.Popen(publish, cwd=project, env=ENVIRONMENT, stdout=subprocess.PIPE, text=True)
    lock = folder / "two.releases" / "lock"
    while not (lock.exists() and lock.stat().st_size):
        time.sleep(0.02)
    second = subprocess.run(publish, cwd=project, env=ENVIRONMENT, capture_output=True, text=True, check=False)
    third = subprocess.run(
        [*publish, "--wait"], cwd=project, env=ENVIRONMENT, capture_output=True, text=True, check=False
    )
    print(f"Two at once: the first {first.communicate()[0].strip()[:60]}…")
    print(f"  the second ({second.returncode}): {second.stderr.strip()}")
    print(f"  one that waited ({third.returncode}): {third.stderr.strip()} {third.stdout.strip()[:60]}…")
    return (first.returncode, second.returncode, third.returncode) == (0, 2, 0)


def main() -> int:
    """0 if the site was whole each time."""
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    with tempfile.TemporaryDirectory() as made:
        results = [real(kills, Path(made)), tiny(kills, Path(made)), two_at_once(Path(made))]
    print("Whole every time." if all(results) else "NOT WHOLE.")
    return 0 if all(results) else 1


if __name__ == "__main__":
    sys.exit(main())
