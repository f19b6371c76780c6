"""Every slip of ``tests/serving/slips.yaml`` once, as its author makes it while a real server shows the collection.

``python tests/bench/try_slips.py [mkdocs|storymaths [FIRST LAST]]`` (default both, all of them) serves a copy of the tests'
collection and makes each slip in its files, in the moment in which it mends the one before: its page must come to say so,
the first page too, with no more problems than the slip is, and the page before must be whole again. Ends with 1 if one did not,
within a minute and a half, or the server printed a traceback. No print sheets are set.
"""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import tempfile
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator, Sequence
from contextlib import ExitStack, contextmanager
from functools import partial
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from project import ROOT, copy_of_project
from serving.test_slips import SLIPS, TOLD, Slip, made, name_of, problems_on
from storymaths.model.address import html_of, source_of

WAIT = 90.0
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


def pages_of(slip: Slip) -> set[str]:
    """The addresses that say a slip: its own page, and the first."""
    return {html_of(slip.get("page", source_of(slip["path"]))), "index.html"}


def is_told(slip: Slip, page: str) -> bool:
    """Whether a page says a slip."""
    return slip["says"] in problems_on(page)


def count_told(page: str) -> int:
    """How many problems a page says."""
    return page.partition('class="problems"')[2].partition("</section>")[0].count("<li>")


def is_whole(page: str) -> bool:
    """Whether a page has come, and says no problem."""
    return "</html>" in page and 'class="problems"' not in page


def is_whole_or_told(slip: Slip, page: str) -> bool:
    """Whether a page says no problem but, where a slip is told in more places than its own page, that slip."""
    return is_whole(page) or ("</html>" in page and is_told(slip, page))


def try_slips(slips: Sequence[tuple[int, Slip]], project: Path, address: str) -> Iterator[tuple[int, Slip, str]]:
    """Each slip, made in the moment in which the one before it is mended; and what went wrong with it or its mending."""
    with ExitStack() as made_now:
        before = set[str]()
        for number, slip in slips:
            made_now.close()
            made_now.enter_context(made(slip, project, Path(made_now.enter_context(tempfile.TemporaryDirectory()))))
            own = pages_of(slip)
            silent = [page for page in sorted(own) if not comes_to(address + page, partial(is_told, slip))]
            mended = partial(is_whole_or_told, slip)
            broken = [page for page in sorted(before - own) if not comes_to(address + page, mended)]
            before = own
            told = [*(f"not said on {page}" for page in silent), *(f"not mended: {page}" for page in broken)]
            if (many := count_told(fetch(f"{address}index.html"))) > int(slip.get("problems", 1)):
                told.append(f"{many} problems")
            yield number, slip, "; ".join(told)
    last = [page for page in sorted(before) if not comes_to(address + page, is_whole)]
    yield len(SLIPS) + len(TOLD), slips[-1][1], f"not mended: {', '.join(last)}" if last else ""


def try_all(frame: str, folder: Path, first: int, last: int) -> int:
    """How many slips went wrong under one frame, from one of them to another."""
    project, printed = copy_of_project(folder / frame), folder / f"{frame}.txt"
    settings = project / "site_data/site.yaml"
    text = settings.read_text(encoding="utf-8")
    settings.write_text(text.replace("print_sheets: true", "print_sheets: false"), encoding="utf-8")
    slips = list(enumerate((*SLIPS, *TOLD), 1))[first - 1 : last]
    wrong, traces, began = 0, 0, time.monotonic()
    with served(frame, project, printed) as address:
        if not comes_to(f"{address}index.html", is_whole):
            print(f"{frame}: nothing was served\n{printed.read_text(encoding='utf-8')}")
            return 1
        for number, slip, wrongs in try_slips(slips, project, address):
            traced, traces = traces, printed.read_text(encoding="utf-8").count("Traceback")
            told = wrongs + ("; a traceback" if traces > traced else "")
            wrong += bool(told)
            after = f"{time.monotonic() - began:.0f} s"
            print(f"{frame} {number} {after} {told or 'ok'}{f'  {name_of(slip)}' if told else ''}", flush=True)
    print(f"{frame}: {len(slips)} slips, {wrong} wrong, {traces} tracebacks, in {time.monotonic() - began:.0f} s")
    return wrong


def main() -> None:
    """Tries them in a folder that goes away."""
    with tempfile.TemporaryDirectory() as folder:
        first, last = (int(number) for number in (sys.argv[2:4] if len(sys.argv) > 3 else (1, len(SLIPS) + len(TOLD))))
        wrong = sum(try_all(frame, Path(folder), first, last) for frame in sys.argv[1:2] or COMMANDS)
    sys.exit(1 if wrong else 0)


if __name__ == "__main__":
    main()
