"""Counts and codes of the curricula against the published documents.

Sources: *Mathematics guidance: key stages 1 and 2* (Department for Education, DfE-00100-2020, June 2020), summary
table of ready-to-progress criteria; key stage 1 and 2 mathematics test frameworks (Standards and Testing Agency,
STA/15/7339/e and STA/15/7342/e, 2015), section 4; *Statutory framework for the early years foundation stage*
(Department for Education, 2021), early learning goals for mathematics; for parts, the statements that the codes stand for
in *Mathematics programmes of study: key stages 1 and 2* (Department for Education, DFE-00180-2013, 2013).
"""

from __future__ import annotations

import re
from collections import Counter

import pytest
from project import reference
from storymaths.model.objective import Framework

# Criteria by strand and year, Years 1 to 6, counted from the summary table.
READY = {
    "NPV": (2, 2, 4, 4, 5, 4), "NF": (2, 1, 3, 3, 2, 0), "AS": (2, 4, 3, 0, 0, 0), "MD": (0, 2, 1, 3, 4, 0),
    "AS/MD": (0, 0, 0, 0, 0, 4), "F": (0, 0, 4, 3, 3, 3), "G": (2, 1, 2, 3, 2, 1),
}  # fmt: skip
# References by strand and year, Years 1 to 6, counted from the tables of section 4.2 as publicly listed.
CONTENT = {
    "N": (6, 6, 6, 9, 7, 5), "C": (5, 10, 7, 8, 15, 9), "F": (2, 3, 7, 10, 12, 11), "R": (0, 0, 0, 0, 0, 4),
    "A": (0, 0, 0, 0, 0, 5), "M": (6, 8, 17, 9, 10, 8), "G": (2, 5, 5, 4, 6, 7), "P": (1, 2, 0, 3, 1, 2), "S": (0, 3, 2, 2, 2, 2),
}  # fmt: skip


def counted(framework: Framework) -> dict[str, tuple[int, ...]]:
    found = Counter((objective.strand, objective.year) for objective in framework.objectives)
    return {strand: tuple(found[strand, year] for year in range(1, 7)) for strand in framework.strands}


def test_the_79_ready_to_progress_criteria() -> None:
    framework = reference().frameworks["england-ready-to-progress"]
    assert len(framework.objectives) == 79
    assert counted(framework) == READY


def test_the_254_content_domain_references() -> None:
    framework = reference().frameworks["england-content-domain"]
    assert len(framework.objectives) == 254
    assert counted(framework) == CONTENT
    assert sum(objective.year <= 2 for objective in framework.objectives) == 59


def test_the_six_statements_of_the_early_learning_goals() -> None:
    framework = reference().frameworks["england-early-years"]
    assert Counter(objective.strand for objective in framework.objectives) == {"Number": 3, "Numerical Patterns": 3}
    assert all(objective.own_label for objective in framework.objectives), "the document gives no codes"


@pytest.mark.parametrize(
    ("framework", "form"),
    [
        ("england-ready-to-progress", r"(\d)(NPV|NF|AS|MD|AS/MD|F|G)-\d"),
        ("england-content-domain", r"(\d)([NCFRAMGPS])\d{1,2}[a-z]?"),
    ],
)
def test_a_published_code_begins_with_its_year_and_strand(framework: str, form: str) -> None:
    for objective in reference().frameworks[framework].objectives:
        match = re.fullmatch(form, objective.code)
        assert match, objective.code
        assert (int(match.group(1)), match.group(2)) == (objective.year, objective.strand)


@pytest.mark.parametrize("code", ["1NPV-1", "2AS-3", "2MD-2", "3NF-3", "4MD-2", "5F-1", "6AS/MD-4", "6G-1"])
def test_some_criteria_by_name(code: str) -> None:
    assert ("england-ready-to-progress", code) in reference().objectives


@pytest.mark.parametrize("code", ["1N1a", "2C4", "2C9b", "3N1b", "4F10b", "5C7b", "6R4", "6A5", "6S3"])
def test_some_references_by_name(code: str) -> None:
    assert ("england-content-domain", code) in reference().objectives


@pytest.mark.parametrize("code", ["2NPV-3", "3MD-2", "6MD-1"])
def test_codes_that_other_lists_have_and_the_document_has_not(code: str) -> None:
    assert ("england-ready-to-progress", code) not in reference().objectives


def test_the_next_curriculum_has_its_place_and_no_invented_content() -> None:
    """First teaching in September 2028: government response of 5 November 2025, as reported."""
    next_one = reference().frameworks["england-2028"]
    assert (next_one.status, next_one.objectives) == ("announced", ())
    assert next_one.taught_from.isoformat() == "2028-09-01"
    assert reference().frameworks["england-content-domain"].replaced_by == next_one.id


# What the statements themselves list, each as a word that the parts of the objective must have between them.
LISTED = {
    "1N1b": "twos fives tens", "2N1": "two three five tens", "2N2b": "< > =", "2N3": "tens ones",
    "2C6": "two five ten odd even dividing", "2C7": "× ÷ =", "2C9a": "sum subtraction", "2C9b": "product division",
    "1M1": "length mass heavy capacity time", "2M1": "length mass capacity > < =", "1M4a": "o'clock half-past",
    "1M4c": "days week months years", "1M3": "coins banknotes", "2M3a": "£ pence", "2M4c": "hour day",
    "2G2a": "sides mirror", "2G2b": "edges vertices faces", "2S1": "pictogram tally block table",
    "1P2": "position whole half quarter three-quarter", "2P2": "clockwise anti-clockwise straight right",
}  # fmt: skip


@pytest.mark.parametrize("code", LISTED)
def test_the_parts_of_an_objective_have_what_its_statement_lists(code: str) -> None:
    parts = reference().objectives["england-content-domain", code].parts
    words = " ".join(f"{part.name} {part.says}" for part in parts)
    assert [word for word in LISTED[code].split() if word not in words] == []


def test_every_objective_of_key_stage_1_is_split_or_is_one_thing() -> None:
    framework = reference().frameworks["england-content-domain"]
    assert [objective.code for objective in framework.objectives if objective.year <= 2 and not objective.parts] == []
    assert all(len(objective.parts) <= 8 for objective in framework.objectives)
    assert all(any(part.asked for part in objective.parts) for objective in framework.objectives if objective.parts)


def test_what_is_in_doubt_is_said() -> None:
    for framework in reference().frameworks.values():
        for objective in framework.objectives:
            assert objective.doubt or all(part.asked for part in objective.parts), objective.code


def test_only_the_early_learning_goals_are_called_statutory_themselves() -> None:
    """Content domains are of test frameworks; the criteria are headed non-statutory guidance (DfE-00100-2020)."""
    standing = {framework.id: framework.status for framework in reference().frameworks.values()}
    assert standing == {
        "england-2028": "announced", "england-content-domain": "test-framework",
        "england-early-years": "statutory", "england-ready-to-progress": "non-statutory",
    }  # fmt: skip
