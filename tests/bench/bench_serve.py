"""From saving to seeing under ``storymaths serve``, as a page that is open in a browser has it.

``python tests/bench/bench_serve.py [SAVES]`` (default 100) serves the demonstration, and made-up collections of 500 and
2,000 sessions. Each save puts a new word into a session while a browser waits for word of a change; the time runs from
before the file is written until the page with that word has been fetched. It prints the median and the worst, the same
for a list of ``site_data/`` (a tenth as many saves), and the memory of the server after the first save and each quarter
of them: the first sheets that are set in type, aside, bring what the typesetter needs.
"""

from __future__ import annotations

import os
import shutil
import statistics
import sys
import tempfile
import threading
import time
import urllib.parse
import urllib.request
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.many_sessions import OUR_PROJECT, make_project
from live.serving import Served, storymaths_serve


def fetch(address: str) -> str:
    """What stands at an address."""
    with urllib.request.urlopen(address, timeout=300) as answer:
        return str(answer.read().decode())


def save_and_see(served: Served, file: Path, text: str, page: str, word: str) -> float:
    """Seconds from saving a text until the page with a word of it has been fetched by a browser that waits."""
    mark = fetch(served.address + page).partition('data-mark="')[2].partition('"')[0]
    asking = f"{served.address}_live/changed?{urllib.parse.urlencode({'page': page, 'mark': mark})}"
    waiting = threading.Thread(target=fetch, args=(asking,))
    waiting.start()
    time.sleep(0.3)  # until it waits
    started = time.perf_counter()
    file.write_text(text, encoding="utf-8")
    waiting.join()
    if word not in fetch(served.address + page):
        raise SystemExit(f"{page} was said to have changed, and has not: no {word}")
    return time.perf_counter() - started


def memory_of(served: Served) -> int:
    """Megabytes that the server has in use; 0 where the machine does not tell."""
    status = Path(f"/proc/{served.process.pid}/status")
    lines = status.read_text().splitlines() if status.is_file() else []
    return sum(int(line.split()[1]) for line in lines if line.startswith("VmRSS")) // 1000


def processor_time_of(served: Served) -> float:
    """Seconds that the server has had of a processor: what others do on the machine is no part of them."""
    stat = Path(f"/proc/{served.process.pid}/stat")
    times = stat.read_text().rpartition(")")[2].split()[11:13] if stat.is_file() else []
    return sum(map(int, times)) / os.sysconf("SC_CLK_TCK") if times else 0.0


def bench(name: str, project: Path, saves: int) -> None:
    """Prints the figures of one collection."""
    session = sorted((project / "content").glob("books/*/session-1.md"))[0]
    page = session.relative_to(project / "content").with_suffix(".html").as_posix()
    words, text = project / "site_data/words.yaml", session.read_text(encoding="utf-8")
    listed, began = words.read_text(encoding="utf-8"), time.perf_counter()
    with storymaths_serve(project) as served:
        print(f"{name}: served after {time.perf_counter() - began:.1f} s")
        seen, memory, began = list[float](), list[int](), processor_time_of(served)
        for number in range(saves):
            word = f"kelp{number}word"
            seen.append(save_and_see(served, session, f"{text.rstrip()} So says {word}.\n", page, word))
            memory.append(memory_of(served))
        own = processor_time_of(served) - began
        lists = [
            save_and_see(
                served,
                words,
                listed.replace("    means: ", f"    means: Kelp{number}word. ", 1),
                "words.html",
                f"Kelp{number}word",
            )
            for number in range(max(1, saves // 10))
        ]
    for what, times in (("a session", seen), ("a list", lists)):
        print(f"  {what}: median {statistics.median(times):.2f} s, worst {max(times):.2f} s of {len(times)} saves")
    print(f"  the server's own time, of a processor: {own / (len(seen)):.2f} s a save of a session")
    quarters = sorted({0, *(len(memory) * part // 4 - 1 for part in (1, 2, 3, 4))} - {-1})
    print(f"  memory in MB: {', '.join(f'{memory[at]} after save {at + 1}' for at in quarters)}")


def main() -> None:
    """Makes the collections in a folder that goes away, and measures."""
    saves = int(sys.argv[1]) if len(sys.argv) > 1 else 100
    with tempfile.TemporaryDirectory() as folder:
        books = Path(folder, "five-books")
        for name in ("content", "site_data"):
            shutil.copytree(OUR_PROJECT / name, books / name)
        bench("five books", books, saves)
        for sessions in (500, 2000):
            project = Path(folder, str(sessions))
            make_project(project, sessions)
            bench(f"{sessions:,} sessions", project, saves)


if __name__ == "__main__":
    main()
