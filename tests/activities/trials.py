"""Trials every kind of activity must stand: true lines, plain data, drawings, refusals, years."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Any
from xml.etree import ElementTree

import pytest
import yaml
from activities.contexts import a_context, the_reference
from pydantic import ValidationError
from storymaths.activities.fit import misfits, too_early
from storymaths.activities.kind import ActivityFields, Kind, Unsolvable
from storymaths.activities.rules import RULES
from storymaths.model.activity import Context, Figure, Solution
from storymaths.parse.number_sentence import find_number_sentences, is_true
from storymaths.render.figures.table import draw

BAD_NUMBERS = (0, -3, 10**9, "1e400", float("nan"), float("inf"), "seven", "x" * 40, "", [], {}, True, None, "3/0", "²")
_JARGON = re.compile(r"NoneType|Traceback|Fraction\(|WrittenNumber|<class|object at|\bint\b|\bstr\b|dict|tuple")


def read(kind: Kind[Any], data: Mapping[str, Any] | str, year: int = 2) -> tuple[ActivityFields, Context]:
    """Fields and context of an activity written as YAML or as data, its inline cast made characters."""
    told = dict(yaml.load(data, Loader=yaml.CSafeLoader) if isinstance(data, str) else data)
    told = {"kind": kind.name, "title": "A trial", **told}
    fields = kind.schema_for(told).model_validate(told)
    cast = told.get("cast") or {}
    return fields, a_context(cast if isinstance(cast, dict) else {}, fields.year or year)


def solved(kind: Kind[Any], data: Mapping[str, Any] | str, year: int = 2) -> Solution:
    """The solution, having stood every trial that any solution must stand."""
    solution = kind.solve(*read(kind, data, year))
    stands(solution)
    return solution


def begins_in(kind: Kind[Any], data: Mapping[str, Any], first: int) -> None:
    """It fits its first year, and not the year before."""
    reference = the_reference()
    for year in (first, first - 1):
        fields, context = read(kind, data, year)
        limits = reference.years[year]
        reasons = too_early(fields, limits, reference) + misfits(kind.solve(fields, context).demands, limits, reference)
        assert bool(reasons) is (year < first), reasons


def answers_of(kind: Kind[Any], data: Mapping[str, Any] | str, year: int = 2) -> list[dict[str, Any]]:
    """The answers as plain data."""
    return [dict(answer.data) for answer in solved(kind, data, year).answers]


def stands(solution: Solution) -> None:
    """Lines are true, data is plain, drawings can be drawn, and nothing is left unsaid."""
    assert solution.task.ask
    assert solution.steps >= 0
    assert solution.answers or solution.note
    for answer in solution.answers:
        assert answer.says
        assert answer.worked
        assert _is_plain(answer.data), answer.data
    for text in _texts(solution):
        for sentence in find_number_sentences(text):
            # Of a price ("4 kg comes to £6") nothing can be said; all else that is read must hold.
            assert is_true(sentence) is True or sentence.verdict.why == "it is a price", text
        assert not re.search(r"Fraction|None|\bTrue\b|\bFalse\b|  |\{|\}", text), text
        assert "-" not in re.sub(r"(?<=[A-Za-z0-9])-(?=[A-Za-z])", "", text), text
    if solution.likely_error:
        assert solution.likely_error.does
        assert solution.likely_error.gives
    for figure in (*solution.task.figures, *solution.answer_figures):
        drawn(figure)


def drawn(figure: Figure) -> ElementTree.Element:
    """The figure as it is drawn: well-formed, unscripted, big enough to read."""
    assert figure.alt
    text = draw(figure.data)
    root = ElementTree.fromstring(text)
    assert root.tag == "svg"
    assert root.get("role") == "presentation"
    assert root.get("class") == f"figure figure-{figure.data.NAME}"
    _, _, width, height = map(float, (root.get("viewBox") or "").split())
    for element in root.iter():
        assert not {"id", "style", "onload", "href"} & set(element.keys())
        assert element.tag != "script"
        for name, value in element.items():
            if name in ("x", "x1", "x2", "cx", "y", "y1", "y2", "cy"):
                assert -0.01 <= float(value) <= (width if "x" in name else height) + 0.01, (figure, text)
        if element.tag == "text":
            assert float(element.get("font-size", "0")) >= 14 * width / 320
    return root


def fits(solution: Solution, year: int) -> bool:
    """Whether a year has met all that the solution uses."""
    reference, demands = the_reference(), solution.demands
    limits = reference.years[year]
    symbols = reference.symbols_by(year) | {"≠"}
    return (
        all(_is_met(number, year) for number in (*demands.numbers, *demands.calculated))
        and all(abs(number) <= limits.largest_calculated for number in demands.calculated)
        and demands.signs <= symbols
        and demands.units <= reference.units_by(year)
        and demands.tables <= set(limits.tables)
        and all(reference.words[word].year <= year for word in demands.words if word in reference.words)
    )


def _is_met(number: Fraction, year: int) -> bool:
    limits = the_reference().years[year]
    whole_places = (number * 10**limits.decimal_places).denominator == 1
    return (
        abs(number) <= limits.largest_number
        and (number >= 0 or limits.below_zero)
        and (whole_places or number.denominator in the_reference().denominators_by(year))
    )


def first_version(
    kind: Kind[Any], data: Mapping[str, Any] | str, year: int, home: int = 2
) -> tuple[ActivityFields, Context, str, Solution] | None:
    """The version a caller would take: the first that fits the year with 1 to 12 answers."""
    fields, context = read(kind, data, home)
    limits = the_reference().years[year]
    for tried, (changed, there, why) in enumerate(kind.versions(fields, context, limits)):
        assert tried < 5000
        try:
            solution = kind.solve(changed, replace(there, year=limits))
        except Unsolvable:
            continue
        if fits(solution, year) and 1 <= len(solution.answers) <= 12:
            stands(solution)
            return changed, there, why, solution
    return None


def refused(kind: Kind[Any], data: Mapping[str, Any] | str, year: int = 2, rule: str | None = None) -> str:
    """The message of a refusal in a teacher's words."""
    with pytest.raises((Unsolvable, ValidationError)) as caught:
        kind.solve(*read(kind, data, year))
    if isinstance(caught.value, Unsolvable):
        _is_told_plainly(caught.value)
        assert rule is None or caught.value.rule == rule
    else:
        # What a schema refuses reaches its author as activity-broken.
        assert rule in (None, "activity-broken")
    return str(caught.value)


def never_breaks(kind: Kind[Any], data: Mapping[str, Any], year: int = 2) -> Solution | None:
    """The solution, or None where it was refused in plain words, whatever the data."""
    try:
        solution = kind.solve(*read(kind, data, year))
    except ValidationError:
        return None
    except Unsolvable as problem:
        _is_told_plainly(problem)
        return None
    stands(solution)
    return solution


def spoilt(data: Mapping[str, Any], fields: Iterator[str] | list[str] | tuple[str, ...]) -> Iterator[dict[str, Any]]:
    """The activity with each of its fields in turn made bad, and each of the items of its lists."""
    for name in fields:
        for bad in BAD_NUMBERS:
            yield {**data, name: bad}
            yield {**data, name: [bad]}
            value = data.get(name)
            if isinstance(value, list) and value:
                yield {**data, name: [bad, *value[1:]]}
            if isinstance(value, dict) and value:
                yield {**data, name: {**value, next(iter(value)): bad}}


def _is_told_plainly(problem: Unsolvable) -> None:
    assert problem.rule in {rule.name for rule in RULES}
    for text in (problem.message, problem.fix):
        assert text
        assert not _JARGON.search(text), text
    assert problem.message[-1] in ".?!"


def _texts(solution: Solution) -> Iterator[str]:
    yield solution.task.ask
    yield solution.note
    yield from map(str, solution.task.lines)
    for answer in solution.answers:
        yield answer.says
        yield answer.worked


def _is_plain(value: Any) -> bool:
    if isinstance(value, (str, bool, int)):
        return True
    if isinstance(value, Mapping):
        return all(isinstance(key, str) and _is_plain(item) for key, item in value.items())
    return isinstance(value, (list, tuple)) and all(_is_plain(item) for item in value)
