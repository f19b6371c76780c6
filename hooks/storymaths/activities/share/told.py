"""Sharing put into words and drawings: the task and each answer."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from ...model.activity import Answer, Context, Figure, Solution, Task
from ..met import demands_met
from ..saying import capital, counted, listed, owner, written
from .found import Shared, Shares
from .why import note_of, reckoned_in, slip_in, tables_in, worked

if TYPE_CHECKING:
    from . import ShareFields

_WORDS = (
    "share", "each", "group", "left over", "equal groups", "altogether", "double", "half", "odd", "even", "pair", "array",
)  # fmt: skip
_MOST_DRAWN, _MOST_DOTS, _MOST_ACROSS = 6, 60, 12


def told(fields: ShareFields, context: Context, shares: Shares) -> Solution:
    """The solution. Signs are used from the year that has met them."""
    things = fields.things or (fields.fact or "").replace("_", " ")
    year = context.year.year
    answers = tuple(_answer(one, shares, things, context) for one in shares.found)
    playing = context.characters if fields.fact is not None else shares.receivers
    drawn = tuple(figure for one in shares.found if (figure := _array(one, shares)))
    shown = drawn if len(drawn) == len(shares.found) <= _MOST_DRAWN else ()
    task = Task(
        ask=fields.ask or _ask(fields, shares, things, year),
        characters=playing,
        shows=tuple(written(pile) for pile, who in shares.piles if who),
        lines=_lines(shares) if year >= 2 else _sums(shares) if year == 1 else (),
        figures=shown if shares.mode == "total" else (),
    )
    demands = demands_met(task, answers, _WORDS, tables_in(shares, context))
    return Solution(
        task=task,
        answers=answers,
        demands=replace(
            demands, calculated=tuple(sorted({*demands.calculated, *map(Fraction, reckoned_in(shares, year))}))
        ),
        steps=1 + any(one.left for one in shares.found) + (shares.mode in ("ways", "piles")),
        note=note_of(fields, shares, context),
        likely_error=slip_in(shares),
        answer_figures=() if shares.mode == "total" else shown,
    )


def left_in_words(left: int, year: int) -> str:
    """What stays behind; ``left over`` is a word of Year 1."""
    if not left:
        return ""
    return f", and {written(left)} {'is' if left == 1 else 'are'} left{' over' if year else ''}"


def _answer(one: Shared, shares: Shares, things: str, context: Context) -> Answer:
    year = context.year.year
    data: dict[str, Any] = {"groups": one.groups, "each": one.each, "left": one.left}
    if shares.mode == "parts":
        gets = {p.id: part * one.each for p, part in zip(shares.receivers, shares.parts, strict=True)}
        data = {"gets": gets, "left": one.left}
    elif shares.mode == "total":
        data["total"] = one.total
    elif shares.receivers:
        data["gets"] = {character.id: one.each for character in shares.receivers}
    elif shares.mode == "piles":
        data = {"pile": one.total, **data} | ({"who": one.who.id} if one.who else {})
    says = _said(one, shares, things) + left_in_words(one.left, year)
    return Answer(says, f"{worked(one, shares, year)}.", data)


def _said(one: Shared, shares: Shares, things: str) -> str:
    each, groups = written(one.each), counted(one.groups, "groups")
    names = [character.name for character in shares.receivers]
    if shares.mode == "parts":
        gets = [f"{name} gets {written(part * one.each)}" for name, part in zip(names, shares.parts, strict=True)]
        return capital(listed(gets))
    if shares.mode == "total":
        start = f"Double {each} is" if one.groups == 2 and not things else f"{groups} of {each} make"
        return f"{start} {counted(one.total, things)}"
    if shares.mode == "each":
        share = f"{counted(one.each, things)} each"
        return f"{capital(listed(names))} get {share}" if names else share
    if shares.mode == "piles":
        whose = f"{capital(owner(one.who.name))} {counted(one.total, things)}" if one.who else written(one.total)
        return f"{whose}: {groups} of {each}"
    return f"{groups} of {each}"


def _ask(fields: ShareFields, shares: Shares, things: str, year: int) -> str:
    over = " Are any left over?" if year else ""
    one = shares.found[0] if shares.found else Shared(0, 0, 0)
    total = counted(one.total, things)
    names = listed([character.name for character in shares.receivers])
    if shares.mode == "each":
        between = f"between {names}" if names else f"between {written(one.groups)}"
        return f"Share {total} {'equally' if year else 'fairly'} {between}. How many does each get?{over}"
    if shares.mode == "groups":
        return f"Put {total} in groups of {written(one.each)}. How many groups are there?{over}"
    if shares.mode == "total":
        holders = f"{capital(names)} have" if names else f"There are {counted(one.groups, 'groups', 'group')} with"
        if one.groups == 1 and not names:
            holders = "There is 1 group with"
        return f"{holders} {counted(one.each, things)} each. How many are there altogether?"
    if shares.mode == "parts":
        return f"They share {total}. {_ratio(shares)} How many does each get?{over}"
    if shares.mode == "piles":
        return _ask_piles(fields, shares, things, year)
    return _ask_ways(fields, counted(shares.total, things), year)


def _ask_ways(fields: ShareFields, amount: str, year: int) -> str:
    left = fields.left_over
    end = f" so that {written(left)} {_are(left)} left{' over' if year else ''}" if left else ""
    within = f" Make at least {fields.fewest:,} groups." if fields.fewest > 1 else ""
    if fields.most:
        within = f" Make from {fields.fewest:,} to {fields.most:,} groups."
    groups = "equal groups" if year else "groups of the same size"
    return f"Put {amount} in {groups}{end}. Find every way.{within}"


def _are(count: int) -> str:
    return "is" if count == 1 else "are"


def _ratio(shares: Shares) -> str:
    names, parts = [character.name for character in shares.receivers], shares.parts
    if len(parts) == 2 and min(parts) == 1 and max(parts) > 1:
        more, less = (names[0], names[1]) if parts[0] > 1 else (names[1], names[0])
        times = "twice" if max(parts) == 2 else f"{max(parts)} times"
        return f"{capital(more)} gets {times} as many as {less}."
    gets = [f"{name} gets {counted(part, 'parts')}" for name, part in zip(names, parts, strict=True)]
    return f"{capital(listed(gets))}."


def _ask_piles(fields: ShareFields, shares: Shares, things: str, year: int) -> str:
    equally = "equally" if year else "fairly"
    way = (
        f"shared {equally} between {written(fields.among)}"
        if fields.among
        else f"put in groups of {written(fields.each or 1)}"
    )
    end = f", with {written(fields.left_over)} left over" if fields.left_over else ""
    if fields.fact is not None:
        return f"Whose {things} can be {way}{end}?"
    return f"Which of these can be {way}{end}: {listed([written(pile) for pile, _ in shares.piles], 'or')}?"


def _lines(shares: Shares) -> tuple[str, ...]:
    if not shares.found:
        return ()
    one = shares.found[0]
    total, groups, each = written(one.total), written(one.groups), written(one.each)
    rest = " + ___" if one.left else ""
    return {
        "each": (f"{total} = {groups} × ___{rest}",) if one.left else (f"{total} ÷ {groups} = ___",),
        "groups": (f"{total} = ___ × {each}{rest}",) if one.left else (f"{total} ÷ {each} = ___",),
        "total": (f"{groups} × {each} = ___",),
        "ways": (f"{total} = ___ × ___{rest}",),
        "piles": (),
        "parts": (f"{total} = {' + '.join(['___'] * len(shares.parts))}{rest}",),
    }[shares.mode]


def _sums(shares: Shares) -> tuple[str, ...]:
    """Year 1 has met + and not ×."""
    one = shares.found[0] if shares.found else None
    if shares.mode != "total" or one is None or not 2 <= one.groups <= 6 or one.total > 20:
        return ()
    return (f"{' + '.join([str(one.each)] * one.groups)} = ___",)


def _array(one: Shared, shares: Shares) -> Figure | None:
    if shares.mode == "parts" or one.total > _MOST_DOTS or one.each > _MOST_ACROSS or one.groups > _MOST_ACROSS:
        return None
    if not one.each:
        return None
    labels = [character.name for character in shares.receivers]
    rest = f" and {one.left} more" if one.left else ""
    data = {"rows": one.groups, "columns": one.each, "left": one.left, "labels": labels}
    return Figure("array", data, f"Dots in {counted(one.groups, 'rows')} of {one.each}{rest}.")
