"""A page at the desk: its form is made of the schemas, what is typed in it is what the file then says, and nothing is lost."""

from __future__ import annotations

import datetime
import html
import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Literal

import pytest
from project import PROJECT, collection, copy_of_project
from storymaths.activities.table import KINDS
from storymaths.desk.asked import ASKED
from storymaths.desk.asked_edits import edits_for
from storymaths.desk.control import Control, control, controls_of
from storymaths.desk.new_activity import begin_activity, tasks
from storymaths.desk.page_text import ActivityForm, PageText
from storymaths.desk.server import desk_app
from storymaths.desk.shape import NOTATION, Shape, group_of, shape_at
from storymaths.desk.values import meant, turned
from storymaths.edits.apply import apply_all
from storymaths.edits.edit import EditRefused
from storymaths.model.fields import Strict
from storymaths.model.page_schemas import SCHEMAS
from storymaths.parse.yaml_text import load
from storymaths.publish.starters import start, starters

from .asking import Tab
from .random_changes import random_change

SESSION = "books/cliff-house-lift/session-1.md"
HOME = "books/cliff-house-lift/home-1.md"
TEXTS = {page.source: (PROJECT / page.path).read_text("utf-8") for page in collection().documents}


@pytest.fixture
def tab(tmp_path: Path) -> Tab:
    return Tab(desk_app(copy_of_project(tmp_path / "project")), SESSION)


def file_of(tmp_path: Path, source: str = SESSION) -> Path:
    return tmp_path / "project" / "content" / source


def deep(controls: tuple[Control, ...]) -> Iterator[Control]:
    for one in controls:
        yield one
        yield from deep(one.inner)


def forms(text: str) -> Iterator[tuple[Control, ...]]:
    page = PageText(text)
    yield page.controls
    yield from (ActivityForm(part).controls for part in page.activities.values())


def test_a_field_that_is_new_in_a_schema_is_asked_for_with_what_it_is_for() -> None:
    class LongerSession(SCHEMAS["session"]):  # type: ignore[misc] - a class made while the test runs
        smell: str | None = None
        """What the room smells of."""

    field = next(one for one in controls_of(group_of(LongerSession), {}, "front") if one.loc == ("smell",))
    assert (field.label, field.what, field.needed, field.sort) == ("Smell", "What the room smells of.", False, "name")


@pytest.mark.parametrize("source", TEXTS)
def test_what_a_box_shows_is_what_the_file_says_when_it_is_typed_again(source: str) -> None:
    for controls in forms(TEXTS[source]):
        assert controls
        for one in deep(controls):
            if one.is_there and not one.inner and one.sort not in ("list", "group", "map"):
                shape = one.shape if one.sort == one.shape.sort else NOTATION
                assert meant(shape, one.value) == one.raw, one.id


def test_a_value_that_may_be_of_several_sorts_is_asked_for_as_the_one_it_is_and_turned_into_another() -> None:
    class Both(Strict):
        bins: Literal["any", "all"] | int | tuple[str, ...] = "any"

    shape = group_of(Both).fields[0].shape
    for raw, sort, chosen in (
        ("all", "choice", "all"),
        (4, "number", "a number"),
        (["a"], "list", "a list"),
        (None, "notation", ""),
    ):
        one = control(shape, raw, "front.bins", ("bins",), "Bins")
        assert (one.sort, [says for _, says, is_this in one.sorts if is_this]) == (sort, [chosen] if chosen else [])
    assert [says for _, says, _ in one.sorts] == ["any", "all", "a number", "a list"]
    assert [turned(shape.either[at], "7") for at in range(4)] == ["any", "all", 7, [""]]


def test_every_sort_of_a_value_is_one_that_its_schema_takes(tab: Tab, tmp_path: Path) -> None:
    """Of several sorts: who takes part, what is done in another year, the signs that are promised."""
    page = {"do": "turn", "activity": 0, "loc": ["cast"]}
    cast = next(asked.shape for asked in group_of(KINDS["balance"].tasks[0]).fields if asked.key == "cast")
    assert [one.choices or one.sort for one in cast.either] == [("all",), "list", "map"]
    assert cast.either[1].inner == Shape("name", of="cast")

    def all_take_part() -> int:
        return file_of(tmp_path).read_text("utf-8").count("\ncast: all\n")

    before = all_take_part()
    tab.post("/edit", page | {"sort": 0})
    assert all_take_part() == before + 1
    assert tab.post("/edit", page | {"sort": 7}).status == 422
    tab.post("/edit", page | {"sort": None})
    assert all_take_part() == before
    bend = shape_at(group_of(SCHEMAS["session"]), ("bends", 1))
    assert bend is not None
    does, signs = (next(asked.shape for asked in bend.fields if asked.key == key) for key in ("activities", "signs"))
    assert does.inner is not None
    assert [one.choices or one.sort for one in does.inner.either] == [("same",), ("find",), ("left out",), "map"]
    assert [one.choices or one.sort for one in signs.either] == [("none",), "list"]


def test_every_id_of_a_form_is_its_own() -> None:
    for text in TEXTS.values():
        ids = [one.id for controls in forms(text) for one in deep(controls)]
        assert len(ids) == len(set(ids))
        assert not [id for id in ids if " " in id]


def test_a_name_is_picked_from_the_list_that_the_rules_hold_it_to() -> None:
    for page in collection().documents:
        form = group_of(type(page.fields))
        for of in ("concepts", "themes", "areas", "words", "materials", "cautions"):
            for named in page.named(of):
                shape = shape_at(form, named.loc)
                assert shape is not None, named
                assert shape.of == of, named


@pytest.mark.parametrize("task", list(tasks()), ids=lambda task: f"{task.kind}-{task.name}")
def test_an_activity_of_any_task_can_be_begun(task: Any) -> None:
    begun = load(begin_activity(task.kind, task.name))[0]
    schema = KINDS[task.kind].schema_for(begun)
    assert schema.task_name == task.name or task.name == "pattern-gaps", "a gap has to be typed to be told by"
    assert {name for name, about in schema.model_fields.items() if about.is_required()} <= {
        name for name, about in schema.model_fields.items() if (about.alias or name) in begun
    }


def test_what_is_typed_stands_in_the_file_and_nothing_else_is_another(tab: Tab, tmp_path: Path) -> None:
    before = file_of(tmp_path).read_text("utf-8")
    old = PageText(before).raw
    assert old is not None
    answer = tab.post("/edit", {"do": "type", "loc": ["minutes"], "text": "55"})
    assert answer.json()["undo"]
    assert file_of(tmp_path).read_text("utf-8") == before.replace(f"minutes: {old['minutes']}", "minutes: 55", 1)


def test_a_step_and_its_section_go_together(tab: Tab, tmp_path: Path) -> None:
    def names() -> tuple[list[str], list[str]]:
        page = PageText(file_of(tmp_path).read_text("utf-8"))
        return [step["name"] for step in (page.raw or {})["steps"]], [section.name for section in page.sections[1:]]

    steps, sections = names()
    assert steps == sections
    tab.post("/edit", {"do": "move", "loc": ["steps", 0], "to": 1})
    tab.post("/edit", {"do": "type", "loc": ["steps", 1, "name"], "text": "Once more"})
    tab.post("/edit", {"do": "add", "loc": ["steps"]})
    tab.post("/edit", {"do": "type", "loc": ["steps", len(steps), "name"], "text": "And then"})
    assert names() == ([steps[1], "Once more", *steps[2:], "And then"],) * 2
    tab.post("/edit", {"do": "remove", "loc": ["steps", len(steps)]})
    tab.post("/edit", {"do": "remove", "loc": ["steps", 0]})
    assert names() == (["Once more", *steps[2:]], [steps[1], "Once more", *steps[2:]]), "what was written stays"


def test_a_problem_comes_beside_its_box_and_goes(tab: Tab) -> None:
    minutes = (PageText(TEXTS[SESSION]).raw or {})["minutes"]
    tab.post("/edit", {"do": "type", "loc": ["minutes"], "text": "7"})
    assert {one["box"] for one in tab.get("/problems").json()["problems"]} == {"front.minutes"}
    tab.post("/edit", {"do": "type", "loc": ["minutes"], "text": str(minutes)})
    assert tab.get("/problems").json()["problems"] == []


@pytest.mark.parametrize(
    ("asked", "box"),
    [
        ({"do": "type", "loc": ["concepts", 0], "text": "mas"}, "front.concepts.0"),
        ({"do": "type", "loc": ["steps", 0, "minutes"], "text": "many"}, "front.steps.0.minutes"),
        ({"do": "remove", "loc": ["summary"]}, "front.summary"),
        ({"do": "remove", "loc": ["task", "pictures"]}, "front.task.pictures"),
        ({"do": "type", "loc": ["kind"], "text": "x", "activity": 0}, "activity-0.kind"),
        ({"do": "type", "loc": ["answers"], "text": "17", "activity": 0}, "activity-0.answers"),
        ({"do": "write", "section": 1, "part": 0, "text": "Now 3 + 4 = 8."}, "words-1-0"),
    ],
)
def test_each_problem_stands_beside_the_box_it_is_of(tab: Tab, asked: dict[str, Any], box: str) -> None:
    assert tab.post("/edit", asked).status == 200
    assert box in {one["box"] for one in tab.get("/problems").json()["problems"]}


def test_a_form_is_drawn_anew_only_where_it_is_another(tab: Tab) -> None:
    assert "form" not in tab.post("/edit", {"do": "type", "loc": ["summary"], "text": "Other words."}).json()
    added = tab.post("/edit", {"do": "add", "loc": ["concepts"], "text": "mass"}).json()
    assert 'id="front.concepts' in added["form"]


def test_a_step_back_and_forward_gives_the_same_bytes(tab: Tab, tmp_path: Path) -> None:
    texts = [file_of(tmp_path).read_bytes()]
    for asked in (
        {"loc": ["title"], "text": "One"},
        {"loc": ["summary"], "text": "Two."},
        {"loc": ["minutes"], "text": "9"},
    ):
        tab.post("/edit", {"do": "type", **asked})
        texts.append(file_of(tmp_path).read_bytes())
    for wanted in (*reversed(texts[:-1]), texts[0]):
        tab.post("/step", {"by": -1})
        assert file_of(tmp_path).read_bytes() == wanted
    for wanted in texts[1:]:
        tab.post("/step", {"by": 1})
        assert file_of(tmp_path).read_bytes() == wanted


def test_typing_on_in_one_box_is_one_step_back(tab: Tab, tmp_path: Path) -> None:
    before = file_of(tmp_path).read_bytes()
    for text in ("O", "On", "One"):
        tab.post("/edit", {"do": "type", "loc": ["title"], "text": text})
    tab.post("/step", {"by": -1})
    assert file_of(tmp_path).read_bytes() == before


def test_every_saved_state_can_be_brought_back(tab: Tab, tmp_path: Path) -> None:
    before = file_of(tmp_path).read_bytes()
    for text in ("One", "Two", "Three"):
        tab.post("/edit", {"do": "type", "loc": ["title"], "text": text})
    kept = sorted((tmp_path / "project" / ".desk").rglob("*.md"))
    assert [load(one.read_text("utf-8").split("---")[1])[0]["title"] for one in kept[1:]] == ["One", "Two", "Three"]
    assert kept[0].stem in tab.get("/states").text
    tab.post("/restore", {"name": kept[0].stem})
    assert file_of(tmp_path).read_bytes() == before
    tab.post("/step", {"by": -1})
    assert "title: Three" in file_of(tmp_path).read_text("utf-8")


def test_a_file_changed_outside_is_not_written_over_and_both_are_shown(tab: Tab, tmp_path: Path) -> None:
    mark, file = tab.mark, file_of(tmp_path)
    theirs = file.read_text("utf-8").replace("minutes:", "minutes: ", 1)
    file.write_text(theirs, "utf-8")
    answer = tab.post("/edit", {"do": "type", "loc": ["title"], "text": "Mine"}, before=mark)
    assert answer.status == 409
    assert file.read_text("utf-8") == theirs
    assert any("minutes" in line for line in answer.json()["difference"])
    again = tab.post("/edit", {"do": "type", "loc": ["title"], "text": "Mine"}, before=answer.json()["mark"])
    assert again.status == 200
    assert "title: Mine" in file.read_text("utf-8")


def test_a_page_whose_fields_cannot_be_read_is_put_right_as_text(tab: Tab, tmp_path: Path) -> None:
    file = file_of(tmp_path)
    whole = file.read_text("utf-8")
    file.write_text(whole.replace("minutes:", "minutes: [", 1), "utf-8")
    assert "data-whole" in tab.get("/page").text
    assert tab.post("/edit", {"do": "type", "loc": ["title"], "text": "Mine"}).status == 422
    assert 'id="front.title"' in tab.post("/rewrite", {"text": whole}).json()["form"]
    assert file.read_text("utf-8") == whole
    assert tab.post("/rewrite", {"text": "---\n"}).status == 422, "a page with a form is changed in it"


def test_an_activity_is_begun_filled_in_and_worked_out(tab: Tab) -> None:
    number = len(PageText(TEXTS[SESSION]).activities)
    tab.post("/edit", {"do": "begin-activity", "section": 0, "part": 0, "kind": "bonds", "task": "split"})
    assert "cannot be worked out yet" in tab.get("/work-out", activity="0").text
    for loc, text in (("title", "Split five"), ("whole", "5")):
        tab.post("/edit", {"do": "type", "activity": 0, "loc": [loc], "text": text})
    assert (
        "6 answers" in tab.get("/work-out", activity="0").text or "3 answers" in tab.get("/work-out", activity="0").text
    )
    assert tab.get("/work-out", activity=str(number + 1)).status == 422


def test_the_collection_shows_every_page_with_its_problems_counted(tab: Tab) -> None:
    tab.post("/edit", {"do": "type", "loc": ["minutes"], "text": "7"})
    shown = tab.get("/").text
    assert [source for source in TEXTS if source not in shown] == []
    assert "1 problem in the collection" in shown


def test_a_new_page_is_what_the_command_begins_without_the_notes_in_its_file(tab: Tab, tmp_path: Path) -> None:
    root, source = tmp_path / "project", "books/cliff-house-lift/session-5.md"
    usual = starters()["session"][1]
    start(root, usual, "Once more", datetime.date.today().isoformat(), "cliff-house-lift")
    noted = PageText(file_of(tmp_path, source).read_text("utf-8"))
    file_of(tmp_path, source).unlink()
    answer = tab.post("/new", {"kind": "session", "book": "cliff-house-lift", "title": "Once more"})
    assert answer.json()["page"].endswith("session-5.md")
    begun = PageText(file_of(tmp_path, source).read_text("utf-8"))
    assert (begun.raw, begun.body) == (noted.raw, noted.body)
    assert begun.front is not None
    assert "#" not in begun.front
    shown = Tab(tab.app, "books/cliff-house-lift/session-5.md").get("/page").text
    assert "Once more" in shown
    assert "/site/books/cliff-house-lift/session-5-screen.html" in shown


def test_two_hundred_random_changes_at_the_desk_are_the_same_on_the_file(tab: Tab, tmp_path: Path) -> None:
    choose, tab, file = random.Random(20261128), Tab(tab.app, HOME), file_of(tmp_path, HOME)
    text, taken = file.read_bytes().decode(), 0
    for _ in range(200):
        asked = random_change(choose, PageText(text))
        try:
            wanted = apply_all(text, edits_for(ASKED.validate_python(asked), PageText(text)))
        except EditRefused:
            wanted = None
        answer = tab.post("/edit", asked)
        assert answer.status == (422 if wanted is None else 200), (asked, answer.text)
        taken += wanted is not None
        text = text if wanted is None else wanted
        assert file.read_bytes() == text.encode()
    assert taken > 150


def test_shapes_lead_nowhere_where_nothing_can_stand() -> None:
    assert shape_at(Shape("group"), ("no", "such")) is None


def test_a_proposal_is_put_in_as_it_was_offered(tab: Tab, tmp_path: Path) -> None:
    tab.post("/edit", {"do": "remove", "loc": ["revisits"]})
    tab.post("/edit", {"do": "type", "loc": ["words"], "text": ""})
    tab.post("/edit", {"do": "type", "loc": ["status"], "text": "draft"})
    tab.get("/problems")
    shown = tab.get("/offers").text
    before = file_of(tmp_path).read_text("utf-8")
    keys = re.findall(r'data-take="(\w+)"', shown)
    assert keys
    for key in keys:  # each as it was shown, whatever has been put in before it
        assert tab.post("/take", {"key": key}).status == 200
    assert file_of(tmp_path).read_text("utf-8") != before
    assert tab.post("/take", {"key": "0" * 16}).status == 422


def test_what_still_holds_a_number_of_the_cast_that_was_changed_is_shown_beside_it(tab: Tab, tmp_path: Path) -> None:
    book = Tab(tab.app, "books/cliff-house-lift/index.md")
    page = file_of(tmp_path)
    page.write_text(f"{page.read_text('utf-8')}\nCamel is as heavy as 9 bricks.\n", "utf-8")
    raw = PageText(file_of(tmp_path, book.source).read_text("utf-8")).raw
    assert raw is not None
    camel = next(at for at, one in enumerate(raw["cast"]) if one["id"] == "camel")
    assert raw["cast"][camel]["facts"]["mass"] == 9
    (told,) = book.post("/edit", {"do": "type", "loc": ["cast", camel, "facts", "mass"], "text": "8"}).json()["hanging"]
    assert told["box"] == f"front.cast.{camel}.facts.mass"
    sure, _, perhaps = told["html"].partition("<details>")
    assert "Camel is as heavy as 9 bricks." in sure
    assert f'href="/page?source={SESSION}"' in html.unescape(sure)
    assert perhaps
    assert "hanging" not in book.post("/edit", {"do": "type", "loc": ["title"], "text": "Lift"}).json()


def test_so_is_what_still_says_a_time(tab: Tab, tmp_path: Path) -> None:
    book = Tab(tab.app, "books/cliff-house-lift/index.md")
    record, page = file_of(tmp_path, book.source), file_of(tmp_path)
    text = record.read_text("utf-8")
    record.write_text(text.replace("facts: {mass: 9,", 'facts: {mass: 9, leaves: "9:40",', 1), "utf-8")
    page.write_text(f"{page.read_text('utf-8')}\nCamel goes up at twenty to ten.\n", "utf-8")
    raw = PageText(record.read_text("utf-8")).raw
    assert raw is not None
    camel = next(at for at, one in enumerate(raw["cast"]) if one["id"] == "camel")
    asked = {"do": "type", "loc": ["cast", camel, "facts", "leaves"], "text": "9:45"}
    (told,) = Tab(tab.app, book.source).post("/edit", asked).json()["hanging"]
    assert "Camel goes up at twenty to ten." in told["html"].partition("<details>")[0]


def test_words_are_not_written_over_an_activity(tab: Tab, tmp_path: Path) -> None:
    before = file_of(tmp_path).read_bytes()
    places = [
        (at, n)
        for at, one in enumerate(PageText(before.decode()).sections)
        for n, part in enumerate(one.parts)
        if part.number == 0
    ]
    (section, part) = places[0]
    assert tab.post("/edit", {"do": "write", "section": section, "part": part, "text": "Words"}).status == 422
    assert tab.post("/edit", {"do": "remove-activity", "section": section, "part": part - 1}).status == 422
    assert file_of(tmp_path).read_bytes() == before


def test_an_idea_is_put_into_a_section_as_it_stands(tab: Tab, tmp_path: Path) -> None:
    shown = tab.get("/ideas", year="2").text
    block = html.unescape(re.findall(r"data-block[^>]*>\n(.*?)</textarea>", shown, re.DOTALL)[0])
    assert tab.post("/edit", {"do": "put-activity", "section": 1, "text": block}).status == 200
    assert f"```maths\n{block.rstrip()}\n```" in file_of(tmp_path).read_text("utf-8")
    assert tab.get("/ideas", year="40").status == 422
