"""Small parts and food that a page's words have somebody handle, though no list of materials names them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ..claims.sentences import leaves_open
from ..model.material import Material
from ..model.once_for import once_for
from ..model.prose_words import Handling, ThingNamed
from ..model.reference import Reference
from .things_used import DOING, Doing, is_only_told

_ENDS = re.compile(r"[.!?][\"”’')]*\s|\n\n")
_ONE = re.compile(r"\b(?:an?|one|each|every|1)(?: [a-z-]+)? $")
_ALONE = re.compile(r"\W*(?:$|[.,;:!?)]|(?:in|on|for|to|from|with|and|into|at|under|each|every|between)\b)")
_WHOSE = re.compile(r"[’']s?(?: [a-z-]+){0,2} $")
_LOOK_BACK, _LOOK_ON = 140, 40


@dataclass(frozen=True, slots=True)
class Handled:
    """A thing that somebody is told to handle: where, the words, and the thing."""

    start: int
    words: str
    thing: Material | ThingNamed

    @property
    def is_small_part(self) -> bool:
        """Whether it fits the small-parts cylinder."""
        thing = self.thing
        return thing.small_part if isinstance(thing, ThingNamed) else thing.is_small_part == "yes"


@dataclass(frozen=True, slots=True)
class _Named:
    """One way of writing a thing."""

    form: str
    is_one: bool
    """Whether it is written so for one alone."""
    thing: Material | ThingNamed
    is_plain_food: bool
    """Food that is no small part and holds none of the fourteen allergens, such as an apple."""


class _Lexicon:
    """The forms of every thing, by their last word, and what shows that it is handled."""

    def __init__(self, things: Mapping[str, Material], handling: Handling) -> None:
        self.by_last: dict[str, list[_Named]] = {}
        small = [one for one in things.values() if one.food or one.is_small_part == "yes"]
        every: list[Material | ThingNamed] = [*small, *handling.things]
        for thing in every:
            is_plain_food = thing.food and not thing.allergens and not Handled(0, "", thing).is_small_part
            for form in dict.fromkeys((thing.name, thing.plural, *thing.also)):
                last = re.split(r"[^a-z]+", form.lower())[-1]
                self.by_last.setdefault(last, []).append(
                    _Named(form.lower(), form == thing.name != thing.plural, thing, is_plain_food)
                )
        self.words = frozenset(self.by_last)
        self.eating_words = frozenset(word for phrase in handling.eating for word in phrase.split())
        verbs, doers = "|".join((*handling.verbs, *handling.eating)), "|".join(handling.doers)
        doing = rf"(?:^\W*|[,;:(\"“] ?|\b(?:and|then|or|to|please) |\b(?:{doers})(?: [a-z]+)? )(?:"
        self.doing, self.eating = (re.compile(rf"{doing}{some})\b") for some in (verbs, "|".join(handling.eating)))
        self.before = re.compile(rf"\b(?:{'|'.join(handling.harmless_before)})(?: [a-z-]+)? $")
        self.after = re.compile(rf"^[^.!?]*?\b(?:{'|'.join(handling.harmless_after)})\b")


@once_for
def _lexicon_of(reference: Reference) -> _Lexicon:
    return _Lexicon(reference.materials, reference.prose.handling)


class ThingsInProse:
    """Finds what is handled in the words of pages."""

    def __init__(self, reference: Reference) -> None:
        self._known = _lexicon_of(reference)

    def handled_on(self, page: Doing) -> Iterator[Handled]:
        """Each small part and food that the page has somebody handle, in order of the words."""
        lowered, known = page.prose.lowered, self._known
        somebody_eats = not known.eating_words.isdisjoint(page.prose.words)
        for last in sorted(page.prose.words & known.words):
            for named in known.by_last[last]:
                at = lowered.find(named.form) if somebody_eats or not named.is_plain_food else -1
                while at >= 0:
                    end = at + len(named.form)
                    if self._is_handled(page, at, end, named):
                        yield Handled(at, page.prose.text[at:end], named.thing)
                    at = lowered.find(named.form, end)

    def _is_handled(self, page: Doing, at: int, end: int, named: _Named) -> bool:
        lowered, known = page.prose.lowered, self._known
        if lowered[at - 1 : at].isalnum() or lowered[end : end + 1].isalnum() or lowered[at - 1 : at] == "-":
            return False
        before = _ENDS.split(lowered[max(0, at - _LOOK_BACK) : at])[-1].replace("\n", " ")
        doing = known.eating if named.is_plain_food else known.doing
        if doing.search(before) is None or page.prose.part_at(at).loc[0] not in DOING:
            return False
        after = _ENDS.split(lowered[end : end + _LOOK_ON])[0].replace("\n", " ")
        if named.is_one and not (_ONE.search(before) and _ALONE.match(after)):
            return False
        if known.before.search(before) or known.after.match(after) or _WHOSE.search(before):
            return False
        return not leaves_open(before + "_" + after) and not is_only_told(page, page.prose.text[at:end])
