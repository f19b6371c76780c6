"""Which box of the form a problem belongs beside, by the place that the check gives."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import yaml

from ..check.field_missing import RULE as FIELD_MISSING
from ..model.problem import Problem
from ..parse.yaml_text import BrokenYaml, compose
from .control import id_under
from .page_text import FRONT, PageText

_Spot = tuple[int, int]


@dataclass(frozen=True, slots=True)
class _Stretch:
    """From where to where a value stands, in lines and columns from 0, and its box."""

    start: _Spot
    end: _Spot
    id: str


def box_of(problem: Problem, page: PageText) -> str:
    """The id of the box a problem belongs beside, or of the narrowest that would hold it; empty for the page itself."""
    place, front = problem.place, page.front
    if problem.rule == FIELD_MISSING.name:
        return _missing(problem)
    if front is not None and place.line < page.body_line:
        return _narrowest(front, (place.line - 2, place.column - 1), FRONT)
    line = place.line - page.body_line
    for at, section in enumerate(page.sections):
        if not section.first <= line < section.last:
            continue
        for number, part in enumerate(section.parts):
            if part.first <= line < part.last:
                if part.number is None:
                    return f"words-{at}-{number}"
                id = f"activity-{part.number}"
                return _narrowest(part.text, (line - part.first - 1, place.column - 1), id)
        return f"section-{at}"
    return ""


def _missing(problem: Problem) -> str:
    """The box of a field that is not there, by the words of its rule: the place is only that of what should hold it."""
    _, name, *inside = problem.message.split('"')
    steps = (
        [f"{int(step) - 1}" if step.isdecimal() else step for step in inside[1].split(".")] if len(inside) > 1 else []
    )
    return ".".join((FRONT, *steps, name))


def _narrowest(text: str, at: _Spot, id: str) -> str:
    try:
        node = compose(text)
    except BrokenYaml:
        return id
    best = id
    for stretch in _stretches(node, id):
        if stretch.start <= at < stretch.end:
            best = stretch.id  # what is inside comes after what holds it
    return best


def _stretches(node: yaml.Node | None, id: str) -> Iterator[_Stretch]:
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            inner = id_under(id, key.value)
            yield _Stretch(_start(key), max(_end(value), _end(key)), inner)
            yield from _stretches(value, inner)
    elif isinstance(node, yaml.SequenceNode):
        for number, item in enumerate(node.value):
            inner = id_under(id, number)
            yield _Stretch(_start(item), _end(item), inner)
            yield from _stretches(item, inner)


def _start(node: yaml.Node) -> _Spot:
    return (node.start_mark.line, node.start_mark.column)


def _end(node: yaml.Node) -> _Spot:
    """Past the end; a value that is empty has one sign all the same."""
    start, end = _start(node), (node.end_mark.line, node.end_mark.column)
    return end if end > start else (start[0], start[1] + 1)
