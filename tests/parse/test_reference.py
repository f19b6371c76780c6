"""``site_data/`` is read as strictly as content."""

from __future__ import annotations

from pathlib import Path

import pytest
from project import copy_of_project, reference
from storymaths.parse.reference import ReferenceBroken, read_reference


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


def test_a_concept_lives_in_the_years_of_its_objectives() -> None:
    for concept in reference().concepts.values():
        for framework, codes in concept.objectives.items():
            for code in codes:
                assert reference().objectives[framework, code].year in concept.years, (concept.id, code)
