"""Facts of the cast by name: ``[[ram.mass]]`` is 6 bricks, ``[[ram.mass + snail.mass: in words]]`` is seven."""

from __future__ import annotations

import re

from ..expression.noun import counted, number_in_words
from ..model.book import Book, Character, FactValue
from ..parse.suggestion import did_you_mean

ALL = "all"
"""In the place of a character: the sum over the whole cast."""
_SIGNS = re.compile(r" ([+−-]) ")
_WAYS = "write it alone for the amount with its unit, or with : number, : in words or : In words after it."


class Unprintable(Exception):
    """A name that prints nothing: why, and what mends it."""

    def __init__(self, message: str, fix: str) -> None:
        super().__init__(message)
        self.message, self.fix = message, fix


def print_fact(name: str, book: Book) -> str:
    """What the words between the brackets print. Raises ``Unprintable``."""
    what, _, how = name.partition(": ")
    first, *rest = _SIGNS.split(what)
    fact = first.rpartition(".")[2]
    total = _value(first, book)
    for sign, term in zip(rest[::2], rest[1::2], strict=True):
        if term.rpartition(".")[2] != fact:
            raise Unprintable(f"[[{name}]] adds {fact} and something else.", "add facts of one name only.")
        other = _value(term, book)
        if not isinstance(total, int) or not isinstance(other, int):
            raise Unprintable(f"[[{name}]] adds what is no number.", "name one fact, without a sign.")
        total += other if sign == "+" else -other
    if isinstance(total, str):
        if how:
            raise Unprintable(f"[[{name}]] is a word, and has no number.", f"write [[{what}]].")
        return total
    about = book.facts.get(fact)
    match how:
        case "":
            return counted(total, about)
        case "number":
            return f"{total:,}".replace("-", "−")
        case "in words":
            return number_in_words(total)
        case "In words":
            return number_in_words(total).capitalize()
        case _:
            raise Unprintable(f'[[{name}]]: "{how}" is no way to print a fact.', _WAYS)


def _value(term: str, book: Book) -> int | str:
    """The number, or the word, that ``who.fact`` stands for."""
    who, _, fact = term.rpartition(".")
    known = sorted({name for character in book.cast for name in character.facts})
    if fact not in known:
        message = f'"{fact}" is no fact of the cast.' + did_you_mean(fact, known)
        raise Unprintable(message, "use a fact of the cast, as it is written in the book’s record.")
    if who == ALL:
        return sum(_number(term, character.facts[fact]) for character in book.cast if fact in character.facts)
    character = _character(who, book)
    if fact not in character.facts:
        has = ", ".join(character.facts) or "none"
        raise Unprintable(f"{character.name} has no {fact}.", f"name a fact that {character.name} has ({has}).")
    value = character.facts[fact]
    return value if isinstance(value, str) else _number(term, value)


def _number(term: str, value: FactValue) -> int:
    if isinstance(value, bool) or not isinstance(value, int):
        raise Unprintable(f"[[{term}]] is true or false, or a word, and no number.", "say it in words of your own.")
    return value


def _character(who: str, book: Book) -> Character:
    found = next((one for one in book.cast if one.id == who), None)
    if found is None:
        message = f'"{who}" is no character of {book.title}.' + did_you_mean(who, (one.id for one in book.cast))
        raise Unprintable(message, "use the id of a character, as it stands under cast in the book’s record.")
    return found
