"""The calendar: the days of named months, and the order of days and months."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number
from .claim_class import IS, ClaimClass, Untrue

_ORDINALS = "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth last".split()
_ORDINAL = "|".join(_ORDINALS)


def _find(sentence: str, facts: KnownFacts) -> Iterator[Untrue]:
    months = [month.name for month in facts.calendar.months]
    days_in = {month.name: month.days for month in facts.calendar.months}
    month = "|".join(months)
    for form in (
        rf"\b(?P<name>{month}) (?:always )?has (?P<count>{N}) days\b",
        rf"\b(?:there are )?(?P<count>{N}) days in (?P<name>{month})\b",
    ):
        for match in re.finditer(form, sentence):
            if number(match["count"]) not in days_in[match["name"]]:
                right = " or ".join(map(str, days_in[match["name"]]))
                yield Untrue(*match.span(), f"{match['name'].capitalize()} has {right} days")
    if not any(f" {word} " in sentence for word in ("after", "before", "the")):
        return
    for names, what in ((months, "month"), (facts.calendar.days, "day")):
        yield from _order(sentence, names, what)


def _order(sentence: str, names: Sequence[str], what: str) -> Iterator[Untrue]:
    name = "|".join(names)
    after = (
        rf"\b(?P<one>{name}) (?:is|comes) (?:the {what} )?(?P<next>just |straight |right )?(?P<way>after|before)"
        rf" (?P<two>{name}){END_OR_AND}"
    )
    named = rf"\bthe (?P<next>){what} (?P<way>after|before) (?P<two>{name}) is (?P<one>{name})\b"
    for match in (*re.finditer(after, sentence), *re.finditer(named, sentence)):
        step = 1 if match["way"] == "after" else -1
        right = names[(names.index(match["two"]) + step) % len(names)]
        if match["next"] is None:  # somewhere after: among the days of a week everything is
            in_order = (names.index(match["one"]) - names.index(match["two"])) * step > 0
            if in_order or what == "day" or match["one"] == right:
                continue
        if match["one"] != right:
            yield Untrue(
                *match.span(), f"the {what} {match['way']} {match['two'].capitalize()} is {right.capitalize()}"
            )
    place = rf"\b(?P<one>{name}) is the (?P<nth>{_ORDINAL}) month of the year\b"
    for match in re.finditer(place, sentence) if what == "month" else ():
        at = names.index(match["one"])
        if match["nth"] not in (_ORDINALS[at], "last" if at == len(names) - 1 else ""):
            yield Untrue(*match.span(), f"{match['one'].capitalize()} is the {_ORDINALS[at]} month")


CLASS = ClaimClass(
    name="the calendar",
    reads="How many days a named month has; which day or month comes straight before or after another; a month's place in the year.",
    leaves="Dates, and which day of the week is the first, which people count in two ways.",
    source="site_data/facts.yaml, calendar.",
    cues=frozenset(
        ("days", "month", "comes", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
    ),
    find=_find,
    verbs=IS,
)
