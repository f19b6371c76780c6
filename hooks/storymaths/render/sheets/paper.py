"""How much paper a sheet takes: how many sets a class needs, how they share pages, and a sentence that says so."""

from __future__ import annotations

from dataclasses import dataclass

from ...model.session import Needed

CHILDREN_IN = {"child": 1, "pair": 2}


@dataclass(frozen=True, slots=True)
class PaperUse:
    """Sets needed for a class, and how many of them one page holds. Without children it is for the adult alone."""

    children: int = 0
    sets: int = 1
    thing: str = ""
    """What a set is, if it is not the sheet itself: ``set of 6 cards``."""
    each: str = ""
    """Who has how much: ``6 cards to a pair``."""
    on_a_page: int = 1
    versions: int = 1
    """How many versions its pages are of; one of them is printed for each set."""
    sides: int = 1
    """Sides of a sheet that are printed."""
    note: str = ""

    def sheets(self, pages: int) -> int:
        """Sheets of A4 for the whole class."""
        return -(-self.sets // self.on_a_page) * -(-self._long(pages) // self.sides)

    def _long(self, pages: int) -> int:
        """Pages of one set."""
        return -(-pages // self.versions)

    def often(self) -> str:
        """For the sheet itself: how often to print it; nothing where there are versions, or once is enough."""
        copies = -(-self.sets // self.on_a_page)
        return f"Print {copies} for a class of {self.children}." if copies > 1 and self.versions == 1 else ""

    def says(self, pages: int) -> str:
        """Such as ``8 sheets for a class of 30: 15 sets of 6 cards, 6 cards to a pair, 2 sets to a sheet.``"""
        sheets = counted(self.sheets(pages), "sheet")
        if not self.children:
            return f"{sheets}{f', {self.each}' if self.each else ''}.{self._noted}"
        told = [counted(self.sets, self.thing)] if self.thing else []
        told += [self.each] if self.each else []
        told += [f"{self.on_a_page} to a sheet"] if self.on_a_page > 1 else []
        told += [f"each in one of {self.versions} versions"] if self.versions > 1 else []
        told += ["printed on both sides"] if self.sides > 1 else []
        told += [f"each {self._long(pages)} pages long"] if self._long(pages) > self.sides else []
        return f"{sheets} for a class of {self.children}: {', '.join(told)}.{self._noted}"

    @property
    def _noted(self) -> str:
        return f" {self.note}" if self.note else ""


def for_adult(note: str = "") -> PaperUse:
    """One copy for whoever teaches."""
    return PaperUse(each="for the adult", note=note)


def in_sets(needed: Needed, size: int, noun: str, children: int, group: int) -> PaperUse:
    """Enough sets of ``size`` things for what a session needs of them; a set may be shared out among pairs."""
    wanted = needed.for_class(children, group)
    each = f"{counted(needed.count, noun)} {to_whom(needed, group)}"
    thing = f"set of {size} {noun}s" if size > 1 else noun
    return PaperUse(children=children, sets=-(-wanted // size), thing=thing, each=each)


def to_whom(needed: Needed, group: int) -> str:
    """Such as ``to a pair`` and ``to a group of 5``."""
    if needed.per == "class":
        return "for the class"
    return f"to a {needed.per}" + (f" of {group}" if needed.per == "group" else "")


def counted(number: int, noun: str) -> str:
    """A number and what is counted: ``1 sheet``, ``15 sets of 6 cards``."""
    first, space, rest = noun.partition(" of ")
    return f"{number} {first}{'' if number == 1 else 's'}{space}{rest}"
