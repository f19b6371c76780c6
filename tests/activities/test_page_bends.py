"""What the bends of a page make of its activities: the same, as pinned, found or nothing, and held to what they say."""

from __future__ import annotations

from dataclasses import replace

import pytest
from project import all_activities, collection, text_of
from storymaths.activities.on_pages import PageActivity, activities_of, work_out_pages
from storymaths.activities.page_bends import check_bends
from storymaths.model.bend import YearBend
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.page_fields import PageFields
from storymaths.model.problem import Problem
from storymaths.parse.document import parse_document

SESSION = "books/cliff-house-lift/session-3.md"
TEXTS = "    objectives: {}\n    numbers: N.\n    recording: R.\n    question: Q?\n    why: W.\n"
BALANCE = (
    "kind: balance\nid: level\ntitle: Level rides\nfact: mass\ncast: [camel, moose, badger, puffin, hamster, worm]\n"
    "teams: 2\n"
)
CLOCK = (
    'kind: clock\nid: bell\ntitle: Ring the bell\nfind: order\nevents: {lunch: "12:00", tea: "16:30", home: "15:00"}\n'
)
SUM = "kind: number-sentence\nid: sum\ntitle: A sum\nsentences: [3 + 4 = ___]\n"
ORDER = "kind: order\nid: light\ntitle: Lightest first\nfact: mass\ncast: all\n"
FACES = "kind: shape\nid: faces\ntitle: Faces\nshapes: [cube, cuboid]\ncount: [faces]\n"
LONG = "kind: measure\nid: long\ntitle: Which is longer?\nfind: compare\nthings: {hand: 8 sticks, peg: 5 sticks}\n"


def page(bends: str, *blocks: str, year: int = 2) -> Document[PageFields]:
    front = text_of(SESSION).split("\n---\n", 1)[0]
    before, _, rest = front.partition("\nbends:\n")
    after = rest[rest.index("\nneeds:") :]
    before = before.replace("\nyear: 2\n", f"\nyear: {year}\n")
    body = "\n".join(f"```maths\n{block}```\n" for block in blocks)
    made = parse_document(f"content/{SESSION}", f"{before}\nbends:\n{bends.rstrip()}{after}\n---\n{body}")
    assert isinstance(made, Document), made
    assert not made.faults, made.faults
    return made


def bend(year: int | str, *lines: str) -> str:
    return f"  {year}:\n{TEXTS}" + "".join(f"    {line}\n" for line in lines)


def with_page(made: Document[PageFields]) -> Collection:
    others = tuple(document for document in collection().documents if document.path != made.path)
    return replace(collection(), documents=(*others, made))


def activity(bends: str, block: str, year: int = 2) -> PageActivity:
    """The activity of a page with nothing else on it, whose bends are in order."""
    made = page(bends, block, year=year)
    assert problems(made) == []
    (found,) = activities_of(made, with_page(made))
    return found


def problems(made: Document[PageFields]) -> list[Problem]:
    whole = with_page(made)
    return [one for one in check_bends(whole, work_out_pages(whole)) if one.place.path == made.path]


def only_problem(bends: str, *blocks: str, year: int = 2) -> Problem:
    (found,) = problems(page(bends, *blocks, year=year))
    return found


def test_an_activity_that_no_bend_names_has_no_version() -> None:
    assert activity(bend(1, "up_to: 10") + bend(3), BALANCE).worked.versions == {}


def test_left_out_is_left_out() -> None:
    assert activity(bend(1, "activities: {level: left out}"), BALANCE).worked.versions == {}


def test_the_same_is_the_solution_of_the_class_and_no_copy() -> None:
    worked = activity(bend(1, "activities: {level: same}"), BALANCE).worked
    assert worked.versions[1].same
    assert worked.versions[1].solution is worked.solution


@pytest.mark.parametrize("name", ["level", "Level rides", "level  RIDES"])
def test_an_activity_goes_by_its_id_or_its_title(name: str) -> None:
    assert set(activity(bend(1, f"activities: {{{name}: same}}"), BALANCE).worked.versions) == {1}


def test_what_is_pinned_is_what_the_year_has() -> None:
    facts = "{camel: 450, moose: 300, badger: 250, puffin: 200, hamster: 150, worm: 50}"
    version = activity(bend(3, f"activities: {{level: {{facts: {facts}, unit: g}}}}"), BALANCE).worked.versions[3]
    assert not version.same
    assert version.changed == ""
    assert [one.facts["mass"] for one in version.context.characters] == [450, 300, 250, 200, 150, 50]
    assert len(version.solution.answers) == 3
    assert version.solution.likely_error is None


def test_pinned_numbers_are_never_exchanged_for_others() -> None:
    # Of these masses no two teams of two are level: numbers that are would be easy to find.
    facts = "{camel: 10, moose: 7, badger: 5, puffin: 3, hamster: 2, worm: 1}"
    problem = only_problem(bend(1, f"activities: {{level: {{facts: {facts}, teams: 1}}}}"), BALANCE)
    assert problem.rule == "activity-no-answer"


def test_numbers_are_found_within_what_the_bend_says() -> None:
    said = ("cast: [moose, badger, puffin, worm]", "up_to: 8", "activities: {level: find}")
    version = activity(bend(1, *said), BALANCE).worked.versions[1]
    assert {one.id for one in version.context.characters} == {"moose", "badger", "puffin", "worm"}
    assert version.solution.demands.largest <= 8
    assert version.solution.answers
    largest = activity(bend(1, "activities: {level: {largest: 9}}"), BALANCE).worked.versions[1]
    assert largest.solution.demands.largest <= 9


def test_the_cast_of_a_bend_is_that_of_its_versions() -> None:
    said = ("cast: [puffin, hamster, worm]", "activities: {light: {ask: Put the three in order.}}")
    version = activity(bend(1, *said), ORDER).worked.versions[1]
    assert [one.id for one in version.context.characters] == ["puffin", "hamster", "worm"]


# The early learning goals (Department for Education, 2021) have neither signs, nor clocks, nor written number work.


def test_reception_writes_nothing_unless_an_author_says_so() -> None:
    pins = "activities: {long: {find: order, ask: Which comes first?, things: {hand: 5 sticks, peg: 3 sticks}}}"
    assert not activity(bend("Reception", pins), LONG, 1).worked.versions[0].written
    assert activity(bend("Reception", "written: true", pins), LONG, 1).worked.versions[0].written
    assert activity(bend(2, pins), LONG, 1).worked.versions[2].written
    assert not activity(bend(2, "written: false", pins), LONG, 1).worked.versions[2].written


def test_reception_has_signs_and_half_past_only_where_an_author_chooses_them() -> None:
    pins = "activities: {sum: {sentences: [2 + 1 = ___]}}"
    assert only_problem(bend("Reception", pins), SUM, year=1).rule == "activity-beyond-year"
    assert activity(bend("Reception", 'signs: ["+", "="]', pins), SUM, 1).worked.versions[0].solution.answers
    multiplied = "activities: {sum: {sentences: [2 × 1 = ___]}}"
    refused = only_problem(bend("Reception", 'signs: ["×", "="]', multiplied), SUM, year=1)
    assert "the sign ×, which is new in Year 2" in refused.message


def test_one_activity_may_be_done_aloud() -> None:
    pins = "{things: {hand: 5 sticks, peg: 3 sticks}, written: false}"
    assert not activity(bend(2, f"activities: {{long: {pins}}}"), LONG, 1).worked.versions[2].written


@pytest.mark.parametrize(
    ("year", "lines", "block", "rule", "says"),
    [
        (1, ["activities: {levle: same}"], BALANCE, "bend-activity-unknown", 'Did you mean "level"?'),
        (1, ["activities: {level: same, Level rides: same}"], BALANCE, "bend-activity-unknown", '"level" above'),
        (1, ["cast: [cammel]"], BALANCE, "bend-activity-unknown", 'Did you mean "camel"?'),
        (1, ["activities: {light: same}"], ORDER, "activity-beyond-year", "the sign <, which is new in Year 2"),
        (1, ["up_to: 9", "activities: {level: same}"], BALANCE, "bend-promise-broken", "It has 10, and the bend says up_to: 9"),
        (1, ["signs: none", "activities: {level: same}"], BALANCE, "bend-promise-broken", "the bend says signs: none"),
        (3, ["signs: [=]", "activities: {level: same}"], BALANCE, "bend-promise-broken", "says signs: [=]"),
        (2, ["units: [kg]", "activities: {long: {things: {hand: 9 cm, peg: 5 cm}}}"], LONG, "bend-promise-broken", "says units: [kg]"),
        (3, ["clock: o'clock", "activities: {bell: same}"], CLOCK, "bend-promise-broken", "says clock: o'clock"),
        (3, ["cast: [camel, moose]", "activities: {level: same}"], BALANCE, "bend-promise-broken", "says cast: [camel, moose]"),
        (1, ["activities: {level: {teams: 2}}"], BALANCE, "version-same-numbers", "what the class has"),
        (1, ["activities: {level: {ask: Which is level?}}"], BALANCE, "version-same-numbers", "what the class has"),
        (1, ["activities: {level: {tems: 2}}"], BALANCE, "activity-broken", 'Did you mean "teams"?'),
        (1, ["activities: {level: {cast: [cammel]}}"], BALANCE, "activity-fact-missing", 'Did you mean "camel"?'),
        (1, ["activities: {level: {teams: 2, written: no way}}"], BALANCE, "activity-broken", "whether children write"),
        (3, ["activities: {level: {teams: any, answers: 5}}"], BALANCE, "activity-claim-wrong", "You say 5; there are 12"),
        (1, ["up_to: 2", "activities: {level: find}"], BALANCE, "activity-no-version", "No other numbers were found for Year 1."),
        (1, ["activities: {faces: {shapes: [cube]}}"], FACES, "bend-promise-broken", "the word face, which is new in Year 2"),
        (1, ["activities: {sum: {sentences: [3 + = ___]}}"], SUM, "activity-broken", "3 + = ___"),
        (1, ["written: false", "activities: {sum: same}"], f"{SUM}ask: Write it in.\n", "bend-promise-broken", "asks children to write"),
        (1, ["activities: {sum: {sentences: [300 + 4 = ___]}}"], SUM, "activity-beyond-year", "numbers to 100"),
        (1, ["activities: {sum: {sentences: [3 + 5 = ___]}}"], f"{SUM}year: 1\n", "bend-activity-unknown", "is never shown"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told_where_the_bend_says_it(
    year: int, lines: list[str], block: str, rule: str, says: str
) -> None:
    made = page(bend(year, *lines), block)
    (problem,) = problems(made)
    assert problem.rule == rule
    assert says in problem.message
    assert made.locator.place(("bends", year)).line <= problem.place.line < made.body_line
    assert problem.fix


def test_where_nothing_fits_it_is_said_what_could_be_pinned() -> None:
    problem = only_problem(bend(1, "up_to: 2", "activities: {level: find}"), BALANCE)
    assert problem.fix == "pin what it has in Year 1 (fact, cast or teams), or write left out."


@pytest.mark.parametrize("words", ["title: Seven and 14", "ask: Who comes to 14?", "ask: Who comes to fourteen?"])
def test_the_words_of_the_class_do_not_stay_where_their_number_goes(words: str) -> None:
    block = SUM.replace("title: A sum", words) if words.startswith("title") else f"{SUM}{words}\n"
    problem = only_problem(bend(1, f"activities: {{{'sum'}: {{sentences: [3 + 5 = ___]}}}}"), block)
    assert problem.rule == "bend-promise-broken"
    assert "is still that of the class" in problem.message
    assert f"pin {words.split(':', maxsplit=1)[0]}: as well" in problem.fix


def test_versions_stand_in_the_bends_and_nowhere_else() -> None:
    problem = only_problem(bend(1), f"{BALANCE}years: {{1: {{}}, 4: {{unit: kg}}}}\n")
    assert problem.rule == "version-out-of-place"
    assert "This page has no bend to Year 4." in problem.message
    assert "as level: same" in problem.fix


def test_two_activities_of_one_name_are_told_apart_by_an_id() -> None:
    twice = only_problem(bend(1), SUM, SUM.replace("3 + 4", "3 + 5"))
    assert twice.rule == "activity-name-twice"
    nameless = SUM.replace("id: sum\n", "")
    unclear = only_problem(bend(1, "activities: {A sum: same}"), nameless, nameless.replace("3 + 4", "3 + 5"))
    assert unclear.rule == "bend-activity-unknown"
    assert '2 activities of this page are called "A sum".' in unclear.message


def test_of_a_page_with_an_activity_that_cannot_be_read_no_name_is_called_unknown() -> None:
    assert problems(page(bend(1, "activities: {level: same}"), BALANCE.replace("balance", "balence"))) == []


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("activities: {level: smae}", "same, find, left out"),
        ("activities: {level: {}}", "same, find, left out"),
        ("activities: {level: 5}", "same, find, left out"),
        ("clock: half pst", "o'clock, half past, quarter past, five minutes, one minute"),
        ("signs: plus", "none, or a list of signs"),
        ("signs: []", "none, or a list of signs"),
        ("up_to: ten", "whole number"),
        ("written: aloud", "true or false"),
    ],
)
def test_what_is_mistyped_is_told_with_what_may_stand_there(line: str, says: str) -> None:
    made = parse_document(f"content/{SESSION}", _with_line(line))
    assert [fault.kind for fault in made.faults] == ["mistyped"]
    assert says in made.faults[0].detail


def _with_line(line: str) -> str:
    text = text_of(SESSION)
    at = text.index("    up_to: 10\n")
    end = text.index("  3:\n", at)
    return f"{text[:at]}    {line}\n{text[end:]}"


def test_typed_signs_and_times_are_those_meant() -> None:
    made = YearBend.model_validate({"signs": ["-", "="], "clock": "o’clock"})
    assert made.signs == ("−", "=")
    assert made.clock == 60


def test_the_frozen_collections_bends_have_no_problem() -> None:
    assert list(check_bends(collection(), all_activities())) == []


def test_the_title_of_the_class_does_not_stay_over_numbers_that_were_found() -> None:
    block = "kind: bonds\nid: ten\ntitle: Ways to make 30\nwhole: 30\nparts: 2\nthings: shells\n"
    problem = only_problem(bend(1, "up_to: 10", "activities: {ten: find}"), block)
    assert problem.message == 'The title is still that of the class, and says "30".'
