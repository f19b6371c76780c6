"""What a note beside a material says is to be printed: a stretch of numbers, numbers, or words for cards."""

from __future__ import annotations

import pytest
from storymaths.render.sheets.note_numbers import numbers_in, stretch_in, words_in


@pytest.mark.parametrize(
    ("note", "words"),
    [
        ("m, cm, kg, g, °C, litres and ml.", ["m", "cm", "kg", "g", "°C", "litres", "ml"]),
        ("north and south", ["north", "south"]),
        ("one =, one ≠ and one +", []),
        ("A big 4 and a big 6.", []),
        ("Large ones.", []),
    ],
)
def test_words_are_listed_and_nothing_else(note: str, words: list[str]) -> None:
    assert words_in(note) == words


def test_a_stretch_is_told_from_numbers() -> None:
    assert stretch_in("From 1 to 12. Keep them by the board for a fortnight.") == (1, 12)
    assert stretch_in("60 and 4") is None
    assert numbers_in("60 and 4, the 4 cut narrow") == [60, 4]
