"""Every slip of ``tests/serving/slips.yaml`` once, as its author makes it while a real server shows the collection.

``python tests/bench/try_slips.py [mkdocs|storymaths] [FIRST]`` (default both, from the first slip on) serves a copy of the
tests' collection, makes each slip in its files, waits until its page says so and the first page with it, mends it, and
waits until both are whole. Ends with 1 if a page did not come, did not say it, did not become whole, or the server printed
a traceback. No print sheets are set.
"""

from __future__ import annotations

import html
import os
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from project import ROOT, copy_of_project
from serving.test_slips import SLIPS, TOLD, Slip, made, name_of, problems_on
from storymaths.model.address import html_of, source_of

WAIT = 300.0
"""Seconds after which a page that has not come, or not changed, counts as one that hangs."""
COMMANDS = {"mkdocs": ["mkdocs", "serve", "--dev-addr"], "storymaths": ["storymaths", "serve", "--port"]}


def fetch(address: str) -> str:
    """What stands at an address, or what was said in its place."""
    try:
        with urllib.request.urlopen(address, timeout=WAIT) as answer:
            return str(answer.read().decode())
    except urllib.error.HTTPError as error:
        return str(error.read().decode())


def comes_to(address: str, is_so: Callable[[str], bool]) -> bool:
    """Whether the page at an address becomes so, in good time."""
    until = time.monotonic() + WAIT
    while time.monotonic() < until:
        try:
            if is_so(fetch(address)):
                return True
        except OSError:
            pass  # asked again, until it has had its time
        time.sleep(0.25)
    return False


@contextmanager
def served(frame: str, project: Path, printed: Path) -> Iterator[str]:
    """The address of the collection, served by one of the frames; what the server prints goes into a file."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    *command, last = COMMANDS[frame]
    at = f"127.0.0.1:{port}" if frame == "mkdocs" else str(port)
    with printed.open("w", encoding="utf-8") as out:
        process = subprocess.Popen(
            [sys.executable, "-m", *command, last, at], cwd=project, stdout=out, stderr=subprocess.STDOUT,
            env={**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONUNBUFFERED": "1"},
        )  # fmt: skip
        try:
            yield f"http://127.0.0.1:{port}/"
        finally:
            process.terminate()
            process.wait()


def try_slip(slip: Slip, project: Path, address: str) -> str:
    """What went wrong with a slip: empty if it was said on both pages, and mended by mending."""
    pages = {html_of(slip.get("page", source_of(slip["path"]))), "index.html"}
    says = slip["says"]

    def is_said(page: str) -> bool:
        return says in problems_on(page) or says in html.unescape(page.partition('class="problems"')[2])

    with tempfile.TemporaryDirectory() as kept, made(slip, project, Path(kept)):
        silent = [page for page in pages if not comes_to(address + page, is_said)]
    broken = [page for page in pages if not comes_to(address + page, _is_whole)]
    return "; ".join([*(f"not said on {page}" for page in silent), *(f"not mended: {page}" for page in broken)])


def _is_whole(page: str) -> bool:
    return "</html>" in page and 'class="problems"' not in page


def try_all(frame: str, folder: Path, first: int) -> int:
    """How many slips went wrong under one frame, from one of them on."""
    project, printed = copy_of_project(folder / frame), folder / f"{frame}.txt"
    settings = project / "site_data/site.yaml"
    text = settings.read_text(encoding="utf-8")
    settings.write_text(text.replace("print_sheets: true", "print_sheets: false"), encoding="utf-8")
    wrong, seconds, traces = 0, list[float](), 0
    with served(frame, project, printed) as address:
        if not comes_to(f"{address}index.html", _is_whole):
            print(f"{frame}: nothing was served\n{printed.read_text(encoding='utf-8')}")
            return 1
        for number, slip in list(enumerate((*SLIPS, *TOLD), 1))[first - 1 :]:
            began, told = time.monotonic(), try_slip(slip, project, address)
            seconds.append(time.monotonic() - began)
            before, traces = traces, printed.read_text(encoding="utf-8").count("Traceback")
            told += "; a traceback" if traces > before else ""
            wrong += bool(told)
            print(
                f"{frame} {number} {seconds[-1]:.1f} s {told or 'ok'}{f'  {name_of(slip)}' if told else ''}", flush=True
            )
    print(
        f"{frame}: {len(seconds)} slips, {wrong} wrong, {traces} tracebacks; median {statistics.median(seconds):.1f} s"
    )
    return wrong


def main() -> None:
    """Tries them in a folder that goes away."""
    with tempfile.TemporaryDirectory() as folder:
        first = int(sys.argv[2]) if len(sys.argv) > 2 else 1
        wrong = sum(try_all(frame, Path(folder), first) for frame in sys.argv[1:2] or COMMANDS)
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
