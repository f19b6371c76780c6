"""Reads every sheet that the tests hold against PDF/UA-1 afresh, and keeps what veraPDF says of it in ``verapdf.txt``.

``python -m outside.keep_verapdf`` from ``tests/`` with ``hooks`` on the path; it needs a Java. It prints what is wrong.
"""

from __future__ import annotations

import tempfile
from pathlib import Path

from demonstration.test_sheets_alone import write_one_of_each_sort
from outside.test_pdf_ua import write_sheets
from outside.verapdf import keep, read_afresh

if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as ours, tempfile.TemporaryDirectory() as shown:
        said = read_afresh([*write_sheets(Path(ours)), *write_one_of_each_sort(Path(shown))])
        keep(said)
    for file, faults in said.items():
        print("\n".join(f"{file.name}: {fault}" for fault in faults), end="\n" if faults else "")
