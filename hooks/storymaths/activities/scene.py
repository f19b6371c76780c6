"""The scene an activity is played in: its cast from the book or from its own lines, their facts, the year."""

from __future__ import annotations

import posixpath
from collections.abc import Iterator, Mapping, Sequence

from ..check.suggestion import did_you_mean
from ..model.activity import Player, Scene
from ..model.book import Book, Character, FactAbout, FactValue
from ..model.document import Loc
from ..model.reference import ActivityCaps
from ..model.year import YearLimits
from .kind import ActivityFields, Unsolvable

Cast = tuple[str, ...] | Mapping[str, Mapping[str, FactValue]] | str | None
_NAMING = ("name", "plural")
"""Words an inline character may carry beside its facts."""


def build_scene(
    fields: ActivityFields, book: Book | None, folder: str, year: YearLimits, caps: ActivityCaps
) -> Scene | list[Unsolvable]:
    """The scene, or everything that is wrong with the cast.

    ``folder`` is where the book's record stands inside ``content/``; its drawings are named from there.
    """
    wrong: list[Unsolvable] = []
    if isinstance(fields.cast, Mapping):
        players = tuple(_inline(id_, facts) for id_, facts in fields.cast.items())
    else:
        players = tuple(_from_book(fields.cast, book, folder, wrong))
    if len(players) > caps.players:
        message = f"{len(players)} characters are too many for one activity."
        wrong.append(Unsolvable(("cast",), message, f"choose at most {caps.players}."))
    inline = isinstance(fields.cast, Mapping)
    wrong += _faults_in_facts(fields, players, caps, inline)
    about = dict(book.facts) if book else {}
    for player in players:
        for fact in player.facts:
            about.setdefault(fact, FactAbout(means=fact.replace("_", " ").replace("-", " ")))
    return wrong or Scene(players, about, year, caps)


def _inline(id_: str, facts: Mapping[str, FactValue]) -> Player:
    name = str(facts.get("name", id_.replace("-", " ")))
    plural = str(facts.get("plural", name if name.endswith("s") else f"{name}s"))
    return Player(id_, name, plural, {key: value for key, value in facts.items() if key not in _NAMING})


def _from_book(
    wanted: Sequence[str] | str | None, book: Book | None, folder: str, wrong: list[Unsolvable]
) -> Iterator[Player]:
    """The characters named, noting in ``wrong`` those the book does not have."""
    if wanted is None:
        return
    if book is None:
        message = "The cast is named by id, and there is no book here to look the characters up in."
        wrong.append(Unsolvable(("cast",), message, "write it out, as in {otter: {mass: 6}}.", "activity-fact-missing"))
        return
    known = {character.id: character for character in book.cast}
    ids = list(known) if isinstance(wanted, str) else list(wanted)
    for index, id_ in enumerate(ids):
        if id_ in ids[:index]:
            wrong.append(Unsolvable(("cast", index), f'"{id_}" is in the cast twice.', "name each character once."))
        elif id_ in known:
            yield _player(known[id_], folder)
        else:
            message = f'"{id_}" is not in the cast of {book.title}.{did_you_mean(id_, known)}'
            fix = f"use one of {', '.join(known)}."
            wrong.append(Unsolvable(("cast", index), message, fix, "activity-fact-missing"))


def _player(character: Character, folder: str) -> Player:
    return Player(
        id=character.id,
        name=character.name,
        plural=character.plural or f"{character.name}s",
        facts=character.facts,
        picture=posixpath.normpath(posixpath.join(folder, character.picture)),
        alt=character.alt,
    )


def _faults_in_facts(
    fields: ActivityFields, players: Sequence[Player], caps: ActivityCaps, inline: bool
) -> Iterator[Unsolvable]:
    for player in players:
        for name, value in player.facts.items():
            if isinstance(value, int) and abs(value) > caps.number:
                loc: Loc = ("cast", player.id, name) if inline else ("cast",)
                message = f"The {name} of {player.name} is larger than any number primary schools meet."
                yield Unsolvable(loc, message, f"write a number of at most {caps.number:,}.")
    lacking = [player for player in players if fields.fact and fields.fact not in player.facts]
    if fields.fact is None or not lacking:
        return
    fact = fields.fact
    known = {name for player in players for name in player.facts}
    # A kind may have a fact of its own accord; the cast is then what must change.
    here: Loc = ("fact",) if "fact" in fields.model_fields_set else ("cast",)
    if len(lacking) == len(players):
        message = f'Nobody in the cast has a fact "{fact}".{did_you_mean(fact, known)}'
        fix = f"use one of {', '.join(sorted(known))}, or give them that fact." if known else "give them that fact."
        yield Unsolvable(here, message, fix, "activity-fact-missing")
        return
    for player in lacking:
        message = f'{player.name} has no fact "{fact}".'
        fix = "give the character that fact, or leave it out of the cast."
        yield Unsolvable(("cast", player.id) if inline else here, message, fix, "activity-fact-missing")
