"""Data of an activity that nothing reads, and text that a fence or a comment swallows."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.body import Fence, Markup
from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="activity-unread",
    says="An activity stands between ```maths and ```, outside any comment; every fence and every comment is closed.",
    why="What nothing reads is not worked out: its data is printed as it stands, or is missing without a word.",
    source=HOUSE_RULE,
    wrong="```math",
    right="```maths",
    since="0.2.0",
)
_ALMOST = re.compile(r"\W*maths?\W*|\W*maths?\b.*", re.IGNORECASE)
_DATA = re.compile(r"^kind:[ \t]*[\w-]+[ \t]*$", re.MULTILINE)
_INSIDE = re.compile(r"^[ \t]*(?:```|~~~)[ \t]*maths?\b", re.MULTILINE | re.IGNORECASE)
_FENCED = "write ```maths above its data and ``` below it, each on a line of its own."


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each fence that is almost one of an activity, and for each fence or comment that swallows something."""
    for page in collection.documents:
        for fence in page.content.every(Fence):
            if not fence.is_activity and (found := _wrong_with_fence(fence)):
                yield RULE.problem(page.place_on_line(fence.line), *found)
        for markup in page.content.every(Markup):
            if found := _wrong_with_comment(markup):
                yield RULE.problem(page.place_on_line(markup.line), *found)


def _wrong_with_fence(fence: Fence) -> tuple[str, str] | None:
    """What is wrong with a fence that is not an activity's, and the fix."""
    if _ALMOST.fullmatch(fence.info):
        return f'"{fence.info}" is not read as an activity, only "maths" is.', _FENCED
    if not fence.info and fence.closed and _DATA.search(fence.text) and not _INSIDE.search(fence.text):
        return "This looks like an activity, and is not marked as one.", _FENCED
    if not fence.closed:
        return (
            "This fence is never closed, so all below it is shown as it stands.",
            "add a line with ``` where it ends.",
        )
    return None


def _wrong_with_comment(markup: Markup) -> tuple[str, str] | None:
    """What is wrong with a comment, and the fix."""
    opened = markup.text.rfind("<!--")
    if opened >= 0 and "-->" not in markup.text[opened:]:
        return "This comment is never closed, so all below it is missing from the page.", "add --> where it ends."
    if _INSIDE.search(markup.text):
        return (
            "An activity stands inside a comment, where nothing reads it.",
            "take it out of the comment, or delete it.",
        )
    return None
