"""``site_data/`` is read as strictly as content."""

from __future__ import annotations

import datetime
import os
from pathlib import Path

import pytest
from project import PROJECT, copy_of_project, reference
from storymaths.model.fields import Strict
from storymaths.model.holiday import BankHolidays
from storymaths.model.reference import Limits
from storymaths.parse.reference import (
    CautionsFile,
    MaterialsFile,
    ReferenceBroken,
    WordsFile,
    YearsFile,
    read_reference,
)
from storymaths.parse.reference_files import ReferenceFiles
from storymaths.parse.reference_links import faults_in_bank_holidays


@pytest.mark.parametrize(
    ("file", "old", "new", "says"),
    [
        ("words.yaml", "concept: equality", "concept: equalitty", "not a known id"),
        ("materials.yaml", "    apparatus: true\n", "    aparatus: true\n", "aparatus"),
        ("concepts.yaml", "  - id: mass\n", "  - id: length\n", "already in this list"),
        ("years.yaml", "    tables: [2, 5, 10]\n", "    tables: [2, 5, ten]\n", "whole number"),
        (
            "curricula/england-ready-to-progress.yaml",
            "id: england-ready-to-progress\n",
            "id: england-ready-to-progress\nid: again\n",
            "id",
        ),
        ("curricula/england-early-years.yaml", "id: numbers-to-ten", "id: parts-of-numbers", "already in this list"),
        ("curricula/england-early-years.yaml", "id: numbers-to-ten", "id: all", "already in this list"),
        (
            "curricula/england-early-years.yaml",
            "id: numbers-to-ten",
            "id: numbers to ten",
            'such as "numbers-to-ten"',
        ),
        ("curricula/england-early-years.yaml", "standing: Statutory", "standng: Statutory", "standng"),
        ("themes.yaml", "themes:", "themes: [", ""),
        ("words.yaml", "example: There are 4 of us.", "example: 9 ÷ 5 = 3", "says 9 ÷ 5 = 3, which is not true"),
        ("site.yaml", "url: https://creative", "url: creative", "a whole web address"),
        ("site.yaml", "identity: ", "identty: ", "identty"),
        ("site.yaml", "kind: open", "kind: opened", "each-book"),
        ("site.yaml", "kind: open", "kind: paid", "says who may use it"),
        ("site.yaml", "print_sheets: true", "colours: mauve", "harbour"),
        ("site.yaml", "print_sheets: true", "spelling: en-US", "en-GB"),
        ("curricula/england-2028.yaml", "revised: '2026-11-25'", "revised: 2026", "a date is written year-month-day"),
        ("bank_holidays.yaml", "2027-03-26, name", "2027-03-29, name", "already in this list"),
        ("bank_holidays.yaml", "2027-03-26, name", "2037-03-26, name", "outside the years 2026 to 2028"),
        ("bank_holidays.yaml", "2027-03-26, name", "2027-03-36, name", "2027-03-36 is not a day"),
        ("bank_holidays.yaml", "by: statute", "by: statut", "not a known id"),
        ("asked.yaml", "concepts: [mass]", "concepts: [mas]", 'concepts is "mas", which is not a known id'),
        ("asked.yaml", "words: [remainder]", "words: [remander]", 'words is "remander", which is not a known id'),
        ("asked.yaml", "kinds: [home]", "kinds: [hme]", 'kinds is "hme", which is not a known id'),
        ("asked.yaml", "years: [1, 2]", "years: [1, 7]", "a year is Reception, 1, 2, 3, 4, 5 or 6"),
        ("asked.yaml", "[weight, weigh,", "[weight, fewer,", "is already in this list"),
    ],
)
def test_a_slip_is_told_with_its_place(tmp_path: Path, file: str, old: str, new: str, says: str) -> None:
    project = copy_of_project(tmp_path)
    path = project / "site_data" / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(ReferenceBroken) as error:
        read_reference(project)
    assert f"site_data/{file}:" in str(error.value)
    assert says in str(error.value)


@pytest.mark.parametrize(
    ("file", "schema", "old", "new", "says"),
    [
        ("limits.yaml", Limits, "class_size: 30", "class_size: -5", "at least 1"),
        ("limits.yaml", Limits, "class_size: 30", "class_size: 3000", "at most 100"),
        ("limits.yaml", Limits, "home_reading_grade: 5", "home_reading_grade: 500", "at most 12"),
        ("limits.yaml", Limits, "tries: 2000000", "tries: 0", "at least 1"),
        ("cautions.yaml", CautionsFile, "oldest_year: 1", "oldest_year: 241", "a year is Reception, 1, 2"),
        ("materials.yaml", MaterialsFile, "size_mm: [297, 210, 1]", "size_mm: [297, 210, -8]", "at least 0.1"),
        ("years.yaml", YearsFile, "clock_minutes: 30", "clock_minutes: 0", "at least 1"),
    ],
)
def test_nonsense_in_numbers_is_told(
    file: str, schema: type[Strict], old: str, new: str, says: str, tmp_path: Path
) -> None:
    text = (PROJECT / "site_data" / file).read_text(encoding="utf-8")
    assert old in text
    (tmp_path / "site_data").mkdir()
    (tmp_path / "site_data" / file).write_text(text.replace(old, new, 1), encoding="utf-8")
    files = ReferenceFiles(tmp_path, "site_data")
    assert files.read(file, schema) is None
    assert files.faults[0].place.path == f"site_data/{file}"
    assert says in files.faults[0].detail


@pytest.mark.parametrize(
    ("name", "day", "says"),
    [
        ("Early May bank holiday", "2026-05-11", "a Monday between 05-01 and 05-07"),
        ("Christmas Day", "2026-12-27", "a Saturday or Sunday"),
        ("Good Friday", None, "has no Good Friday in 2026"),
    ],
)
def test_a_bank_holiday_that_is_moved_or_dropped_is_told(name: str, day: str | None, says: str) -> None:
    bank = reference().bank_holidays
    first = next(one for one in bank.holidays if one.name.startswith(name))
    others = tuple(one for one in bank.holidays if one is not first)
    moved = () if day is None else (first.model_copy(update={"date": datetime.date.fromisoformat(day)}),)
    told = told_of(bank.model_copy(update={"holidays": (*moved, *others)}))
    assert any(says in detail for detail in told), told
    proclaimed = tuple(one.model_copy(update={"moved": "By proclamation."}) for one in moved)
    assert bool(told_of(bank.model_copy(update={"holidays": (*proclaimed, *others)}))) == (day is None)


def told_of(bank: BankHolidays) -> list[str]:
    return [fault.detail for fault in faults_in_bank_holidays(bank, reference().locators["bank_holidays.yaml"])]


@pytest.mark.parametrize("what", ["folder", "pipe", "link to itself", "large"])
def test_what_stands_for_a_file_of_data_and_is_none_is_told(what: str, tmp_path: Path) -> None:
    folder = tmp_path / "site_data"
    folder.mkdir()
    file = folder / "words.yaml"
    if what == "large":
        file.write_bytes(b"#" * 3_000_000)
    else:
        {"folder": file.mkdir, "pipe": lambda: os.mkfifo(file), "link to itself": lambda: file.symlink_to(file)}[what]()
    files = ReferenceFiles(tmp_path, "site_data")
    assert files.read("words.yaml", WordsFile) is None
    assert "it is not a plain file of at most" in files.faults[0].detail


def test_a_concept_lives_in_the_years_of_its_objectives() -> None:
    for concept in reference().concepts.values():
        for framework, codes in concept.objectives.items():
            for code in codes:
                assert reference().objectives[framework, code].year in concept.years, (concept.id, code)
