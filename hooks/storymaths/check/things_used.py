"""What a session or home activity gets out, and the words that say what is done with it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from ..model.any_book import AnyBook
from ..model.at_home import AtHome
from ..model.collection import Collection
from ..model.document import Document, Loc
from ..model.home import Home
from ..model.material import Caution, Material
from ..model.prose_words import Handling
from ..model.session import Session

Doing = Document[Session] | Document[Home] | Document[AnyBook]
# Where a page tells what is done. A question about the harbour in the story is no call to fill a bucket.
DOING = frozenset(("[body]", "task", "easier", "harder", "access", "if_hard", "if_easy", "steps"))
_WORDS = re.compile(r"[a-z]+")
_ENDING = re.compile(r"(?:s|es)?(?![a-z0-9])")
_SENTENCE_ENDS = re.compile(r"[.!?][\"”’')]*\s|\n")
_PICTURED = re.compile(
    r"(?:\b(?:read|show|open|turn to|look at|back to) (?:at )?pages? \d+(?: to \d+)?(?: and stop)?(?:: |, (?:where|with) |,? and"
    r" look at )|\b(?:it|the page|the picture|page \d+) shows )(?:(?!\b(?:and|then)\b)[^.;:!?])*$"
)
"""What is told of a page that is shown: read page 8, where the kettle boils."""
_ONLY_TOLD = re.compile(
    r"[^.,;:!?\n]*\b(?:only in the (?:story|book|pictures?)|in the (?:story|book|pictures?) (?:only|alone)|(?:is|are) no "
    r"[^.,;:!?\n]+ in the (?:lesson|room))\b"
)
"""How an author says, once for the page, that something is of the story: the rope is only in the story."""
_OF_A_TALE = re.compile(
    r"\b(?:(?:the|an?) [a-z]+(?: [a-z]+)? in (?:chapter [a-z0-9]+|the (?:story|tale|rhyme|poem|puzzle|book|song|question))"
    r"|(?:story|tale)[’']s [a-z]+|(?:pretend|imagine) (?:that|you|your)|(?:word|story) problem: an? [a-z]+)\b[^.;!?]*$"
)
"""Somebody of a story who does it: the goblin in chapter two swallows three raisins."""
_PROPER_NAME = re.compile(r"(?<=[a-z,] )[A-Z][a-z]+ [A-Z]")
_NEGATED = re.compile(r"\b(?:no|not|without|never|instead of|rather than)\b[^.;:!?\n]{0,25}$", re.IGNORECASE)


def pages_of_doing(collection: Collection) -> Iterator[Doing]:
    """Sessions and home activities: the pages where somebody handles something."""
    yield from collection.of_kind(Session)
    yield from collection.at_home


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
    """Whether a caution is for this kind of page and the age of the youngest it is for."""
    if ("home" if isinstance(page.fields, AtHome) else "session") not in caution.applies_to:
        return False
    return caution.oldest_year is None or min((page.fields.year, *page.fields.other_years)) <= caution.oldest_year


def notes_on(page: Doing) -> frozenset[str]:
    """The cautions the page carries a note on."""
    return frozenset(note.risk for note in page.fields.cautions)


class Harmless:
    """What shows that a thing is only spoken of: a picture, the story, a word on the board."""

    def __init__(self, handling: Handling) -> None:
        before, after = (
            "|".join(map(re.escape, words)) for words in (handling.harmless_before, handling.harmless_after)
        )
        self._before = re.compile(
            rf"\b(?:(?:{before})(?: [a-z-]+)?|(?:draw|sketch|imagine|paint|colour|picture)s?(?: [a-z-]+){{0,4}}|words? (?:the"
            rf" )?[\"“‘']?) ?[\"“‘']?$"
        )
        self._tells = re.compile(rf"(?:{'|'.join(map(re.escape, handling.verbs))}|snip|trim|saw|chop|climb|light) ")
        self._after = re.compile(rf"[\"”’']?(?: [a-z]+)? ?(?:{after})\b")

    def is_spoken_of(self, lowered: str, start: int, end: int) -> bool:
        """Whether the words round a place say so."""
        if _PICTURED.search(_SENTENCE_ENDS.split(lowered[max(0, start - 140) : start])[-1]):
            return True
        before = re.split(r"[.!?;]\s|\n\n", lowered[max(0, start - 60) : start])[-1].replace("\n", " ")
        return bool(
            self._before.search(before)
            or _OF_A_TALE.search(before)
            or self._after.match(lowered[end : end + 60].replace("\n", " "))
        )

    def is_a_name(self, page: Doing, start: int, end: int) -> bool:
        """Whether it is part of a name, of somebody or of a step; a step that tells what to do is more than a name."""
        if _PROPER_NAME.match(page.prose.text, start):
            return True
        lowered = page.prose.lowered
        line = lowered[lowered.rfind("\n", 0, start) + 1 : start] + lowered[start:].split("\n", 1)[0]
        names = page.fields.steps if isinstance(page.fields, Session) else ()
        return any(line == step.name.lower() for step in names) and not self._tells.match(line + " ")


class Phrases:
    """Phrases that say something is done or used, each with the caution it speaks for."""

    def __init__(self, spoken: Iterable[tuple[str, str]], handling: Handling | None = None) -> None:
        self._harmless = Harmless(handling) if handling else None
        self._by_opener: dict[str, list[tuple[str, str]]] = {}
        for caution, phrase in spoken:
            lowered = phrase.lower()
            words = _WORDS.findall(lowered) or [lowered]
            longest = max(words, key=len)
            endings = ("", "s", "es") if longest == words[-1] else ("",)
            for opener in (longest + ending for ending in endings):
                self._by_opener.setdefault(opener, []).append((caution, lowered))

    def said_on(self, page: Doing, everywhere: bool = False) -> Iterator[tuple[str, int, str]]:
        """Each caution spoken for, where, and the words as written; what is denied ("no water") is passed over."""
        # Few pages hold the longest word of any phrase: looking for those words costs a hundredth of a search.
        said = {pair for opener in page.prose.words & self._by_opener.keys() for pair in self._by_opener[opener]}
        for caution, phrase in sorted(said):
            for at, words in _said(page, phrase, everywhere):
                if self._harmless is None or not self._is_harmless(page, at, words):
                    yield caution, at, words

    def _is_harmless(self, page: Doing, at: int, words: str) -> bool:
        end, harmless = at + len(words), self._harmless
        spoken_of = harmless is not None and (
            harmless.is_spoken_of(page.prose.lowered, at, end) or harmless.is_a_name(page, at, end)
        )
        return spoken_of or is_only_told(page, words)


def is_only_told(page: Doing, words: str) -> bool:
    """Whether the page says somewhere that what these words name is only in the story, or not in the lesson."""
    if page.prose.words.isdisjoint(("only", "alone", "no")):
        return False
    thing = max(_WORDS.findall(words.lower()), key=len, default="").removesuffix("s")
    return any(re.search(rf"\b{thing}(?:e?s)?\b", clause) for clause in _ONLY_TOLD.findall(page.prose.lowered))


def sentence_at(lowered: str, at: int) -> str:
    """The sentence round a place."""
    before, after = lowered[max(0, at - 200) : at], lowered[at : at + 200]
    return _SENTENCE_ENDS.split(before)[-1] + _SENTENCE_ENDS.split(after)[0]


def _said(page: Doing, phrase: str, everywhere: bool) -> Iterator[tuple[int, str]]:
    text, lowered = page.prose.text, page.prose.lowered
    at = lowered.find(phrase)
    while at >= 0:
        ending = _ENDING.match(lowered, at + len(phrase))
        if ending and not lowered[at - 1 : at].isalnum():
            doing = everywhere or page.prose.part_at(at).loc[0] in DOING
            if doing and not _NEGATED.search(text, max(0, at - 40), at):
                yield at, text[at : ending.end()]
        at = lowered.find(phrase, at + 1)
