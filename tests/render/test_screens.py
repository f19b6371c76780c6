"""The class screen's boards: what they accept is what the activities' solutions found, and all of it can be placed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import pytest
from activities.every_task import every_task
from project import activities_on, all_activities, collection, collection_with, reference, text_of
from storymaths.activities.table import KINDS
from storymaths.activities.work_out import work_out
from storymaths.activities.worked import AnyWorked
from storymaths.model.session import Session
from storymaths.publish.gallery import examples_of
from storymaths.render.screens.activity_slides import parts_of
from storymaths.render.screens.board import Board, Place, key_of, placings
from storymaths.render.screens.pages import draw_screen
from storymaths.render.screens.pieces import card_id
from storymaths.render.screens.slides import slides_of
from storymaths.render.screens.table import PLAYED, boards_of
from storymaths.render.site import Site


def every_year(done: AnyWorked) -> Iterator[tuple[int, AnyWorked]]:
    """An activity as its author set it, and its version for each other year."""
    yield 0, done
    for year, version in done.versions.items():
        yield year, replace(done, fields=version.fields, context=version.context, solution=version.solution)


NOT_PLAYED = {"make"}
"""Tasks whose pieces are turned and flipped over, which is done with the pieces of the sheet."""
ON_PAGES = [
    pytest.param(done, id=f"{page.path}:{found.place.line}{year or ''}")
    for page in collection().documents
    for found in activities_on(page)
    if found.worked.done and found.worked.done.kind.name in PLAYED
    for year, done in every_year(found.worked.done)
]
EVERY_TASK = [
    pytest.param(done, id=f"{n}-{done.kind.name}-{done.fields.task_name}")
    for n, done in enumerate(every_task(reference()), 1)
]


def example(kind: str) -> AnyWorked:
    """The first example of a kind."""
    done = examples_of(KINDS[kind], reference())[0][1].done
    assert done is not None
    return done


def worked_from(text: str, year: int) -> AnyWorked:
    """An activity written here."""
    done = work_out(text, "here", 1, None, year, reference()).done
    assert done is not None
    return done


def by_itself(board: Board) -> None:
    """Every accepted placing can be made: enough copies, room in each place, and only what a place takes."""
    pieces = {piece.id: piece for piece in board.pieces}
    places = {place.id: place for place in board.places}
    assert len(pieces) == len(board.pieces), "two pieces with one id"
    for _, placing in placings(board):
        for place, standing in placing.items():
            holds = places[place].holds
            assert holds is None or len(standing) <= holds
            assert all(places[place].takes in ("", pieces[one].sort) for one in standing)
        used = [one for standing in placing.values() for one in standing]
        for one in set(used):
            copies = pieces[one].copies
            assert copies is None or used.count(one) <= copies, one
        if board.empty_matters:
            assert key_of(board.places, placing) in board.answers


@pytest.mark.parametrize("worked", [*EVERY_TASK, *ON_PAGES])
def test_every_answer_found_can_be_placed(worked: AnyWorked) -> None:
    boards = boards_of(worked)
    assert bool(boards) == (worked.fields.task_name not in NOT_PLAYED)
    for board in boards:
        by_itself(board)
    if not boards or worked.fields.task_name == "family":  # whose answer is several sentences
        return
    # Boards that ask one thing each have an answer each; those that ask for every way have them all.
    told = sum(board.count for board in boards)
    assert told in (1, len(worked.solution.answers))


def test_a_balance_accepts_either_way_round_as_one_answer() -> None:
    (board,) = boards_of(example("balance"))
    assert board.answers["crab,gull|puffin"] == board.answers["puffin|crab,gull"] == 0
    assert board.count == 4


@pytest.mark.parametrize(("year", "between"), [(0, ("5 and 2 is ", "")), (1, ("", " = 5 + 2"))])
def test_a_whole_that_is_asked_for_is_not_shown_and_no_sign_before_its_year(
    year: int, between: tuple[str, str]
) -> None:
    done = work_out("kind: bonds\ntitle: Both\nknown: [5, 2]", "here", 1, None, year, reference()).done
    assert done is not None
    (board,) = boards_of(done)
    assert board.between == between
    assert [place.id for place in board.places] == ["whole"]
    assert list(board.answers) == [card_id(7)]
    assert len(board.pieces) > 3


@pytest.mark.parametrize(("year", "texts"), [(1, ["1", "2", "5"]), (2, ["1p", "2p", "5p"])])
def test_coins_say_what_they_say_on_paper(year: int, texts: list[str]) -> None:
    done = worked_from("kind: money\ntitle: Pay\nfind: ways\namount: 8\npurse: [5, 2, 2, 1]", year)
    (board,) = boards_of(done)
    assert [piece.name for piece in board.pieces] == texts
    slip = done.solution.likely_error
    assert slip is not None
    assert ("p" in slip.gives) == (year > 1), slip.gives


def test_the_question_to_end_on_has_its_picture() -> None:
    path = collection().of_kind(Session)[0].path.removeprefix("content/")
    shown = "exit_question:\n  picture: {picture: six-pegs.svg, alt: Six pegs.}\n"
    pictured = collection_with({path: text_of(path).replace("exit_question:\n", shown)})
    page = next(page for page in pictured.of_kind(Session) if page.path.endswith(path))
    last = draw_screen(Site(pictured, all_activities()), page).html.rpartition("<section")[2]
    assert "with-scene" in last
    assert 'src="six-pegs.svg" alt="Six pegs."' in last


def test_missing_digits_have_a_place_each() -> None:
    asked = "kind: number-sentence\ntitle: A trial\nsentences: 7?8 − 16? = 546"
    (board,) = boards_of(worked_from(asked, 4))
    by_itself(board)
    assert board.between == ("7", "8 − 16", " = 546")
    assert board.answers == {"card-0|card-2": 0}


def test_an_order_keeps_its_order_and_ties_share_a_place() -> None:
    text = "kind: order\ntitle: Ties\nfact: mass\ncast: {gull: {mass: 2}, crab: {mass: 3}, seal: {mass: 2}}\n"
    (board,) = boards_of(worked_from(text, 2))
    assert list(board.answers) == ["gull,seal|crab"]
    assert not board.empty_matters


def test_every_task_of_every_kind_is_tried() -> None:
    tried = {(done.kind.name, done.fields.task_name) for done in every_task(reference())}
    assert tried == {(kind.name, task.task_name) for kind in KINDS.values() for task in kind.tasks}


def test_a_load_stands_on_its_pan_and_any_weights_that_level_it_will_do() -> None:
    text = "kind: measure\ntitle: A trial\nfind: level\nload: 7 kg\nweights: [1 kg, 2 kg, 5 kg, 5 kg]\n"
    (board,) = boards_of(worked_from(text, 3))
    load, *weights = board.pieces
    assert (load.stays, load.worth, board.start) == (True, 7, {"load": ["load"]})
    assert [(piece.name, piece.copies, piece.worth) for piece in weights] == [
        ("1 kg", 1, 1),
        ("2 kg", 1, 2),
        ("5 kg", 2, 5),
    ]
    assert [placing["weights"] for _, placing in placings(board)] == [[card_id("2 kg"), card_id("5 kg")]]


def test_a_route_may_go_only_over_free_squares_and_each_way_is_an_answer() -> None:
    text = "kind: position\ntitle: A trial\ngrid: [3, 2]\ngoal: C2\nblocked: [B2]\n"
    (board,) = boards_of(worked_from(text, 2))
    # From the top left: A2, B2 (blocked), C2 (the goal), then A1 (the start), B1, C1.
    assert [place.takes for place in board.places] == ["", "nothing", "", "nothing", "", ""]
    assert board.answers == {"||step||step|step": 0}


def test_half_a_figure_is_completed_over_its_line_and_the_given_half_is_not_touched() -> None:
    (board,) = boards_of(worked_from("kind: shape\ntitle: A trial\nhalf: [x., xx]\nmirror: right\n", 4))
    assert [place.takes for place in board.places] == ["nothing", "nothing", "", ""] * 2
    assert [place.marks for place in board.places[:2]] == [("shaded",), ("mirror-right",)]
    assert board.answers == {"|||shade|||shade|shade": 0}


def test_a_number_stands_at_its_mark() -> None:
    (board,) = boards_of(worked_from("kind: fraction\ntitle: A trial\nfind: line\nparts: 4\nnumbers: [1/2, 3/4]\n", 4))
    assert [place for _, placing in placings(board) for place, some in placing.items() if some] == ["at-4", "at-6"]
    assert board.columns == ("0", "", "", "", "1")


def test_the_key_of_a_placing_is_written_out_by_hand() -> None:
    places = (Place("a", "a"), Place("b", "b", in_order=True), Place("c", "c"))
    placing = {"a": ["y", "x"], "b": ["y", "x"]}
    assert key_of(places, placing) == "x,y|y,x|"
    assert key_of(places, placing, empty_matters=False) == "x,y|y,x"


def test_no_two_cards_go_by_one_name() -> None:
    words = ("B", "b", "3 < 5", "3 > 5", "12.30", "12:30", "−", "2212", "=", "card", "10", "-10")
    assert len({card_id(one) for one in words}) == len(words)


def test_how_many_groups_there_are_is_not_given_away_and_any_of_the_places_will_do() -> None:
    (board,) = boards_of(worked_from("kind: share\ntitle: Boats\ntotal: 12\neach: 4\nthings: lanterns", 2))
    assert len(board.places) > 3
    three = {"group-1": ["counter"] * 4, "group-3": ["counter"] * 4, "group-4": ["counter"] * 4}
    assert key_of(board.places, three, board.empty_matters) in board.answers
    assert key_of(board.places, {"group-1": ["counter"] * 12}, board.empty_matters) not in board.answers


def test_a_rule_is_guessed_among_rules_that_do_not_fit() -> None:
    text = (
        "kind: sort\ntitle: Guess\ninside: [gull, puffin]\n"
        "cast: {gull: {legs: 2}, puffin: {legs: 2}, crab: {legs: 10}, seal: {legs: 0}}\n"
    )
    done = worked_from(text, 2)
    (board,) = boards_of(done)
    assert board.count == len(done.solution.answers)
    assert len(board.pieces) > board.count


def test_one_question_a_slide() -> None:
    slides = list(parts_of(example("angle")))
    assert [part.title[-8:] for part in slides] == ["(1 of 4)", "(2 of 4)", "(3 of 4)", "(4 of 4)"]
    assert slides[0].board is not None
    assert [piece.name for piece in slides[0].board.pieces][:2] == ["1 right angle", "2 right angles"]
    assert {part.years for part in slides} == {(3, 5)}, "it serves Year 5 as it is"


def test_each_year_has_questions_of_its_own() -> None:
    changed = [
        (done, [year for year, version in done.versions.items() if not version.same])
        for page in collection().of_kind(Session)
        for found in activities_on(page)
        if (done := found.worked.done) is not None
    ]
    assert any(years for _, years in changed)
    for done, years in changed:
        parts, own = list(parts_of(done)), done.context.year.year
        assert all(part.own == (own in part.years) for part in parts)
        assert {part.years for part in parts if not part.own} == {(year,) for year in years if year != own}


def test_bars_of_one_statement_stand_beside_no_other() -> None:
    one, two = (
        worked_from(f"kind: compare\ntitle: Which sign?\nstatements: [{lines}]\n", 2)
        for lines in ("7 ? 12", "7 ? 12, 18 ? 11")
    )
    assert [len(part.figures) for done in (one, two) for part in parts_of(done)] == [1, 0, 0]


def test_every_name_of_an_angle_that_the_year_knows_is_to_choose_from() -> None:
    done = worked_from("kind: angle\ntitle: Wide\nfind: name\nangles: [60, 120]\n", 3)
    for board in boards_of(done):
        assert [piece.name for piece in board.pieces] == [
            "less than a right angle", "a right angle", "greater than a right angle",
        ]  # fmt: skip


def test_no_line_of_a_sequence_begins_with_a_comma_and_a_place_is_told_only_of_twins() -> None:
    (gaps,) = boards_of(worked_from("kind: sequence\ntitle: Count\nterms: [56, ___, 58, ___, 60, 61]\n", 2))
    assert gaps.between == ("56, ", " 58, ", " 60, 61")
    (wrong,) = boards_of(worked_from("kind: sequence\ntitle: Count\nmistake: true\nterms: [45, 46, 48, 48, 49]\n", 2))
    names = [piece.name for piece in wrong.pieces if piece.sort == "term"]
    assert names == ["45", "46", "48 (3rd)", "48 (4th)", "49"]


def test_slides_come_where_the_words_of_the_step_have_them() -> None:
    path = "books/cliff-house-lift/session-4.md"
    fence = "```maths\nkind: compare\ntitle: Between\nstatements: [9 + 5 ? 6 + 4]\n```\n\n"
    changed = collection_with({path: text_of(path).replace("Read page 11 and", f"{fence}Read page 11 and")})
    page = next(page for page in changed.of_kind(Session) if page.path.endswith(path))
    slides = slides_of(page, {}, changed.reference.words, activities_on(page))
    shapes = [(slide.shape, slide.title) for slide in slides if slide.shape in ("stop", "activity", "task")]
    assert shapes[:5] == [
        ("stop", "Stop on page 10"),
        ("activity", "Between"),
        ("stop", "Stop on page 11"),
        ("stop", "Stop on page 12"),
        ("task", "Your turn"),
    ]
    assert ("activity", "All six, and level") in shapes[5:]
