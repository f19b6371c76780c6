"""What a section says of the answers of its activity, held against what is found: how many ways, and which verdict."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ..claims.ways import told_verdicts, told_ways
from ..model.body import Block, Body
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import Problem
from ..parse.body import read_text
from .always_sometimes_never.tasks import Verdict
from .rules import CLAIM_WRONG, WAYS_MISCOUNTED
from .worked import AnyWorked

_FINDS_ALL = re.compile(
    r"\b(?:every way|all the ways|both ways|find (?:every|all|both|them all)|how many (?:different )?ways|all of them)\b",
    re.IGNORECASE,
)


def check_told(page: Document[PageFields], worked: dict[int, AnyWorked]) -> Iterator[Problem]:
    """A problem for each count or verdict that is not what the section's activity comes to.

    ``worked`` holds the activities of the page by the line of their fence.
    """
    content = page.content
    yield from _miscounted_elsewhere(page, worked)
    for blocks in (content.opening, *(section.blocks for section in content.sections)):
        found = [worked[fence.line] for fence in Body(blocks).activities if fence.line in worked]
        if found:
            yield from _miscounted(page, blocks, found)
            yield from _misjudged(page, blocks, found)


def _finds_all(worked: AnyWorked) -> bool:
    return _FINDS_ALL.search(worked.fields.ask or "") is not None


def _miscounted(page: Document[PageFields], blocks: Sequence[Block], found: Sequence[AnyWorked]) -> Iterator[Problem]:
    counts = [len(one.solution.answers) for one in found if _finds_all(one)]
    for told in told_ways(blocks):
        right = told.listed if told.listed is not None else counts[0] if len(counts) == 1 else told.says
        if told.says != right and told.says not in counts:
            source = "are listed after it" if told.listed is not None else "the activity beside it finds"
            yield WAYS_MISCOUNTED.problem(
                page.place_on_line(told.line, told.words),
                f'"{told.words}" is not so: {right} {source}.',
                "put right the number, the list or the activity.",
            )


def _miscounted_elsewhere(page: Document[PageFields], worked: dict[int, AnyWorked]) -> Iterator[Problem]:
    """Counts told in the front matter, which speaks of every activity of the page; what children may say is left."""
    counts = {len(one.solution.answers) for one in worked.values() if _finds_all(one)}
    for loc, text in page.texts if counts else ():
        if loc[0] == "bends" or {"hear", "says"} & set(loc):
            continue
        for told in told_ways(read_text(text).blocks):
            if told.says not in counts:
                found = " or ".join(map(str, sorted(counts)))
                yield WAYS_MISCOUNTED.problem(
                    page.place(*loc, within=told.words),
                    f'"{told.words}" is not so: {found} are found by what the page asks.',
                    "put right the number or the activity.",
                )


def _misjudged(page: Document[PageFields], blocks: Sequence[Block], found: Sequence[AnyWorked]) -> Iterator[Problem]:
    verdicts = [
        answer.value.verdict for one in found for answer in one.solution.answers if isinstance(answer.value, Verdict)
    ]
    if len(verdicts) != 1:
        return
    for told in told_verdicts(blocks):
        if told.says != verdicts[0]:
            yield CLAIM_WRONG.problem(
                page.place_on_line(told.line, told.words),
                f'"{told.words}" is not so: the statement beside it is {verdicts[0]} true.',
                "put right the verdict, or the statement.",
            )
