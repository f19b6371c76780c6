"""Things that fit the small-parts cylinder, used without a note."""

from __future__ import annotations

from collections.abc import Iterator

from ..expression.noun import with_article
from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from .things_in_prose import ThingsInProse
from .things_used import materials_of, notes_on, pages_of_doing

RULE = Rule(
    name="small-parts-unnoted",
    says="A page that uses a thing which is, or may be, a small part carries a small-parts note.",
    why="What goes wholly inside the test cylinder can close the throat of a child under three; "
    "homes and classrooms have visitors of that age.",
    source="16 CFR 1501.4 and Figure 1 (USA, Consumer Product Safety Commission), worked out from the sizes "
    "in the list of things.",
    wrong="materials: [{item: interlocking-cube}] … cautions: []",
    right="materials: [{item: interlocking-cube}] … cautions: [{risk: small-parts, note: …}]",
)
CAUTION = "small-parts"
_SUCH_AS = "how they are counted out and in, and kept from under-threes"


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for the first small part of each page without the note."""
    named = ThingsInProse(collection.reference)
    fix = f"{collection.reference.cautions[CAUTION].how_to_note}: {_SUCH_AS}."
    for page in pages_of_doing(collection):
        if CAUTION in notes_on(page):
            continue
        for loc, material in materials_of(page, collection):
            verdict = material.is_small_part
            if verdict != "no":
                size = " × ".join(f"{side:g}" for side in material.size_mm or ()) + " mm" if material.size_mm else ""
                fits = "fits" if verdict == "yes" else "may fit"
                why = "comes apart into pieces that fit" if material.sheds_small_parts else f"({size}) {fits}"
                yield RULE.problem(
                    page.place(*loc),
                    f"The page has no small-parts note, and {with_article(material.name)} {why} inside the small-parts cylinder.",
                    fix,
                )
                break
        else:
            for handled in named.handled_on(page):
                if handled.is_small_part:
                    yield RULE.problem(
                        page.place_in_prose(handled.start, handled.words),
                        f'The page says "{handled.words}": one fits inside the small-parts cylinder, and the page has no '
                        "small-parts note.",
                        fix,
                    )
                    break
