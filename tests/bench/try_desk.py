"""Tries the desk hard: random sequences of changes against the same changes on the file, and SIGKILL at random moments.

``python tests/bench/try_desk.py [SEQUENCES] [KILLS]`` (default 2000 and 50). A sequence is one to four changes to a page of
the tests' collection, sent to the desk's application, and made on the text alone: the bytes must be the same after each.
A desk that is killed while it saves without a pause must leave the file as it last said it was saved, or as it was being
told to save it, and whole; and what it said was saved must be among the kept states. Ends with 1 if ever it was not so.
"""

from __future__ import annotations

import http.client
import json
import os
import random
import re
import signal
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from pathlib import Path
from urllib.parse import urlsplit

sys.path.insert(0, str(Path(__file__).parent.parent))

from desk.asking import Tab
from desk.random_changes import random_change
from project import ROOT, collection, copy_of_project
from storymaths.desk.asked import ASKED
from storymaths.desk.asked_edits import edits_for
from storymaths.desk.page_text import PageText
from storymaths.desk.server import desk_app
from storymaths.edits.apply import apply_all
from storymaths.edits.edit import EditRefused
from storymaths.edits.save import hash_of

SEED = 20261128


def try_sequences(root: Path, count: int) -> int:
    """How many sequences ended in other bytes than those of the same changes on the text."""
    choose, app, wrong, told = random.Random(SEED), desk_app(root), 0, Counter[str]()
    sources = [page.source for page in collection().documents]
    for _ in range(count):
        source = choose.choice(sources)
        tab, file = Tab(app, source), root / "content" / source
        first = file.read_bytes()
        text = first.decode()
        for _ in range(choose.randint(1, 4)):
            asked = random_change(choose, PageText(text))
            try:
                text = apply_all(text, edits_for(ASKED.validate_python(asked), PageText(text)))
                told["made"] += 1
            except EditRefused:
                told["refused"] += 1
            tab.post("/edit", asked)
            if file.read_bytes() != text.encode():
                wrong += 1
                print(f"Other bytes: {source} after {asked}")
                break
        file.write_bytes(first)
    print(f"{count} sequences: {told['made']} changes made, {told['refused']} refused, {wrong} with other bytes.")
    return wrong


def try_kills(root: Path, count: int) -> int:
    """How many kills lost what was said to be saved, or left half a file."""
    choose, wrong = random.Random(SEED), 0
    source = "books/cliff-house-lift/session-1.md"
    saves = []
    for kill in range(count):
        said, asked = _save_until_killed(root, source, choose.uniform(0.02, 0.6), kill)
        saves.append(len(said))
        now = (root / "content" / source).read_bytes()
        kept = {hash_of(file.read_bytes()) for file in (root / ".desk" / source.removesuffix(".md")).glob("*.md")}
        whole = PageText(now.decode()).raw is not None
        title = str((PageText(now.decode()).raw or {}).get("title"))
        if not whole or (hash_of(now) != said[-1] and title != asked) or said[-1] not in kept:
            wrong += 1
            print(f"Lost at kill {kill}: whole {whole}, title {title!r}, last asked {asked!r}, kept {said[-1] in kept}")
    print(f"{count} kills while saving without a pause ({sum(saves)} saves in all): {wrong} times anything was lost.")
    return wrong


def _save_until_killed(root: Path, source: str, after: float, kill: int) -> tuple[list[str], str]:
    """The marks that were said to be saved, and the title last asked for."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONUNBUFFERED": "1"}
    command = [sys.executable, "-m", "storymaths", "desk", "--stay"]
    with subprocess.Popen(command, cwd=root, env=environment, stdout=subprocess.PIPE, text=True) as program:
        assert program.stdout is not None
        address = urlsplit(next(found[0] for line in program.stdout if (found := re.search(r"http://\S+", line))))
        line = http.client.HTTPConnection(str(address.netloc), timeout=60)
        _until_it_listens(line, f"/?{address.query}")
        cookie = line.getresponse()
        cookie.read()
        headers = {"Cookie": str(cookie.getheader("set-cookie")).split(";")[0], "Origin": f"http://{address.netloc}"}
        line.request("GET", f"/state?source={source}", headers=headers)
        said, asked = [json.loads(line.getresponse().read())["mark"]], ""
        try:
            for number in range(10_000):
                if number == 1:  # the first loads what all others need
                    threading.Timer(after, program.send_signal, [signal.SIGKILL]).start()
                asked = f"Kill {kill}, save {number}"
                sent = {"source": source, "before": said[-1], "do": "type", "loc": ["title"], "text": asked}
                line.request("POST", "/edit", json.dumps(sent), {**headers, "Content-Type": "application/json"})
                said.append(json.loads(line.getresponse().read())["mark"])
        except (OSError, http.client.HTTPException, ValueError):
            pass
        program.wait()
    return said, asked


def _until_it_listens(line: http.client.HTTPConnection, path: str) -> None:
    while True:
        try:
            line.request("GET", path)
            return
        except ConnectionRefusedError:
            line.close()
            time.sleep(0.1)


def main() -> int:
    """Both; 1 if anything was wrong."""
    given = [int(word) for word in sys.argv[1:]]
    sequences, kills = (*given, *(2000, 50)[len(given) :])
    with tempfile.TemporaryDirectory() as folder:
        root = copy_of_project(Path(folder) / "project")
        return 1 if try_sequences(root, sequences) + try_kills(root, kills) else 0


if __name__ == "__main__":
    sys.exit(main())
