"""What is to be printed by the notes beside materials: numbers such as ``0 to 20``, ``2 cm`` squares, words for cards."""

from __future__ import annotations

import re

_STRETCH = re.compile(r"\b(\d{1,4}) to (\d{1,4})\b")
_CENTIMETRES = re.compile(r"\b([12]) cm\b|\b(a|one|two) centimetres?\b", re.IGNORECASE)
_SIDES = {"1": 1, "2": 2, "a": 1, "one": 1, "two": 2}


def stretch_in(note: str) -> tuple[int, int] | None:
    """The first and last number of the stretch that a note names, if any: ``0 to 20``."""
    found = _STRETCH.search(note)
    return (int(found[1]), int(found[2])) if found else None


def numbers_in(note: str) -> list[int]:
    """The whole numbers that a note names, each once: ``60 and 4``."""
    return [int(number) for number in dict.fromkeys(re.findall(r"\b\d{1,4}\b", note))]


def words_in(note: str) -> list[str]:
    """The single words that a note lists and nothing else: ``m, cm, kg, litres and ml.``"""
    words = [word.strip() for word in re.split(r",|\band\b", note.rstrip(". "))]
    return words if all(re.fullmatch(r"[°\w]+", word) and not word.isdecimal() for word in words) else []


def centimetres_in(note: str) -> int | None:
    """The side of squares that a note names, 1 or 2, if any: ``2 cm``, ``squares of a centimetre``."""
    found = _CENTIMETRES.search(note)
    return _SIDES[(found[1] or found[2]).lower()] if found else None
