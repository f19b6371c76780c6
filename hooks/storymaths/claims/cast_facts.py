"""A book's own facts in words: what a page says of a character, held to the cast.

It reads: a character said to be, weigh or be worth a number, or as heavy as one; to have so many of what a fact counts
(four legs); whose mass, fare or parcel is named; the number in brackets or as the character's (Ram (6), Ram's 6); pairs in
a row (Donkey 9, Ram 6, Snail 1); the list of all (the six masses, 9, 6 …); what the record counts. It leaves: what a
fact of one page says, unless the sentence names the page; bends whose activities have facts of their own; characters by
other words than their names.
Source: the book's own record.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from ..model.book import Book, Character
from ..model.prose import Prose
from .counted_things import CountedThings
from .form import Form
from .number_words import NUMBER_IN_WORDS, number_in_words
from .sentences import Sentences

_N = rf"(?<![\w£−/.,:+-])(?:\d+(?![\w/%°-]|[.,:]\d)|{NUMBER_IN_WORDS})"
_END = r"(?= ?(?:[.,;:!?)\"”’\]—–]|$)| (?:and|or|so|because|but|while|since|as|which)\b)"
_NUMBER = Form(rf"(?i:{_N})")
_BEING = Form(r"as \w+ as|worth|weigh|how (?:heavy|old|tall|long)|number on|their number|age\b|mass|weight|price|cost")
_OF_A_PAGE = Form(r"\bpage (\d+)")
_IS = r"(?:is|was|weighs|weighed|is worth|was worth|counts as|stands for)"
_FEWEST = 3


@dataclass(frozen=True, slots=True)
class UntrueFact:
    """Something said of a character that the cast does not bear out: where, its words, and what the cast says."""

    start: int
    words: str
    so: str


@dataclass(frozen=True)
class BookFacts:
    """The cast of one book as sentences speak of it."""

    book: Book

    @cached_property
    def _by_name(self) -> Mapping[str, Character]:
        return {character.name: character for character in self.book.cast}

    @cached_property
    def _names(self) -> str:
        return "|".join(re.escape(name) for name in sorted(self._by_name, key=len, reverse=True))

    @cached_property
    def _counted(self) -> Mapping[str, list[str]]:
        """The facts that each word counts: those with the word as their name or unit."""
        found: dict[str, list[str]] = {}
        for fact, about in self.book.facts.items():
            if not _BEING.match(about.means):
                for word in {about.unit, fact.replace("_", " ")} - {""}:
                    found.setdefault(word, []).append(fact)
        return found

    @cached_property
    def _being(self) -> list[str]:
        """The facts that say what a character is in a number: as heavy as so many bricks."""
        return [fact for fact, about in self.book.facts.items() if _BEING.match(about.means)]

    @cached_property
    def _forms(self) -> Sequence[Form]:
        name = rf"\b(?P<name>{self._names})\b"
        units = {about.unit for fact, about in self.book.facts.items() if fact in self._being and about.unit}
        unit = rf"(?: (?:{'|'.join(map(re.escape, sorted(units)))}))?" if units else ""
        forms = []
        if self._being:
            forms.append(
                rf"{name} (?:{_IS} (?:only |just |about )?(?:as \w+ as )?|as \w+ as )(?P<count>{_N}){unit}{_END}"
            )
            forms.append(rf"{name} \((?P<count>{_N}){unit}\)")
            forms.append(rf"{name}[’']s (?P<count>{_N}){unit}(?:{_END}| (?=is |was |are |were ))")
        if self._counted:
            what = "|".join(re.escape(word) for word in sorted(self._counted, key=len, reverse=True))
            forms.append(
                rf"{name}(?: the [a-z]+)?(?:,[^,.;]{{1,40}},)?"
                rf" (?:has|had|with|on) (?:only |got |all )?(?P<count>{_N}) (?P<what>{what}){_END}"
            )
        keys = "|".join(re.escape(fact.replace("_", " ")) for fact in self.book.facts)
        if keys:
            forms.append(rf"{name}[’']s (?P<key>{keys}) (?:is|was) (?:an? )?(?P<value>[a-zA-Z0-9 -]+?){_END}")
        return [Form(form) for form in forms]

    @cached_property
    def _things(self) -> CountedThings:
        return CountedThings(self.book.counted)

    @cached_property
    def _pair(self) -> Form:
        return Form(rf"\b(?P<name>{self._names}) (?:by )?(?P<count>\d+)(?=[,.;]| and )")

    def numbers_of(self, fact: str) -> list[int]:
        """What each of the cast has of a fact, where it is a number."""
        values = (character.facts.get(fact) for character in self.book.cast)
        return [value for value in values if isinstance(value, int) and not isinstance(value, bool)]

    def find(self, prose: Prose, own: Collection[int] = ()) -> Iterator[UntrueFact]:
        """What a page's prose says that the cast does not bear out; what is said for an ``own`` year is left alone."""
        sentences = Sentences(prose)
        yield from (UntrueFact(a, prose.text[a:b], so) for a, b, so in self._things.find(prose, sentences))
        if not self._forms:
            return
        text = prose.text.replace("\n", " ")
        for start, end, so in (*self._told(text, sentences), *self._pairs(text), *self._lists(text)):
            if prose.passage_at(start).year not in own and sentences.states(start, end):
                yield UntrueFact(start, text[start:end], so)

    def _told(self, text: str, sentences: Sentences) -> Iterator[tuple[int, int, str]]:
        for match in self._matches(text):
            character = self._by_name[match["name"]]
            parts = match.groupdict()
            if "key" in parts:
                said, facts = parts["value"].strip(), [parts["key"].replace(" ", "_")]
            else:
                said = str(_worth(parts["count"]))
                facts = self._counted[parts["what"]] if "what" in parts else self._being
            yield from self._judge(
                match, character, said, [fact for fact in facts if self._holds_in(fact, sentences, match.start())]
            )

    def _matches(self, text: str) -> Iterator[re.Match[str]]:
        """Every form, tried where a name stands."""
        if self._being and "I am " in text:
            yield from self._own_words.finditer(text)
        for at in self._places(text):
            yield from (match for form in self._forms if (match := form.match(text, at)))

    def _places(self, text: str) -> Iterator[int]:
        """Where each name stands."""
        for name in self._by_name:
            at = text.find(name)
            while at >= 0:
                yield at
                at = text.find(name, at + len(name))

    @cached_property
    def _own_words(self) -> Form:
        return Form(rf"\bI am (?P<count>{_N})[,.!]?[\"”],? (?:said|says) (?P<name>{self._names})\b")

    def _holds_in(self, fact: str, sentences: Sentences, at: int) -> bool:
        """Whether a fact is always so, or so on the page the sentence names."""
        page = _OF_A_PAGE.search(self.book.facts[fact].means)
        if page is None:
            return True
        return re.search(rf"\bpage {page[1]}\b", sentences.sentence(sentences.number_at(at))[1]) is not None

    def _judge(
        self, match: re.Match[str], character: Character, said: str, facts: Sequence[str]
    ) -> Iterator[tuple[int, int, str]]:
        known = {fact: character.facts[fact] for fact in facts if fact in character.facts}
        values = [str(value) for value in known.values() if not isinstance(value, bool)]
        plain = str(_worth(said)) if _NUMBER.fullmatch(said) else said.lower()
        if not values or plain in (value.lower() for value in values):
            return
        numeric = plain.isdigit()
        words = {str(each.facts.get(fact, "")).lower() for each in self.book.cast for fact in known}
        if numeric != values[0].isdigit() or not (numeric or plain in words):
            return  # said of something else than the fact tells
        fact, value = next(iter(known.items()))
        yield *match.span(), f"in the book {character.name} is {value} ({self.book.facts[fact].means})"

    def _pairs(self, text: str) -> Iterator[tuple[int, int, str]]:
        """Names and numbers in a row, all of one fact but for one or two that miss it."""
        if not any(self._pair.match(text, at) for at in self._places(text)):
            return
        for run in re.finditer(rf"(?:(?:{self._names}) (?:by )?\d+(?:, and |, | and )?){{{_FEWEST},40}}", text):
            pairs = [(self._by_name[m["name"]], int(m["count"]), m) for m in self._pair.finditer(text, *run.span())]
            hits = Counter(fact for who, count, _ in pairs for fact in self.book.facts if who.facts.get(fact) == count)
            for fact, times in hits.most_common(1):
                if len(pairs) - 1 <= times < len(pairs):
                    for who, count, match in pairs:
                        if who.facts.get(fact) not in (count, None):
                            yield (
                                *match.span(),
                                f"in the book {who.name} is {who.facts[fact]} ({self.book.facts[fact].means})",
                            )

    def _lists(self, text: str) -> Iterator[tuple[int, int, str]]:
        """All that the cast has of a fact: the six masses, 9, 6, 5, 4, 3 and 1."""
        for fact in self.book.facts:
            plural = f"{fact}es" if fact.endswith("s") else f"{fact}s"
            have = self.numbers_of(fact)
            if plural.replace("_", " ") not in text:
                continue
            form = (
                rf"\b[Tt]he (?P<count>{_N}) {re.escape(plural.replace('_', ' '))}(?:,| are|:) (?P<list>\d+(?:(?:, | and"
                rf" |, and )\d+){{2,40}})"
            )
            for match in re.finditer(form, text):
                listed = [int(each) for each in re.findall(r"\d+", match["list"])]
                if len(have) in (_worth(match["count"]), len(listed)) and sorted(listed) != sorted(have):
                    yield *match.span(), f"in the book they are {', '.join(map(str, sorted(have, reverse=True)))}"


def _worth(text: str) -> int:
    return int(text) if text.isdigit() else number_in_words(text.lower())
