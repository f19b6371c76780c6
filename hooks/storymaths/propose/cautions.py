"""The cautions that a session calls for and has no note on, as the rules have it, and as its book's own notes do."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from ..activities.saying import listed
from ..check import allergen_unnoted, small_parts_unnoted
from ..check.caution_missing import cautions_called, triggers_of
from ..check.things_in_prose import ThingsInProse
from ..check.things_used import materials_of
from ..edits.edit import AddItem
from ..model.document import Document
from ..model.session import Session
from .draft import Draft
from .proposal import Proposal
from .things import things_of

_PAGES = re.compile(r"\bpages? (\d+)(?:(?: to |–|-| and )(\d+))?")
_BODIES, _SENSITIVE = "bodies", "sensitive-themes"
_ABOUT_BODIES = "food-and-bodies"
_OFTEN = 2


def propose_cautions(draft: Draft) -> Iterator[Proposal]:
    """One for each risk."""
    noted = {note.risk for note in draft.fields.cautions}
    for risk, reason in _find_called(draft):
        if risk not in noted:
            noted.add(risk)
            value = {"risk": risk, "note": _note(draft, risk)}
            yield Proposal("cautions", AddItem(("cautions",), value), reason)


def _find_called(draft: Draft) -> Iterator[tuple[str, str]]:
    page = _with_materials(draft)
    one = replace(draft.collection, documents=(page,))
    for rule in (small_parts_unnoted, allergen_unnoted):
        yield from ((rule.CAUTION, problem.message) for problem in rule.check(one))
    triggers, named = triggers_of(draft.reference), ThingsInProse(draft.reference)
    for called in cautions_called(page, draft.collection, triggers, named):
        yield called.caution.id, f"{called.reason}: {called.caution.name.lower()}."
    for sensitive in draft.book.sensitive if draft.book else ():
        theme = sensitive.theme.replace("-", " ")
        if sensitive.theme == _ABOUT_BODIES:
            if fact := _fact_named(draft, sensitive.note):
                yield _BODIES, f"It speaks of the friends' {fact}, and the book has a note on that."
        elif _is_read(draft, sensitive.note):
            yield _SENSITIVE, f"The book has a note on {theme}, and it reads those pages."


def _fact_named(draft: Draft, note: str) -> str:
    """A fact of the cast that both the book's note and the session speak of; empty where there is none."""
    facts = draft.book.facts if draft.book else ()
    return next((fact for fact in facts if fact in note.lower() and draft.page.prose.lowered.count(fact) >= _OFTEN), "")


def _with_materials(draft: Draft) -> Document[Session]:
    """The session with what is proposed to get out."""
    listed_already = {needed.item for needed in draft.fields.materials}
    more = tuple(needed for needed, _ in things_of(draft) if needed.item not in listed_already)
    fields = draft.fields.model_copy(update={"materials": (*draft.fields.materials, *more)})
    return replace(draft.page, fields=fields)


def _is_read(draft: Draft, note: str) -> bool:
    """Whether the session reads pages that a note names; a note on the whole book is the first session's."""
    pages = [reading.pages for reading in draft.fields.reads] if "reads" not in draft.made_up else []
    if not _PAGES.search(note):
        return not draft.earlier
    for first, last in _PAGES.findall(note):
        if any(page in read for page in range(int(first), int(last or first) + 1) for read in pages):
            return True
    return False


def _note(draft: Draft, risk: str) -> str:
    caution = draft.reference.cautions[risk]
    usual = draft.reference.proposals.notes.get(risk, caution.still_to_write)
    page = _with_materials(draft)
    calling = {
        material.plural
        for _, material in materials_of(page, draft.collection)
        if risk in material.hazards or (risk == small_parts_unnoted.CAUTION and material.is_small_part != "no")
    }
    return usual.replace("{things}", listed(sorted(calling)) or "small things")
