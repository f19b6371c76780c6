"""What checking and building cost, as ratios measured side by side in one run.

``python tests/bench/bench_check_and_build.py [SESSIONS]`` (default 1,000) prints:

* the time of ``storymaths check`` over generated sessions, as a ratio to parsing their YAML with CSafeLoader;
* the time of the site's build a page, as a ratio to a bare Material build of the same Markdown out of the
  navigation with search off; and Pagefind's indexing beside it, counted apart.

Each pair is run in turn several times and the medians are compared, since the machine drifts.
"""

from __future__ import annotations

import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

import yaml

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.many_sessions import make_project
from storymaths.model.document import Document
from storymaths.parse.document import parse_document

ROUNDS = 5
BARE = """\
site_name: Bare
docs_dir: content
theme: {name: material, font: false}
plugins: []
use_directory_urls: false
not_in_nav: /**
"""


def seconds(work: Callable[[], object]) -> float:
    """How long one call takes."""
    started = time.perf_counter()
    work()
    return time.perf_counter() - started


def run(*command: str, folder: Path) -> None:
    """A command that must succeed."""
    done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    if done.returncode:
        raise SystemExit(f"{' '.join(command)} failed:\n{done.stdout[-2000:]}{done.stderr[-2000:]}")


def parse_all(project: Path) -> int:
    """Parses the front matter of every page with CSafeLoader and nothing else."""
    count = 0
    for path in sorted((project / "content").rglob("*.md")):
        match = re.match(r"---\n(.*?)^---\n", path.read_text(encoding="utf-8"), re.DOTALL | re.MULTILINE)
        if match:
            yaml.load(match.group(1), Loader=yaml.CSafeLoader)
            count += 1
    return count


def bench_check(project: Path) -> None:
    """Prints the ratio of the check to parsing alone."""
    check = [sys.executable, "-m", "storymaths", "check"]
    checks, parses = [], []
    for _ in range(ROUNDS):
        parses.append(seconds(lambda: parse_all(project)))
        checks.append(seconds(lambda: run(*check, folder=project)))
    checked, parsed = statistics.median(checks), statistics.median(parses)
    pages = parse_all(project)
    print(
        f"check: {checked:.2f} s for {pages} pages; CSafeLoader alone {parsed:.2f} s; ratio {checked / parsed:.2f} (at most 2)"
    )


def bench_build(project: Path, bare: Path, spelt_out: Path) -> None:
    """Prints the ratio of the build, a page, to two bare Material builds; the text index counted apart.

    The bare build of the same files shows only their bodies: the front matter, which is most of a session, never
    becomes part of its page. The second has those words written out in the body, so that both show the same.
    """
    build = [sys.executable, "-m", "mkdocs", "build", "-q"]
    index = [sys.executable, "-m", "pagefind", "--site", "site", "--quiet"]
    ours, bares, spelt, indexes = [], [], [], []
    for _ in range(3):
        bares.append(seconds(lambda: run(*build, folder=bare)))
        spelt.append(seconds(lambda: run(*build, folder=spelt_out)))
        ours.append(seconds(lambda: run(*build, folder=project)))
        indexes.append(seconds(lambda: run(*index, folder=project)))
    pages, bare_pages = (len(list((folder / "site").rglob("*.html"))) for folder in (project, bare))
    indexing = statistics.median(indexes)
    our_page = (statistics.median(ours) - indexing) / pages * 1000
    print(f"build: {our_page:.1f} ms a page over {pages} pages")
    for name, times in (("of the same files", bares), ("of the same words", spelt)):
        page = statistics.median(times) / bare_pages * 1000
        print(f"  bare Material {name}: {page:.1f} ms over {bare_pages}; ratio {our_page / page:.2f} (at most 1.3)")
    print(f"text index: {indexing / pages * 1000:.1f} ms a page, counted apart")


def make_bare(project: Path, folder: Path, spelt_out: bool) -> None:
    """A project with the theme as it comes, of the same Markdown; its front matter's words in the body if wished."""
    shutil.copytree(project / "content", folder / "content")
    (folder / "mkdocs.yml").write_text(BARE, encoding="utf-8")
    if spelt_out:
        for path in (folder / "content").rglob("*.md"):
            page = parse_document(path.name, path.read_text(encoding="utf-8"))
            if isinstance(page, Document):
                path.write_text(page.prose.text, encoding="utf-8")


def main() -> None:
    """Makes the projects in a folder that goes away, and measures."""
    sessions = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    with tempfile.TemporaryDirectory() as folder:
        project, bare, spelt_out = (Path(folder, name) for name in ("ours", "bare", "spelt-out"))
        make_project(project, sessions)
        bench_check(project)
        make_bare(project, bare, spelt_out=False)
        make_bare(project, spelt_out, spelt_out=True)
        bench_build(project, bare, spelt_out)


if __name__ == "__main__":
    main()
