"""The commands ``solve`` and ``tune``, run in a project as an author runs them."""

from __future__ import annotations

import io
import json
from pathlib import Path

import pytest
import yaml
from project import PROJECT, copy_of_project, reference
from storymaths.activities.balance import KIND
from storymaths.activities.table import KINDS
from storymaths.commands.program import main


@pytest.fixture(autouse=True)
def _here(monkeypatch: pytest.MonkeyPatch) -> None:
    """In the project, with its lists read once for all."""
    monkeypatch.chdir(PROJECT)
    monkeypatch.setattr("storymaths.commands.activity_file.read_reference", lambda _: reference())


def file_with(folder: Path, text: str) -> str:
    path = folder / "activity.yaml"
    path.write_text(text, encoding="utf-8")
    return str(path)


def test_solve_tells_people_every_answer(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["solve", file_with(tmp_path, KIND.example)]) == 0
    told = capsys.readouterr().out
    assert "Level the lifeboat (balance)" in told
    assert "  gull 2, crab 3, puffin 5, limpet 6, seal 9" in told
    assert "4 answers:" in told
    assert "  gull + limpet = crab + puffin  2 + 6 = 3 + 5, because both sides come to 8." in told
    assert "Largest number 11; signs + =; difficulty 6." in told
    assert "Fits Year 1, Year 2, Year 3, Year 4, Year 5 and Year 6." in told
    assert "Year 3: Other numbers, in the same order" in told


def test_solve_gives_machines_data(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["solve", file_with(tmp_path, KIND.example), "--format", "json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert list(told) == ["kind", "count", "answers", "largest", "symbols", "fits_years", "difficulty", "problems"]
    assert (told["kind"], told["count"], told["largest"], told["symbols"]) == ("balance", 4, 11, ["+", "="])
    assert told["answers"][0] == {"left": ["gull", "crab"], "right": ["puffin"], "total": 5}
    assert told["fits_years"] == [1, 2, 3, 4, 5, 6]
    assert told["problems"] == []


@pytest.mark.parametrize("name", list(KINDS))
def test_solve_takes_every_kind_from_standard_input(
    name: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    for form in ("text", "json"):
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(KINDS[name].example.encode()), "utf-8"))
        assert main(["solve", "-", "--format", form]) == 0
        assert capsys.readouterr().out


def test_solve_reports_problems_at_their_place(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = file_with(tmp_path, "kind: balance\ntitle: x\nfact: mas\ncast: {a: {mass: 3}, b: {mass: 3}}\n")
    assert main(["solve", path]) == 1
    told = capsys.readouterr().out
    assert f"{path}:3:7  activity-fact-missing" in told
    assert 'Did you mean "mass"?' in told
    assert main(["solve", path, "--format", "json"]) == 1
    told = json.loads(capsys.readouterr().out)
    assert (told["kind"], told["count"], told["answers"]) == ("balance", None, [])
    assert [problem["rule"] for problem in told["problems"]] == ["activity-fact-missing"]


def test_solve_judges_by_a_year_only_where_one_is_stated(tmp_path: Path) -> None:
    large = "kind: balance\ntitle: x\ncast: {a: {mass: 300}, b: {mass: 300}}\n"
    assert main(["solve", file_with(tmp_path, large)]) == 0
    assert main(["solve", file_with(tmp_path, f"{large}year: 1\n")]) == 1


def test_solve_with_the_cast_of_a_book(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = file_with(tmp_path, "kind: balance\ntitle: Legs\nfact: legs\ncast: [ned, skerry, bramble, mab]\n")
    assert main(["solve", path, "--book", "twenty-lamps"]) == 0
    assert "Ned = Skerry + Old Bramble + Mab" in capsys.readouterr().out
    assert main(["solve", path, "--book", "twenty-lantern"]) == 2
    assert 'Did you mean "twenty-lamps"?' in capsys.readouterr().err


def test_files_that_cannot_be_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["solve", str(tmp_path / "none.yaml")]) == 2
    assert "cannot be read" in capsys.readouterr().err
    (tmp_path / "bytes").write_bytes(b"\xff\xfe\x00")
    assert main(["tune", str(tmp_path / "bytes"), "--year", "2"]) == 2


def test_tune_proposes_values_that_come_out(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    names = "gull crab seal puffin whelk limpet otter heron".split()
    cast = ", ".join(f"{name}: {{}}" for name in names)
    path = file_with(tmp_path, f"kind: balance\ntitle: Eight\ncast: {{{cast}}}\n")
    assert main(["tune", path, "--year", "2", "--answers", "1..6"]) == 0
    told = capsys.readouterr().out
    proposal = yaml.safe_load(
        "\n".join(
            line
            for line in told.split("\n\n")[0].splitlines()
            if line.startswith("   cast") or (line.startswith("     ") and "mass" in line)
        )
    )
    assert list(proposal["cast"]) == names
    again = {"kind": "balance", "title": "Eight", "year": 2, **proposal}
    path = file_with(tmp_path, yaml.safe_dump(again))
    assert main(["solve", path, "--format", "json"]) == 0
    assert 1 <= json.loads(capsys.readouterr().out)["count"] <= 6


def test_tune_changes_the_numbers_of_other_kinds_too(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = file_with(tmp_path, 'kind: compare\ntitle: x\nstatements: ["6 + 13 = ___ + 4"]\n')
    assert main(["tune", path, "--year", "3"]) == 0
    assert "statements:" in capsys.readouterr().out


def test_tune_says_when_there_is_nothing_to_propose(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cast = ", ".join(f"n{index}: {{mass: {index + 1}}}" for index in range(9))
    path = file_with(tmp_path, f"kind: balance\ntitle: x\ncast: {{{cast}}}\n")
    assert main(["tune", path, "--year", "Reception"]) == 1
    assert (
        "There are so many numbers to try for Reception that looking for a version was given up."
        in capsys.readouterr().out
    )
    assert main(["tune", file_with(tmp_path, "kind: balanc\ntitle: x"), "--year", "2"]) == 1
    assert 'Did you mean "balance"?' in capsys.readouterr().out


@pytest.mark.parametrize("wrong", [["--year", "7"], ["--year", "0"], ["--year", "2", "--answers", "6..1"], []])
def test_the_command_misused(wrong: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as left:
        main(["tune", "-", *wrong])
    assert left.value.code == 2
    assert "Traceback" not in capsys.readouterr().err


# A page.


def test_solve_tells_of_a_page_what_each_activity_is_in_every_year(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["solve", "content/books/cliff-house-lift/session-3.md"]) == 0
    told = capsys.readouterr().out
    assert "Two level with two (balance)" in told
    assert "Year 1: the same." in told
    assert "Year 3, as its author says:" in told
    assert "  Camel 450 g, Moose 300 g," in told
    assert main(["solve", "content/books/cliff-house-lift/session-4.md"]) == 0
    assert "  Nothing is written." in capsys.readouterr().out
    assert main(["solve", "content/books/cliff-house-lift/session-4.md", "--format", "json"]) == 0
    assert [one["kind"] for one in json.loads(capsys.readouterr().out)] == [
        "balance",
        "always-sometimes-never",
        "balance",
    ]


def test_solve_tells_what_is_wrong_with_a_pages_bends(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    project = copy_of_project(tmp_path / "project")
    page = project / "content/books/cliff-house-lift/session-3.md"
    page.write_text(
        page.read_text(encoding="utf-8").replace("two-with-two: same", "two-with-tow: same"), encoding="utf-8"
    )
    monkeypatch.chdir(project)
    assert main(["solve", str(page)]) == 1
    assert "bend-activity-unknown" in capsys.readouterr().err


def test_solve_says_which_file_is_no_page(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["solve", str(tmp_path / "nothing.md")]) == 2
    assert "is not a page of the content" in capsys.readouterr().err
