"""Every answer to the number sentences of an activity, found line by line within one budget of cases."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import product
from typing import TYPE_CHECKING, NoReturn

from ...expression.gapped import GappedSentence, NotASentence, read_gapped, sentences_of
from ...expression.number import Rational
from ...expression.tokens import Token
from ...model.activity import CastMember, Context
from ...parse.number_sentence import NumberSentence, is_true
from ..kind import Unsolvable, whole_fact
from .filled_sentence import Filled
from .gap_filling import MOST_TRIED, Allowed, NeedsRange, TooManyCases, fillings

if TYPE_CHECKING:
    from . import NumberSentenceFields


def names_of(fields: NumberSentenceFields, context: Context) -> dict[str, Token]:
    """Each character's id and name as a token worth their number; empty without a fact."""
    if len(context.characters) > context.caps.characters:
        message = f"{len(context.characters)} characters are more than one activity can hold."
        raise Unsolvable(("cast",), message, f"choose at most {context.caps.characters}.")
    if fields.fact is None:
        if fields.gaps == "cast":
            message = "The cast is to stand in the gaps, and no fact gives their numbers."
            raise Unsolvable(("gaps",), message, "add fact, such as fact: mass.", "activity-fact-missing")
        return {}
    values = whole_fact(context, fields.fact)
    if not values:
        raise Unsolvable(("cast",), "There is nobody in the cast.", "name some characters.", "activity-fact-missing")
    return {
        way: Token("name", character.name, values[character.id])
        for character in context.characters
        for way in (character.id, character.name)
    }


def lines_of(fields: NumberSentenceFields, context: Context) -> list[tuple[Token, ...]]:
    """The tokens of each sentence. Raises ``Unsolvable`` for one that cannot be read."""
    names, lines = names_of(fields, context), []
    for at, text in enumerate(fields.sentences):
        try:
            lines.append(read_gapped(text, names))
            list(sentences_of(lines[-1], signs_for(fields, lines[-1], context)))
        except NotASentence as error:
            _unreadable(at, text, str(error))
    return lines


def _unreadable(at: int, text: str, why: str) -> NoReturn:
    shown = text if len(text) <= 60 else f"{text[:60]}…"
    raise Unsolvable(
        ("sentences", at),
        f'"{shown}" cannot be read as a number sentence: {why}.',
        "write it like 7 + ___ = 12, with signs from + − × ÷ = ≠ < >.",
        "activity-broken",
    )


def signs_for(fields: NumberSentenceFields, tokens: Sequence[Token], context: Context) -> Sequence[str]:
    """The signs that may stand in a gap for a sign: the author's, or those the year has met."""
    older = context.year.year >= 2
    relations = ("<", "=", ">") if older else ("=", "≠")
    return fields.signs or (*("+−×÷" if older else "+−"), *relations)


def every_filling(fields: NumberSentenceFields, context: Context) -> list[Filled]:
    """Every filling of every sentence that has gaps, in order. Raises ``Unsolvable``."""
    found: list[Filled] = []
    allowed = _allowed(fields, context)
    for at, tokens in enumerate(lines_of(fields, context)):
        here: list[Filled] = []
        choices = list(sentences_of(tokens, signs_for(fields, tokens, context)))
        most = MOST_TRIED // len(fields.sentences) // max(1, len(choices))
        for sentence in choices:
            if sentence.gaps or sentence.signs:
                here += _filled(at, sentence, allowed, fields, context, most)
            if len(found) + len(here) > context.caps.answers:
                _too_many(at, context)
        found += sorted(here, key=_in_order)
    return found


def _in_order(filled: Filled) -> tuple[list[Fraction], list[str], list[str]]:
    return [Fraction(n) for n in filled.numbers], list(filled.sentence.signs), [p.id for p in filled.who]


def _allowed(fields: NumberSentenceFields, context: Context) -> Allowed | None:
    if fields.gaps == "cast":
        return tuple(sorted(set(whole_fact(context, fields.fact or "").values())))
    return fields.gaps


def _filled(
    at: int,
    sentence: GappedSentence,
    allowed: Allowed | None,
    fields: NumberSentenceFields,
    context: Context,
    most: int,
) -> list[Filled]:
    _check_comparable(at, sentence)
    places = 0 if any("/" in token.text for token in sentence.tokens) else 3
    here: list[Filled] = []
    seen: set[tuple[object, ...]] = set()
    try:
        for numbers in fillings(sentence, allowed, most):
            if fields.each_once and fields.gaps != "cast" and len(set(numbers)) < len(numbers):
                continue
            if any(abs(Fraction(number)) > context.caps.number for number in numbers):
                message = f"A number in it would be beyond {context.caps.number:,}."
                raise Unsolvable(("sentences", at), message, "use smaller numbers.")
            for who in _who(numbers, sentence, fields, context):
                key = tuple(sorted(p.id for p in who)) if who else tuple(sorted(numbers))
                if fields.swapped == "counts" or key not in seen:
                    here.append(Filled(at + 1, sentence, numbers, places, who))
                seen.add(key)
            if len(here) > context.caps.answers:
                _too_many(at, context)
    except NeedsRange:
        message = f'In "{fields.sentences[at]}" more than one number would do, and nothing says which may be used.'
        raise Unsolvable(("sentences", at), message, "say which, such as gaps: 0-20.") from None
    except TooManyCases:
        message = f'"{fields.sentences[at]}" has more cases than can be looked at.'
        raise Unsolvable(("sentences", at), message, "allow fewer numbers in the gaps, or leave fewer gaps.") from None
    return here


def _too_many(at: int, context: Context) -> NoReturn:
    message = f"There are more than {context.caps.answers} answers."
    fix = "allow fewer numbers in the gaps, or leave fewer gaps."
    raise Unsolvable(("sentences", at), message, fix, "activity-too-many-answers")


def _who(
    numbers: Sequence[Rational], sentence: GappedSentence, fields: NumberSentenceFields, context: Context
) -> Iterator[tuple[CastMember, ...]]:
    """Who can stand in the gaps, nobody twice; one empty choice where the cast does not."""
    if fields.gaps != "cast":
        yield ()
        return
    wanted = [number for number, kind in zip(numbers, sentence.gaps, strict=True) if kind == "number"]
    able = [[p for p in context.characters if p.facts[fields.fact or ""] == number] for number in wanted]
    for who in product(*able):
        if len({character.id for character in who}) == len(who):
            yield who


def _check_comparable(at: int, sentence: GappedSentence) -> None:
    """Refuses metres beside kilograms: the measures are tried out with a number in every gap."""
    if any(token.unit for token in sentence.tokens):
        tried = [sentence.written(["1"] * len(sentence.gaps)), sentence.written(["2"] * len(sentence.gaps))]
        if all(is_true(NumberSentence(text, 0)) is None for text in tried):
            message = f'"{tried[0].replace("1", "___", 1)}" puts amounts together that cannot be compared.'
            raise Unsolvable(("sentences", at), message, "use units of one kind, such as cm and m.")
