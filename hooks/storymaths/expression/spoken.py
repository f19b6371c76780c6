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
from .tokens import Token, read_tokens

POWERS = {"²": 2, "³": 3}
TWICE = frozenset(("double", "twice"))
LINKS = frozenset(
    "a after altogether an and as at because before but each for from here if in is it left not now of on or over so than that "
    "the their then there these they this those to too we when where which while who with without you r remainder".split()
)
"""Words that name no things: what comes after a number and one of these is not what is counted."""
_MOST_WORDS, _MOST_NAMED = 9, 3
_LEFT = frozenset(("left", "over", "remaining", "spare"))


def read_spoken(text: str) -> tuple[Token, ...]:
    """The pieces of a sentence of running text, each with its place in it."""
    one_line = text.replace("\n", " ")
    tokens = _without_cells(list(read_tokens(one_line, SPOKEN)))
    tokens = list(_with_numbers(one_line, tokens))
    tokens = list(_with_amounts(one_line, tokens))
    return tuple(_with_things(one_line, _with_signs(one_line, tokens)))


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
    for before, token in zip((None, *tokens[at:]), tokens[at : at + _MOST_WORDS], strict=False):
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
        if token.kind == "word" and token.text.lower() in TWICE and _is_value(tokens, at):
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
        last, unit = whole
        end, value = tokens[last].end, whole_if_can(token.value * MEASURES[unit][1])
        return token._replace(text=text[token.start : end], value=value, unit=unit, end=end), last + 1
    if token.unit or at >= len(tokens) or tokens[at].kind != "word":
        return token, at
    unit = UNITS_IN_WORDS.get(tokens[at].text.lower())
    if unit is None or (tokens[at].start == token.end and unit not in MEASURES):
        return token, at
    end = tokens[at].end
    value = whole_if_can(token.value * MEASURES[unit][1])
    return token._replace(text=text[token.start : end], value=value, unit=unit, end=end), at + 1


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


def _is_size(tokens: Sequence[Token], at: int) -> bool:
    """Whether a number of tens or thirds was made a product here."""
    return at < len(tokens) and tokens[at].text == "×" and tokens[at].start == tokens[at].end


def _is_value(tokens: Sequence[Token], at: int) -> bool:
    return at < len(tokens) and (tokens[at].kind == "number" or tokens[at].text in ("(", "−"))


def _with_signs(text: str, tokens: Sequence[Token]) -> list[Token]:
    """Signs that are none, by where they stand, become words or marks of the sentence."""
    found: list[Token] = []
    for at, token in enumerate(tokens):
        found.append(_as_meant(text, found, token, tokens, at))
    return found


def _as_meant(text: str, before: Sequence[Token], token: Token, tokens: Sequence[Token], at: int) -> Token:
    shown = text[token.start : token.end]
    is_sign = token.kind in ("sign", "relation")
    if is_sign and shown[:1].isalpha() and not _joins(before, token, shown.lower(), tokens, at):
        return token._replace(kind="word", text=shown)
    if shown == "?" and _ends_sentence(text, token):
        return token._replace(kind="other", text="?")
    if shown in ("<", ">", "=") and text[token.end : token.end + 1] in ("-", "–", "<", ">"):
        return token._replace(kind="other", text=shown)  # an arrow
    if shown in ("-", "–") and not before and _is_apart(f" {text}", token, 1):
        return token._replace(kind="other", text=shown)
    if shown == "," and len(before) > 1 and before[-2].start == before[-2].end and _is_size(tokens, at + 2):
        return token._replace(kind="sign", text="+", typed=",")  # 3 hundreds, 4 tens and 5 ones
    if shown == ":" and _is_apart(text, token) and before and before[-1].kind == "number" and _is_value(tokens, at + 1):
        return token._replace(kind="sign", text="÷", typed=":")
    return token._replace(typed=shown.lower()) if is_sign and shown not in ("", token.text) else token


def _joins(before: Sequence[Token], token: Token, typed: str, tokens: Sequence[Token], at: int) -> bool:
    """Whether a word stands where a sign would."""
    if not _is_value(tokens, at + 1):
        return False
    if token.text == "of":
        part = before[-1] if before else None
        return part is not None and part.kind == "number" and _is_part(part)
    if token.text == "+" and at + 2 < len(tokens) and tokens[at + 2].text in _LEFT:
        return False  # 4 and 1 left over
    if token.kind == "sign" and typed != "and":
        return True
    named = 0
    while named < min(_MOST_NAMED, len(before)) and before[-1 - named].kind == "word":
        named += 1
    return len(before) > named and (before[-1 - named].kind in ("number", "gap") or before[-1 - named].text == ")")


def _is_part(token: Token) -> bool:
    """Whether a number may stand before "of" as a part of what follows: ½, 3/4, 10%, two thirds."""
    return token.value.denominator > 1 or token.text[-1] == "%" or "/" in token.text


def _ends_sentence(text: str, mark: Token) -> bool:
    """Whether a question mark is the end of a question and no gap."""
    close = mark.start > 0 and (text[mark.start - 1].isalnum() or text[mark.start - 1] in ")”’\"'")
    return close and (mark.end == len(text) or not text[mark.end].isalnum())


def _is_apart(text: str, token: Token, further: int = 0) -> bool:
    """Whether a mark has space on both sides."""
    start, end = token.start + further, token.end + further
    return text[start - 1 : start].isspace() and text[end : end + 1].isspace()


def _with_things(text: str, tokens: Sequence[Token]) -> Iterator[Token]:
    """Numbers take in the names of what they count, where a sign comes after."""
    at = 0
    while at < len(tokens):
        token, at = tokens[at], at + 1
        if token.kind == "number":
            after = at
            while after < min(at + _MOST_NAMED, len(tokens)) and is_thing(tokens[after]):
                after += 1
            if at < after < len(tokens) and tokens[after].kind in ("sign", "relation"):
                last = tokens[after - 1]
                token = token._replace(text=text[token.start : last.end], end=last.end, things=last.text.lower())
                at = after
        yield token


def is_thing(token: Token) -> bool:
    """Whether a word may name what is counted."""
    return token.kind == "word" and token.text.lower() not in LINKS and len(token.text) > 1
