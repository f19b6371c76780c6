"""Ordering: lists of numbers said to be in order, and the least or the greatest of some."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..model.known_facts import KnownFacts
from .amounts import END, LIST, N, number, numbers, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_UP = "smallest|least|lowest|lightest|shortest|fewest|youngest|cheapest"
_DOWN = "largest|greatest|most|highest|biggest|heaviest|longest|tallest|oldest|dearest"
_WAY = (
    rf"(?:(?:in order,? )?(?:(?<!\w)from )?(?:the )?(?:(?P<up>{_UP}) to (?:the )?(?:{_DOWN})|(?P<down>{_DOWN}) to (?:the )?(?:{_UP}))"
    rf"|(?:starting|beginning) with the (?:(?P<up4>{_UP})|(?P<down4>{_DOWN}))|(?:in order,?"
    rf" )?(?:(?P<up2>{_UP})|(?P<down2>{_DOWN})) first|in (?:(?P<up3>ascending)|(?P<down3>descending)) order|in order"
    rf"(?: of size)?)"
)
_BEFORE_LIST = (
    r"(?:,? (?:they|these|the (?:numbers|totals|cards)) (?:are|go|come|read|run)|,? (?:it is|that is|is))?[:,]? "
)
_AFTER = Form(rf"\b{_WAY}{_BEFORE_LIST}(?P<list>{LIST}){END}")
_AHEAD = Form(rf"(?P<list>{LIST})(?:,? (?:are|is|go|goes|run|stand|come)(?: all| now)?) {_WAY}{END}")
_ORDER_IS = Form(
    rf"\b(?:the (?:right |correct )?order is|they are|they go|it goes|in order they are|these are)[:,]?"
    rf" (?P<list>{LIST}),? {_WAY}{END}"
)
_END_OF = Form(
    rf"\bthe (?:(?P<least>{_UP})|(?P<most>{_DOWN}))(?: number)? of (?:the numbers )?(?P<list>{LIST}) is (?P<one>{N}){END}"
)
_OF_END = Form(
    rf"\bof (?:the numbers )?(?P<list>{LIST}),? the (?:(?P<least>{_UP})|(?P<most>{_DOWN}))(?: number)? is (?P<one>{N}){END}"
)
_ONE_OF = Form(
    rf"(?P<one>{N}) is the (?:(?P<least>{_UP})|(?P<most>{_DOWN}))(?: number)? of (?:the numbers )?(?P<list>{LIST}){END}"
)
_FEWEST = 3


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in (_AFTER, _AHEAD, _ORDER_IS):
        for match in form.finditer(sentence):
            values = numbers(match["list"])
            if len(values) < _FEWEST:
                continue
            up = bool(match["up"] or match["up2"] or match["up3"] or match["up4"])
            down = bool(match["down"] or match["down2"] or match["down3"] or match["down4"])
            rises, falls = (all(a < b for a, b in pairwise(way)) for way in (values, values[::-1]))
            if not ((rises and not down) or (falls and not up)):
                right = sorted(values, reverse=down)
                yield Untrue(*match.span(), f"in order they are {', '.join(map(says, right))}")
    for form in (_END_OF, _OF_END, _ONE_OF):
        for match in form.finditer(sentence):
            values = numbers(match["list"])
            right_one = min(values) if match["least"] else max(values)
            if number(match["one"]) != right_one:
                yield Untrue(*match.span(), f"it is {says(right_one)}")


CLASS = ClaimClass(
    name="putting in order",
    reads="Three numbers or more told in an order that is named (from smallest to largest, greatest first, in order); the least "
    "or the greatest of a list.",
    leaves="Orders of anything but plain numbers, such as times or names; lists of two.",
    source="Common practice, no source: the order of numbers.",
    cues=frozenset(("order", *_UP.split("|"), *_DOWN.split("|"))),
    find=_find,
    numbers=3,
)
