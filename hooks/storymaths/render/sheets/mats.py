"""Mats to work on: those a session gets out of the cupboard, and those of its activities that its words name."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ...model.body import words_of_runs
from ...model.document import Document
from ...model.plain import as_plain_mapping
from ...model.session import Needed, Session
from .mat_kinds import FROM_MATERIAL, Mat, mat_for_figure
from .paper import in_sets
from .sheet import Part, SheetData
from .sheet_context import SheetActivity, SheetContext

_USUALLY = Needed(item="recording-sheet", per="pair")
"""For a mat an activity is done on where the materials name none: one to a pair."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    """A mat, and what the session says of how many."""

    mat: Mat
    needed: Needed


def session_mats(sheets: SheetContext, page: Document[Session], activities: Sequence[SheetActivity]) -> list[SheetData]:
    """A sheet for each mat, in the order of the materials and then of the activities."""
    session = page.fields
    wanted: dict[str, _Wanted] = {}
    for needed in session.materials:
        if make := FROM_MATERIAL.get(needed.item):
            mat = make(needed.note or "", session.year)
            # The first line that children hold decides: a big one for the class is on the wall.
            known = wanted.get(mat.name)
            if known is None or known.needed.per == "class":
                wanted[mat.name] = _Wanted(mat, needed)
    for mat in _of_activities(activities):
        known = wanted.get(mat.name)
        if known or _is_named(mat, page):
            wanted[mat.name] = _Wanted(mat, known.needed if known else _USUALLY)
    return [_sheet(sheets, session, one) for one in wanted.values()]


def _is_named(mat: Mat, page: Document[Session]) -> bool:
    """Whether the materials or the words of the lesson speak of such a mat: one or several, with a hyphen or without."""
    name = mat.name.removesuffix("s")
    told = " ".join(words_of_runs(line) for line in page.content.lines).casefold()
    told = "-".join(told.replace("–", " ").replace("-", " ").split())
    return any(needed.item == name for needed in page.fields.materials) or name in told


def _of_activities(activities: Sequence[SheetActivity]) -> list[Mat]:
    """The mats that the activities' own drawings call for; the first of each sort."""
    mats: dict[str, Mat] = {}
    for activity in activities:
        for figure in activity.own.task.figures:
            if mat := mat_for_figure(figure.data):
                mats.setdefault(mat.name, mat)
    return list(mats.values())


def _sheet(sheets: SheetContext, session: Session, wanted: _Wanted) -> SheetData:
    mat = wanted.mat
    drawn = as_plain_mapping(mat.drawn) if mat.drawn else {}
    data = {"heading": mat.heading, "mat": mat.name, "alt": mat.alt, **drawn}
    strips = in_sets(wanted.needed, mat.on_a_page, mat.noun, sheets.children, session.group_size)
    return SheetData(mat.name, f"{mat.heading}: {session.title}", f"{mat.says}", (Part("mats", data),), strips, {})
