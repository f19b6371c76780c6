"""What a whole series needs: materials bought once and used again, and every caution with the sessions that call for it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ..model.material import Caution, Material
from ..model.reference import Reference
from .path import SeriesPath
from .taught import SessionPage


@dataclass(frozen=True, slots=True)
class Need:
    """One thing over a whole series, for a class of some size."""

    material: Material
    enough: int
    """What to have: of things that come back the most at one time, of what is used up all of it."""
    sessions: int
    """How many sessions use it."""


@dataclass(frozen=True, slots=True)
class Care:
    """A caution, and what the sessions that carry it say of it."""

    caution: Caution
    notes: tuple[tuple[SessionPage, str], ...]


def needs_of(path: SeriesPath, reference: Reference, children: int) -> list[Need]:
    """Everything the sessions need for so many children, by name.

    What serves one book only, such as the book itself, is had once for each of its books.
    """
    by_book = [[_needed_by(page, children) for page in run.sessions] for run in path.runs]
    each = [amounts for run in by_book for amounts in run]
    needs = []
    for item in sorted({item for amounts in each for item in amounts} & reference.materials.keys()):
        material = reference.materials[item]
        counts = [amounts[item] for amounts in each if item in amounts]
        if not material.reusable:
            enough = sum(counts)
        elif material.of_one_book:
            enough = sum(max((amounts.get(item, 0) for amounts in run), default=0) for run in by_book)
        else:
            enough = max(counts)
        needs.append(Need(material, enough, len(counts)))
    return sorted(needs, key=lambda need: need.material.name.lower())


def _needed_by(page: SessionPage, children: int) -> dict[str, int]:
    """How many of each thing a session needs; a thing it lists twice is added up."""
    found: dict[str, int] = {}
    for needed in page.fields.materials:
        amount = needed.for_class(children, page.fields.group_size)
        found[needed.item] = found.get(needed.item, 0) + amount
    return found


def cares_of(sessions: Sequence[SessionPage], reference: Reference) -> list[Care]:
    """Every caution of some sessions once, in the order of site_data, with each session's own note."""
    notes: dict[str, list[tuple[SessionPage, str]]] = {}
    for page in sessions:
        for caution in page.fields.cautions:
            notes.setdefault(caution.risk, []).append((page, caution.note))
    return [Care(caution, tuple(notes[risk])) for risk, caution in reference.cautions.items() if risk in notes]
