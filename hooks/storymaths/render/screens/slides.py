"""The slides of a class screen: what a class looks at, one thing at a time, in the order of the session."""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from markupsafe import Markup

from ...activities.work_out import WorkedOut
from ...model.activity import Figure, Solution
from ...model.concept import Word
from ...model.fields import Pages
from ...model.figures.amounts import PartWhole
from ...model.figures.measures import Balance, ClockFace
from ...model.figures.sorting import Places, SortCarroll, SortHoop, SortVenn
from ...model.session import Reading, Session, Stop
from ..figures.table import draw
from .another import OtherBoards, other_boards
from .board import Board
from .table import boards_of

_PLAYED_ON = (Balance, PartWhole, Places, SortHoop, SortVenn, SortCarroll)
"""Figures to write on, which the board takes the place of."""


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
    spread: Spread | None = None
    pages: Pages | None = None
    stop: Stop | None = None
    word: Word | None = None
    says: str = ""
    answer: str = ""
    solution: Solution | None = None
    boards: tuple[Board, ...] = ()
    figures: tuple[tuple[str, Markup], ...] = field(default=())
    givens: tuple[str, ...] = ()
    """Lines to be read, such as clues, that no board shows."""
    others: tuple[OtherBoards, ...] = ()


def slides_of(
    session: Session, spreads: Mapping[int, Spread], words: Mapping[str, Word], activities: list[WorkedOut]
) -> Iterator[Slide]:
    """The reading with its stops, the new words, the activities, the sentences to say, and the question to end on."""
    for reading in session.reads:
        for pages in stretches(reading, spreads):
            title = str(pages)
            yield Slide("page", title[:1].upper() + title[1:], spread=spreads.get(pages.first), pages=pages)
            for stop in reading.stops:
                if stop.page == pages.last:
                    yield Slide("stop", f"Stop on page {pages.last}", stop=stop)
    for name in session.words.new:
        if name in words:
            yield Slide("word", "A new word", word=words[name])
    for worked in activities:
        yield from activity_slides(worked)
    for sentence in session.stem_sentences:
        yield Slide("stem", "Say together", says=sentence)
    yield Slide("exit", "A question to end on", says=session.exit_question.ask, answer=session.exit_question.answer)


def stretches(reading: Reading, spreads: Container[int]) -> Iterator[Pages]:
    """The pages of a reading as a class meets them: each that can be shown by itself, others as far as the next stop."""
    first = reading.pages.first
    stops = {stop.page for stop in reading.stops}
    for page in range(first, reading.pages.last + 1):
        if page in spreads or page in stops or page + 1 in spreads or page == reading.pages.last:
            yield Pages((first, page))
            first = page + 1


def activity_slides(worked: WorkedOut) -> Iterator[Slide]:
    """An activity: its question and its boards, or the task alone where there is nothing to move."""
    if worked.solution is None or worked.fields is None:
        return
    slide = activity_slide(worked.fields.title, worked.solution, tuple(boards_of(worked)))
    alone = not (slide.figures or slide.givens)
    yield replace(slide, others=tuple(other_boards(worked, slide.boards)) if alone else ())


def activity_slide(title: str, solution: Solution, boards: tuple[Board, ...]) -> Slide:
    """The slide of a task with its boards."""
    figures = tuple((figure.alt, _drawn(figure)) for figure in _not_played(solution, boards))
    givens = tuple(_givens(solution, boards))
    return Slide("activity", title, solution=solution, boards=boards, figures=figures, givens=givens)


def _not_played(solution: Solution, boards: Sequence[Board]) -> Iterator[Figure]:
    """The task's figures that are not themselves the board."""
    played = (*_PLAYED_ON, *((ClockFace,) if boards and boards[0].layout == "clock" else ()))
    for figure in solution.task.figures:
        if not boards or not isinstance(figure.data, played):
            yield figure


def _givens(solution: Solution, boards: Sequence[Board]) -> Iterator[str]:
    if boards and boards[0].layout == "slots":
        yield from (str(line) for line in solution.task.lines if not line.gaps and not line.asks)


def _drawn(figure: Figure) -> Markup:
    return Markup(draw(figure.data))
