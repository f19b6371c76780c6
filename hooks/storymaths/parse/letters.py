"""Signs that mislead: unseen ones, ones that turn text round, letters in two pieces, and letters that only look right.

A sign may be typed, or spelt as HTML has it (``&shy;``, ``&#x202e;``): a page shows the same, and so this sees the same.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from html.entities import html5
from types import MappingProxyType

from ..model.document import Fault
from ..model.problem import Place

# Joiners and marks of direction (200C to 200F) are left alone: Persian, Urdu and many signs are written with them.
_UNSEEN = (
    "\x00-\x08\x0b-\x1f\x7f-\x9f\u00ad\u180e\u200b\u2028\u2029\u202a-\u202e\u2060-\u206f\ufeff\ufff0-\uffff\ue000-\uf8ff"
    "\U000e0000-\U0010ffff"
)
_HIDING = re.compile(f"[{_UNSEEN}]")
_LIKE_LATIN = "\u0391\u0392\u0395-\u0397\u0399\u039a\u039c\u039d\u039f\u03a1\u03a4\u03a5\u03a7\u03bf\u0400-\u04ff"
_WIDE = "\uff05\uff0b\uff0d\uff0f-\uff19\uff1c-\uff1e"
"""Digits and signs as wide as two: a sum of them is not read as one."""
_SUSPECT = re.compile(f"[{_UNSEEN}{_LIKE_LATIN}{_WIDE}]")
_LOOKS_LIKE = re.compile(f"(?<=[A-Za-z])[{_LIKE_LATIN}]|[{_LIKE_LATIN}](?=[A-Za-z])")
_WIDE_SIGN = re.compile(f"[{_WIDE}]")
_NEEDLESS = re.compile("[\u200c-\u200f]")
"""Who needs one of these types it; spelt out in letters it only hides."""
_SPELT = re.compile(r"&(?:#[xX]([0-9A-Fa-f]{1,8})|#(\d{1,8})|([A-Za-z][A-Za-z0-9]{1,31}))(?:;|(?![\w=]))")
_NAMES = {0xFEFF: "BYTE ORDER MARK", 0xFFFD: "REPLACEMENT CHARACTER, left where a letter was lost"}


def faults_in_letters(path: str, text: str) -> Iterator[Fault]:
    """The first misleading sign of each sort in a file's text: where one is there are often many."""
    for at, detail in misleading(text):
        yield Fault("letter", Place.of(path, text, at), "", detail)


def misleading(text: str) -> Iterator[tuple[int, str]]:
    """Where in a text the first misleading sign of each sort stands, and what it does."""
    if "&" in text and _SPELT.search(text):
        shown = _as_shown(text)
        yield from ((shown.at[at], detail) for at, detail in _in_shown(shown.text, shown.spelt))
    else:
        yield from _in_shown(text)


def _in_shown(text: str, spelt: Mapping[int, str] = MappingProxyType({})) -> Iterator[tuple[int, str]]:
    needless = next((at for at, sign in spelt.items() if _NEEDLESS.match(sign)), None)
    if needless is not None:
        yield needless, f"the sign {named(spelt[needless])} {_HIDES}"
    if not _SUSPECT.search(text) and unicodedata.is_normalized("NFC", text):
        return
    for pattern, what in ((_HIDING, _HIDES), (_LOOKS_LIKE, _ALIKE), (_WIDE_SIGN, _TOO_WIDE)):
        match = pattern.search(text)
        if match:
            yield match.start(), f"the sign {named(match.group())} {what}"
    if not unicodedata.is_normalized("NFC", text):
        at = _first_in_pieces(text)
        whole = unicodedata.normalize("NFC", text[at : at + 2])[:1]
        yield at, f'the letter "{whole}" is made of two signs, and is then not found'


@dataclass(frozen=True, slots=True)
class _Shown:
    """A text with its spelt signs as they are shown, and where each sign of it stands in what was written."""

    text: str
    at: Sequence[int]
    spelt: Mapping[int, str]


def _as_shown(text: str) -> _Shown:
    parts, at, spelt, end = list[str](), list[int](), dict[int, str](), 0
    for match in _SPELT.finditer(text):
        sign = _sign(match)
        if sign:
            parts += [text[end : match.start()], sign]
            at += [*range(end, match.start()), *[match.start()] * len(sign)]
            spelt[len(at) - len(sign)] = sign
            end = match.end()
    return _Shown("".join((*parts, text[end:])), [*at, *range(end, len(text)), len(text)], spelt)


def _sign(match: re.Match[str]) -> str:
    """What a character reference of HTML stands for (https://html.spec.whatwg.org/#character-reference-state)."""
    hexadecimal, decimal, name = match.groups()
    if name:
        return html5.get(f"{name};", "")
    number = int(hexadecimal, 16) if hexadecimal else int(decimal)
    return chr(number) if 0 < number < 0x110000 and not 0xD800 <= number < 0xE000 else "\ufffd"


_HIDES = "is not seen, or turns the words after it round"
_ALIKE = "only looks like a letter of this word"
_TOO_WIDE = "only looks like the sign or figure of sums"


def named(sign: str) -> str:
    """A sign by its number and name: ``U+202E RIGHT-TO-LEFT OVERRIDE``."""
    code = ord(sign)
    name = _NAMES.get(code) or unicodedata.name(sign, "")
    return f"U+{code:04X}{' ' + name if name else ''}"


def _first_in_pieces(text: str) -> int:
    """Where the text first differs from its composed form."""
    composed = unicodedata.normalize("NFC", text)
    return next(
        (at for at, (old, new) in enumerate(zip(text, composed, strict=False)) if old != new), len(composed) - 1
    )
