"""Numbers in a row: the rule they follow, every answer, and what it demands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from ...model.activity import GAP, Answer, Cards, Context, Figure, Line, Solution, Task
from ...model.demands import Demands, Operation, amounts
from ...model.figures.amounts import Towers, Track
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..ordinals import ordinal
from ..saying import ending_places, listed, written
from ..sentences import cards_for
from ..tables_used import tables_of
from . import say
from .number_rules import Rule, Steps, Times, mistakes_in, place_of, rule_through, terms_needed
from .say_errors import find_error
from .steps import Working, count_to, numbers_of, operations_of, step_to, way_to
from .tasks import (
    FilledRow,
    GapsTask,
    Mistake,
    MistakeTask,
    PlacesTask,
    RowAnswer,
    RowTask,
    SaidNumber,
    SaidTask,
    TermAt,
)

_FURTHEST_TIMES = 40
"""So far along, doubling is long past ten million."""
_TALLEST, _MOST_TOWERS = 24, 8
"""Towers of squares are drawn up to this height and number."""
_PLACES = 3
"""Decimal places that are written."""


@dataclass(frozen=True, slots=True)
class Found:
    """An answer, the rule behind it, and how its terms are worked out."""

    value: RowAnswer
    rule: Rule
    workings: tuple[Working, ...]


def solve_row(task: RowTask, context: Context) -> Solution[RowAnswer]:
    """Every answer, in the order of the places or numbers asked about. Raises ``Unsolvable``."""
    if task.step is not None and task.rule != "step":
        message = f"A step is given, and the rule is {task.rule}."
        raise Unsolvable(("step",), message, "leave out the step, or the rule.", "activity-broken")
    if isinstance(task, MistakeTask):
        found, rule = _find_mistakes(task, context)
        rule = replace(rule, places=task.decimals)
        found = [replace(one, rule=replace(one.rule, places=task.decimals)) for one in found]
    else:
        rule = replace(_find_rule(task), places=task.decimals)
        found = list(_find_answers(task, rule, context))
    values = [one.value for one in found]
    goes_on = isinstance(task, (PlacesTask, SaidTask))
    return Solution(
        task=Task(
            say.ask_for(task, rule),
            lines=(_write_line(task, goes_on),),
            figures=_draw(task),
            asks_after=_ask_after(task),
        ),
        answers=tuple(
            Answer(
                say.say_answer(one.value, task.decimals),
                say.explain(one.value, one.rule, one.workings, context.year),
                one.value,
            )
            for one in found
        ),
        demands=_demands(task, rule, found, context.year),
        steps=1 + (len(task.gaps) if isinstance(task, GapsTask) else 1),
        note=say.explain_all(task, rule, values),
        likely_error=find_error(task, rule, values),
        cards=_lay(task, values) if task.gaps else None,
    )


def _find_rule(task: RowTask) -> Rule:
    known, needed = task.known, terms_needed(task.rule, task.step)
    if len(known) < needed:
        count = f"{len(known)} {'term is' if len(known) == 1 else 'terms are'} known"
        message = f"{count}, and a rule of this sort is settled by {needed}."
        raise Unsolvable(("terms",), message, "write more of the terms, or the step.")
    rule = rule_through(known, task.rule, task.step)
    if rule is None:
        shown = listed([written(term, _PLACES) for term in known.values()])
        why = f": {say.explain_uneven(known)}" if task.rule == "step" else ""
        message = f"{shown} do not follow one rule of this sort{why}."
        raise Unsolvable(("terms",), message, "correct a term, choose another rule, or ask for the mistake.")
    return rule


def _find_answers(task: GapsTask | PlacesTask | SaidTask, rule: Rule, context: Context) -> Iterator[Found]:
    match task:
        case GapsTask():
            if not task.gaps:
                message = "No number is missing, so there is nothing to find."
                fix = "put ___ instead of a term, or add places, said or mistake."
                raise Unsolvable(("terms",), message, fix, "activity-broken")
            terms = tuple(_term_at(rule, place, context, "terms") for place in range(1, len(task.terms) + 1))
            filled = FilledRow(terms, tuple(terms[place - 1] for place in task.gaps))
            yield Found(filled, rule, tuple(step_to(rule, place) for place in task.gaps))
        case PlacesTask():
            for place in task.places:
                term = _term_at(rule, place, context, "places")
                yield Found(TermAt(place, term), rule, (way_to(rule, place, context.year),))
        case SaidTask():
            if isinstance(rule, Times) or rule.grows:
                message = "Which numbers are said can be asked of a count in equal steps only."
                raise Unsolvable(("said",), message, "leave out the rule, or ask for places.", "activity-broken")
            for number in task.said:
                at = place_of(rule, number)
                if at is not None:
                    yield Found(SaidNumber(number, at), rule, (count_to(rule, at),))


def _term_at(rule: Rule, place: int, context: Context, loc: str) -> Fraction:
    if isinstance(rule, Times) and place > _FURTHEST_TIMES:
        raise Unsolvable((loc,), f"Place {place:,} is too far along to work out.", "ask for an earlier place.")
    term = rule.at(place)
    if abs(term) > context.caps.number or term.denominator > context.caps.number:
        message = f"The {ordinal(place)} number would be beyond {context.caps.number:,}."
        raise Unsolvable((loc,), message, "ask for an earlier place, or use smaller numbers.")
    return term


def _find_mistakes(task: MistakeTask, context: Context) -> tuple[list[Found], Rule]:
    """What is wrong, if anything is, and the rule the row follows when it is put right."""
    known = task.known
    needed = terms_needed(task.rule, task.step) + 2
    if len(known) < needed:
        message = f"With fewer than {needed} known terms nobody can tell which is wrong."
        raise Unsolvable(("terms",), message, "write more terms.")
    mistakes = mistakes_in(known, task.rule, task.step)
    rule = mistakes[0][1] if mistakes else rule_through(known, task.rule, task.step)
    if rule is None:
        message = "No single change gives all the numbers one rule of this sort."
        raise Unsolvable(("terms",), message, "leave one term wrong and no more, or choose another rule.")
    found = []
    for place, right in mistakes:
        value = Mistake(place, known[place], _term_at(right, place, context, "terms"))
        found.append(Found(value, right, (step_to(right, place),)))
    return found, rule


def _demands(task: RowTask, rule: Rule, found: Sequence[Found], year: YearLimits) -> Demands:
    workings = [working for one in found for working in one.workings]
    calculations = [one for working in workings for one in operations_of(working)]
    numbers = {*task.known.values(), *_numbers_asked(task, rule)}
    for one in found:
        numbers.update(_numbers_answered(one.value))
        if isinstance(one.value, (FilledRow, Mistake)):
            numbers.update(say.numbers_in_rule(one.rule))
        else:
            numbers.add(Fraction(one.value.place))
    numbers.update(number for working in workings for number in numbers_of(working))
    spoken = [one for one in calculations if say.is_in_words(one, year)]
    signs = {sign for one in calculations if one not in spoken for sign in (one.sign, "=")}
    decimals = any(0 < (ending_places(number) or 0) <= task.decimals for number in numbers)
    products = [(one.numbers[0], one.numbers[1]) for one in calculations if one.sign == "×"]
    return Demands(
        amounts=amounts(numbers),
        operations=(*(one for one in calculations if one not in spoken), *_reckoned(task, rule, found, year)),
        signs=frozenset(signs | ({"."} if decimals else set())),
        words=say.find_words(task, [(one.value, one.rule) for one in found], workings),
        tables=tables_of(products, year),
        counting=_is_count(rule, year),
    )


def _is_count(rule: Rule, year: YearLimits) -> bool:
    """Whether the row goes on in steps that children of the year count in."""
    return not isinstance(rule, Times) and not rule.grows and abs(rule.step) in year.practice.sequence.counts_in


def _reckoned(task: RowTask, rule: Rule, found: Sequence[Found], year: YearLimits) -> Iterator[Operation]:
    """Steps told in words that the year does not count in, so that it must add or take away though no sign is written."""
    practice = year.practice.sequence
    if practice.tells_steps == "in signs" or isinstance(rule, Times) or _is_count(rule, year):
        return
    last = [one.value.place for one in found if not isinstance(one.value, FilledRow)]
    for place in dict.fromkeys((*range(2, len(task.terms) + 1), *(place for place in last if place > 1))):
        yield step_to(rule, place)


def _numbers_asked(task: RowTask, rule: Rule) -> Iterator[Fraction]:
    match task:
        case PlacesTask():
            yield from map(Fraction, task.places)
        case SaidTask() if isinstance(rule, Steps):
            yield from (*task.said, rule.first, abs(rule.step))


def _numbers_answered(value: RowAnswer) -> tuple[Fraction, ...]:
    match value:
        case FilledRow():
            return value.gaps
        case TermAt():
            return (value.term,)
        case SaidNumber():
            return (value.said,)
        case Mistake():
            return tuple(one for one in (value.here, value.should_be) if isinstance(one, Fraction))


def _lay(task: RowTask, values: Sequence[RowAnswer]) -> Cards:
    """The row and the answers as cards; not the places, which are counted."""
    answered = (number for value in values for number in _numbers_answered(value))
    return cards_for([*task.known.values(), *answered], places=task.decimals)


def _write_line(task: RowTask, goes_on: bool) -> Line:
    row = ", ".join(say.write_terms(task))
    return Line(tuple(f"{row}, …".split(GAP) if goes_on else row.split(GAP)))


def _draw(task: RowTask) -> tuple[Figure, ...]:
    row = draw_track(["" if term == GAP else term for term in say.write_terms(task)])
    heights = [term if isinstance(term, Fraction) else Fraction(0) for term in task.terms]
    small = all(height.denominator == 1 and 0 <= height <= _TALLEST for height in heights)
    if task.rule == "step" or not small or len(heights) > _MOST_TOWERS or isinstance(task, MistakeTask):
        return (row,)
    inside = listed([str(height) if height else "one to be found" for height in heights])
    return (row, Figure(Towers(tuple(map(int, heights))), f"Towers of squares: {inside}."))


def _ask_after(task: RowTask) -> tuple[str, ...]:
    if isinstance(task, SaidTask):
        return tuple(say.number(one, task.decimals) for one in task.said)
    return ask_after(task.places) if isinstance(task, PlacesTask) else ()


def ask_after(places: Sequence[int]) -> tuple[str, ...]:
    """Places of a row as they are asked after: ``the 8th``."""
    return tuple(f"the {ordinal(place)}" for place in places)


def draw_track(cells: Sequence[str], repeats: int = 0) -> Figure:
    """The numbers or things in boxes, an empty text an empty box; of a row that repeats, a repeat to a line."""
    inside = listed([cell or "an empty box" for cell in cells])
    return Figure(Track(tuple(cells), repeats), f"Boxes in a row: {inside}.")
