"""A new curriculum is one file; which of its objectives belong to no concept is told by the check, each in its line."""

from __future__ import annotations

from pathlib import Path

from project import copy_of_project
from storymaths.reading import read_and_check

_CURRICULUM = """\
id: quayland
name: What schools of Quayland teach
short_name: Quayland
status: announced
standing: Made up for this test.
taught_from: '2031-09-01'
revised: '2030-01-01'
sources:
- title: A curriculum made up for this test
  publisher: Nobody
  date: '2030'
strands:
  N: Numbers
objectives:
  - { code: Q1, year: 1, strand: N, says: Counts the boats }
  - { code: Q2, year: 2, strand: N, says: Shares the boats out }
"""


def test_a_new_curriculum_is_told_of_what_no_concept_teaches(tmp_path: Path) -> None:
    project = copy_of_project(tmp_path / "project")
    (project / "site_data/curricula/quayland.yaml").write_text(_CURRICULUM, encoding="utf-8")
    problems = read_and_check(project).problems
    lines = [n for n, line in enumerate(_CURRICULUM.splitlines(), 1) if "code:" in line]
    assert [(one.rule, one.place.line) for one in problems] == [("objective-without-concept", line) for line in lines]
    assert "No concept teaches Q1" in problems[0].message
