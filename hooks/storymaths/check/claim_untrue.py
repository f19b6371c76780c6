"""Claims in words that do not hold: of numbers, shapes, units, times."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from ..claims.find import FalseClaim, find_false_claims
from ..claims.told_tables import untrue_rows
from ..model.body import Table
from ..model.collection import Collection
from ..model.problem import Place, Problem
from ..model.prose import Prose
from ..model.rule import Rule
from ..parse.number_sentence import find_number_sentences, is_true

RULE = Rule(
    name="claim-untrue",
    says="What a page says in words of numbers, shapes, units and times is true, or is marked as a mistake to talk about.",
    why="A sentence is copied on to the board as readily as a sum.",
    source="Each class of claim has its own, as the program's developers find it beside the class.",
    wrong="A triangle has four sides, and 27 is even.",
    right="A triangle has three sides, and 27 is odd. Or, on purpose: [27 is even]{wrong}",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each claim that does not hold. Questions, conditions and children's mistakes are left alone."""
    for page in collection.documents:
        claims = find_false_claims(page.prose, collection.reference.facts)
        yield from problems(claims, page.prose, page.place_in_prose)
        for table in page.content.every(Table) if "|" in page.body else ():
            for line, words, so in untrue_rows(table):
                message, fix = f'"{words}" is not so in this row: {so}.', "put right the row."
                yield RULE.problem(page.place_on_line(line, words), message, fix)


def problems(claims: Iterable[FalseClaim], prose: Prose, place: Callable[[int, str], Place]) -> Iterator[Problem]:
    """A problem for each claim found in a prose, at its ``place``, that the reader of number sentences has not told."""
    for claim in claims:
        if not _is_untrue_as_a_sum(claim, prose):
            yield RULE.problem(
                place(claim.start, claim.words),
                f'"{claim.words}" is not true ({claim.of}): {claim.so}.',
                f"correct it, or mark a mistake made on purpose: [{claim.words}]{{wrong}}",
            )


def _is_untrue_as_a_sum(claim: FalseClaim, prose: Prose) -> bool:
    """Whether the reader of number sentences has told it already."""
    end = claim.start + len(claim.words)
    return any(
        sentence.start < end and claim.start < sentence.start + len(sentence.text) and is_true(sentence) is False
        for sentence in find_number_sentences(prose.text)
    )
