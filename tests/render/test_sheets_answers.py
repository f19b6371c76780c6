"""The answer key says what the activities come to, no more and no less; and the other sheets give nothing away."""

from __future__ import annotations

import re
from dataclasses import replace

import pypdfium2 as pdfium
import pytest
from project import activities_on, collection
from render.sheets_made import Made, cache, frozen_sheets, kind_sheets, made, session_with, sheet_context
from storymaths.activities.saying import listed
from storymaths.activities.table import KINDS
from storymaths.model.activity import Solution
from storymaths.model.document import Document
from storymaths.model.fields import year_name
from storymaths.model.session import Session
from storymaths.publish.sheet_cache import pdf_path
from storymaths.render.sheets.exit_slips import exit_slips
from storymaths.render.sheets.of_page import session_sheets
from storymaths.render.sheets.sheet import SheetData

_LIGATURES = {"ﬁ": "fi", "ﬂ": "fl", "ﬀ": "ff", "\ufffe": "-", "\x02": "-"}


def squeezed(text: str) -> str:
    """A text by its letters alone: no spaces, no kinds of quotation mark, no marks of Markdown."""
    for joined, apart in _LIGATURES.items():
        text = text.replace(joined, apart)
    return re.sub(r"[\s\u200b*\"'“”‘’]+|_{3,}", "", text)


def printed(pdf: bytes) -> str:
    """The text of a PDF, feet of pages left out."""
    return squeezed("".join(page.get_textpage().get_text_bounded(bottom=45) for page in pdfium.PdfDocument(pdf)))


def expected(solution: Solution) -> list[str]:
    """What a key has to say of a solution, in order."""
    said = [solution.task.ask]
    if solution.task.shows:
        pairs = zip(solution.task.characters, solution.task.shows, strict=True)
        said.append("Cards: " + ", ".join(f"{character.name} {shown}" for character, shown in pairs) + ".")
    for number, answer in enumerate(solution.answers, 1):
        said += [f"{number}.{answer.says}", answer.why]
    said.append(solution.note)
    if solution.likely_error:
        said += [f"A likely slip: {solution.likely_error.does} It gives: {solution.likely_error.gives}"]
    return said


def whole_key(page: Document[Session]) -> str:
    """All that the activities' part of a key says, straight from the solver."""
    said = [f"Answers: {page.fields.title}"]
    for activity in activities_on(page):
        worked = activity.worked
        assert worked.fields
        assert worked.solution
        own = worked.year
        changed = {year: version for year, version in worked.versions.items() if not version.same and year != own}
        versions = {year: version.solution for year, version in changed.items()} | {own: worked.solution}
        said.append(worked.fields.title)
        for year in sorted(versions, key=lambda year: (year != own, year or 0)):
            title = changed[year].fields.title if year in changed else worked.fields.title
            renamed = f": {title}" if title != worked.fields.title else ""
            said += [f"{year_name(year)}{renamed}"] if year is not None and len(versions) > 1 else []
            said += expected(versions[year])
        same = sorted(year for year, version in worked.versions.items() if version.same and year != own)
        said += [f"{listed([year_name(year) for year in same])}: the same."] if same else []
    return squeezed("".join(said))


@pytest.mark.parametrize("kind", KINDS)
def test_the_key_of_every_kind_is_what_the_solver_gives(kind: str) -> None:
    key = next(sheet for sheet in kind_sheets(kind) if sheet.data.what == "answers")
    before_exit, _, _ = printed(key.pdf).partition("Thequestiontoendon")
    assert before_exit == whole_key(session_with(KINDS[kind].example))


def test_the_key_of_every_session_is_what_the_solver_gives() -> None:
    keys = {sheet.source: sheet for sheet in frozen_sheets() if sheet.what == "answers"}
    for page in collection().of_kind(Session):
        sheet = keys[page.path.removeprefix("content/")]
        text = printed(pdf_path(cache(), sheet.key).read_bytes())
        assert text.startswith(whole_key(page)), page.path
        assert text.endswith(squeezed(_without_marks(page.fields.exit_question.answer))), page.path


def _without_marks(text: str) -> str:
    return re.sub(r"\[([^\]]*)\]\{wrong\}", r"\1", text)


def given_away(sheet: Made, answers: set[str]) -> set[str]:
    """Answers that can be read on a sheet for children."""
    text = printed(sheet.pdf)
    return {answer for answer in answers if len(squeezed(answer)) > 9 and squeezed(answer) in text}


@pytest.mark.parametrize("kind", ["balance", "bonds", "number-sentence", "share", "position", "money"])
def test_a_recording_sheet_does_not_give_the_answers_away(kind: str) -> None:
    (activity,) = sheet_context().activities(session_with(KINDS[kind].example))
    answers = {answer.says for solution in activity.by_year.values() for answer in solution.answers}
    sheet = next(sheet for sheet in kind_sheets(kind) if sheet.data.what == "recording-sheet")
    assert given_away(sheet, answers) == set()


def test_a_recording_sheet_has_a_page_for_each_version_and_does_not_say_how_many_answers_there_are() -> None:
    sheet = next(sheet for sheet in kind_sheets("balance") if sheet.data.what == "recording-sheet")
    assert [part.data["mark"]["year"] for part in sheet.data.parts] == [2, 1, 3], "the session's own year comes first"
    (activity,) = sheet_context().activities(session_with(KINDS["balance"].example))
    lines = [len(part.data["tasks"][0]["lines"]) for part in sheet.data.parts]
    assert min(lines) > max(len(solution.answers) for solution in activity.by_year.values())


def test_a_key_of_many_ways_stands_on_one_page_with_the_question_to_end_on() -> None:
    ways = "kind: bonds\ntitle: Twenty\nwhole: 20\nsmallest: 1\norder: counts\n"
    also = "\n```maths\nkind: bonds\ntitle: Nineteen\nwhole: 19\nsmallest: 1\norder: counts\n"
    key = next(
        made(sheet)
        for sheet in session_sheets(sheet_context(), session_with(f"{ways}```\n{also}"))
        if sheet.what == "answers"
    )
    assert len(pdfium.PdfDocument(key.pdf)) == 1
    assert "Thequestiontoendon" in printed(key.pdf)


def test_no_slip_asks_for_what_a_child_says_or_does() -> None:
    page = session_with(KINDS["bonds"].example)

    def slips(ask: str) -> SheetData | None:
        ended = page.fields.exit_question.model_copy(update={"ask": ask, "picture": None})
        return exit_slips(
            sheet_context(), replace(page, fields=page.fields.model_copy(update={"exit_question": ended}))
        )

    assert slips("Hold up a tea box. What is its name?") is None
    assert slips("What is the name of a tea box?")
