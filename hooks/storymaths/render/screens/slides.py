"""The slides of a class screen: what a class looks at, one thing at a time, in the order of the session's steps."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import dataclass

from ...activities.bending import Version
from ...activities.on_pages import PageActivity
from ...activities.worked import AnyWorked
from ...model.body import Body
from ...model.concept import Word
from ...model.document import Document
from ...model.fields import Pages
from ...model.session import OwnDrawing, Reading, Session, Step, Stop
from ...parse.body import words_of
from ..session_steps import line_that_reads, steps_with_stops, words_of_step
from .activity_slides import ActivityPart, parts_of


@dataclass(frozen=True, slots=True)
class Spread:
    """A page of the story: its picture and its words, as HTML."""

    number: int
    picture: str
    words: str


@dataclass(frozen=True, slots=True)
class Slide:
    """One thing to look at. ``shape`` names how it is drawn; the other values are what that needs."""

    shape: str
    title: str
    step: int = 0
    """In which step of the session it is shown, from 0."""
    line: int = 0
    """Where in the words of its step it belongs; 0 is at their beginning."""
    spread: Spread | None = None
    pages: Pages | None = None
    stop: Stop | None = None
    word: Word | None = None
    says: str = ""
    answer: str = ""
    drawing: OwnDrawing | None = None
    """What a question points at."""
    part: ActivityPart | None = None
    """What of an activity it shows."""
    main: Step | None = None
    """The step in which the class works at the main task."""


def slides_of(
    page: Document[Session],
    spreads: Mapping[int, Spread],
    words: Mapping[str, Word],
    activities: Sequence[PageActivity],
) -> list[Slide]:
    """Step by step: new words, the reading with its stops, the main task, the activities, and the question to end on.

    Within a step they come where its words have them: an activity between two readings stands between them. The main
    task comes once its step has read, before what is worked at; of what belongs to one place, what is first here is first.
    """
    session = page.fields
    told = [words_of_step(step, page.content) for step in session.steps]
    shown = steps_with_stops(session, page.content)[0]
    main = next(row for row, step in enumerate(shown) if step.is_main)
    step_of_stop = {id(stop): row for row, step in enumerate(shown) for stop in step.stops}
    read = list(_reading_slides(session, spreads, step_of_stop, page.content))
    then = max((slide.line for slide in read if slide.step == main), default=0)
    slides = [
        *(Slide("word", "A new word", _first_with(name, told), word=words[name]) for name in session.words.new if name in words),
        *read,
        Slide("task", "Your turn", main, then, main=session.steps[main]),
        *(Slide("stem", "Say together", main, then, says=sentence) for sentence in session.stem_sentences),
        *activity_slides(activities, _steps_of_lines(session, page.content)),
    ]  # fmt: skip
    slides.sort(key=lambda slide: (slide.step, slide.line))
    last = len(session.steps) - 1
    ended, title = session.exit_question, "A question to end on"
    return [*slides, Slide("exit", title, last, says=ended.ask, answer=ended.answer, drawing=ended.picture)]


def _first_with(word: str, told: Sequence[str]) -> int:
    return next((row for row, words in enumerate(told) if word.casefold() in words.casefold()), 0)


def _reading_slides(
    session: Session, spreads: Mapping[int, Spread], steps: Mapping[int, int], body: Body
) -> Iterator[Slide]:
    """Each stretch of pages, and each stop with the picture of its page; pages are read in the step of the next stop."""
    at = (0, 0)
    for reading in session.reads:
        for pages in stretches(reading, spreads):
            ahead = (steps[id(stop)] for stop in reading.stops if stop.page >= pages.last and id(stop) in steps)
            at = _later(at, min(ahead, default=0), pages.last, session, body)
            title, spread = str(pages), spreads.get(pages.first)
            yield Slide("page", title[:1].upper() + title[1:], *at, spread=spread, pages=pages)
            for stop in reading.stops:
                if stop.page == pages.last:
                    at = _later(at, steps.get(id(stop), 0), stop.page, session, body)
                    yield Slide("stop", f"Stop on page {pages.last}", *at, spread=spreads.get(stop.page), stop=stop)


def _later(at: tuple[int, int], step: int, page: int, session: Session, body: Body) -> tuple[int, int]:
    """The step and the line where a page is read, never before ``at``."""
    step = max(at[0], step)
    return max(at, (step, line_that_reads(page, session.steps[step], body)))


def stretches(reading: Reading, spreads: Container[int]) -> Iterator[Pages]:
    """The pages of a reading as a class meets them: each that can be shown by itself, others as far as the next stop."""
    first = reading.pages.first
    stops = {stop.page for stop in reading.stops}
    for page in range(first, reading.pages.last + 1):
        if page in spreads or page in stops or page + 1 in spreads or page == reading.pages.last:
            yield Pages((first, page))
            first = page + 1


def _steps_of_lines(session: Session, body: Body) -> Mapping[int, int]:
    """The step in which each activity stands, by its line."""
    rows = {words_of(step.name): row for row, step in enumerate(session.steps)}
    return {
        fence.line: rows[section.heading.words]
        for section in body.sections
        if section.heading.words in rows
        for fence in Body(section.blocks).activities
    }


def activity_slides(activities: Sequence[PageActivity], steps: Mapping[int, int]) -> Iterator[Slide]:
    """A slide for each question of each activity, those of its versions for other years among them."""
    step = 0
    for activity in activities:
        line = activity.fence.line
        step = max(step, steps.get(line, step))
        if activity.worked.done is not None:
            yield from example_slides(activity.worked.done, (step, line), activity.worked.other_sets)


def example_slides(done: AnyWorked, at: tuple[int, int] = (0, 0), others: Sequence[Version] = ()) -> Iterator[Slide]:
    """A slide for each question of one activity, by step and line; ``others`` are its other numbers, to be asked for."""
    for part in parts_of(done, others):
        yield Slide("activity", part.title, *at, part=part)
