"""Equal groups in the story: so many boats with so many lamps each."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...activities.saying import counted
from ...model.fields import Pages
from ..candidate import from_counted
from ..idea import Change, FromStory
from ..material import Material

_MOST_GROUPS, _LARGEST = 12, 12
_IN_GROUPS = frozenset(("equal-groups", "sharing", "multiplication-division", "arrays", "times-tables"))
_MANY = (3, 5, 2)
"""How many alike are put beside each other, where the story has one."""


@dataclass(frozen=True, slots=True)
class Groups:
    """So many groups of so many things, and where the story has them from."""

    many: int
    each: int
    holders: str
    """What holds the groups, such as boats."""
    things: str
    """What is in them."""
    uses: tuple[FromStory, ...]
    changes: tuple[Change, ...] = ()
    alike: bool = False
    """Whether each group is what one of a sort of character has."""

    @property
    def total(self) -> int:
        """All of them."""
        return self.many * self.each

    @property
    def told(self) -> str:
        """``5 boats with 4 lamps each``."""
        return f"{counted(self.many, self.holders)} with {counted(self.each, self.things)} each"


def groups_of(material: Material) -> list[Groups]:
    """Groups that the story's numbers make, those of pages where the notes see groups or sharing first.

    Else what is told as groups comes first, then what is shared out exactly, then several of one character.
    """
    found = [*_told(material), *_shared(material), *_alike(material)]
    once: dict[tuple[int, int, str, str], Groups] = {}
    for one in found:
        once.setdefault((one.many, one.each, one.holders, one.things), one)
    shown = [note.pages for note in material.book.maths_on_pages if not _IN_GROUPS.isdisjoint(note.concepts)]
    return sorted(once.values(), key=lambda one: not _stands_on(one, shown))


def _stands_on(groups: Groups, shown: Sequence[Pages]) -> bool:
    """Whether all of it stands on pages that one note is about."""
    return any(
        all(any(stretch.first <= page <= stretch.last for page in use.pages) for use in groups.uses)
        for stretch in shown
    )


def _told(material: Material) -> Iterator[Groups]:
    """Boxes of 4, and something in the story that fills them."""
    for group in material.grouped:
        for things in material.counted:
            many, left = divmod(things.number, group.each)
            if not left and 1 < many <= _MOST_GROUPS and things.things != group.holders:
                uses = (
                    FromStory(f"{group.holders} of {group.each}", group.pages),
                    from_counted(things.number, things.things, things.pages),
                )
                yield Groups(many, group.each, group.holders, things.things, uses)


def _shared(material: Material) -> Iterator[Groups]:
    """Things and what could hold them, both counted in the story, that come out exactly."""
    own = {str(fact.things) for fact in material.numbers}
    for things in material.counted:
        for holder in material.counted:
            each, left = divmod(things.number, holder.number)
            fits = (
                set(holder.pages) & set(things.pages)
                and holder.things != things.things
                and str(holder.things) not in own
                and holder.number <= _MOST_GROUPS
            )
            if fits and not left and 1 < each <= _LARGEST:
                uses = tuple(from_counted(one.number, one.things, one.pages) for one in (things, holder))
                yield Groups(holder.number, each, holder.things, things.things, uses)


def _alike(material: Material) -> Iterator[Groups]:
    """Several of one character, where the book has a word for them: 3 spiders with 8 legs each.

    What they made or were given that day is of the one in the story alone.
    """
    for fact in material.of("count"):
        for one in fact.who:
            each = fact.values[one.id]
            if fact.of_body and one.plural and one.plural[:1].islower() and 1 < each <= _LARGEST:
                for many in _MANY:
                    change = Change(one.plural, "how many", 1, many)
                    yield Groups(many, each, one.plural, fact.things, (FromStory(fact.means),), (change,), alike=True)
