"""Where each page of the site is: the generated ones by what they are about, the written ones by their file."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from functools import lru_cache
from posixpath import dirname, normpath

from .fields import RECEPTION

CONTENT = "content/"


def slug(words: str) -> str:
    """Words as they stand in an address: small letters and digits, hyphens between."""
    plain = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode()
    return re.sub(r"[^a-z0-9]+", "-", plain.lower()).strip("-")


def source_of(path: str) -> str:
    """A content file's name inside ``content/``: ``books/lift/session-1.md``."""
    return path.removeprefix(CONTENT)


def book_id(path: str) -> str:
    """The id of the book a file belongs to: ``content/books/<id>/…``."""
    return path.rpartition("/")[0].rpartition("/")[2]


def html_of(source: str) -> str:
    """The address a source is published at, from the site's root."""
    return source[: -len(".md")] + ".html" if source.endswith(".md") else source


def link(target: str, here: str) -> str:
    """A link from the page made of source ``here`` to that of ``target``, which may end in ``#anchor``."""
    source, mark, anchor = target.partition("#")
    if not source:
        return mark + anchor
    ours, theirs = here.split("/")[:-1], html_of(source).split("/")
    shared = 0
    while shared < min(len(ours), len(theirs) - 1) and ours[shared] == theirs[shared]:
        shared += 1
    return "../" * (len(ours) - shared) + "/".join(theirs[shared:]) + mark + anchor


def resolve(target: str, here: str) -> str:
    """The source a relative link in ``here`` leads to, from the site's root."""
    return normpath(f"{dirname(here)}/{target}" if dirname(here) else target)


def concept_page(concept: str) -> str:
    """The page of a concept."""
    return f"concepts/{concept}.md"


def theme_page(theme: str) -> str:
    """The page of a theme."""
    return f"themes/{theme}.md"


def year_page(year: int) -> str:
    """The page of a school year."""
    return "years/reception.md" if year == RECEPTION else f"years/year-{year}.md"


@lru_cache(maxsize=4096)
def objective_page(framework: str, code: str) -> str:
    """The page of an objective. Its year is no part of it beyond what the official code says."""
    return f"objectives/{framework}/{slug(code)}.md"


def framework_page(framework: str) -> str:
    """The page that lists a framework's objectives."""
    return f"objectives/{framework}/index.md"


def screen_page(source: str) -> str:
    """The class screen of a session, beside its page."""
    return f"{source[: -len('.md')]}-screen.md"


SCREEN_TO_TRY = "activities-screen.md"
"""The class screen with the gallery's examples."""


def coverage_page(year: int) -> str:
    """The page of what the collection covers of a school year."""
    return "coverage/reception.md" if year == RECEPTION else f"coverage/year-{year}.md"


def governors_page(series: str) -> str:
    """The page about a series for governors, by the source of the series."""
    return f"coverage/{series}"


def guide_page(kind: str) -> str:
    """What the authors' guide tells of a kind of page that authors write."""
    return f"guide/{kind}.md"


def coverage_csv(source: str) -> str:
    """The table of what a book or a series covers, by its source; it stands beside no page, so as not to be one."""
    name = source.removesuffix(".md").removesuffix("/index")
    return f"coverage/{name}.csv"


def record_csv(source: str) -> str:
    """The empty record for a class that is taught a series, by the series' source."""
    return f"{source.removesuffix('.md')}-record.csv"


COLLECTION_CSV = "coverage/collection.csv"

LISTS: Mapping[str, str] = {
    "front": "index.md",
    "find": "find.md",
    "plan": "plan.md",
    "books": "books/index.md",
    "at-home": "at-home.md",
    "series": "series/index.md",
    "concepts": "concepts/index.md",
    "themes": "themes/index.md",
    "years": "years/index.md",
    "objectives": "objectives/index.md",
    "coverage": "coverage/index.md",
    "governors": "coverage/for-governors.md",
    "shelf": "shelf.md",
    "words": "words.md",
    "materials": "materials.md",
    "safety": "safety.md",
    "checked": "checked.md",
    "gallery": "activities.md",
    "screen-to-try": SCREEN_TO_TRY,
    "guide": "guide/index.md",
    "guide-names": "guide/names.md",
    "guide-problems": "guide/problems.md",
    "catalogue": "catalogue.md",
    "open-data": "open-data.md",
    "credits": "credits.md",
    "access": "access.md",
}
"""Generated pages there is one of each."""
LICENCE_IN_WORDS = f"{LISTS['credits']}#licence"
"""What may be done with the collection, where its licence is not published elsewhere."""
