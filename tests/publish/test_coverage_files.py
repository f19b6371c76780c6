"""What is covered as CSV files, read back by Python's own csv module, against the tables worked out by hand."""

from __future__ import annotations

import csv
import io

from mini_sites.three_small_books import FORMULA, three_small_books
from project import collection
from storymaths.publish.coverage_files import HEADER, coverage_files
from storymaths.render.site import Site

FILES = coverage_files(Site(three_small_books()))


def rows(address: str) -> list[dict[str, str]]:
    text = FILES[address]
    assert text.startswith("\ufeff")  # what spreadsheet programs want before UTF-8
    assert text.count("\n") == text.count("\r\n")  # RFC 4180, section 2
    return list(csv.DictReader(io.StringIO(text.removeprefix("\ufeff"), newline="")))


def told(address: str) -> list[tuple[str, ...]]:
    return [(row["Code"], row["Book"], row["Covered"], *(row[name] for name in HEADER[7:])) for row in rows(address)]


def test_there_is_a_file_for_the_collection_each_series_and_each_book() -> None:
    assert set(FILES) == {
        "coverage/collection.csv", "coverage/series/both.csv",
        "coverage/books/bells.csv", "coverage/books/boats.csv", "coverage/books/bones.csv",
    }  # fmt: skip


def test_the_collection_is_the_table_worked_out_by_hand() -> None:
    assert told("coverage/collection.csv") == [
        ("1A", "The Bells", "taught", "1", "", "", "", ""),
        ("1A", "The Boats", "taken up again", "", "1", "", "", ""),
        ("1A", "The Bones", "taken up again", "", "1", "", "", ""),
        ("1B", "The Boats", "touched when taught to another year", "", "", "1, 2", "", ""),
        ("1C", "", "not covered", "", "", "", "", ""),
        ("2A", "The Boats", "taught", "1, 2", "", "", "", ""),
        ("2B", "The Bones", "taught", "1", "", "", "", ""),
        ("2B", "The Bells", "touched when taught to another year", "", "", "1", "", ""),
        ("2C", "The Boats", "taught in part", "2", "", "", "long, short", "wide"),
        ("2C", "The Bones", "taught in part", "1", "", "", "short", "long, wide"),
        ("2D", "", "not covered", "", "", "", "", ""),
        ("3A", "The Boats", "touched when taught to another year", "", "", "1", "", ""),
    ]


def test_a_series_has_its_gaps_and_a_book_what_it_covers() -> None:
    codes = [(row["Code"], row["Covered"]) for row in rows("coverage/series/both.csv")]
    assert ("1C", "not covered") in codes
    assert ("2B", "touched when taught to another year") in codes
    assert {row["Code"] for row in rows("coverage/books/boats.csv")} == {"1A", "1B", "2A", "2C", "3A"}


def test_nothing_opens_as_a_formula() -> None:
    (gap,) = (row for row in rows("coverage/collection.csv") if row["Code"] == "2D")
    assert gap["Objective, in our words"] == f"'{FORMULA}"


def test_the_collections_files_can_be_read() -> None:
    for address, text in coverage_files(Site(collection())).items():
        read = list(csv.reader(io.StringIO(text.removeprefix("\ufeff"), newline="")))
        assert tuple(read[0]) == HEADER, address
        assert {len(row) for row in read} == {len(HEADER)}, address
