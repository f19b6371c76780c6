"""A comparison for another year: its numbers moved so that the same lines are true and the same signs belong."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain, islice, pairwise, takewhile

from ...expression.signs import COMPARED
from ...expression.tokens import Token, read_tokens
from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import SAME_NUMBERS, easier_first, revalued
from ..saying import written
from .completed import Filling
from .solve import find_outcomes
from .tasks import CompareTask, Sign

Version = tuple[CompareTask, Context, str]
_LESS = (10, 20, 30, 40, 50, 60, 70, 80, 90, 5, 2, 100, 200, 500)
_TIMES = (10, 5, 2)
_MOST_LOOKED_AT = 600
"""Candidates worked out before giving up: half a second's worth."""


def versions_of(task: CompareTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """Candidates, best first: for an older year larger numbers before the same ones, for a younger one after."""
    same: Version = (task, context, SAME_NUMBERS)
    if not year.knows("="):
        yield same  # nothing can be written before = is known
        return
    wanted = _pattern(task, context)
    harder = year.year > context.year.year
    moved = ((task.with_statements(made), context, why) for made, why in _moved(task.statements, year, harder))
    larger = _more_of_the_fact(task, context, year) if harder else ()
    offers = easier_first(same, chain(moved, larger), harder)
    for offered in islice(chain(offers, _revalued(task, context, year)), _MOST_LOOKED_AT):
        context.effort.spend(60 * len(task.statements))
        if _pattern(offered[0], offered[1]) == wanted:
            yield offered
            if not year.knows("<"):
                yield from _with_equal_only(offered)


def _pattern(task: CompareTask, context: Context) -> list[tuple[int, str]] | None:
    """Which lines have answers, and the signs that belong; None when it cannot be worked out."""
    try:
        outcomes = find_outcomes(task, context)
    except Unsolvable:
        return None
    found = [one for outcome in outcomes for one in outcome.found]
    return [(one.line, "" if isinstance(one.fill, Filling) else one.fill) for one in found]


def _more_of_the_fact(task: CompareTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """The values of the cast a table of the year times as much, the largest table first."""
    times = takewhile(lambda offer: offer[2].startswith("Every"), _revalued(task, context, year))
    yield from reversed(list(times))


def _revalued(task: CompareTask, context: Context, year: YearLimits) -> Iterator[Version]:
    if task.fact and context.characters:
        yield from ((task, place, why) for place, why in revalued(context, task.fact, year))


def _moved(statements: Sequence[str], year: YearLimits, harder: bool) -> Iterator[tuple[tuple[str, ...], str]]:
    """The numbers in the statements made larger or smaller, where they are whole numbers that are only added."""
    lines = [(text, tuple(read_tokens(text, COMPARED))) for text in statements]
    if not all(_is_plain(token) for _, tokens in lines for token in tokens):
        return
    for by in year.practice.compare.more if harder else _LESS:
        shifted = [_shifted(tokens, by if harder else -by) for _, tokens in lines]
        if all(min(new.values(), default=1) >= 1 for new in shifted):
            yield _written(lines, shifted), f"{by:,} {'more' if harder else 'less'} on each side."
    numbers = [{at: int(token.value) for at, token in _numbers(tokens)} for _, tokens in lines]
    for by in _TIMES:
        if harder:
            scaled = [{at: number * by for at, number in line.items()} for line in numbers]
            yield _written(lines, scaled), f"Every number is {by} times as much."
        elif not any(number % by for line in numbers for number in line.values()):
            scaled = [{at: number // by for at, number in line.items()} for line in numbers]
            yield _written(lines, scaled), f"Every number is divided by {by}."


def _is_plain(token: Token) -> bool:
    if token.kind == "number":
        return token.number.replace(",", "").isdecimal() and not token.unit
    return (token.kind in ("gap", "sign-gap", "relation") and not token.unit) or token.text == "+"


def _numbers(tokens: Sequence[Token]) -> list[tuple[int, Token]]:
    return [(at, token) for at, token in enumerate(tokens) if token.kind == "number"]


def _shifted(tokens: Sequence[Token], by: int) -> dict[int, int]:
    """The largest number of every side made larger by as much, by its place."""
    new: dict[int, int] = {}
    cuts = [-1, *(at for at, token in enumerate(tokens) if token.kind == "relation"), len(tokens)]
    for low, high in pairwise(cuts):
        side = [(at, int(token.value)) for at, token in _numbers(tokens) if low < at < high]
        if side:  # else it is only a gap
            at, largest = max(side, key=lambda placed: placed[1])
            new[at] = largest + by
    return new


def _written(lines: Sequence[tuple[str, Sequence[Token]]], new: Sequence[dict[int, int]]) -> tuple[str, ...]:
    """The statements with other numbers in some places."""
    return tuple(
        _replaced(text, tokens, {at: written(number) for at, number in numbers.items()})
        for (text, tokens), numbers in zip(lines, new, strict=True)
    )


def _replaced(text: str, tokens: Sequence[Token], new: dict[int, str]) -> str:
    for at in sorted(new, reverse=True):
        text = text[: tokens[at].start] + new[at] + text[tokens[at].end :]
    return text


def _with_equal_only(offered: Version) -> Iterator[Version]:
    """The same without < and >, for a year that does not know them: = and ≠ take their place."""
    task, context, why = offered
    lines = [tuple(read_tokens(text, COMPARED)) for text in task.statements]
    if any(token.kind == "relation" and token.text in "<>?" for tokens in lines for token in tokens):
        statements = tuple(
            _equal_or_not(task, context, text, tokens) for text, tokens in zip(task.statements, lines, strict=True)
        )
        signs: tuple[Sign, ...] = ("=", "≠")
        yield task.with_statements(statements).with_signs(signs), context, f"{why} Only = and ≠ are used."


def _equal_or_not(task: CompareTask, context: Context, text: str, tokens: Sequence[Token]) -> str:
    """The line with = or ≠ for each < and >, whichever leaves it as true or as untrue as it was."""
    wanted = _pattern(task.with_statements((text,)), context)
    unknown = [at for at, token in enumerate(tokens) if token.kind == "relation" and token.text in "<>"]
    for sign in "≠=":
        changed = _replaced(text, tokens, dict.fromkeys(unknown, sign))
        if _pattern(task.with_statements((changed,)), context) == wanted:
            return changed
    return text
