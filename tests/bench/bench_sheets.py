"""Measures the print sheets: ``python -m bench.bench_sheets 200``, from ``tests/`` with ``hooks`` on the path.

So many sheets, the frozen collection's own over and over under other titles, are made cold in one process and in two, and
warm; beside them one plain compile of a single document with the same pages. The best of ``ROUNDS``, since whatever
else the machine does only adds.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from itertools import cycle, islice
from pathlib import Path

from project import PROJECT, collection
from storymaths.activities.on_pages import work_out_pages
from storymaths.publish import sheets as published
from storymaths.publish.sheet_cache import fill
from storymaths.render.sheets.paper import for_adult
from storymaths.render.sheets.sheet import SheetData
from storymaths.render.sheets.typesetting import content_key, copy_of
from storymaths.render.sheets.whole_set import WHOLE_BOOK, WHOLE_LESSON
from storymaths.render.site import Site

ROUNDS = 3


def many(count: int, cache: Path) -> list[published._Planned]:
    """So many sheets, each with a title of its own."""
    demo = published.sheets_of(Site(collection(), work_out_pages(collection())), PROJECT, cache)
    own = [one for one in demo if one.what not in (WHOLE_BOOK, WHOLE_LESSON)]
    return [
        (one.source, f"{one.source[:-3]}-{one.what}-{n}", replace(one.data, title=f"{one.data.title} {n}"))
        for n, one in enumerate(islice(cycle(own), count))
    ]


def best(work: Callable[[], object], before: Callable[[], object] = lambda: None) -> float:
    """Seconds of the quickest round."""
    times = []
    for _ in range(ROUNDS):
        before()
        begun = time.perf_counter()
        work()
        times.append(time.perf_counter() - begun)
    return min(times)


_PLAIN = """
import sys, time
from pathlib import Path
from storymaths.render.sheets.typesetting import _compiler
copy = Path(sys.argv[1]).read_text(encoding="utf-8")
begun = time.perf_counter()
_compiler().compile(format="pdf", pdf_standards=["ua-1"], sys_inputs={"data": copy})
print(time.perf_counter() - begun)
"""


def plain_compile(copy: str, folder: Path) -> float:
    """Seconds of one compile of one document, by a process that has kept nothing from before."""
    file = folder / "whole.json"
    file.write_text(copy, encoding="utf-8")
    return min(
        float(subprocess.run([sys.executable, "-c", _PLAIN, file], capture_output=True, text=True, check=True).stdout)
        for _ in range(ROUNDS)
    )


def main(count: int) -> None:
    """Prints every figure."""
    with tempfile.TemporaryDirectory() as made:
        cache, site = Path(made) / "cache", Path(made) / "site"
        planned = many(count, Path(made) / "demo")
        copies = {content_key(copy): copy for copy in (copy_of(data) for _, _, data in planned)}

        def empty() -> None:
            shutil.rmtree(cache, ignore_errors=True)

        def all_of_it() -> None:
            published.write_sheets(published._made(planned, cache), site, cache)

        one = best(lambda: fill(cache, copies, second_process=False), empty)
        two = best(lambda: fill(cache, copies), empty)
        empty()
        cold = best(all_of_it, empty)
        pages = sum(sheet.pages for sheet in published._made(planned, cache))
        warm = best(all_of_it)
        pictures = {name: svg for _, _, data in planned for name, svg in data.pictures.items()}
        parts = tuple(part for _, _, data in planned for part in data.parts)
        whole = SheetData("whole", "All of them", "", parts, for_adult(), pictures)
        plain = plain_compile(copy_of(whole), Path(made))
        print(f"{count} sheets, {pages} pages, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}")
        print(f"cold, one process      {one:6.2f} s   {count / one:6.0f} sheets a second")
        print(f"cold, two processes    {two:6.2f} s   {count / two:6.0f} sheets a second")
        print(f"cold, with all files   {cold:6.2f} s")
        print(f"warm, with all files   {warm:6.2f} s   {count / warm:6.0f} sheets a second")
        print(f"one plain compile      {plain:6.2f} s   {count / plain:6.0f} sheets a second")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 200)
