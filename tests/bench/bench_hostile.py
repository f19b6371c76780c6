"""How long content written to do harm takes to be told of: each case of ``tests/check/hostile.py``, checked and drawn.

``python tests/bench/bench_hostile.py [SEED]`` puts each into a content of one book, and prints the slowest, in seconds of
work, to read and check it, and to draw the page all the same, as under serve. At most two seconds for either is wanted. Besides these it
checks pages of noise: the same few signs of Markdown and YAML over and over, as long as a page may be.
"""

from __future__ import annotations

import json
import random
import sys
import tempfile
import time
from collections.abc import Iterator
from functools import partial
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from check.hostile import SESSION, Hostile, every_case, small_content
from project import reference, text_of
from storymaths.activities.on_pages import check_activities, work_out_pages
from storymaths.check.rules import check_all
from storymaths.model.document import Document
from storymaths.parse.collection import read_collection
from storymaths.publish.page_kinds.table import kind_of
from storymaths.render.site import Site

WANTED = 2.0
NOISE = 400
PIECES = [
    "[", "]", "(", ")", "<", ">", "*", "**", "_", "`", "```", "~~~maths\n", "!", "#", "## ", "- ", "1. ", "> ", "|", "|-|\n",
    "{", "}", "{: ", "=", " = ", "+", " + ", "1", "12", "1/2", "1/7", "½", "£", " of ", "\\", "\"", "'", "&", "&amp;", "<!--",
    "-->", "<a ", "</", "]: ", "](", "![", "{wrong}", "___", "\n", "\n\n", "    ", "\t", "a", "six ", "Page 4 ", "http://",
    "@", "<br>", ":", ": ", "kg ", "remainder 1 ", " ÷ ", " × ", ",", ".", "−", "left over", "\n---\n", "\n| ", "equal ", "Worm ",
]  # fmt: skip


def seconds_of(case: Hostile) -> tuple[float, float]:
    """Seconds to read and check, and to draw."""
    with tempfile.TemporaryDirectory() as folder:
        root = small_content(Path(folder))
        case.put(root / "content" / case.path)
        started = time.process_time()
        collection = read_collection(root, reference())
        check_all(collection)
        activities = work_out_pages(collection)
        check_activities(activities)
        checked = time.process_time()
        page = next((page for page in collection.documents if page.path == f"content/{case.path}"), None)
        if isinstance(page, Document):
            kind_of(page).draw(Site(collection, activities), page)
        return checked - started, time.process_time() - checked


def noise(seed: int) -> Iterator[Hostile]:
    """Pages of a few pieces over and over, in a session's body, in one of its texts, or among its keys."""
    chance, text = random.Random(seed), text_of(SESSION)
    for number in range(NOISE):
        pieces = chance.sample(PIECES, chance.randint(1, 4))
        if number % 2:
            words = "".join(chance.choice(pieces) for _ in range(chance.choice((2000, 7000, 30_000))))
        else:
            words = "".join(pieces) * chance.choice((500, 2000, 8000))
        if number % 3 == 0:  # paragraphs just short enough
            words = "\n\n".join(words[at : at + 7900] for at in range(0, len(words), 7900))
        where = chance.choice(("body", "body", "text", "keys"))
        if where == "body":
            whole = f"{text}\n\n{words}"[:55_000]
        elif where == "text":
            whole = text.replace("summary: ", f"summary: {json.dumps(words[:7000])}\nformer: ", 1)
        else:
            whole = text.replace("kind: session\n", f"kind: session\n{words[:40_000]}\n", 1)
        yield Hostile(f"in the {where}, noise of {pieces}", SESSION, "", partial(_write, whole))


def _write(text: str, file: Path) -> None:
    file.write_text(text, encoding="utf-8")


def main() -> int:
    """Prints the slowest of each; 1 if any took longer than is wanted."""
    seed = int(sys.argv[1]) if len(sys.argv) > 1 else 20270111
    reference()
    seconds_of(next(every_case()))  # what is loaded once is not counted
    slow = 0
    for name, cases in (("hostile contents", list(every_case())), ("pages of noise", list(noise(seed)))):
        times = sorted(((seconds_of(case), case.name) for case in cases), key=lambda one: -sum(one[0]))
        print(f"{len(times)} {name}; the slowest, in seconds to check and to draw:")
        for (checked, drawn), what in times[:8]:
            print(f"  {checked:.2f} + {drawn:.2f}  {what}")
        slow += sum(max(both) > WANTED for both, _ in times)
    print(f"{slow} took longer than {WANTED} s." if slow else f"None took longer than {WANTED} s.")
    return 1 if slow else 0


if __name__ == "__main__":
    sys.exit(main())
