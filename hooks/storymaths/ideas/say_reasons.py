"""The reasons of an idea in words, for whoever reads the list."""

from __future__ import annotations

from ..activities.saying import counted
from ..expression.say import number_word
from ..model.fields import year_name
from ..model.reference import Reference
from .idea import Change, FromStory, Hardness, NotCarried, Unfed
from .reason import (
    BringsTogether,
    CastTakesPart,
    FewWays,
    FirstFor,
    FirstOf,
    LikeOneAbove,
    Noted,
    NumbersChanged,
    NumbersKept,
    OfTheYear,
    OnThePage,
    Reason,
    SmallForTheYear,
    StillMissed,
    SurelyPractised,
)
from .seeds.table import SEEDS

_NAMED = 2
"""Kinds whose needs are told, where none that could carry an objective has anything in the book."""


def say_reason(reason: Reason, reference: Reference) -> str:
    """A reason as part of a sentence, without its weight."""
    match reason:
        case Noted():
            return f"the notes see {_concept(reason.concept, reference)} on {_pages(reason.pages)}"
        case OnThePage():
            return (
                f"page {reason.page}, where it comes from, is where the notes see {_concept(reason.concept, reference)}"
            )
        case BringsTogether():
            return f"it brings {number_word(reason.how_many)} things of the book together"
        case NumbersKept():
            return "the story’s numbers are kept"
        case NumbersChanged():
            return "numbers are not the story’s"
        case FewWays():
            return f"{reason.ways} ways to find, few enough to be sure of all"
        case StillMissed():
            where = f"the series {reason.series}" if reason.series else "this book"
            return f"{where} still misses {'part of ' if reason.in_part else ''}{reason.code}"
        case SurelyPractised():
            return f"it surely practises {reason.code} ({', '.join(part.replace('-', ' ') for part in reason.parts)})"
        case OfTheYear():
            return "it uses what is new in the year"
        case SmallForTheYear():
            return f"its numbers, to {reason.largest}, are small for the year"
        case CastTakesPart():
            return f"{counted(reason.how_many, 'characters')} of the story in it"
        case FirstFor():
            return f"nothing above it in this list is for {reason.code}"
        case FirstOf():
            return f"nothing above it in this list is of {_concept(reason.concept, reference)}"
        case LikeOneAbove():
            return f"{reason.times} of its kind above it"


def _concept(id_: str, reference: Reference) -> str:
    known = reference.concepts.get(id_)
    return known.name.lower() if known else id_


def _pages(pages: tuple[str, ...]) -> str:
    word = "page" if len(pages) == 1 and "–" not in pages[0] else "pages"
    return f"{word} {', '.join(pages)}"


def say_use(use: FromStory) -> str:
    """``10 hooks (page 2)``."""
    return f"{use.what} ({_pages(tuple(map(str, use.pages)))})" if use.pages else use.what


def say_change(change: Change) -> str:
    """``Donkey 9 → 90``."""
    return f"{change.who} {change.book:,} → {change.idea:,}"


def say_hardness(hardness: Hardness) -> str:
    """In the parts it is made of, with what they come to."""
    steps = counted(hardness.steps, "steps")
    return f"{hardness.difficulty} ({steps} of thought, numbers to {hardness.largest}, {counted(hardness.answers, 'answers')})"


def say_why_not(one: NotCarried, year: int) -> str:
    """Why nothing carries an objective."""
    match one.why:
        case "no kind":
            return "no kind of activity does; teach it with talk, objects and paper"
        case "nothing to feed it":
            return f"it takes {' or '.join(dict.fromkeys(SEEDS[kind].needs for kind in one.kinds[:_NAMED]))}"
        case "does not come out":
            return f"{_or(one.kinds)} could, and nothing here comes out so for {year_name(year)}"


def _or(kinds: tuple[str, ...]) -> str:
    return " or ".join(filter(None, (", ".join(kinds[:-1]), kinds[-1])))


def say_unfed(one: Unfed) -> str:
    """A kind without an idea, and what it needs."""
    return f"{one.kind}: it needs {one.needs}"
