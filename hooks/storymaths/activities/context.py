"""The context an activity is played in: its cast from the book or from its own lines, their facts, the year."""

from __future__ import annotations

import posixpath
from collections.abc import Iterator, Mapping, Sequence

from ..expression.noun import plural
from ..model.activity import CastMember, Context
from ..model.book import Book, FactAbout, FactValue
from ..model.document import Loc
from ..model.reference import ActivityCaps, Reference
from ..model.year import YearLimits
from ..parse.suggestion import did_you_mean
from .kind import ActivityFields, Unsolvable

Cast = tuple[str, ...] | Mapping[str, Mapping[str, FactValue]] | str | None
_NAMING = ("name", "plural")
"""Words an inline character may carry beside its facts."""


def build_context(
    fields: ActivityFields, book: Book | None, folder: str, year: YearLimits, reference: Reference
) -> Context | list[Unsolvable]:
    """The context, or everything that is wrong with the cast.

    ``folder`` is where the book's record stands inside ``content/``; its drawings are named from there.
    """
    wrong: list[Unsolvable] = []
    caps = reference.limits.activity
    if isinstance(fields.cast, Mapping):
        characters = tuple(_inline(id_, facts) for id_, facts in fields.cast.items())
    else:
        characters = tuple(_from_book(fields.cast, book, folder, wrong))
    if len(characters) > caps.characters:
        message = f"{len(characters)} characters are too many for one activity."
        wrong.append(Unsolvable(("cast",), message, f"choose at most {caps.characters}."))
    inline = isinstance(fields.cast, Mapping)
    wrong += _faults_in_facts(fields, characters, caps, inline)
    about = dict(book.facts) if book else {}
    for character in characters:
        for fact in character.facts:
            about.setdefault(fact, FactAbout(means=fact.replace("_", " ").replace("-", " ")))
    return wrong or Context(characters, about, year, caps, reference.money)


def _inline(id_: str, facts: Mapping[str, FactValue]) -> CastMember:
    name = str(facts.get("name", id_.replace("-", " ")))
    own = str(facts.get("plural", "")) or plural(name)
    return CastMember(id_, name, own, {key: value for key, value in facts.items() if key not in _NAMING})


def _from_book(
    wanted: Sequence[str] | str | None, book: Book | None, folder: str, wrong: list[Unsolvable]
) -> Iterator[CastMember]:
    """The characters named, noting in ``wrong`` those the book does not have."""
    if wanted is None:
        return
    if book is None:
        message = "The cast is named by id, and there is no book here to look the characters up in."
        wrong.append(Unsolvable(("cast",), message, "write it out, as in {otter: {mass: 6}}.", "activity-fact-missing"))
        return
    known = {character.id: place for place, character in enumerate(book.cast)}
    ids = list(known) if isinstance(wanted, str) else list(wanted)
    for index, id_ in enumerate(ids):
        if id_ in ids[:index]:
            wrong.append(Unsolvable(("cast", index), f'"{id_}" is in the cast twice.', "name each character once."))
        elif id_ in known:
            yield _character(book, known[id_], folder)
        else:
            message = f'"{id_}" is not in the cast of {book.title}.{did_you_mean(id_, known)}'
            fix = f"use one of {', '.join(known)}."
            wrong.append(Unsolvable(("cast", index), message, fix, "activity-fact-missing"))


def _character(book: Book, place: int, folder: str) -> CastMember:
    character = book.cast[place]
    return CastMember(
        id=character.id,
        name=character.name,
        plural=character.plural or plural(character.name),
        facts=character.facts,
        picture=posixpath.normpath(posixpath.join(folder, book.picture_of(place))),
        alt=book.alt_of(place),
        notches=book.notches_of(place),
    )


def _faults_in_facts(
    fields: ActivityFields, characters: Sequence[CastMember], caps: ActivityCaps, inline: bool
) -> Iterator[Unsolvable]:
    for character in characters:
        for name, value in character.facts.items():
            if isinstance(value, int) and abs(value) > caps.number:
                loc: Loc = ("cast", character.id, name) if inline else ("cast",)
                message = f"The {name} of {character.name} is larger than any number primary schools meet."
                yield Unsolvable(loc, message, f"write a number of at most {caps.number:,}.")
    lacking = [character for character in characters if fields.fact and fields.fact not in character.facts]
    if fields.fact is None or not lacking:
        return
    fact = fields.fact
    known = {name for character in characters for name in character.facts}
    # A kind may have a fact of its own accord; the cast is then what must change.
    here: Loc = ("fact",) if "fact" in fields.model_fields_set else ("cast",)
    if len(lacking) == len(characters):
        message = f'Nobody in the cast has a fact "{fact}".{did_you_mean(fact, known)}'
        fix = f"use one of {', '.join(sorted(known))}, or give them that fact." if known else "give them that fact."
        yield Unsolvable(here, message, fix, "activity-fact-missing")
        return
    for character in lacking:
        message = f'{character.name} has no fact "{fact}".'
        fix = "give the character that fact, or leave it out of the cast."
        yield Unsolvable(("cast", character.id) if inline else here, message, fix, "activity-fact-missing")
