"""Coverage in whole sentences, for people who do not read tables."""

from __future__ import annotations

from ..covers.stages import Balance, Written
from ..covers.table import YearTable
from ..model.fields import year_name


def covered_in_words(table: YearTable) -> str:
    """How much of a year's objectives is taught whole, taught in part, touched and left out."""
    asked, taught, touched, gaps = len(table.rows), table.counts["taught"], table.touched, len(table.gaps)
    in_part = table.counts["part"]
    opening = f"Of the {asked} objectives of {year_name(table.year)}"
    if asked == 1:
        opening = f"Of the one objective of {year_name(table.year)}"
    if taught == asked:
        return f"{opening}, every one is taught in full."
    if gaps == asked:
        return f"{opening}, none is covered yet."
    parts = [f"{taught or 'none'} {_is(taught)} taught in full"]
    if in_part:
        parts.append(f"{in_part}{' more' if taught else ''} {_is(in_part)} taught in part")
    if touched:
        parts.append(f"{touched} {_is(touched)} taken up again or only touched")
    if gaps:
        parts.append(f"{gaps} {_is(gaps)} not covered")
    return f"{opening}, {', '.join(parts[:-1])}{' and ' if len(parts) > 1 else ''}{parts[-1]}."


def empty_strands(table: YearTable) -> list[str]:
    """The strands of which nothing at all is covered."""
    return [name for name, strand in table.strands if len(strand.gaps) == len(strand.rows)]


def stages_in_words(balance: Balance, called: str = "session") -> list[str]:
    """Whether it is all objects and no symbols: how many sessions name things, and how many write signs.

    ``called`` is the reader's word for a session.
    """
    whole, written = balance.sessions, balance.written
    if not whole:
        return []
    rest = [
        f"{written[how]} {'has' if written[how] == 1 else 'have'} {what}"
        for how, what in _WITHOUT_SIGNS.items()
        if written[how]
    ]
    return [
        f"{_in(balance.with_things, whole, called)} the main task names things to handle.",
        f"{_in(written['signs'], whole, called)} there are signs to write{'; ' if rest else ''}{' and '.join(rest)}.",
    ]


_WITHOUT_SIGNS: dict[Written, str] = {"numbers": "numbers without signs", "words": "words alone"}


def hours_in_words(minutes: int) -> str:
    """``7 hours 20 minutes``."""
    hours, rest = divmod(minutes, 60)
    parts = [f"{hours} hour{'s' * (hours != 1)}"] * bool(hours) + [f"{rest} minute{'s' * (rest != 1)}"] * bool(rest)
    return " ".join(parts) or "no time"


def _in(part: int, whole: int, called: str) -> str:
    if not part:
        return f"In no {called}"
    if part == whole:
        return f"In all {whole} {called}s" if whole > 1 else f"In the one {called}"
    return f"In {part} of the {whole} {called}s"


def _is(number: int) -> str:
    return "is" if number <= 1 else "are"
