"""Collections that earlier versions made are opened by this one: warned first, rewritten when asked, nothing overwritten."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path

import pytest
from command import storymaths
from project import ROOT
from storymaths.check.rules import rules
from storymaths.model.program_version import VERSION, is_newer
from storymaths.pipeline import start_build
from storymaths.upgrade.changes import Renamed
from storymaths.upgrade.plan import Changed, difference, last_checked, make_plan, write
from storymaths.upgrade.rewrite import Rewriting

COLLECTIONS = ROOT / "tests" / "collections"
MADE = sorted(path.name for path in COLLECTIONS.glob("made-with-*"))
OLDER = "made-with-0.1.0"
LIFT = "content/books/six-buoys-for-tamsin"


@pytest.fixture
def older(tmp_path: Path) -> Path:
    return Path(shutil.copytree(COLLECTIONS / OLDER, tmp_path / "a place for é"))


def notes_in(folder: Path) -> list[str]:
    """Every note of an author's, in whichever file."""
    files = [*folder.rglob("*.md"), *folder.rglob("*.yaml")]
    lines = [line for file in files for line in file.read_text(encoding="utf-8").splitlines()]
    return sorted(line[line.index("# ") :].strip() for line in lines if "# " in line and not line.startswith("##"))


def give_it_an_objective(folder: Path) -> None:
    page = folder / LIFT / "session-2.md"
    text = page.read_text(encoding="utf-8")
    page.write_text(
        text.replace("objectives: {}", "objectives: { england-content-domain: [1C1: all] }"), encoding="utf-8"
    )


@pytest.mark.parametrize("made", MADE)
def test_what_any_version_made_is_opened_by_this_one(made: str) -> None:
    """After its fields are rewritten nothing stops it: what is new only warns."""
    plan = make_plan(COLLECTIONS / made)
    assert plan.by_hand == []
    assert plan.reading.problems == ()
    assert all(is_newer(warning.since, last_checked(COLLECTIONS / made)) for warning in plan.reading.warnings)


def test_what_this_version_made_has_nothing_to_rewrite() -> None:
    mine = COLLECTIONS / f"made-with-{VERSION}"
    assert mine.is_dir(), "freeze a collection that this version made"
    plan = make_plan(mine)
    assert (plan.touched, difference(plan), plan.reading.warnings) == ([], "", ())


def test_the_difference_is_shown_and_nothing_is_written(older: Path) -> None:
    done = storymaths("upgrade", folder=older)
    assert (done.returncode, done.stderr) == (1, "")
    assert "-made_by: Orla Penhallow # with a friend" in done.stdout
    assert "+publisher: Orla Penhallow # with a friend" in done.stdout
    assert "nothing has been written" in done.stdout
    assert "objectives-none" in done.stdout
    same = subprocess.run(["diff", "-r", COLLECTIONS / OLDER, older], check=False)
    assert same.returncode == 0


def test_what_is_written_is_what_was_shown_and_keeps_every_note(older: Path) -> None:
    before = notes_in(older)
    home = older / LIFT / "home-1.md"
    assert home.read_bytes().count(b"\r\n") == home.read_bytes().count(b"\n")
    shown = make_plan(older)
    assert storymaths("upgrade", "--write", folder=older).returncode == 1
    assert {path: (older / path).read_bytes().decode() for path in shown.after} == dict(shown.after)
    assert not (older / "site_data/imprint.yaml").exists()
    assert notes_in(older) == before
    assert home.read_bytes().count(b"\r\n") == home.read_bytes().count(b"\n")
    assert not [path for path in older.rglob(".*") if path.is_file() and path.name != ".keep"]


def test_a_rule_that_is_new_warns_until_the_collection_keeps_it(older: Path) -> None:
    storymaths("upgrade", "--write", folder=older)
    assert last_checked(older) == "0.1.0"
    done = storymaths("check", folder=older)
    assert done.returncode == 0
    assert "No problems, 1 warning in 5 pages." in done.stdout
    assert "New in: version 0.2.0" in done.stdout
    [record] = json.loads(storymaths("check", "--format", "json", folder=older).stdout)
    assert (record["rule"], record["warning"], record["since"]) == ("objectives-none", True, "0.2.0")
    assert "::warning file=" in storymaths("check", "--format", "github", folder=older).stdout
    give_it_an_objective(older)
    assert storymaths("upgrade", "--write", folder=older).returncode == 0
    assert last_checked(older) == VERSION
    (older / LIFT / "session-2.md").write_bytes((COLLECTIONS / OLDER / LIFT / "session-2.md").read_bytes())
    assert storymaths("check", folder=older).returncode == 1


def test_a_warning_stands_apart_on_the_page_and_stops_no_build(older: Path) -> None:
    write(make_plan(older))
    page = start_build(older, serving=True).page("books/six-buoys-for-tamsin/session-2.md")
    assert "1 warning on this page" in page
    assert "problem on this page" not in page
    build = start_build(older)
    assert build.reading.problems == ()
    assert "warning" not in build.page("books/six-buoys-for-tamsin/session-2.md")


def test_a_file_that_changed_meanwhile_is_left_alone(older: Path) -> None:
    plan = make_plan(older)
    page = older / LIFT / "home-1.md"
    page.write_text("mine", encoding="utf-8")
    with pytest.raises(Changed):
        write(plan)
    assert page.read_text(encoding="utf-8") == "mine"
    assert (older / "site_data/imprint.yaml").exists()


def test_a_collection_of_a_later_version_is_left_alone(older: Path) -> None:
    settings = older / "site_data/site.yaml"
    settings.write_text(settings.read_text(encoding="utf-8") + "checked_with: 99.0.0\n", encoding="utf-8")
    done = storymaths("upgrade", "--write", folder=older)
    assert done.returncode == 2
    assert "install a newer one" in done.stderr
    mine = shutil.copytree(COLLECTIONS / f"made-with-{VERSION}", older.parent / "mine")
    settings = mine / "site_data/site.yaml"
    text = settings.read_text(encoding="utf-8")
    settings.write_text(text.replace(f"checked_with: {VERSION}", "checked_with: 99.0.0"), encoding="utf-8")
    assert "install a newer one" in storymaths("check", folder=mine).stdout


PAGE = """---
kind: session # this one
steps: # all of them
  - {duration: 5, name: "duration: five"} # a note
  - name: Two
    duration: 6
duration: 11
---
duration: in the text
"""


def test_a_field_is_renamed_where_it_stands_and_nowhere_else() -> None:
    rewriting = Rewriting({"content/one.md": PAGE, "content/two.md": PAGE.replace("session", "home")})
    renamed = Renamed(what="renamed", since="0.3.0", kinds=("session",), was="steps.duration", now="minutes")
    rewriting.make([renamed])
    assert rewriting.texts["content/one.md"] == PAGE.replace("{duration", "{minutes").replace("  duration", "  minutes")
    assert rewriting.texts["content/two.md"] == PAGE.replace("session", "home")
    rewriting.make([renamed.model_copy(update={"was": "duration", "now": "steps"})])
    assert rewriting.by_hand == ["content/one.md: duration is now called steps, and both are there; keep one."]


def test_every_rule_says_since_when_and_none_is_from_a_later_version() -> None:
    assert not [rule.name for rule in rules().values() if is_newer(rule.since, VERSION)]
