"""Signs that mislead: unseen ones, ones that turn text round, letters in two pieces, and letters that only look right."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from ..model.document import Fault
from ..model.problem import Place

# Joiners and marks of direction (200C to 200F) are left alone: Persian, Urdu and many signs are written with them.
_UNSEEN = (
    "\x00-\x08\x0b-\x1f\x7f-\x9f\u00ad\u180e\u200b\u2028\u2029\u202a-\u202e\u2060-\u206f\ufeff\ufff0-\uffff\ue000-\uf8ff"
    "\U000e0000-\U0010ffff"
)
UNSEEN = re.compile(f"[{_UNSEEN}]")
_LIKE_LATIN = "\u0391\u0392\u0395-\u0397\u0399\u039a\u039c\u039d\u039f\u03a1\u03a4\u03a5\u03a7\u03bf\u0400-\u04ff"
_SUSPECT = re.compile(f"[{_UNSEEN}{_LIKE_LATIN}]")
_LOOKS_LIKE = re.compile(f"(?<=[A-Za-z])[{_LIKE_LATIN}]|[{_LIKE_LATIN}](?=[A-Za-z])")
_NAMES = {0xFEFF: "BYTE ORDER MARK", 0xFFFD: "REPLACEMENT CHARACTER, left where a letter was lost"}


def faults_in_letters(path: str, text: str) -> Iterator[Fault]:
    """The first misleading sign of each sort in a file's text: where one is there are often many."""
    if not _SUSPECT.search(text) and unicodedata.is_normalized("NFC", text):
        return
    for pattern, what in ((UNSEEN, HIDES), (_LOOKS_LIKE, _ALIKE)):
        match = pattern.search(text)
        if match:
            yield Fault("letter", Place.of(path, text, match.start()), "", f"the sign {named(match.group())} {what}")
    if not unicodedata.is_normalized("NFC", text):
        at = _first_in_pieces(text)
        whole = unicodedata.normalize("NFC", text[at : at + 2])[:1]
        yield Fault(
            "letter", Place.of(path, text, at), "", f'the letter "{whole}" is made of two signs, and is then not found'
        )


HIDES = "is not seen, or turns the words after it round"
_ALIKE = "only looks like a letter of this word"


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
