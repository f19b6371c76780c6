"""What is set out for the week, as cards that stand where it is: what is there, what an adult says, what to notice."""

from __future__ import annotations

from typing import Any

from ...model.concept import Area
from ...model.document import Document
from ...model.session import Session
from .paper import for_adult
from .sheet import Part, SheetData
from .sheet_context import SheetContext
from .words import runs

ON_A_PAGE = 2
WIDE_MM, HIGH_MM = 180, 128


def area_cards(sheets: SheetContext, page: Document[Session]) -> SheetData | None:
    """Two cards to a page; none where nothing is set out."""
    session = page.fields
    if not session.set_out:
        return None
    return SheetData(
        "set-out",
        f"Set out for the week: {session.title}",
        "A card for each area, for the adult who is near: what is there, what to say, what to notice.",
        (
            Part(
                "set_out",
                {
                    "heading": session.title,
                    "card": [WIDE_MM, HIGH_MM],
                    "on_a_page": ON_A_PAGE,
                    "cards": areas_set_out(sheets, session),
                },
            ),
        ),
        for_adult(),
        {},
    )


def areas_set_out(sheets: SheetContext, session: Session) -> list[dict[str, Any]]:
    """Each area with its words, as templates are given them."""
    areas = sheets.collection.reference.areas
    return [
        {
            "area": areas[one.area].name,
            "out": runs(one.put_out),
            "say": [runs(said) for said in one.say],
            "notice": [runs(seen) for seen in one.notice],
            "care": care_of(sheets, session, areas[one.area]),
        }
        for one in session.set_out
    ]


def care_of(sheets: SheetContext, session: Session, area: Area | None = None) -> list[dict[str, Any]]:
    """What to take care of, risk by risk; on the card of an area without what is of other areas alone."""
    reference = sheets.collection.reference
    elsewhere = {risk for one in reference.areas.values() if area and one is not area for risk in one.own_cautions}
    elsewhere -= set(area.own_cautions if area else ())
    notes = [note for note in session.cautions if note.risk not in elsewhere]
    return [{"name": reference.cautions[note.risk].name, "note": runs(note.note)} for note in notes]
