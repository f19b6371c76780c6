"""What stands on a number or sign card."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

SIGNS = "+−×÷=≠<>"
_TURNS = frozenset("01689")
"""Figures that are still figures upside down, so that 6 could be taken for 9."""
Card = dict[str, Any]


def number_card(number: str) -> Card:
    """A number as it is written; 6 and 9 stand on a line, and so do 16, 68 and 99."""
    whole, slash, under = number.partition("/")
    if slash:
        before, _, over_line = whole.rpartition(" ")  # 1 3/8, or 11/8
        ones, over = divmod(int(over_line), int(under)) if int(under) else (0, int(over_line))
        ones += int(before.replace(",", "") or 0)
        if not over and int(under):
            return number_card(str(ones))
        return {"number": str(ones) if ones else "", "over": str(over), "under": under, "stands": False}
    figures = set(number) - set(",.−")
    if "." not in number:
        number = f"{int(worth(number)):,}".replace("-", "−")
    return {"number": number, "stands": figures <= _TURNS and bool(figures & {"6", "9"})}


def sign_card(sign: str) -> Card:
    """A sign; < and > stand on a line, for each is the other turned round."""
    return {"sign": sign, "stands": sign in "<>"}


def word_card(word: str) -> Card:
    """A word to hold up, such as a unit."""
    return {"number": word, "word": True, "stands": False}


def worth(number: str) -> Fraction:
    """What a number comes to as it is written: ``1,200``, ``−4``, ``2.5`` or ``3/4``."""
    over, _, under = number.replace(",", "").replace("−", "-").partition("/")
    return Fraction(over) / (int(under or 1) or 1)
