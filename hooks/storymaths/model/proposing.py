"""What proposals to an author go by, where no document says: how things are got out, how long that takes, stem sentences."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from pydantic import Field

from .fields import Count, Id, Strict, Text
from .session import Per


class Usual(Strict):
    """How a thing is usually got out."""

    per: Per = "group"
    count: Count = 1
    also: tuple[Text, ...] = ()
    """Shorter names by which a lesson calls it: ``cubes``."""
    not_with: tuple[Id, ...] = ()
    """Things beside which the shorter names mean these: the cubes of base-ten blocks."""
    takes: tuple[Id, ...] = ()
    """What it is of no use without: a pen for a whiteboard."""


class GettingReady(Strict):
    """How many seconds it takes an adult to get ready one thing of a sort."""

    fetch: Count
    """For each sort of thing, whatever their number."""
    count_out: Count
    cut: Count
    label: Count
    print: Count


class Steps(Strict):
    """How the minutes of a session are shared among its steps."""

    least: Count
    """The fewest minutes of a step."""
    stop: Count
    """A stop to talk takes as long as so many words of a section."""
    activity: Count
    """And an activity as long as so many."""


class Proposing(Strict):
    """``site_data/proposals.yaml``."""

    source: Text
    things: Mapping[Id, Usual]
    for_whom: Mapping[Per, Annotated[tuple[Text, ...], Field(min_length=1)]]
    """Words by which a lesson says for whom a thing is."""
    getting_ready: GettingReady
    steps: Steps
    notes: Mapping[Id, Text]
    """What a note on a caution usually says, by its risk; ``{things}`` are those that call for it."""
    signs: Mapping[str, Text]
    """Each sign as a child says it within a sentence."""
    stems: Mapping[str, Mapping[str, Annotated[tuple[Text, ...], Field(min_length=1)]]]
    """Sentences to finish, by kind and task of an activity."""
    most_stems: Count

    def usual(self, item: str) -> Usual:
        """How a thing is got out; for a group, one each, where nothing is said."""
        return self.things.get(item, Usual())
