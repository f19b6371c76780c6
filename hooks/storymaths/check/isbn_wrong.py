"""ISBNs whose check digit does not fit."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule

RULE = Rule(
    name="isbn-wrong",
    says="An ISBN has thirteen digits, begins 978 or 979, and its last digit checks the rest.",
    why="A wrong digit orders a different book.",
    source="ISO 2108: weights 1 and 3 in turn; the sum of all thirteen is a multiple of ten.",
    wrong='isbn: "978-3-16-148410-1"',
    right='isbn: "978-3-16-148410-0"',
)


def check_digit(twelve: str) -> str:
    """The thirteenth digit for the first twelve of an ISBN."""
    total = sum(int(digit) * (3 if index % 2 else 1) for index, digit in enumerate(twelve))
    return str(-total % 10)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each ISBN that cannot be one."""
    for page in collection.books.values():
        if page.fields.isbn is None:
            continue
        digits = page.fields.isbn.replace("-", "").replace(" ", "")
        if not (digits.isdecimal() and digits.isascii() and len(digits) == 13 and digits[:3] in ("978", "979")):
            message = f"{page.fields.isbn} is not an ISBN of thirteen digits beginning 978 or 979."
        elif digits[-1] != check_digit(digits[:-1]):
            message = (
                f"The last digit of {page.fields.isbn} should be {check_digit(digits[:-1])}, if the rest is right."
            )
        else:
            continue
        yield RULE.problem(page.place("isbn"), message, "copy the number afresh from the back of the book.")
