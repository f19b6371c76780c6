"""The website around the collection: its settings, and the full address of any page of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal
from urllib.parse import quote

from .address import LISTS, html_of
from .fields import FileName, Strict, Text
from .program_version import FIRST_VERSION

FRONT = LISTS["front"]
Colours = Literal["harbour", "orchard", "slate"]
"""Each but the first is a file in ``theme/look/colours/``; all are checked for contrast by day and by night."""
Face = Literal["lexend", "abeezee"]
Language = Literal["en-GB", "en-IE", "en-AU", "en-NZ", "en-ZA", "en-IN"]
"""Those with the spelling of the site's own words."""
Promise = Literal["worked-out", "checked", "private", "offline"]
PROMISES: Mapping[Promise, str] = {
    "worked-out": "Every number in a lesson has been worked out.",
    "checked": "What a program can check on a page has been [checked](checked.md).",
    "private": "Nothing about you leaves this device.",
    "offline": "Each series can be kept on a memory stick and works without the internet.",
}


class Letterforms(Strict):
    """The faces of the words for adults and of those for children."""

    text: Face = "lexend"
    child: Face = "abeezee"


DoorName = Literal["teach", "home", "plan"]


class Door(Strict):
    """What stands on a door of the first page."""

    name: Text
    says: Text


class Doors(Strict):
    """The doors of the first page: what each says, which are left out, and whether they are drawn as houses."""

    teach: Door = Door(name="I teach", says="Find an idea by what it teaches, the year and the story.")
    home: Door = Door(name="I am at home with a child", says="Ten minutes, a book, and what is in the kitchen.")
    plan: Door = Door(name="I publish and plan", says="Series, coverage and gaps, and how every lesson is checked.")
    without: tuple[DoorName, ...] = ()
    houses: bool = True


class FrontWords(Strict):
    """What the first page says before it leads on, and what it promises."""

    title: Text = "Maths in picture books"
    summary: Text = "Everything you need to teach maths from a picture book."
    words: Text | None = None
    doors: Doors = Doors()
    promises: tuple[Promise, ...] = ("worked-out",)


@dataclass(frozen=True, slots=True)
class SiteSettings:
    """What ``site_data/site.yaml`` says of the site; without an address only links within it can be given."""

    name: str = ""
    says: str = ""
    url: str = ""
    """With a closing slash; empty when it is not known where the site will stand."""
    print_sheets: bool = False
    """Whether there are PDFs to print."""
    language: Language = "en-GB"
    colours: Colours = "harbour"
    mark: FileName | None = None
    """A picture in ``content/`` that stands before the name."""
    letterforms: Letterforms = field(default_factory=Letterforms)
    front: FrontWords = field(default_factory=FrontWords)
    authors_guide: bool = False
    """Whether the authors' guide is among the pages."""
    checked_with: str = FIRST_VERSION
    """The version of the program that last found nothing wrong with the collection."""

    def full_address(self, source: str) -> str:
        """The address of the page made of ``source``, or of a file; the front page is the site's own address.

        Only to be asked when ``url`` is known.
        """
        path, mark, anchor = source.partition("#")
        return self.url + ("" if path == FRONT else _quote_address(path)) + mark + anchor


@lru_cache(maxsize=4096)
def _quote_address(path: str) -> str:
    """The path of a source as an address writes it; the same few are asked for by nearly every page."""
    return quote(html_of(path))
