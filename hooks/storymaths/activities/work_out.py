"""One activity worked out: read, set in its context, solved, checked, and bent to other years."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from ..model.activity import Context, Solution
from ..model.bend import YearBend
from ..model.book import Book
from ..model.fields import year_name
from ..model.problem import Place, Problem
from ..model.reference import Reference
from .bending import Version, year_version
from .bent import bend_versions
from .block import Block, read_block
from .claims import claim_fault, claims_none
from .context import build_context
from .fit import misfits, too_early, years_that_fit
from .kind import ActivityFields, Kind, Unsolvable
from .memory import ActivityInput, Memory
from .other_numbers import OtherNumbers
from .own_words import in_own_words
from .revalue import SAME_NUMBERS
from .rules import BEYOND_YEAR, CANNOT_BE, CLAIM_WRONG, NO_ANSWER, RULES, TOO_MANY
from .solving import solve
from .worked import AnyWorked, Worked

_RULES = {rule.name: rule for rule in RULES}


@dataclass(frozen=True, slots=True)
class WorkedOut:
    """An activity, as far as it could be worked out, and everything wrong with it."""

    kind: Kind[Any] | None
    fields: ActivityFields | None
    context: Context | None
    solution: Solution | None
    versions: Mapping[int, Version]
    """The versions for other years, and for its own where the author names it."""
    problems: tuple[Problem, ...]
    raw: Mapping[str, Any] = field(default_factory=dict)
    refused: tuple[Unsolvable, ...] = ()
    """What the bends of its page ask for and cannot be; told with their places in that page's front matter."""
    others: OtherNumbers | None = field(default=None, compare=False)
    """What searches for further sets of numbers, once they are asked for."""

    @property
    def other_sets(self) -> tuple[Version, ...]:
        """Further sets of numbers in its own year, none of them the story's; none where something is wrong with it."""
        return () if self.others is None or self.problems else self.others.sets

    @property
    def done(self) -> AnyWorked | None:
        """The activity worked out; None where it could not be."""
        if self.kind is None or self.fields is None or self.context is None or self.solution is None:
            return None
        return Worked(self.kind, self.fields, self.context, self.solution, self.versions)

    def years_it_fits(self, reference: Reference) -> list[int]:
        """The years it could be set in, youngest first; none where it could not be worked out."""
        if self.fields is None or self.context is None or self.solution is None:
            return []
        return years_that_fit(self.fields, self.solution.demands, self.context.year, reference)

    @property
    def year(self) -> int | None:
        """The year it is for."""
        return self.context.year.year if self.context else None


def work_out(
    text: str,
    path: str,
    line: int,
    book: Book | None,
    year: int,
    reference: Reference,
    *,
    folder: str = "",
    bends: Mapping[int, YearBend] | None = None,
    signs: tuple[str, ...] = (),
    unmet: tuple[str, ...] = (),
    judged: bool = True,
    memory: Memory[WorkedOut] | None = None,
) -> WorkedOut:
    """Works out the activity whose first line stands on ``line`` of ``path``. Gives all problems at once.

    ``year`` holds where the activity names none. ``folder`` is the book's inside ``content/``. ``bends`` are those of
    its page, ``signs`` what it chooses of those at choice in its year, and ``unmet`` those that come later in its book.
    With ``judged`` off it is held against a year only if it names one itself. What ``memory`` holds is not solved again.
    """
    book_key = repr((book.title, book.cast, book.facts)) if book else ""
    bends_key = repr(bends) if bends else ""
    asked = ActivityInput(
        text,
        year,
        bends_key,
        folder,
        signs,
        unmet,
        judged,
        book_key,
        reference.fingerprint,
        book,
        reference,
        bends or {},
    )
    worked = _work_out(asked) if memory is None else memory.recall(asked, _work_out)
    return replace(worked, problems=tuple(_move(problem, path, line) for problem in worked.problems))


def _move(problem: Problem, path: str, line: int) -> Problem:
    return replace(problem, place=Place(path, problem.place.line + line - 1, problem.place.column))


def _work_out(asked: ActivityInput) -> WorkedOut:
    block = read_block(asked.text)
    if isinstance(block, list):
        return WorkedOut(None, None, None, None, {}, tuple(sorted(block)))
    kind, fields, reference = block.kind, block.fields, asked.reference
    limits = reference.years[asked.year if fields.year is None else fields.year]
    if asked.signs:
        limits = limits.held_to(None, asked.signs, None)
    if asked.unmet and fields.year is None:
        limits = limits.before(asked.unmet)
    context = build_context(fields, asked.book, asked.folder, limits, reference)
    if isinstance(context, list):
        problems = sorted(as_problem(error, block) for error in context)
        return WorkedOut(kind, fields, None, None, {}, tuple(problems), block.raw)
    try:
        solution = in_own_words(fields, solve(kind, fields, context))
    except Unsolvable as error:
        return WorkedOut(kind, fields, context, None, {}, (as_problem(error, block),), block.raw)
    problems = [*_problems(block, solution, context, asked)]
    versions = _versions(block, context, solution, asked, problems)
    bent, refused = bend_versions(block, context, solution, asked.bends, reference)
    found = {**versions, **bent}
    others = OtherNumbers(kind, fields, context, solution, reference, block.raw)
    return WorkedOut(kind, fields, context, solution, found, tuple(sorted(problems)), block.raw, tuple(refused), others)


def as_problem(error: Unsolvable, block: Block) -> Problem:
    """The problem an author reads, at its place in the activity’s text."""
    rule = _RULES.get(error.rule, CANNOT_BE)
    return rule.problem(block.place(error.loc), error.message, error.fix)


def _problems(block: Block, solution: Solution, context: Context, asked: ActivityInput) -> Iterator[Problem]:
    """What is wrong with an activity that could be solved."""
    fields, count = block.fields, len(solution.answers)
    fault = claim_fault(block.kind, fields, solution)
    if fault:
        yield CLAIM_WRONG.problem(block.place(("answers",)), *fault)
    elif not count and not claims_none(fields):
        message = f"There is no answer. {solution.note}".rstrip()
        yield NO_ANSWER.problem(
            block.place(("kind",)), message, "change the numbers, or write answers: 0 if that is the point."
        )
    if count > fields.at_most:
        message = f"There are {count} answers, and at_most is {fields.at_most}."
        loc = ("at_most",) if "at_most" in fields.model_fields_set else ("kind",)
        yield TOO_MANY.problem(
            block.place(loc), message, "ask for less, or raise at_most if a class can list them all."
        )
    reasons: list[str] = []
    if asked.judged or fields.year is not None:
        reasons += too_early(fields, context.year, asked.reference)
        reasons += misfits(solution.demands, context.year, asked.reference)
    if reasons:
        message = f"It is for {year_name(context.year.year)}, and {'; '.join(reasons)}."
        loc = ("year",) if "year" in fields.model_fields_set else ("kind",)
        yield BEYOND_YEAR.problem(
            block.place(loc), message, "use smaller or simpler numbers, or give it to an older year."
        )


def _versions(
    block: Block, context: Context, solution: Solution, asked: ActivityInput, problems: list[Problem]
) -> Mapping[int, Version]:
    """The versions of the years the activity itself names, with a problem for each that cannot be."""
    fields, own = block.fields, context.year.year
    if claims_none(fields) and solution.answers:
        return {}  # what is to come out is not known until the claim is put right, and it has been told
    versions: dict[int, Version] = {}
    for year, pins in sorted(fields.years.items()):
        if year == own and not pins:
            versions[year] = Version(fields, context, solution, SAME_NUMBERS, same=True)
            continue
        try:
            version = year_version(block.kind, fields, context, solution, year, pins, asked.reference, block.raw)
        except Unsolvable as error:
            problems.append(as_problem(error, block))
            continue
        same = version.is_same(fields, context)
        versions[year] = replace(version, solution=in_own_words(version.fields, version.solution), same=same)
        fault = claim_fault(block.kind, version.fields, version.solution)
        if fault:
            problems.append(CLAIM_WRONG.problem(block.place(("years", year, "answers")), *fault))
    return versions
