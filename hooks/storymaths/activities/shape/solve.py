"""Finds every answer about shapes, and what they demand: counts, places, fits, verdicts, and half figures completed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from ...model.activity import Answer, Context, Line, Solution, Task
from ...model.demands import Demands, amounts, number_sentences, operation
from ..kind import Unsolvable
from ..sort.rules import SortRule
from . import say
from .claims import Claim
from .mirror import count_shaded, join, mirror, read_half
from .named_shapes import Shapes, shapes_of
from .objections import Objection, find_objection
from .set import SAID, SOLID_COUNTS, WORDS, parts_of
from .solve_making import find_coverings
from .solve_naming import name_shapes
from .solve_sorting import find_fitting, sort_shapes
from .tasks import (
    ClaimTask,
    ClueTask,
    Counts,
    CountTask,
    HalfTask,
    MakeTask,
    NameTask,
    ShapeAnswer,
    ShapeTask,
    SortTask,
    Verdict,
    WholeFigure,
)


def solve(task: ShapeTask, context: Context) -> Solution[ShapeAnswer]:
    """Every shape counted or sorted, every shape that fits, every claim judged, in the order given."""
    match task:
        case CountTask(count=()):
            fix = "give just one of count, name, by, clues, claims, half or make."
            raise Unsolvable(("count",), "Nothing is asked about the shapes.", fix)
        case CountTask():
            return _count(task, _shapes(task, task.count, context))
        case NameTask():
            return name_shapes(task, _shapes(task, (), context))
        case SortTask():
            return sort_shapes(task, _shapes(task, task.by, context))
        case ClueTask():
            return find_fitting(task, _shapes(task, task.clues, context))
        case ClaimTask():
            return _judge_all(task, context)
        case HalfTask():
            return _complete(task, context)
        case MakeTask():
            return find_coverings(task, context)


def _shapes(
    task: CountTask | NameTask | SortTask | ClueTask, rules: Iterable[str | SortRule], context: Context
) -> Shapes:
    """The shapes of a task, turned where its author says so."""
    return replace(shapes_of(task.shapes, task.fact, rules, context), turned=task.turned)


def _count(task: CountTask, shapes: Shapes) -> Solution[Counts]:
    """The properties of each shape, in the order given."""
    demands = shapes.demands(task.count)
    for index, prop in enumerate(task.count):
        if prop not in shapes.properties:
            what = "Solids" if shapes.solid else "Flat shapes"
            fix = f"count {say.name_properties(shapes.properties, 'or')}."
            raise Unsolvable(("count", index), f"{what} have no {SAID[prop]} to count.", fix)
        if prop in task.count[:index]:
            raise Unsolvable(("count", index), f"The {SAID[prop]} are counted already.", "take one of them out.")
    adds = shapes.context.year.knows("+")
    answers = []
    for shape, title in zip(shapes.shapes, shapes.titles, strict=True):
        counts: dict[str, int] = {}
        for prop in task.count:
            parts = parts_of(shape)[prop]
            if parts is None:
                message = f"The {SAID[prop]} of a {shape.name} are not counted here: see the set of shapes."
                raise Unsolvable(("count",), message, "leave this shape out, or ask for something else.")
            counts[prop] = sum(parts)
            sums = [operation("+", *parts, counts[prop])] if adds and len(parts) > 1 else []
            # Where there are none, no number is written.
            demands |= number_sentences(*sums) | Demands(amounts(filter(None, [counts[prop]])))
        why = say.explain_counts(shape, counts, adds)
        answers.append(Answer(say.write_counts(title, counts), why, Counts(shape.name, counts)))
    return Solution(
        task=Task(
            say.ask_to_count(task.count),
            table=say.tabulate(shapes, task.count),
            figures=(shapes.draw(),),
        ),
        answers=tuple(answers),
        demands=demands,
        steps=len(task.count),
        note=say.explain_counting(task.count),
        likely_error=say.err_in_counting(shapes, task.count),
    )


def _judge_all(task: ClaimTask, context: Context) -> Solution[Verdict]:
    """A verdict on each claim, in the order given."""
    judged = [_judge(claim, index, context) for index, claim in enumerate(task.claims)]
    solid = any(claim.solid for claim in task.claims)
    demands, answers = Demands(), []
    for claim, (verdict, why) in zip(task.claims, judged, strict=True):
        words = tuple(WORDS[prop] for prop in claim.given)
        demands |= Demands(amounts(claim.given.values()), words=words) | why.demands
        answers.append(Answer(say.write_verdict(claim, verdict), why.says, verdict))
    cannot = next(
        (
            claim
            for claim, (verdict, _) in zip(task.claims, judged, strict=True)
            if not verdict.can and len(claim.given) > 1 and claim.is_half_true()
        ),
        None,
    )
    return Solution(
        task=Task(
            say.ask_about_claims(solid),
            context.characters[:1],
            lines=tuple(Line((f"{say.write_claim(claim)}.",)) for claim in task.claims),
        ),
        answers=tuple(answers),
        demands=demands,
        steps=max(len(claim.given) for claim in task.claims),
        note=say.explain_limits(solid),
        likely_error=say.err_in_claim(cannot) if cannot else None,
    )


def _judge(claim: Claim, index: int, context: Context) -> tuple[Verdict, Objection]:
    """The verdict and why. Raises ``Unsolvable`` where nothing, too much, or something undecided is claimed."""
    loc, given = ("claims", index), claim.given
    if not given or (claim.solid and given.keys() - SOLID_COUNTS):
        message = "The claim mixes counts of flat shapes and of solids." if given else "The claim is empty."
        raise Unsolvable(loc, message, "say for example {sides: 4, right_angles: 4} or {faces: 6, edges: 12}.")
    shapes = claim.find_shapes()
    against = None if shapes else find_objection(claim, context.year)
    if not shapes and not against and {"right_angles", "symmetry"} <= given.keys():
        message = "Right angles and lines of symmetry together cannot be decided for this shape."
        raise Unsolvable(loc, message, "claim one of the two.")
    return Verdict(index + 1, not against, shapes), against or Objection(say.explain_possible(shapes))


def _complete(task: HalfTask, context: Context) -> Solution[WholeFigure]:
    """The one figure that is symmetrical."""
    rows = read_half(task.half, context.caps.cells)
    whole = join(rows, mirror(rows, task.mirror), task.mirror)
    count, adds = count_shaded(rows), context.year.knows("+")
    blank = join(rows, ["." * len(row) for row in rows], task.mirror)
    sums = number_sentences(operation("+", count, count, 2 * count)) if adds else Demands(amounts([2 * count]))
    answer = Answer(say.write_squares(2 * count), say.explain_half(count, adds), WholeFigure(whole, 2 * count))
    return Solution(
        task=Task(
            say.ask_for_half(task.mirror),
            context.characters[:1],
            figures=(say.draw_half(blank, task.mirror, whole=False),),
        ),
        answers=(answer,),
        demands=sums | Demands(words=("symmetrical",)),
        steps=count,
        note=say.ONLY_ONE,
        likely_error=say.err_in_half(join(rows, rows, task.mirror), whole),
        answer_figures=(say.draw_half(whole, task.mirror, whole=True),),
    )
