"""Number and sign cards for a session that gets some out: its activities' numbers, and the signs they need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from ...model.activity import Solution
from ...model.document import Document
from ...model.fields import year_name
from ...model.session import Needed, Session
from .card_faces import SIGNS, Card, number_card, sign_card, word_card
from .card_sizes import SIZE_FOR, cards_part, sets_on_a_page
from .note_numbers import numbers_in, stretch_in, words_in
from .paper import in_sets
from .sheet import SheetData
from .sheet_context import SheetActivity, SheetContext

_MOST, _MOST_OF_A_SIGN = 100, 4


def number_cards(
    sheets: SheetContext, page: Document[Session], activities: Sequence[SheetActivity]
) -> SheetData | None:
    """The cards its materials ask for; none where nobody lays a card."""
    session = page.fields
    materials = {one.item: one for one in session.materials if one.item in ("number-card", "sign-card")}
    sets = _sets(session, materials, [one for one in activities if one.own.cards])
    if not sets:
        return None
    needed = next(iter(materials.values()))
    size, largest = SIZE_FOR[needed.per], max(map(len, sets.values()))
    use = in_sets(needed.model_copy(update={"count": largest}), largest, "card", sheets.children, session.group_size)
    copies = sets_on_a_page(size, largest, use.sets)
    name = _name_of([card for cards in sets.values() for card in cards])
    return SheetData(
        name.split(maxsplit=1)[0].lower() + "-cards",
        f"{name}: {session.title}",
        f"{name} for an adult to cut out, {size} each.",
        tuple(cards_part(f"{name}{label}", size, cards, copies) for label, cards in sets.items()),
        replace(use, on_a_page=copies, versions=len(sets)),
        {},
    )


def _name_of(cards: Sequence[Card]) -> str:
    if any("word" in card for card in cards):
        return "Word cards"
    kinds = {"sign" in card for card in cards}
    return "Number and sign cards" if len(kinds) == 2 else "Sign cards" if True in kinds else "Number cards"


def _sets(session: Session, materials: dict[str, Needed], activities: Sequence[SheetActivity]) -> dict[str, list[Card]]:
    """Cards for the session's own year, and for other years that need others: of the sorts the materials name."""
    sets: dict[str, list[Card]] = {}
    named = _signs_named(materials.get("sign-card"))
    to_show = _numbers_named(materials.get("number-card")) if "sign-card" not in materials else []
    to_show += _words_named(materials.get("sign-card")) if "number-card" not in materials else []
    if to_show:
        return {"": to_show}
    for year in dict.fromkeys((session.year, *sorted(year for one in activities for year in one.by_year))):
        solutions = [done for one in activities if (done := one.solution_in(year))]
        cards = _numbers_of(solutions) if "number-card" in materials else []
        if "sign-card" in materials:
            own = _signs_of(solutions)
            # What the author's note names is for the class; a year whose tasks have not all of it lays its own.
            cards += named if named and (year == session.year or all(card in own for card in named)) else own
        if cards and cards not in sets.values():
            sets["" if year == session.year else f", {year_name(year)}"] = cards
    if sets:
        return sets
    asked = _numbers_asked(materials.get("number-card"))
    asked += named or _signs_known(session) if "sign-card" in materials else []
    return {"": asked} if asked else {}


def _numbers_of(solutions: Sequence[Solution]) -> list[Card]:
    """Each number once, the smallest first."""
    found = {card.number: card.face for one in solutions if one.cards for card in one.cards.numbers}
    return [number_card(found[amount]) for amount in sorted(found)[:_MOST]]


def _signs_of(solutions: Sequence[Solution]) -> list[Card]:
    """Each sign as often as one answer or line needs it."""
    cards = []
    for sign in SIGNS:
        often = max((one.cards.signs.get(sign, 0) for one in solutions if one.cards), default=0)
        cards += [sign_card(sign)] * min(often, _MOST_OF_A_SIGN)
    return cards


def _numbers_asked(needed: Needed | None) -> list[Card]:
    """The numbers a note names as a stretch, such as ``0 to 20``; from 0 to 10 where it names none."""
    if needed is None:
        return []
    first, last = stretch_in(needed.note or "") or (0, 10)
    return [number_card(str(number)) for number in range(first, min(last, first + _MOST) + 1)]


def _numbers_named(needed: Needed | None) -> list[Card]:
    """The numbers of a note that names as many as there are to be, or goes on to say more: no others are printed."""
    note = (needed.note or "") if needed else ""
    stretch = stretch_in(note)
    named = list(range(stretch[0], stretch[1] + 1)) if stretch else numbers_in(note)
    if needed and stretch and len(named) != needed.count:
        return []
    wanted = needed.count if needed and needed.count <= min(len(named), _MOST) else 0
    return [number_card(str(number)) for number in named[:wanted]]


def _signs_named(needed: Needed | None) -> list[Card]:
    """The signs that a note names."""
    return [sign_card(sign) for sign in (needed.note or "" if needed else "") if sign in SIGNS]


def _words_named(needed: Needed | None) -> list[Card]:
    """Words to hold up, such as units, where a note lists as many as there are to be and nothing else."""
    words = words_in(needed.note or "") if needed else []
    return [word_card(word) for word in words] if needed and len(words) == needed.count else []


def _signs_known(session: Session) -> list[Card]:
    """All the signs of the session."""
    known = (*session.symbols.new, *session.symbols.again)
    return [sign_card(sign) for sign in SIGNS if sign in known]
