"""What a session or home activity gets out, and the words that say what is done with it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from ..model.collection import Collection
from ..model.document import Document, Loc
from ..model.home import Home
from ..model.material import Caution, Material
from ..model.session import Session

Doing = Document[Session] | Document[Home]
# Where a page tells what is done. A question about the harbour in the story is no call to fill a bucket.
_DOING = frozenset(("[body]", "task", "easier", "harder", "access", "if_hard", "if_easy", "steps"))
_NEGATED = re.compile(r"\b(?:no|not|without|never|instead of|rather than)\b[^.;:!?\n]{0,25}$", re.IGNORECASE)


def pages_of_doing(collection: Collection) -> Iterator[Doing]:
    """Sessions and home activities: the pages where somebody handles something."""
    yield from collection.of_kind(Session)
    yield from collection.of_kind(Home)


def materials_of(page: Doing, collection: Collection) -> Iterator[tuple[Loc, Material]]:
    """The known materials of a page, with where each is named."""
    if isinstance(page.fields, Session):
        named = [(("materials", index, "item"), needed.item) for index, needed in enumerate(page.fields.materials)]
    else:
        named = [(("things", index, "item"), thing.item) for index, thing in enumerate(page.fields.things)]
    for loc, item in named:
        material = collection.reference.materials.get(item)
        if material is not None:
            yield loc, material


def applies(caution: Caution, page: Doing) -> bool:
    """Whether a caution is for this kind of page and the age of its children."""
    if page.fields.kind not in caution.applies_to:
        return False
    return caution.oldest_year is None or page.fields.year <= caution.oldest_year


def notes_on(page: Doing) -> frozenset[str]:
    """The cautions the page carries a note on."""
    return frozenset(note.risk for note in page.fields.cautions)


@lru_cache(maxsize=256)
def _pattern(phrases: tuple[str, ...]) -> re.Pattern[str]:
    words = "|".join(sorted((re.escape(phrase) for phrase in phrases), key=len, reverse=True))
    return re.compile(rf"\b(?:{words})(?:s|es)?\b", re.IGNORECASE)


def phrases_in(page: Doing, phrases: Iterable[str], everywhere: bool = False) -> Iterator[tuple[int, str]]:
    """Where a page says one of some phrases, and the words as written. What is denied ("no water") is passed over."""
    listed = tuple(phrases)
    if not listed:
        return
    text = page.prose.text
    for match in _pattern(listed).finditer(text):
        doing = everywhere or page.prose.passage_at(match.start()).loc[0] in _DOING
        if doing and not _NEGATED.search(text, max(0, match.start() - 40), match.start()):
            yield match.start(), match.group()
