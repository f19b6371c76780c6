"""An activity that a seed proposes, as an author writes it, with what it is made of."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ..model.plain import Plain
from .block_text import block_text
from .idea import Change, FromStory
from .material import Material


@dataclass(frozen=True, slots=True)
class Candidate:
    """The lines of an activity, in an author's order, before anybody has worked it out."""

    lines: Mapping[str, Plain]
    uses: tuple[FromStory, ...]
    changes: tuple[Change, ...] = ()
    marks: frozenset[str] = frozenset()
    """What it is of, besides what its task shows: ``of mass``, ``of days``."""
    finds: bool = False
    """Whether every way is to be found, of which there should be a few."""
    lists: bool = False
    """Whether several are to be named, though nothing need be searched for."""
    invented: bool = False
    """Whether its numbers are nobody's in the story, which has only what they are about."""

    @property
    def block(self) -> str:
        """The lines as an author writes them into a page."""
        return block_text(self.lines)


Candidates = Iterator[Candidate]


def activity(kind: str, title: str, ask: str, **rest: Plain) -> dict[str, Plain]:
    """The lines of an activity in the order people write them; without ``ask`` the kind's own words are meant."""
    return {"kind": kind, "title": title, **({"ask": ask} if ask else {}), **rest}


def from_counted(number: int, things: str, pages: tuple[int, ...]) -> FromStory:
    """Things the story counts."""
    return FromStory(f"{number} {things}", pages)


def everyone(material: Material, ids: tuple[str, ...]) -> Plain:
    """The cast as an author names it."""
    return "all" if ids == tuple(character.id for character in material.book.cast) else list(ids)
