"""Running text as the pieces of arithmetic it holds: numbers in words, amounts in two units, signs by any keyboard.

What comes out follows the grammar where the text does. ``four fives`` is ``4 × 5``, ``1 m 20 cm`` is one number, ``3 red
bricks`` a number of bricks; a word that could be a sign is one only between two numbers, and else a word.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from ..model.quantity import MEASURES, UNITS_IN_WORDS
from .number import whole_if_can
from .number_words import BEGINNINGS, SO_MANY_OF, read_words
from .signs import SPOKEN
from .spoken_signs import is_value, with_signs, with_things
from .tokens import Token, read_tokens

POWERS = {"²": 2, "³": 3}
TWICE = frozenset(("double", "twice"))
_NAMED_SUMS = {
    ("sum", "of"): "+", ("total", "of"): "+", ("product", "of"): "×",
    ("difference", "between"): "−", ("difference", "of"): "−",
}  # fmt: skip
_MOST_WORDS = 9


def read_spoken(text: str) -> tuple[Token, ...]:
    """The pieces of a sentence of running text, each with its place in it."""
    one_line = text.replace("\n", " ")
    tokens = _without_cells(list(read_tokens(one_line, SPOKEN)))
    tokens = list(_with_numbers(one_line, tokens))
    tokens = _with_named_sums(list(_with_amounts(one_line, tokens)))
    return tuple(with_things(one_line, with_signs(one_line, tokens)))


def _without_cells(tokens: Sequence[Token]) -> list[Token]:
    """The pieces without what parts the cells of a table, where a sign stands in a cell of its own."""
    signs = [token.kind in ("sign", "relation") for token in (*tokens, *tokens[:1])]
    return [token for at, token in enumerate(tokens) if token.text != "|" or not (signs[at - 1] or signs[at + 1])]


def _with_numbers(text: str, tokens: Sequence[Token]) -> Iterator[Token]:
    """Words become numbers, and figures take in what stands close to them: %, ², the minutes of a time."""
    at = 0
    while at < len(tokens):
        token, at = tokens[at], at + 1
        read = read_words(_words(text, tokens, at - 1)) if _may_be_number(token) else None
        if read:
            last = tokens[at + read.length - 2]
            at += read.length - 1
            shown = text[token.start : last.end]
            yield Token("number", shown, read.value, "", token.start, last.end, shown)
        elif token.kind == "number" and not token.unit and at < len(tokens) and tokens[at].start == token.end:
            close, further = tokens[at], tokens[at + 1 : at + 2]
            if close.text == ":" and further and further[0].kind == "number" and further[0].start == close.end:
                at += 2
                yield Token("other", text[token.start : further[0].end], 0, "", token.start, further[0].end)
            elif close.text == "%" or close.text in POWERS:
                at += 1
                power = POWERS.get(close.text)
                value = whole_if_can(token.value**power if power else Fraction(token.value) / 100)
                shown = token.text + close.text
                yield token._replace(text=shown, value=value, end=close.end, number=shown)
            else:
                yield token
        else:
            yield token


def _may_be_number(token: Token) -> bool:
    return token.kind == "word" and token.text.partition("-")[0].lower() in BEGINNINGS


def _words(text: str, tokens: Sequence[Token], at: int) -> list[str]:
    """The words from a place on, in small letters, as far as they stand one space apart."""
    words: list[str] = []
    for before, token in zip((None, *tokens[at : at + _MOST_WORDS]), tokens[at : at + _MOST_WORDS], strict=False):
        shown = text[token.start : token.end].lower()
        if (token.kind != "word" and shown not in ("and", "of")) or (before and token.start > before.end + 1):
            break
        words.append(shown)
    return words


def _with_amounts(text: str, tokens: Sequence[Token]) -> Iterator[Token]:
    """Numbers take their unit in words, or in two units; numbers of fives, tens and thirds become products."""
    at = 0
    while at < len(tokens):
        token, at = tokens[at], at + 1
        if token.kind == "word" and token.text.lower() in TWICE and is_value(tokens, at):
            yield Token("number", token.text, 2, "", token.start, token.end, "2")
            yield Token("sign", "×", 0, "", token.end, token.end)
            continue
        if token.kind != "number":
            yield token
            continue
        token, at = _with_unit(text, token, tokens, at)
        while at < len(tokens) and tokens[at].kind == "number":
            further, after = _with_unit(text, tokens[at], tokens, at + 1)
            if not _is_smaller_part(token, further):
                break
            at = after
            token = token._replace(
                text=text[token.start : further.end], value=token.value + further.value, end=further.end, number=""
            )
        size = _size(tokens, at, token)
        yield token
        if size:
            at += size.end > tokens[at].end
            at += 1
            yield Token("sign", "×", 0, "", token.end, token.end)
            yield size


def _with_unit(text: str, token: Token, tokens: Sequence[Token], at: int) -> tuple[Token, int]:
    """A number with the unit in words that follows it, and where to go on: 3 metres, half an hour."""
    if token.value.denominator > 1 and (whole := _whole_unit(tokens, at)):
        return _measured(text, token, whole[1], tokens[whole[0]].end), whole[0] + 1
    if token.unit or at >= len(tokens) or tokens[at].kind != "word":
        return token, at
    unit = UNITS_IN_WORDS.get(tokens[at].text.lower())
    if unit is None or (tokens[at].start == token.end and unit not in MEASURES):
        return token, at
    return _measured(text, token, unit, tokens[at].end), at + 1


def _measured(text: str, token: Token, unit: str, end: int) -> Token:
    """A number as an amount of a unit, with the words that tell it."""
    value = whole_if_can(token.value * MEASURES[unit][1])
    return token._replace(text=text[token.start : end], value=value, unit=unit, end=end)


def _whole_unit(tokens: Sequence[Token], at: int) -> tuple[int, str] | None:
    """Where "an hour", or "of a kilogram", ends, and which unit that is."""
    at += at < len(tokens) and tokens[at].text == "of"
    words = [token.text.lower() for token in tokens[at : at + 2] if token.kind == "word"]
    if len(words) < 2 or words[0] not in ("a", "an"):
        return None
    unit = UNITS_IN_WORDS.get(words[1], words[1])
    return (at + 1, unit) if unit in MEASURES and len(words[1]) > 1 else None


def _is_smaller_part(whole: Token, part: Token) -> bool:
    """Whether ``20 cm`` goes with the ``1 m`` before it."""
    if not whole.unit or not part.unit or "£" in (whole.unit, part.unit):
        return False
    (kind, size), (other, smaller) = MEASURES[whole.unit], MEASURES[part.unit]
    return kind == other and size > smaller


def _size(tokens: Sequence[Token], at: int, count: Token) -> Token | None:
    """What a number counts where that is a number too: ``tens``, ``fives``, ``4s``, ``thirds``."""
    if count.unit or at >= len(tokens) or tokens[at].start == count.end:
        return None
    token = tokens[at]
    if token.text.lower() == "ten" and count.value == 1:
        return token
    if token.kind == "word" and (value := SO_MANY_OF.get(token.text.lower())):
        return Token("number", token.text, value, "", token.start, token.end, token.text)
    plural = tokens[at + 1 : at + 2]
    if token.unit in ("p", "£") and plural and plural[0].text in ("coin", "coins", "note", "notes"):
        return token
    if token.kind == "number" and plural and plural[0].text in ("s", "’s", "'s") and plural[0].start == token.end:
        return token._replace(text=f"{token.text}s", end=plural[0].end)
    return None


def _with_named_sums(tokens: Sequence[Token]) -> list[Token]:
    """The sum of 3 and 4 becomes a sum in brackets."""
    found: list[Token] = []
    at = 0
    while at < len(tokens):
        name, *rest = tokens[at : at + 5]
        sign = _NAMED_SUMS.get((name.text.lower(), rest[0].text)) if len(rest) == 4 and name.kind == "word" else None
        if sign and rest[1].kind == rest[3].kind == "number" and rest[2].text == "+":
            if found and found[-1].text.lower() == "the":
                name = found.pop()
            one, other = (rest[1], rest[3]) if sign != "−" or rest[1].value >= rest[3].value else (rest[3], rest[1])
            found += [
                Token("bracket", "(", 0, "", name.start, name.start), one,
                Token("sign", sign, 0, "", name.start, name.start), other,
                Token("bracket", ")", 0, "", rest[3].end, rest[3].end),
            ]  # fmt: skip
            at += 5
        else:
            found.append(name)
            at += 1
    return found
