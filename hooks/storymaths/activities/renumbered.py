"""An author's own words for a task with other numbers: the one number in them that changed is written anew."""

from __future__ import annotations

import re
from collections.abc import Sequence, Set

from ..expression.number_words import ONES, PART_OF, SO_MANY_OF, TENS

_OF_PARTS = re.compile(rf"\b(?:{'|'.join((*PART_OF, 'double', 'twice', 'halfway'))})\b", re.IGNORECASE)
_IN_STEPS = re.compile(rf"\bin (?:{'|'.join(word for word in SO_MANY_OF if word.endswith('s'))})\b", re.IGNORECASE)
_WORDS = "|".join(sorted({*ONES, *TENS, "hundred", "thousand"}, key=len, reverse=True))
_NAMED = re.compile(rf"(?<![\w.:/])\d+(?![\w:/]*[./]\d)|\b(?:{_WORDS})\b", re.IGNORECASE)
_SMALL = 12


def names_parts(words: str) -> bool:
    """Whether words speak of halves, thirds or doubles, which other numbers need not be."""
    return bool(_OF_PARTS.search(words))


def renumbered(words: str, old: Sequence[int], new: Sequence[int], stay: Set[int]) -> str:
    """The words with other numbers; empty where they might be untrue of these.

    ``old`` and ``new`` are the numbers of the task, one for one; ``stay`` say how it is done and not with which numbers.
    What is said of two numbers that both changed may hang on how they lie to one another, and a number in words may be
    of something else, such as six parcels: neither is said again.
    """
    pairs = set(zip(old, new, strict=True)) if len(old) == len(new) else set[tuple[int, int]]()
    stands_for, changed = dict(pairs), {before for before, after in pairs if before != after}
    if names_parts(words) and (not pairs or any(number <= _SMALL for number in changed)):
        return ""
    if _IN_STEPS.search(words) and len({after - before for before, after in zip(old, new, strict=False)}) > 1:
        return ""
    named = [found.group() for found in _NAMED.finditer(words)]
    in_figures = {int(one) for one in named if one.isdecimal()}
    in_words = {ONES.get(one.casefold(), TENS.get(one.casefold(), 100)) for one in named if not one.isdecimal()} - stay
    if in_words or not in_figures - stay <= stands_for.keys():
        return ""
    if len(in_figures & changed) > 1 or (in_figures and len(stands_for) < len(pairs)):
        return ""
    return _NAMED.sub(lambda found: _anew(found.group(), stands_for), words)


def _anew(written: str, stands_for: dict[int, int]) -> str:
    return str(stands_for.get(int(written), written)) if written.isdecimal() else written
