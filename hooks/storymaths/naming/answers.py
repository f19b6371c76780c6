"""Activities by name: ``[[every-ride: count]]`` is how many answers are found, ``answers`` and ``table`` are what they are."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Literal

from ..activities.memory import Memory
from ..activities.on_pages import activities_of
from ..activities.saying import listed
from ..activities.work_out import WorkedOut
from ..activities.worked import AnyWorked
from ..expression.noun import number_in_words
from ..model.body import Run, Runs, Table
from ..model.collection import Collection
from ..model.document import Document
from ..model.names import NOT_WORKED_OUT
from ..model.page_fields import PageFields
from ..parse.suggestion import did_you_mean
from .facts import Unprintable

_WAYS = ("count", "count in words", "Count in words", "answer", "answers", "table")
_SIDES: tuple[Literal[""], ...] = ("", "", "")
_HOW = "write count, count in words, answer, answers or table after the colon."


class NamedActivities:
    """The activities of a collection's pages, worked out when they are first named."""

    def __init__(self, collection: Collection, memory: Memory[WorkedOut] | None) -> None:
        self._collection, self._memory = collection, memory
        self._pages = {page.path: page for page in collection.documents}
        self._found: dict[str, Mapping[str, AnyWorked | None]] = {}

    def print_answers(self, name: str, page: Document[PageFields]) -> str | Table:
        """What the words between the brackets print: words, or a table. Raises ``Unprintable``."""
        what, _, how = name.partition(": ")
        if how not in _WAYS:
            raise Unprintable(f'[[{name}]]: "{how}" is no way to print an activity.{did_you_mean(how, _WAYS)}', _HOW)
        worked = self._activity(what, page)
        says = [answer.says.rstrip(".") for answer in worked.solution.answers]
        match how:
            case "count":
                return str(len(says))
            case "count in words" | "Count in words":
                words = number_in_words(len(says))
                return words.capitalize() if how[0] == "C" else words
            case "table":
                return _table(worked)
            case "answer" if len(says) != 1:
                raise Unprintable(f"{what} has {len(says)} answers, and not one.", f"write [[{what}: answers]].")
            case _:
                return "; ".join(says) if any("," in one or " and " in one for one in says) else listed(says)

    def _activity(self, what: str, page: Document[PageFields]) -> AnyWorked:
        other, _, own = what.rpartition("/")
        path = f"{page.folder}/{other}.md" if other else page.path
        if path not in self._pages:
            beside = (one.rpartition("/")[2].removesuffix(".md") for one in self._pages if one.startswith(page.folder))
            raise Unprintable(f'There is no page "{other}" beside this one.{did_you_mean(other, beside)}', "name one.")
        found = self._of_page(path)
        if own not in found:
            message = f'No activity {f"of {other}" if other else "of this page"} has the id "{own}".'
            fix = "use the id of an activity: the line id: under its kind. Of another page: [[session-4/every-ride: count]]."
            raise Unprintable(message + did_you_mean(own, found), fix)
        worked = found[own]
        if worked is None:
            raise Unprintable(f"{own} {NOT_WORKED_OUT}", "put right the activity first.")
        return worked

    def _of_page(self, path: str) -> Mapping[str, AnyWorked | None]:
        if path not in self._found:
            all_of_it = activities_of(self._pages[path], self._collection, self._memory)
            self._found[path] = {
                str(one.worked.raw["id"]): one.worked.done for one in all_of_it if one.worked.raw.get("id")
            }
        return self._found[path]


def _table(worked: AnyWorked) -> Table:
    """Each answer and the line that shows why, where there is one and the answer has no sum in it already."""
    answers = worked.solution.answers
    why = any(answer.why and not re.search(r"\d.*=", answer.says) for answer in answers)
    head = ("", "Answer", "Worked out") if why else ("", "Answer")
    rows = [(str(at), one.says, one.why)[: len(head)] for at, one in enumerate(answers, start=1)]
    return Table(1, _cells(head), tuple(map(_cells, rows)), _SIDES[: len(head)])


def _cells(texts: tuple[str, ...]) -> tuple[Runs, ...]:
    return tuple(map(_runs, texts))


def _runs(text: str) -> Runs:
    return (Run("words", text, 1),) if text else ()
