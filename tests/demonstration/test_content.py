"""The demonstration's content: without a problem, with every activity worked out, and apart from the tests' own collection."""

from __future__ import annotations

import yaml
from project import FROZEN, ROOT
from storymaths.activities.on_pages import bends_of
from storymaths.model.moved import Moved

from .demonstration import activities_on, demonstration


def test_it_has_no_problem() -> None:
    assert demonstration().books


def test_every_activity_of_every_page_works_out_in_its_own_year_and_the_years_its_bends_name() -> None:
    unsolved, unbent, solved = [], [], 0
    for page in demonstration().documents:
        bends = bends_of(page.fields) or {}
        for found in activities_on(page):
            fields = found.worked.fields
            if fields is None or found.worked.solution is None or not found.worked.solution.answers:
                unsolved.append(str(found.place))
            else:
                named = {
                    year
                    for year, bend in bends.items()
                    for name, choice in bend.activities.items()
                    if fields.is_called(name) and choice != "left out"
                }
                unbent += [str(found.place)] * (named != set(found.worked.versions))
            solved += 1
    assert (unsolved, unbent) == ([], [])
    assert solved > 2 * len(demonstration().books), "the books have activities"


def test_the_list_of_moved_pages_shows_in_its_note_how_it_is_written() -> None:
    text = (ROOT / "site_data/moved.yaml").read_text(encoding="utf-8")
    note = "\n".join(line.removeprefix("#")[3:] for line in text.splitlines() if line.startswith("#   "))
    assert len([Moved.model_validate(entry) for entry in yaml.safe_load(note)]) == 2


def test_nothing_outside_this_folder_leans_on_it() -> None:
    """No other test names a book or a page of it, and the frozen collection has names of its own."""
    whole = demonstration()
    names = {*whole.books, *whole.series, *(page.fields.title for page in whole.documents)}
    names -= {"Credits and licences", "Access for everyone"}  # pages every collection has
    tests = ROOT / "tests"
    leaning = []
    for path in sorted(tests.rglob("*")):
        if (
            path.suffix in (".py", ".md", ".yaml", ".txt", ".json", ".svg")
            and not {tests / "demonstration", tests / "bench"} & {*path.parents}  # a bench may measure it by name
        ):
            text = path.read_text(encoding="utf-8")
            leaning += [f"{path.relative_to(tests)}: {name}" for name in sorted(names) if name in text]
    assert leaning == []
    assert FROZEN.is_dir()
