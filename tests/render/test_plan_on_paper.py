"""The plan of a lesson on paper is the lesson: nothing of what is said in its steps is missing."""

from __future__ import annotations

import re

import pypdfium2 as pdfium
import pytest
from project import collection
from render.sheets_made import every_sheet
from storymaths.covers.taught import coverage_of, parts_taught
from storymaths.model.body import Paragraph, words_of_runs
from storymaths.model.document import Document
from storymaths.model.session import Session
from storymaths.parse.body import words_of

FOOT = 14 * 72 / 25.4


def letters(text: str) -> str:
    """Letters and digits alone: where lines end on paper is not what is asked."""
    return re.sub(r"[\W_]+", "", text).lower()


@pytest.mark.parametrize("page", collection().of_kind(Session), ids=lambda page: page.source)
def test_every_step_is_there_with_its_words_its_stops_and_its_answers(page: Document[Session]) -> None:
    session = page.fields
    sheet = next(one for one in every_sheet() if one.name == page.source.replace(".md", "-plan.pdf"))
    sides = [side.get_textpage().get_text_bounded(bottom=FOOT) for side in pdfium.PdfDocument(sheet.pdf)]
    assert len(sides) <= 2
    printed = letters("".join(sides))
    told = (block for section in page.content.sections for block in section.blocks)
    paragraphs = [words_of_runs(block.runs) for block in told if isinstance(block, Paragraph)]
    asked = [stop.ask for reading in session.reads for stop in reading.stops]
    said = [*(step.name for step in session.steps), *asked, session.exit_question.ask, session.exit_question.answer]
    taught = coverage_of([page], collection().reference)
    said += [part.says for key in taught.missing for part in parts_taught(page, key, collection().reference)]
    missing = [words for words in [*paragraphs, *map(words_of, said)] if letters(words) not in printed]
    assert missing == []
