"""What the desk offers beside a page, each to take or to leave: proposals for a session, and ideas for its book."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from hashlib import sha256

from ..edits.apply import apply
from ..edits.edit import AddItem, Edit, EditRefused, SetValue
from ..ideas.find import find_ideas
from ..ideas.idea import Idea
from ..ideas.say_reasons import say_change, say_hardness, say_reason, say_why_not
from ..model.address import CONTENT
from ..model.collection import Collection
from ..propose.proposal import Proposal
from ..propose.table import proposals
from .states import difference

_FIRST, _REASONS = 12, 4


@dataclass(frozen=True, slots=True)
class Offer:
    """A proposal: its name while the page is open, its field, why, and the difference it makes; none where it is only told."""

    key: str
    field: str
    reason: str
    edit: Edit | None
    lines: Sequence[str]


def offers_for(collection: Collection, source: str, text: str) -> list[Offer]:
    """What could be put into a page as it stands; nothing for a page that is no session."""
    found = []
    for one in proposals(collection, f"{CONTENT}{source}", text):
        try:
            lines = difference(text, apply(text, one.edit)) if one.edit else []
        except EditRefused:
            continue
        found.append(Offer(_key(one), one.field, one.reason, one.edit, lines))
    return found


def _key(one: Proposal) -> str:
    """The same for as long as it is proposed, whatever else has been put into the same list meanwhile."""
    told: tuple[object, ...] = ()
    if isinstance(one.edit, (SetValue, AddItem)):
        path = one.edit.path[:-1] if isinstance(one.edit.path[-1], int) else one.edit.path
        told = (path, one.edit.value)
    return sha256(f"{one.field}\n{one.reason}\n{told}".encode()).hexdigest()[:16]


@dataclass(frozen=True, slots=True)
class OfferedIdea:
    """An idea in words, with the data of its activity."""

    idea: Idea
    hard: str
    changes: Sequence[str]
    why: Sequence[str]


@dataclass(frozen=True, slots=True)
class OfferedIdeas:
    """The first ideas for a book and year, and the objectives that nothing in the book can carry."""

    title: str
    ideas: Sequence[OfferedIdea]
    not_carried: Sequence[tuple[str, str, str]]
    """Each objective's code, what it says, and why not."""
    had: int
    """How many more a page of the book has already."""


def ideas_for(collection: Collection, book: str, year: int) -> OfferedIdeas:
    """The best first. Raises ``EditRefused`` where there is no such book or year."""
    if book not in collection.books or year not in collection.reference.years:
        raise EditRefused("There is no such book, or no such year.")
    found = find_ideas(collection, book, year)
    return OfferedIdeas(
        found.title,
        [_in_words(idea, collection) for idea in found.ideas[:_FIRST]],
        [(one.code, one.says, say_why_not(one, year)) for one in found.not_carried],
        found.had,
    )


def _in_words(idea: Idea, collection: Collection) -> OfferedIdea:
    return OfferedIdea(
        idea,
        say_hardness(idea.hardness),
        [say_change(one) for one in idea.changes],
        [say_reason(one, collection.reference) for one in idea.reasons[:_REASONS]],
    )
